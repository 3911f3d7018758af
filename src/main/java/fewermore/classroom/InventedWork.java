package fewermore.classroom;

import fewermore.calculation.SlipRule;
import fewermore.marking.Bars;
import fewermore.marking.BarsMarker;
import fewermore.marking.Marker;
import fewermore.marking.Part;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.marking.Work;
import fewermore.prediction.Plan;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;

/**
 * What a made-up child writes on one problem: raw work, with the noise of a real one. No mark is given here; what a
 * prompt would say is asked of the same rules that read real work.
 *
 * <p>Every rate is ours unless its line says otherwise.
 */
final class InventedWork {
  /** The rest of the relation's chance lies in situation forms ({@code □ + 14 = 52}). */
  private static final double SOLUTION_FORM = .75;
  private static final double SIDES_TURNED = .08;
  /** A number where the unknown sign would stand. */
  private static final double SOLVED_FORM = .20;
  /** {@code 52 − 10 = 42 − 4 = 38}. */
  private static final double CHAIN = .05;
  private static final double NO_EQUALS = .02;
  private static final double NUMBERS_IN_OTHER_ORDER = .20;

  private static final double SLIP = .08;
  /** How often a habit shows where it can: most who have one can do it right too (Hatano et al. 1996, abstract). */
  private static final double HABIT_SHOWS = .60;
  private static final double NO_ANSWER = .02;
  /** A child who repeats a number writes {@code □ = 14}, the bare number, or no equation at all. */
  private static final double REPEATED_AS_EQUATION = .50;
  private static final double REPEATED_BARE = .30;

  private static final double LABEL_WITH_NUMBER = .08;
  private static final double LABEL_ONE = .04;
  private static final double LABEL_MISSPELT = .08;
  private static final double LABEL_TOO_GENERAL = .04;
  private static final double LABEL_BLANK = .05;
  private static final List<String> TOO_GENERAL = List.of("things", "them", "stuff");

  private static final double BARS_BLANK = .06;
  private static final double BARS_INCOMPLETE = .05;
  private static final double BARS_SWAPPED = .03;
  /** Drawn right though the equation says something else. */
  private static final double BARS_RIGHT_ANYWAY = .25;
  private static final double BARS_SOLVED = .15;

  /** A prompt to look again helps this often; else the part stays as it was. */
  private static final double PROMPT_HELPS = .60;

  private final Comparison story;
  private final InventedChild child;
  private final Random random;
  private final int first;
  private final int second;
  private final Operation finds;

  InventedWork(Comparison story, InventedChild child, Random random) {
    this.story = story;
    this.child = child;
    this.random = random;
    this.first = story.value(story.given().get(0));
    this.second = story.value(story.given().get(1));
    this.finds = story.kind().operation();
  }

  /** The first try, by a plan. */
  Work first(Plan plan) {
    if (plan == Plan.BLANK) {
      return new Work("", "", "", Bars.EMPTY, null);
    }
    int answer = switch (plan) {
      case REPEATS_THE_DIFFERENCE, REPEATS_AN_AMOUNT -> repeated(plan);
      case SOME_OTHER_NUMBER -> 2 + random.nextInt(98);
      default -> calculated(operation(plan));
    };
    String equation = switch (plan) {
      case THE_RELATION -> relation(answer);
      case ADDS -> child.hand().write(added(answer));
      case TAKES_AWAY_LARGER_FIRST -> child.hand().write(larger() + " − " + smaller() + " = □");
      case TAKES_AWAY_SMALLER_FIRST -> child.hand().write(smaller() + " − " + larger() + " = □");
      default -> alone(answer);
    };
    String written = chance(NO_ANSWER) ? "" : Integer.toString(answer);
    return new Work(equation, written, label(written), bars(plan, answer), null);
  }

  /** Whether the tablet would ask to look again. */
  boolean prompted(Work work) {
    return signs(work).containsValue(Sign.LOOK_AGAIN);
  }

