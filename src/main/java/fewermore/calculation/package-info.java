/**
 * Two-digit calculation and its classic slips, each an exact rule.
 *
 * <pre>{@code
 * SlipRule.predicting(62, Operation.SUBTRACT, 28, 46);  // [SMALLER_FROM_LARGER]
 * SlipRule.CARRIED_TEN_DROPPED.predicts(34, Operation.ADD, 28);  // 52
 * }</pre>
 *
 * Not said here: whether a child makes a slip steadily; that needs more than one piece of work.
 */
package fewermore.calculation;
