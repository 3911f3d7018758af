package fewermore.classroom;

import fewermore.calculation.SlipRule;
import fewermore.marking.Bars;
import fewermore.marking.BarsMarker;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.marking.Work;
import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
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
 * How one invented child puts a plan on the tablet: forms of equations, slips of calculation, labels as they are
 * spelled at seven, bars that go with the plan, and what a prompt to look again leads to. Every rate is ours.
 *
 * @param slips how often a calculation goes wrong
 * @param spells how often a label is spelled as it should be
 */
record InventedChildWork(double slips, double spells) {
  private static final String BOX = "□";
  private static final double MISCOPIES = .02;
  private static final double RIGHT_ANSWER_ANYWAY = .05;

  static InventedChildWork drawn(Random random) {
    return new InventedChildWork(.03 + .15 * random.nextDouble(), .70 + .25 * random.nextDouble());
  }

  /** The first hand-in and, where the tablet says to look again, what may follow. At least one, at most three. */
  List<Work> tries(Comparison story, WayOfReasoning way, Random random) {
    List<Work> tries = new ArrayList<>();
    tries.add(written(story, PlanChances.draw(way, story.kind(), random), random));
    while (tries.size() < ProblemSet.USUAL_TRIES) {
      Work last = tries.get(tries.size() - 1);
      Marks marks = Marker.mark(story, last);
      Map<Part, Sign> signs = Signs.of(marks, false);
      boolean gives = random.nextDouble() < (tries.size() == 1 ? .20 : .45);
      if (!signs.containsValue(Sign.LOOK_AGAIN) || gives) {
        break;
      }
      tries.add(again(story, last, signs, way, random));
    }
    return tries;
  }

  private Work written(Comparison story, Plan plan, Random random) {
    if (plan == Plan.BLANK) {
      return new Work("", "", "", Bars.EMPTY, null);
    }
    String answer = Integer.toString(answer(story, plan, random));
    return new Work(equation(story, plan, answer, random), answer, label(story, random), bars(story, plan, random), null);
  }

  private Work again(Comparison story, Work last, Map<Part, Sign> signs, WayOfReasoning way, Random random) {
    Work work = last;
    double luck = random.nextDouble();
    if (signs.get(Part.BARS) == Sign.LOOK_AGAIN && luck < .6) {
      work = work.withBars(fitting(story));
    } else if (signs.get(Part.EQUATION) == Sign.LOOK_AGAIN && luck < .75) {
      Plan plan = luck < .5 ? Plan.THE_RELATION : PlanChances.draw(way, story.kind(), random);
      Work other = written(story, plan, random);
      work = new Work(other.equation(), other.answer(), work.label(), work.bars(), null);
    } else if (signs.get(Part.ANSWER) == Sign.LOOK_AGAIN && luck < .65) {
      work = new Work(work.equation(), Integer.toString(story.answer()), work.label(), work.bars(), null);
    }
    if (signs.get(Part.LABEL) == Sign.LOOK_AGAIN && random.nextDouble() < .6) {
      work = new Work(work.equation(), work.answer(), story.thing().many(), work.bars(), null);
    }
    return work;
  }

  // ---- the answer ----

