package fewermore.classroom;

import fewermore.calculation.Calculation;
import fewermore.calculation.Step;
import fewermore.calculation.Step.Break;
import fewermore.calculation.Step.Combine;
import fewermore.calculation.Step.Place;
import fewermore.calculation.Step.Row;
import fewermore.calculation.Step.Write;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.WorkedSolution;
import fewermore.calculation.WorkedSolutions;
import fewermore.marking.StrategyMarker;
import fewermore.marking.StrategyWork;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** How a made-up child works her numbers out: by the equation she wrote, to the answer she gave. Rates are ours. */
final class InventedStrategy {
  private static final double BLANK = .08;
  private static final double UNFINISHED = .06;
  private static final double CHECKED = .35;
  private static final double PIECES = .45;
  private static final double LINE = .35;

  private InventedStrategy() {}

  /** The same work with a strategy beside it. */
  static Work on(Comparison story, Work work, Random random) {
    return new Work(work.equation(), work.answer(), work.label(), work.bars(), work.estimate(), work.reading(),
        strategy(story, work, random));
  }

  private static StrategyWork strategy(Comparison story, Work work, Random random) {
    Calculation calculation = StrategyMarker.calculation(story, work.equation()).orElse(null);
    if (calculation == null || work.answer().isBlank() || random.nextDouble() < BLANK) {
      return StrategyWork.EMPTY;
    }
    StrategyKind kind = kind(random);
    List<Step> steps = new ArrayList<>(steps(calculation, kind, Integer.parseInt(work.answer()), random));
    if (random.nextDouble() < UNFINISHED) {
      steps.remove(steps.size() - 1);
    }
    StrategyWork check = null;
    if (random.nextDouble() < CHECKED) {
      StrategyKind other = kind == StrategyKind.LINE ? StrategyKind.PIECES : StrategyKind.LINE;
      check = new StrategyWork(other, solution(calculation, other, random).working().steps(), null);
    }
    return new StrategyWork(kind, steps, check);
  }

  private static StrategyKind kind(Random random) {
    double at = random.nextDouble();
    return at < PIECES ? StrategyKind.PIECES : at < PIECES + LINE ? StrategyKind.LINE : StrategyKind.EXPANDED;
  }

  private static WorkedSolution solution(Calculation calculation, StrategyKind kind, Random random) {
    List<WorkedSolution> all = WorkedSolutions.of(calculation, kind);
    return all.get(random.nextInt(all.size()));
  }

  private static List<Step> steps(Calculation calculation, StrategyKind kind, int answer, Random random) {
    int tens = calculation.first() / 10 * 10 - calculation.second() / 10 * 10;
    int turned = calculation.second() % 10 - calculation.first() % 10;
    if (kind == StrategyKind.EXPANDED && !calculation.adds() && turned > 0 && answer == tens + turned) {
      return List.of(broken(Row.FIRST, calculation.first()), broken(Row.SECOND, calculation.second()),
          new Combine(Place.ONES, turned), new Combine(Place.TENS, tens), new Write(answer));
    }
    List<Step> steps = new ArrayList<>(solution(calculation, kind, random).working().steps());
    steps.set(steps.size() - 1, new Write(answer));
    return steps;
  }

  private static Break broken(Row row, int number) {
    return new Break(row, number, number / 10 * 10, number % 10);
  }
}
