package fewermore.marking;

import fewermore.equation.SyntaxProblem;
import fewermore.text.SourceSpan;

/**
 * The mark of an equation.
 *
 * @param reason the one main reason
 * @param expression for {@code no-equals}: the reason of the expression read as "expression = x"; else null
 * @param solvedForm fits with a number where the unknown sign would stand
 * @param cueLed the wrong operation is the one the cue word pulls to, where the wording disagrees
 * @param equalsChain a run-on chain of equals signs
 * @param notTrue a solved form with a wrong number
 * @param problem for {@code unreadable}: where and why; else null
 * @param at the span of the equation the reason rests on, or null when it is the whole
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
