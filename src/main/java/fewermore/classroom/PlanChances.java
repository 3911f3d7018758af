package fewermore.classroom;

import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.story.Role;
import java.util.EnumMap;
import java.util.Map;
import java.util.random.RandomGenerator;

/**
 * How likely an invented child of each way of reasoning takes each plan on a kind of problem. All numbers are ours and
 * rounded on purpose; they are no norms. Their directions: more and fewer where the word points the other way are
 * hardest (the grade-2 row of Riley, Greeno &amp; Heller 1983, from memory), and unsure children add (Valentin &amp; Lim
 * 2004, abstract).
 */
final class PlanChances {
  private PlanChances() {}

  /** Chances of all eight plans; they sum to 1. What a row does not name shares evenly what is left of it. */
  static Map<Plan, Double> of(WayOfReasoning way, Kind kind) {
    boolean asksDifference = kind.unknown() == Role.DIFFERENCE;
    return switch (way) {
      case FROM_THE_STORY -> story(kind);
      case BY_THE_CUE_WORD -> kind.agrees() ? story(kind) : cueWord(kind);
      case ALWAYS_ADDS -> filled(Map.of(Plan.ADDS, .90, Plan.TAKES_AWAY_LARGER_FIRST, .03));
      case ALWAYS_TAKES_AWAY -> filled(Map.of(
          Plan.TAKES_AWAY_LARGER_FIRST, .75, Plan.TAKES_AWAY_SMALLER_FIRST, .15, Plan.ADDS, .03));
      case TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT -> filled(asksDifference
          ? Map.of(Plan.REPEATS_AN_AMOUNT, .50, Plan.THE_RELATION, .25, Plan.ADDS, .15)
          : Map.of(Plan.REPEATS_THE_DIFFERENCE, .70, Plan.REPEATS_AN_AMOUNT, .10, Plan.THE_RELATION, .08,
              Plan.ADDS, .07));
      case TURNS_SUBTRACTION_ROUND -> filled(kind.operation() == Operation.SUBTRACT
          ? Map.of(Plan.TAKES_AWAY_SMALLER_FIRST, .75, Plan.THE_RELATION, .15)
          : Map.of(Plan.THE_RELATION, .80, Plan.TAKES_AWAY_LARGER_FIRST, .08));
      case NO_STEADY_WAY -> filled(Map.of(Plan.THE_RELATION, .25, Plan.ADDS, .22, Plan.TAKES_AWAY_LARGER_FIRST, .18,
          Plan.TAKES_AWAY_SMALLER_FIRST, .06, Plan.REPEATS_THE_DIFFERENCE, .07, Plan.REPEATS_AN_AMOUNT, .07,
          Plan.SOME_OTHER_NUMBER, .10, Plan.BLANK, .05));
    };
  }

  private static Map<Plan, Double> story(Kind kind) {
    boolean hardest = kind == Kind.LARGER_FEWER;
    return filled(Map.of(
        Plan.THE_RELATION, kind.agrees() ? .92 : hardest ? .75 : .85,
        opposite(kind), kind.agrees() ? .03 : hardest ? .12 : .07,
        Plan.TAKES_AWAY_SMALLER_FIRST, .03));
  }

  private static Map<Plan, Double> cueWord(Kind kind) {
    // A question's wording is weaker evidence than a statement's: consistency was defined for statements.
    boolean question = kind.unknown() == Role.DIFFERENCE;
    return filled(Map.of(
        opposite(kind), question ? .60 : .80,
        Plan.THE_RELATION, question ? .30 : .12,
        Plan.TAKES_AWAY_SMALLER_FIRST, .04));
  }

  private static Plan opposite(Kind kind) {
    return kind.operation() == Operation.ADD ? Plan.TAKES_AWAY_LARGER_FIRST : Plan.ADDS;
  }

  private static Map<Plan, Double> filled(Map<Plan, Double> named) {
    double left = 1 - named.values().stream().mapToDouble(Double::doubleValue).sum();
    int unnamed = Plan.values().length - named.size();
    Map<Plan, Double> all = new EnumMap<>(Plan.class);
    for (Plan plan : Plan.values()) {
      all.put(plan, named.getOrDefault(plan, unnamed == 0 ? 0 : Math.max(0, left) / unnamed));
    }
    return all;
  }

  static Plan draw(WayOfReasoning way, Kind kind, RandomGenerator random) {
    double at = random.nextDouble();
    for (Map.Entry<Plan, Double> each : of(way, kind).entrySet()) {
      at -= each.getValue();
      if (at < 0) {
        return each.getKey();
      }
    }
    return Plan.THE_RELATION;
  }
}