  /** The next try after a prompt: each part that was told to look again is bettered, or stays. */
  Work again(Work work) {
    Map<Part, Sign> signs = signs(work);
    String equation = work.equation();
    String answer = work.answer();
    String label = work.label();
    Bars bars = work.bars();
    if (signs.get(Part.BARS) == Sign.LOOK_AGAIN && chance(PROMPT_HELPS)) {
      bars = rightBars(answer);
    }
    if (signs.get(Part.EQUATION) == Sign.LOOK_AGAIN && chance(PROMPT_HELPS)) {
      int next = calculated(finds);
      equation = relation(next);
      answer = Integer.toString(next);
    }
    if (signs.get(Part.ANSWER) == Sign.LOOK_AGAIN && chance(PROMPT_HELPS)) {
      answer = Integer.toString(story.answer());
    }
    if (signs.get(Part.LABEL) == Sign.LOOK_AGAIN && chance(PROMPT_HELPS)) {
      label = story.thing().many();
    }
    return new Work(equation, answer, label, bars, null);
  }

  private Map<Part, Sign> signs(Work work) {
    return Signs.of(Marker.mark(story, work), false);
  }

  // The equation

  private Operation operation(Plan plan) {
    return plan == Plan.THE_RELATION ? finds : plan == Plan.ADDS ? Operation.ADD : Operation.SUBTRACT;
  }

  private int larger() {
    return Math.max(first, second);
  }

  private int smaller() {
    return Math.min(first, second);
  }

  private String relation(int answer) {
    if (chance(CHAIN) && second >= 11 && second % 10 != 0) {
      return child.hand().write(chain());
    }
    boolean solution = chance(SOLUTION_FORM);
    String form = solution ? first + " " + finds.sign() + " " + second + " = □" : situation();
    if (solution && chance(NO_EQUALS)) {
      return child.hand().write(form.replace(" = □", ""));
    }
    if (chance(SIDES_TURNED)) {
      String[] sides = form.split(" = ");
      form = sides[1] + " = " + sides[0];
    }
    return child.hand().write(chance(SOLVED_FORM) ? form.replace("□", Integer.toString(answer)) : form);
  }

  /** What the text tells, in its order, with the sign where the unknown stands. */
  private String situation() {
    boolean less = story.wording() == Wording.FEWER;
    return switch (story.unknown()) {
      case LARGER -> less ? "□ − " + second + " = " + first : second + " + " + first + " = □";
      case SMALLER -> less ? first + " − □ = " + second : "□ + " + second + " = " + first;
      case DIFFERENCE -> less ? first + " − □ = " + second : second + " + □ = " + first;
    };
  }

  private String chain() {
    int tens = second / 10 * 10;
    int ones = second % 10;
    int between = finds == Operation.ADD ? first + tens : first - tens;
    return first + " " + finds.sign() + " " + tens + " = " + between + " " + finds.sign() + " " + ones + " = "
        + story.answer();
  }

  private String added(int answer) {
    String sum = chance(NUMBERS_IN_OTHER_ORDER) ? second + " + " + first : first + " + " + second;
    return sum + " = " + (chance(SOLVED_FORM) ? Integer.toString(answer) : "□");
  }

  /** A number that came from no operation. */
  private String alone(int answer) {
    double at = random.nextDouble();
    return at < REPEATED_AS_EQUATION ? child.hand().write("□ = " + answer)
        : at < REPEATED_AS_EQUATION + REPEATED_BARE ? Integer.toString(answer) : "";
  }

  // The answer

  private int repeated(Plan plan) {
    if (story.unknown() == Role.DIFFERENCE) {
      return story.value(story.wording() == Wording.FEWER ? Role.SMALLER : Role.LARGER);
    }
    return story.value(plan == Plan.REPEATS_THE_DIFFERENCE ? Role.DIFFERENCE
        : story.unknown() == Role.LARGER ? Role.SMALLER : Role.LARGER);
  }

  private int calculated(Operation operation) {
    SlipRule habit = child.habit();
    if (habit != null && habit.operation() == operation) {
      OptionalInt wrong = habit.predicts(larger(), operation, smaller());
      if (wrong.isPresent() && chance(HABIT_SHOWS)) {
        return wrong.getAsInt();
      }
    }
    int right = operation == Operation.ADD ? first + second : larger() - smaller();
    List<Integer> slips = new ArrayList<>();
    for (SlipRule rule : SlipRule.values()) {
      // Another operation is another plan, not a slip of this one.
      if (rule != SlipRule.ADDED_INSTEAD && rule != SlipRule.SUBTRACTED_INSTEAD) {
        rule.predicts(larger(), operation, smaller()).ifPresent(slips::add);
      }
    }
    return !slips.isEmpty() && chance(SLIP) ? slips.get(random.nextInt(slips.size())) : right;
  }

  // The label

