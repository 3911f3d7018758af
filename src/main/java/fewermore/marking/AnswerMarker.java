package fewermore.marking;

import fewermore.calculation.SlipRule;
import fewermore.story.Comparison;
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
    OptionalInt own = equation == null ? OptionalInt.empty() : EquationMarker.ownValue(story, equation);
    // A child of seven knows no numbers below 0: 15 − 19 is 4 to her.
    if (own.isPresent() && Math.abs((long) own.getAsInt()) == answer) {
      return AnswerMark.of(AnswerVerdict.OWN_EQUATION);
    }
    List<SlipRule> slips = calculation(story, equation)
        .map(asked -> SlipRule.predicting(asked.first(), asked.operation(), asked.second(), answer)).orElse(List.of());
    return slips.isEmpty()
        ? AnswerMark.of(AnswerVerdict.OTHER) : new AnswerMark(AnswerVerdict.SLIP, null, slips);
  }

  /** The whole number that stands alone in the box; empty for anything else, words and a blank box too. */
  public static OptionalInt number(String written) {
    return written == null ? OptionalInt.empty() : Visible.number(written);
  }

  /** The calculation the answer is looked at as a slip of: the child's own, or with no equation the right one. */
  static Optional<OwnCalculation> calculation(Comparison story, String equation) {
    return equation == null || EquationMarker.mark(story, equation).reason() == EquationReason.BLANK
        ? Optional.of(new OwnCalculation(story.value(story.given().get(0)), story.kind().operation(),
            story.value(story.given().get(1))))
        : EquationMarker.ownCalculation(story, equation);
  }
}
