package fewermore.classroom;

import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.ReasoningTable;
import fewermore.story.Kind;
import java.util.random.RandomGenerator;

/** Draws what an invented child of a way does on a kind of problem, by the chances the estimate assumes. */
final class PlanChances {
  private PlanChances() {}

  static Plan draw(WayOfReasoning way, Kind kind, RandomGenerator random) {
    double at = random.nextDouble();
    for (Plan plan : Plan.values()) {
      at -= ReasoningTable.standard().chance(way, kind, plan);
      if (at < 0) {
        return plan;
      }
    }
    return Plan.THE_RELATION;
  }
}
