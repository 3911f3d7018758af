package fewermore.marking;

import fewermore.calculation.Calculation;
import fewermore.calculation.WorkedSolutions;
import fewermore.calculation.Working;
import fewermore.calculation.Working.Judgment;
import fewermore.calculation.Working.Verdict;
import fewermore.story.Comparison;
import java.util.Optional;

/**
 * Marks a strategy against the child's own equation: steps that do what her equation asks fit, whatever the story
 * asks, so that one wrong step is not counted twice ("follow-through", common practice, no source).
 */
public final class StrategyMarker {
  private StrategyMarker() {}

  /** @param equation what stands on the equation line, or null when none was asked */
  public static StrategyMark mark(Comparison story, String equation, StrategyWork work) {
    if (work.blank()) {
      return StrategyMark.of(Verdict.BLANK);
    }
    Optional<Calculation> calculation = calculation(story, equation);
    if (calculation.isEmpty()) {
      return StrategyMark.of(Verdict.OTHER_CALCULATION);
    }
    Working working = new Working(work.kind(), calculation.get(), work.steps());
    Judgment judgment = working.judge();
    Boolean agrees = work.check() == null || work.check().blank() ? null
        : Working.agree(working, new Working(work.check().kind(), calculation.get(), work.check().steps()));
    return new StrategyMark(judgment.verdict(), judgment.slips(),
        judgment.verdict() == Verdict.FITS ? WorkedSolutions.wayOf(working).orElse(null) : null,
        judgment.firstWrong(), agrees);
  }

  /**
   * The calculation the steps should do: that of the child's own equation, or where it asks for none the story's.
   * Empty when a number lies outside 0 to 100.
   */
  public static Optional<Calculation> calculation(Comparison story, String equation) {
    OwnCalculation own = AnswerMarker.calculation(story, equation)
        .orElseGet(() -> new OwnCalculation(story.value(story.given().get(0)), story.kind().operation(),
            story.value(story.given().get(1))));
    return Calculation.of(own.first(), own.operation(), own.second());
  }
}
