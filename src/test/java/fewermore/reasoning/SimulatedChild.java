package fewermore.reasoning;

import fewermore.calculation.SlipRule;
import fewermore.marking.Work;
import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberChooser;
import fewermore.problem.NumberRange;
import fewermore.problem.Regrouping;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;

/**
 * An invented child who behaves as the table says, with slips: she takes a plan by her way's chances, writes it in one
 * of several forms, and calculates. What she writes goes through the real marking. The rates here are ours: an answer
 * slips at {@link #SLIP}, a whole problem stays empty at {@link #EMPTY} whatever the way, one subtraction story in four
 * is written as a situation, one equation in five with its number in place of the sign.
 */
final class SimulatedChild {
  static final double SLIP = .10;
  static final double EMPTY = .03;
  private static final double SOLVED_FORM = .20;
  private static final double NO_EQUALS = .03;

  /** So many clean pairs of numbers of each kind. */
  private static final int STORIES_OF_A_KIND = 200;
  private static final Map<Kind, List<Comparison>> STORIES = stories();

  private final ReasoningTable table;
  private final Random random;
  private final double slipTimes;

  SimulatedChild(ReasoningTable table, Random random) {
    this(table, random, 1);
  }

  /** @param slipTimes how many times as often as the table says something other than the way's own plan is done */
  SimulatedChild(ReasoningTable table, Random random, double slipTimes) {
    this.table = table;
    this.random = random;
    this.slipTimes = slipTimes;
  }

  private static Map<Kind, List<Comparison>> stories() {
    Random random = new Random(1);
    Map<Kind, List<Comparison>> stories = new EnumMap<>(Kind.class);
    for (Kind kind : Kind.values()) {
      stories.put(kind, Stream.generate(() -> story(kind, NumberChooser.choose(
          kind.unknown(), NumberRange.WITHIN_100, Regrouping.EITHER, random, Set.of()).amounts()))
          .limit(STORIES_OF_A_KIND).toList());
    }
    return stories;
  }

  WayOfReasoning draw() {
    double at = random.nextDouble();
    for (WayOfReasoning way : WayOfReasoning.values()) {
      at -= table.share(way);
      if (at < 0) {
        return way;
      }
    }
    return WayOfReasoning.NO_STEADY_WAY;
  }

  WayOfReasoning nextDay(WayOfReasoning way) {
    return random.nextDouble() < table.drawnAfresh() ? draw() : way;
  }

  Comparison story(Kind kind) {
    List<Comparison> stories = STORIES.get(kind);
    return stories.get(random.nextInt(stories.size()));
  }

  static Comparison story(Kind kind, Relation amounts) {
    return new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null, List.of(), amounts,
        kind.unknown(), kind.wording(), List.of());
  }

  Plan plan(WayOfReasoning way, Kind kind) {
    Plan likeliest = null;
    for (Plan plan : Plan.values()) {
      if (likeliest == null || table.chance(way, kind, plan) > table.chance(way, kind, likeliest)) {
        likeliest = plan;
      }
    }
    double usual = 1 - table.chance(way, kind, likeliest);
    // Never so often that another plan becomes her usual one: then she would be a child of another way.
    double slips = way == WayOfReasoning.NO_STEADY_WAY ? usual : Math.max(usual, Math.min(.5, usual * slipTimes));
    if (random.nextDouble() >= slips) {
      return likeliest;
    }
    double at = random.nextDouble() * (1 - table.chance(way, kind, likeliest));
    for (Plan plan : Plan.values()) {
      if (plan != likeliest) {
        at -= table.chance(way, kind, plan);
        if (at < 0) {
          return plan;
        }
      }
    }
    return Plan.SOME_OTHER_NUMBER;
  }

  Work work(WayOfReasoning way, Comparison story) {
    return random.nextDouble() < EMPTY ? written("", "") : work(plan(way, story.kind()), story);
  }

  Work work(Plan plan, Comparison story) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    int high = Math.max(first, second);
    int low = Math.min(first, second);
    return switch (plan) {
      case THE_RELATION -> relation(story, first, second);
      case ADDS -> random.nextBoolean() ? calculation(first, Operation.ADD, second) : calculation(second, Operation.ADD, first);
      case TAKES_AWAY_LARGER_FIRST -> calculation(high, Operation.SUBTRACT, low);
      case TAKES_AWAY_SMALLER_FIRST -> written(low + " − " + high + " = □", Integer.toString(slipped(high, Operation.SUBTRACT, low)));
      case REPEATS_THE_DIFFERENCE -> alone(story.unknown() != Role.DIFFERENCE ? story.value(Role.DIFFERENCE)
          : story.value(story.wording() == Wording.FEWER ? Role.LARGER : Role.SMALLER));
      case REPEATS_AN_AMOUNT -> alone(story.value(switch (story.unknown()) {
        case LARGER -> Role.SMALLER;
        case SMALLER -> Role.LARGER;
        case DIFFERENCE -> story.wording() == Wording.FEWER ? Role.SMALLER : Role.LARGER;
      }));
      case SOME_OTHER_NUMBER -> other(first, second);
      case BLANK -> written("", "");
    };
  }

  private Work relation(Comparison story, int first, int second) {
    if (story.unknown() == Role.LARGER) {
      return random.nextBoolean() ? calculation(first, Operation.ADD, second) : calculation(second, Operation.ADD, first);
    }
    if (random.nextDouble() < table.value("work/solution-form")) {
      return calculation(first, Operation.SUBTRACT, second);
    }
    int answer = slipped(first, Operation.SUBTRACT, second);
    String sign = random.nextDouble() < SOLVED_FORM ? Integer.toString(answer) : "□";
    return written(second + " + " + sign + " = " + first, Integer.toString(answer));
  }

  private Work calculation(int first, Operation operation, int second) {
    int answer = slipped(first, operation, second);
    String expression = first + " " + operation.sign() + " " + second;
    double form = random.nextDouble();
    String equation = form < NO_EQUALS ? expression
        : form < NO_EQUALS + SOLVED_FORM ? expression + " = " + answer : expression + " = □";
    return written(equation, Integer.toString(answer));
  }

  private Work alone(int number) {
    double form = random.nextDouble();
    String equation = form < .5 ? "□ = " + number : form < .8 ? Integer.toString(number) : "";
    return written(equation, Integer.toString(number));
  }

  private Work other(int first, int second) {
    int number = 2 + random.nextInt(98);
    return random.nextBoolean() ? alone(number)
        : written(number + " + " + (first == second ? first : first + 1) + " = □", Integer.toString(number + first));
  }

  private int slipped(int first, Operation operation, int second) {
    int right = operation == Operation.ADD ? first + second : first - second;
    if (random.nextDouble() >= SLIP) {
      return right;
    }
    SlipRule rule = operation == Operation.ADD ? SlipRule.CARRIED_TEN_DROPPED : SlipRule.SMALLER_FROM_LARGER;
    int[] wrong = {right + 1, Math.max(0, right - 1), right + 10, rule.predicts(first, operation, second).orElse(right + 10)};
    return wrong[random.nextInt(wrong.length)];
  }

  static Work written(String equation, String answer) {
    return new Work(equation, answer, null, null, null);
  }
}
