package fewermore.classroom;

import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.story.Role;
import java.util.EnumMap;
import java.util.Map;
import java.util.Random;

/**
 * How likely an invented child takes each plan, by her way of reasoning and the kind of problem. Ours, rounded on
 * purpose. Where wording and operation agree, reading the story and following the word have the same chances.
 */
final class PlanChances {
  /** What is left is spread evenly. */
  private static final double ELSE = .01;

  private PlanChances() {}

  static Plan draw(WayOfReasoning way, Kind kind, Random random) {
    Map<Plan, Double> chances = of(way, kind);
    double at = random.nextDouble() * chances.values().stream().mapToDouble(Double::doubleValue).sum();
    for (Map.Entry<Plan, Double> chance : chances.entrySet()) {
      at -= chance.getValue();
      if (at < 0) {
        return chance.getKey();
      }
    }
    return Plan.THE_RELATION;
  }

  static Map<Plan, Double> of(WayOfReasoning way, Kind kind) {
    Map<Plan, Double> chances = new EnumMap<>(Plan.class);
    for (Plan plan : Plan.values()) {
      chances.put(plan, ELSE);
    }
    switch (way) {
      case FROM_THE_STORY -> fromTheStory(kind, chances);
      case BY_THE_CUE_WORD -> byTheCueWord(kind, chances);
      case ALWAYS_ADDS -> {
        chances.put(Plan.ADDS, .90);
        chances.put(Plan.TAKES_AWAY_LARGER_FIRST, .03);
      }
      case ALWAYS_TAKES_AWAY -> {
        chances.put(Plan.TAKES_AWAY_LARGER_FIRST, .75);
        chances.put(Plan.TAKES_AWAY_SMALLER_FIRST, .15);
        chances.put(Plan.ADDS, .03);
      }
      case TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT -> differenceForAnAmount(kind, chances);
      case TURNS_SUBTRACTION_ROUND -> {
        boolean takesAway = kind.operation() == Operation.SUBTRACT;
        chances.put(Plan.THE_RELATION, takesAway ? .15 : .80);
        chances.put(takesAway ? Plan.TAKES_AWAY_SMALLER_FIRST : Plan.TAKES_AWAY_LARGER_FIRST, takesAway ? .75 : .08);
      }
      case NO_STEADY_WAY -> {
        chances.put(Plan.THE_RELATION, .25);
        chances.put(Plan.ADDS, .22);
        chances.put(Plan.TAKES_AWAY_LARGER_FIRST, .18);
        chances.put(Plan.TAKES_AWAY_SMALLER_FIRST, .06);
        chances.put(Plan.REPEATS_THE_DIFFERENCE, .07);
        chances.put(Plan.REPEATS_AN_AMOUNT, .07);
        chances.put(Plan.SOME_OTHER_NUMBER, .10);
        chances.put(Plan.BLANK, .05);
      }
    }
    return chances;
  }

  private static void fromTheStory(Kind kind, Map<Plan, Double> chances) {
    boolean hardest = kind == Kind.LARGER_FEWER;
    chances.put(Plan.THE_RELATION, kind.agrees() ? .92 : hardest ? .75 : .85);
    chances.put(opposite(kind), kind.agrees() ? .03 : hardest ? .12 : .07);
    turned(kind, chances, .03);
  }

  private static void byTheCueWord(Kind kind, Map<Plan, Double> chances) {
    if (kind.agrees()) {
      fromTheStory(kind, chances);
      return;
    }
    boolean question = kind == Kind.DIFFERENCE_MORE;
    chances.put(opposite(kind), question ? .60 : .80);
    chances.put(Plan.THE_RELATION, question ? .30 : .12);
    turned(kind, chances, .04);
  }

  private static void differenceForAnAmount(Kind kind, Map<Plan, Double> chances) {
    boolean asked = kind.unknown() == Role.DIFFERENCE;
    chances.put(asked ? Plan.REPEATS_AN_AMOUNT : Plan.REPEATS_THE_DIFFERENCE, asked ? .50 : .70);
    chances.put(Plan.THE_RELATION, asked ? .25 : .08);
    chances.put(Plan.ADDS, asked ? .15 : .07);
    if (!asked) {
      chances.put(Plan.REPEATS_AN_AMOUNT, .10);
    }
  }

  private static Plan opposite(Kind kind) {
    return kind.operation() == Operation.ADD ? Plan.TAKES_AWAY_LARGER_FIRST : Plan.ADDS;
  }

  private static void turned(Kind kind, Map<Plan, Double> chances, double chance) {
    if (kind.operation() == Operation.SUBTRACT) {
      chances.put(Plan.TAKES_AWAY_SMALLER_FIRST, chance);
    }
  }
}
