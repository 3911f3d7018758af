package fewermore.marking;

import fewermore.equation.Equation;
import fewermore.equation.EquationReader;
import fewermore.equation.Reading;
import fewermore.equation.SyntaxProblem;
import fewermore.story.Comparison;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Marks an equation from the story's relation {@code larger = smaller + difference}. A right solution is
 * not enough: {@code 40 − 2 = x} has the solution of a story of 52 and 14, and does not state it.
 *
 * <p>Stateless. Never throws, whatever stands on the line.
 */
public final class EquationMarker {
  private EquationMarker() {}

  /** @param written what stands on the equation line, exactly as written; not null */
  public static EquationMark mark(Comparison story, String written) {
    Reading reading = EquationReader.read(written);
    if (reading instanceof Equation equation) {
      return new EquationJudgment(story, equation).mark();
    }
    SyntaxProblem problem = (SyntaxProblem) reading;
    return problem.kind() == SyntaxProblem.Kind.NOTHING_WRITTEN
        ? EquationMark.of(EquationReason.BLANK)
        : new EquationMark(EquationReason.UNREADABLE, null, false, false, false, false, problem, problem.at());
  }

  /**
   * The calculation the child's own equation asks for, when its reason is {@code fits},
   * {@code turned-round} or {@code opposite-operation}, or {@code no-equals} with two numbers (then the
   * calculation written). Empty otherwise, also for a blank line.
   */
  public static Optional<OwnCalculation> ownCalculation(Comparison story, String written) {
    return EquationReader.read(written).equation()
        .flatMap(equation -> new EquationJudgment(story, equation).ownCalculation());
  }

  /**
   * What the child's own equation or expression truly comes to: the calculation it states, else the value of
   * the unknown sign where there is just one, else the side that carries an operation. Below 0 for a
   * subtraction turned round. Empty when nothing follows from the line, also for a blank one.
   */
  public static OptionalInt ownValue(Comparison story, String written) {
    var value = EquationReader.read(written).equation()
        .map(equation -> new EquationJudgment(story, equation).ownValue());
    return value.isPresent() && value.get().isPresent() && (int) value.get().getAsLong() == value.get().getAsLong()
        ? OptionalInt.of((int) value.get().getAsLong()) : OptionalInt.empty();
  }
}
