package fewermore.marking;

import fewermore.calculation.SlipRule;
import fewermore.story.Role;
import java.util.List;

/**
 * The mark of an answer.
 *
 * @param repeats for {@code story-number}: the role of the given number repeated; else null
 * @param slips for {@code slip}: every rule that predicts this very number; else empty
 */
public record AnswerMark(AnswerVerdict verdict, Role repeats, List<SlipRule> slips) {
  public AnswerMark {
    slips = List.copyOf(slips);
  }

  public static AnswerMark of(AnswerVerdict verdict) {
    return new AnswerMark(verdict, null, List.of());
  }
}
