package fewermore.marking;

import fewermore.calculation.SlipRule;
import fewermore.calculation.Way;
import fewermore.calculation.Working.Verdict;
import java.util.List;

/**
 * The mark of a strategy. Slips stand in it by name: the steps show them, so that one piece of work is enough.
 *
 * @param slips for {@code slip}: the rules that the steps show; else empty
 * @param way the good way the steps go, where it can be seen; or null
 * @param firstWrong index of the first step that is not true, or -1
 * @param agrees whether the second strategy comes to the same number; null when there is none
 */
public record StrategyMark(Verdict verdict, List<SlipRule> slips, Way way, int firstWrong, Boolean agrees) {
  public StrategyMark {
    slips = List.copyOf(slips);
  }

  public static StrategyMark of(Verdict verdict) {
    return new StrategyMark(verdict, List.of(), null, -1, null);
  }

  public boolean fits() {
    return verdict == Verdict.FITS;
  }
}