  private String label(String answer) {
    String many = story.thing().many();
    int last = many.lastIndexOf(' ') + 1;
    double at = random.nextDouble();
    if ((at -= LABEL_BLANK) < 0) {
      return "";
    }
    if ((at -= LABEL_TOO_GENERAL) < 0) {
      return story.wider().isEmpty() ? TOO_GENERAL.get(random.nextInt(TOO_GENERAL.size()))
          : story.wider().get(0).many();
    }
    if ((at -= LABEL_MISSPELT) < 0) {
      return many.substring(0, last) + misspelt(many.substring(last));
    }
    if ((at -= LABEL_ONE) < 0) {
      return story.thing().one();
    }
    return (at -= LABEL_WITH_NUMBER) < 0 && !answer.isEmpty() ? answer + " " + many : many;
  }

  /** One slip of spelling of the common sorts: a double letter single, two letters exchanged, a vowel left out. */
  private String misspelt(String word) {
    String single = word.replaceFirst("([a-z])\\1", "$1");
    if (!single.equals(word)) {
      return single;
    }
    if (word.length() < 4) {
      return word;
    }
    // The first letter and the ending are what most children get right.
    int at = 1 + random.nextInt(word.length() - 3);
    boolean vowel = "aeiou".indexOf(word.charAt(at)) >= 0;
    return vowel ? word.substring(0, at) + word.substring(at + 1)
        : word.substring(0, at) + word.charAt(at + 1) + word.charAt(at) + word.substring(at + 2);
  }

  // The bars

  private Bars bars(Plan plan, int answer) {
    double at = random.nextDouble();
    if ((at -= BARS_BLANK) < 0) {
      return Bars.EMPTY;
    }
    Bars right = rightBars(Integer.toString(answer));
    if ((at -= BARS_INCOMPLETE) < 0) {
      return new Bars(right.longer(), right.longerBar(), right.shorterBar(), "");
    }
    if ((at -= BARS_SWAPPED) < 0) {
      return new Bars(name(Role.SMALLER), right.longerBar(), right.shorterBar(), right.gap());
    }
    return chance(BARS_RIGHT_ANYWAY) ? right : barsOf(plan, right);
  }

  private Bars barsOf(Plan plan, Bars right) {
    return switch (plan) {
      case THE_RELATION, TAKES_AWAY_SMALLER_FIRST, BLANK -> right;
      case ADDS -> finds == Operation.ADD ? right : story.unknown() == Role.DIFFERENCE
          // Both amounts are put together: there is no gap to ask for.
          ? new Bars(right.longer(), right.longerBar(), right.shorterBar(), "")
          // "14 more" makes the other one the longer.
          : new Bars(name(Role.SMALLER), "x", Integer.toString(first), Integer.toString(second));
      case TAKES_AWAY_LARGER_FIRST -> finds == Operation.SUBTRACT ? right
          // "19 fewer" makes the other one the shorter.
          : new Bars(name(Role.SMALLER), Integer.toString(first), "x", Integer.toString(second));
      case REPEATS_THE_DIFFERENCE, REPEATS_AN_AMOUNT -> differenceAsAmount(right);
      case SOME_OTHER_NUMBER -> new Bars(right.longer(), right.longerBar(), right.shorterBar(),
          Integer.toString(1 + random.nextInt(99)));
    };
  }

  private Bars differenceAsAmount(Bars right) {
    String difference = Integer.toString(story.value(Role.DIFFERENCE));
    return switch (story.unknown()) {
      case LARGER -> new Bars(right.longer(), difference, right.shorterBar(), "");
      case SMALLER -> new Bars(right.longer(), right.longerBar(), difference, "");
      case DIFFERENCE -> new Bars(right.longer(), right.longerBar(), right.shorterBar(), "");
    };
  }

  private Bars rightBars(String answer) {
    String unknown = !answer.isEmpty() && chance(BARS_SOLVED) ? answer : "x";
    return new Bars(name(Role.LARGER), place(Role.LARGER, unknown), place(Role.SMALLER, unknown),
        place(Role.DIFFERENCE, unknown));
  }

  private String place(Role role, String unknown) {
    return role == story.unknown() ? unknown : Integer.toString(story.value(role));
  }

  private String name(Role role) {
    return BarsMarker.name(story, role);
  }

  private boolean chance(double chance) {
    return random.nextDouble() < chance;
  }
}
