package fewermore.marking;

import fewermore.equation.SyntaxProblem;
import fewermore.text.SourceSpan;

/**
 * The mark of an equation.
 *
 * @param reason the one main reason
 * @param expression for {@code no-equals}: the reason of the expression read as "expression = x"; else null
 * @param solvedForm fits with a number, or jumps, where the unknown sign would stand
 * @param cueLed the opposite operation, and the sign the child wrote is the one the cue word pulls to, where
 *     the wording disagrees with the operation that finds the unknown
 * @param equalsChain false as mathematics because a side carries an operation on from a result
 *     ({@code 52 − 10 = 42 − 4 = 38}); beside any reason
 * @param notTrue fits, and a number that stands as a result (or as the unknown) is wrong
 * @param problem for {@code unreadable}: where and why; else null
 * @param at the span of the line that the mark rests on, or null when it is the whole: the telling sign of an
 *     opposite operation, the two numbers turned round, the unknown sign misplaced, the number that is extra,
 *     miscopied, repeated or not the story's; of an equation that fits, a wrong number or the side that
 *     carries on; of one that can't be read, where. Empty for an empty side
 */
public record EquationMark(
    EquationReason reason,
    EquationReason expression,
    boolean solvedForm,
    boolean cueLed,
    boolean equalsChain,
    boolean notTrue,
    SyntaxProblem problem,
    SourceSpan at) {

  public static EquationMark of(EquationReason reason) {
    return new EquationMark(reason, null, false, false, false, false, null, null);
  }

  public boolean fits() {
    return reason == EquationReason.FITS;
  }
}
