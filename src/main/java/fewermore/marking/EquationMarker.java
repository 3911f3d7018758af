package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Operation;
import java.util.Optional;
import java.util.OptionalInt;

/** Marks an equation from the story's relation. */
public final class EquationMarker {
  private EquationMarker() {}

  public static EquationMark mark(Comparison story, String written) {
    return EquationMark.of(written.isBlank() ? EquationReason.BLANK : EquationReason.OTHER_NUMBERS);
  }

  /**
   * The calculation the child's own equation asks for, when its reason is {@code fits},
   * {@code turned-round} or {@code opposite-operation}, or {@code no-equals} with two numbers (then the
   * calculation written). Empty otherwise, also for a blank line.
   */
  public static Optional<OwnCalculation> ownCalculation(Comparison story, String written) {
    return Optional.of(new OwnCalculation(story.value(story.given().get(0)),
        story.kind().operation(), story.value(story.given().get(1))))
        .filter(own -> own.operation() == Operation.ADD || own.value() >= 0);
  }

  /**
   * What the child's own equation or expression truly comes to: the value of the unknown sign where there
   * is just one, else of the calculation it states, else of the side that carries an operation. Below 0
   * for a subtraction turned round. Empty when nothing follows from the line, also for a blank one.
   */
  public static OptionalInt ownValue(Comparison story, String written) {
    return ownCalculation(story, written).map(own -> OptionalInt.of(own.value())).orElse(OptionalInt.empty());
  }
}
