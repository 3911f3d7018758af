package fewermore.marking;

import fewermore.calculation.Step;
import fewermore.calculation.StrategyKind;
import java.util.List;

/**
 * How a child worked her numbers out.
 *
 * @param kind what with; null when none was chosen
 * @param steps in order
 * @param check a second strategy to check the first, or null; it has none of its own
 */
public record StrategyWork(StrategyKind kind, List<Step> steps, StrategyWork check) {
  public static final StrategyWork EMPTY = new StrategyWork(null, List.of(), null);

  public StrategyWork {
    steps = List.copyOf(steps);
    if (check != null && check.check != null) {
      throw new IllegalArgumentException("a check has no check of its own");
    }
  }

  public boolean blank() {
    return kind == null || steps.isEmpty();
  }
}
