/**
 * Two-digit calculation: strategies worked step by step, and the classic slips, each an exact rule.
 *
 * <p>A {@code Working} is a strategy ({@code StrategyKind}: base-ten pieces, open number line, expanded form) on a
 * {@code Calculation}, as a list of {@code Step}s; each step makes the next {@code State} and is held against
 * arithmetic. Wrong steps can be made. {@code WorkedSolutions} knows good ways, each step with its sentence.
 *
 * <pre>{@code
 * SlipRule.predicting(62, Operation.SUBTRACT, 28, 46);  // [SMALLER_FROM_LARGER]
 * Calculation shells = new Calculation(52, Operation.SUBTRACT, 14);
 * WorkedSolutions.of(shells);  // each ends at 38
 * Working.begin(StrategyKind.LINE, shells).then(new Step.Start(52)).then(new Step.Jump(-14, 38)).judge();  // FITS
 * }</pre>
 *
 * A slip that the steps show is named at once; one guessed from an answer alone is only a hint.
 *
 * <p>Not said here: whether a child makes a slip steadily; that needs more than one piece of work. Not checked: how
 * clever a way is.
 */
package fewermore.calculation;
