package fewermore.marking;

import fewermore.calculation.SlipRule;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Marks the answer box against the story and the child's own equation, so that one wrong step is not
 * counted twice ("follow-through", common practice, no source).
 */
public final class AnswerMarker {
  private AnswerMarker() {}

  /** @param equation what stands on the equation line, or null when none was asked */
  public static AnswerMark mark(Comparison story, String equation, String written) {
    if (Visible.blank(written)) {
      return AnswerMark.of(AnswerVerdict.BLANK);
    }
    OptionalInt number = Visible.number(written);
    if (number.isEmpty()) {
      return AnswerMark.of(AnswerVerdict.OTHER);
    }
    int answer = number.getAsInt();
    if (answer == story.answer()) {
      return AnswerMark.of(AnswerVerdict.RIGHT);
    }
    for (Role role : story.given()) {
      if (answer == story.value(role)) {
        return new AnswerMark(AnswerVerdict.STORY_NUMBER, role, List.of());
      }
    }
    String line = equation == null ? "" : equation;
    if (OwnWork.value(story, line).equals(OptionalInt.of(answer))) {
      return AnswerMark.of(AnswerVerdict.OWN_EQUATION);
    }
    List<SlipRule> slips = OwnWork.calculation(story, line)
        .map(own -> SlipRule.predicting(own.first(), own.operation(), own.second(), answer)).orElse(List.of());
    return slips.isEmpty()
        ? AnswerMark.of(AnswerVerdict.OTHER) : new AnswerMark(AnswerVerdict.SLIP, null, slips);
  }

  /** What the child's own equation line asks for. */
  static final class OwnWork {
    private OwnWork() {}

    record Calculation(int first, Operation operation, int second) {}

    static OptionalInt value(Comparison story, String equation) {
      return OptionalInt.empty();
    }

    static Optional<Calculation> calculation(Comparison story, String equation) {
      return Visible.blank(equation) ? Optional.of(right(story)) : Optional.empty();
    }

    private static Calculation right(Comparison story) {
      return new Calculation(story.value(story.given().get(0)), story.kind().operation(),
          story.value(story.given().get(1)));
    }
  }
}