  private int answer(Comparison story, Plan plan, Random random) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    boolean anyway = random.nextDouble() < RIGHT_ANSWER_ANYWAY;
    return switch (plan) {
      case REPEATS_THE_DIFFERENCE -> repeated(story, plan);
      case REPEATS_AN_AMOUNT -> repeated(story, plan);
      case SOME_OTHER_NUMBER -> 2 + random.nextInt(80);
      case ADDS -> anyway ? story.answer() : calculated(first, Operation.ADD, second, random);
      case TAKES_AWAY_LARGER_FIRST, TAKES_AWAY_SMALLER_FIRST ->
          anyway ? story.answer() : calculated(Math.max(first, second), Operation.SUBTRACT, Math.min(first, second), random);
      case THE_RELATION -> calculated(first, story.kind().operation(), second, random);
      case BLANK -> throw new IllegalStateException("nothing is worked out");
    };
  }

  private int calculated(int first, Operation operation, int second, Random random) {
    int right = operation == Operation.ADD ? first + second : first - second;
    if (random.nextDouble() >= slips) {
      return right;
    }
    List<Integer> wrong = new ArrayList<>();
    for (SlipRule rule : SlipRule.values()) {
      OptionalInt predicted = rule.operation() == operation
          ? rule.predicts(first, operation, second) : OptionalInt.empty();
      predicted.ifPresent(wrong::add);
    }
    return wrong.isEmpty() ? right : wrong.get(random.nextInt(wrong.size()));
  }

  /** "How many more has Ines" is heard as "how many has Ines"; else the given amount that is not the gap. */
  private static int repeated(Comparison story, Plan plan) {
    if (plan == Plan.REPEATS_THE_DIFFERENCE && story.unknown() != Role.DIFFERENCE) {
      return story.value(Role.DIFFERENCE);
    }
    if (story.unknown() == Role.DIFFERENCE) {
      return story.value(story.wording() == Wording.MORE ? Role.LARGER : Role.SMALLER);
    }
    return story.value(story.given().get(0));
  }

  // ---- the equation ----

  private static String equation(Comparison story, Plan plan, String answer, Random random) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    String larger = Integer.toString(Math.max(first, second));
    String smaller = Integer.toString(Math.min(first, second));
    String written = switch (plan) {
      case THE_RELATION -> relation(story, answer, random);
      case ADDS -> finished(first + " + " + second, answer, random);
      case TAKES_AWAY_LARGER_FIRST -> finished(larger + " − " + smaller, answer, random);
      case TAKES_AWAY_SMALLER_FIRST -> finished(smaller + " − " + larger, answer, random);
      case REPEATS_THE_DIFFERENCE, REPEATS_AN_AMOUNT -> {
        double form = random.nextDouble();
        yield form < .45 ? BOX + " = " + answer : form < .60 ? answer : "";
      }
      case SOME_OTHER_NUMBER -> finished(larger + (random.nextBoolean() ? " + " : " − ") + (2 + random.nextInt(40)),
          answer, random);
      case BLANK -> "";
    };
    return random.nextDouble() < MISCOPIES ? miscopied(written) : written;
  }

  private static String relation(Comparison story, String answer, Random random) {
    if (random.nextDouble() < .20) {
      String larger = Integer.toString(story.value(Role.LARGER));
      String smaller = Integer.toString(story.value(Role.SMALLER));
      String difference = Integer.toString(story.value(Role.DIFFERENCE));
      return switch (story.kind()) {
        case LARGER_MORE -> difference + " + " + smaller + " = " + BOX;
        case LARGER_FEWER -> BOX + " − " + difference + " = " + smaller;
        case SMALLER_MORE -> BOX + " + " + difference + " = " + larger;
        case SMALLER_FEWER -> BOX + " = " + larger + " − " + difference;
        case DIFFERENCE_MORE -> smaller + " + " + BOX + " = " + larger;
        case DIFFERENCE_FEWER -> larger + " − " + BOX + " = " + smaller;
      };
    }
    return finished(story.value(story.given().get(0)) + " " + story.kind().operation().sign() + " "
        + story.value(story.given().get(1)), answer, random);
  }

  private static String finished(String expression, String answer, Random random) {
    double form = random.nextDouble();
    return form < .58 ? expression + " = " + BOX
        : form < .94 ? expression + " = " + answer
        : form < .97 ? expression : BOX + " = " + expression;
  }

  /** The first two different digits of one number change places. */
  private static String miscopied(String equation) {
    for (int at = 1; at < equation.length(); at++) {
      char one = equation.charAt(at - 1);
      char two = equation.charAt(at);
      if (Character.isDigit(one) && Character.isDigit(two) && one != two && two != '0') {
        return equation.substring(0, at - 1) + two + one + equation.substring(at + 1);
      }
    }
    return equation;
  }

  // ---- the label ----

  private String label(Comparison story, Random random) {
    double kind = random.nextDouble();
    if (kind < .06) {
      return "";
    }
    if (kind < .09) {
      return "things";
    }
    if (kind < .12 && story.persons().larger() != null) {
      return random.nextBoolean() ? story.persons().larger() : story.persons().smaller();
    }
    if (kind < .16 && story.otherThing() != null) {
      return story.otherThing().many();
    }
    String word = kind < .20 ? story.thing().one() : story.thing().many();
    return random.nextDouble() < spells ? word : misspelled(word, random);
  }

  /** One thing a seven-year-old does to a word: a letter left out or doubled, two swapped, a vowel by its sound. */
  static String misspelled(String word, Random random) {
    if (word.length() < 4) {
      return word;
    }
    int at = 1 + random.nextInt(word.length() - 2);
    String before = word.substring(0, at);
    String after = word.substring(at + 1);
    char letter = word.charAt(at);
    return switch (random.nextInt(4)) {
      case 0 -> before + after;
      case 1 -> before + letter + letter + after;
      case 2 -> word.substring(0, at - 1) + letter + word.charAt(at - 1) + after;
      default -> before + switch (letter) {
        case 'a' -> 'e';
        case 'e', 'y' -> 'i';
        case 'i' -> 'e';
        case 'o' -> 'u';
        case 'u' -> 'o';
        case 'c' -> 'k';
        default -> letter;
      } + after;
    };
  }

  // ---- the bars ----

  private static Bars bars(Comparison story, Plan plan, Random random) {
    double luck = random.nextDouble();
    boolean readsIt = plan == Plan.THE_RELATION || plan == Plan.TAKES_AWAY_SMALLER_FIRST;
    if (luck < .04) {
      return Bars.EMPTY;
    }
    if (luck < (readsIt ? .88 : .34)) {
      return fitting(story);
    }
    if (plan == Plan.REPEATS_THE_DIFFERENCE && luck < .85 && story.unknown() != Role.DIFFERENCE) {
      return gapOnABar(story);
    }
    if (!readsIt && luck < .80) {
      return swapped(story);
    }
    Bars fits = fitting(story);
    return luck < .94 ? new Bars(fits.longer(), fits.longerBar(), fits.shorterBar(), "")
        : new Bars(fits.longer(), fits.gap(), fits.shorterBar(), fits.longerBar());
  }

  private static Bars fitting(Comparison story) {
    return new Bars(BarsMarker.name(story, Role.LARGER), place(story, Role.LARGER), place(story, Role.SMALLER),
        place(story, Role.DIFFERENCE));
  }

  /** The one who has fewer is drawn longer: the word was heard, not who it belongs to. */
  private static Bars swapped(Comparison story) {
    return new Bars(BarsMarker.name(story, Role.SMALLER), place(story, Role.SMALLER), place(story, Role.LARGER),
        place(story, Role.DIFFERENCE));
  }

  private static Bars gapOnABar(Comparison story) {
    String gap = place(story, Role.DIFFERENCE);
    return story.unknown() == Role.LARGER
        ? new Bars(BarsMarker.name(story, Role.LARGER), gap, place(story, Role.SMALLER), "")
        : new Bars(BarsMarker.name(story, Role.LARGER), place(story, Role.LARGER), gap, "");
  }

  /** The unknown's sign as the tablet sends it. */
  private static String place(Comparison story, Role role) {
    return role == story.unknown() ? "x" : Integer.toString(story.value(role));
  }
}
