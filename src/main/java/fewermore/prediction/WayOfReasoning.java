package fewermore.prediction;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.Optional;

/**
 * A way a child may reason about a comparison, and what it would write. The names are ours. The cue word is the
 * direct translation of Hegarty, Mayer &amp; Monk (1995), J. Educational Psychology 87:18-32 (from memory); adding
 * whatever is given, Valentin &amp; Lim (2004) (abstract); taking the difference for an amount, Mayer (1980), ERIC
 * ED 205 397 (abstract: people turn "x is 12 more than y" into "x is 12").
 */
public enum WayOfReasoning {
  FROM_THE_STORY("from-the-story"),
  BY_THE_CUE_WORD("by-the-cue-word"),
  ALWAYS_ADDS("always-adds"),
  ALWAYS_TAKES_AWAY("always-takes-away"),
  TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT("takes-the-difference-for-an-amount"),
  TURNS_SUBTRACTION_ROUND("turns-subtraction-round"),
  /** No one way: any plan, another each time. It predicts nothing. */
  NO_STEADY_WAY("no-steady-way");

  private final String id;

  WayOfReasoning(String id) {
    this.id = id;
  }

  /** The word used in JSON, in the store and in CSV files. */
  public String id() {
    return id;
  }

  public static Optional<WayOfReasoning> of(String id) {
    for (WayOfReasoning way : values()) {
      if (way.id.equals(id)) {
        return Optional.of(way);
      }
    }
    return Optional.empty();
  }

  /**
   * What this way does with a problem of that kind. "What is the difference" has no cue word; the taught meaning is
   * to take away (ours). Empty for {@link #NO_STEADY_WAY}.
   */
  public Optional<Plan> plan(Kind kind) {
    boolean subtracts = kind.operation() == Operation.SUBTRACT;
    return switch (this) {
      case FROM_THE_STORY -> Optional.of(Plan.THE_RELATION);
      case BY_THE_CUE_WORD -> Optional.of(kind.agrees() ? Plan.THE_RELATION
          : kind.cue() == Operation.ADD ? Plan.ADDS : Plan.TAKES_AWAY_LARGER_FIRST);
      case ALWAYS_ADDS -> Optional.of(Plan.ADDS);
      case ALWAYS_TAKES_AWAY -> Optional.of(Plan.TAKES_AWAY_LARGER_FIRST);
      case TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT -> Optional.of(kind.unknown() == Role.DIFFERENCE
          ? Plan.REPEATS_AN_AMOUNT : Plan.REPEATS_THE_DIFFERENCE);
      case TURNS_SUBTRACTION_ROUND -> Optional.of(subtracts ? Plan.TAKES_AWAY_SMALLER_FIRST : Plan.THE_RELATION);
      case NO_STEADY_WAY -> Optional.empty();
    };
  }

  /** What this way would write for that story, or empty for {@link #NO_STEADY_WAY}. */
  public Optional<Prediction> predict(Comparison story) {
    return plan(story.kind()).map(plan -> prediction(plan, story));
  }

  private Prediction prediction(Plan plan, Comparison story) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    int larger = Math.max(first, second);
    int smaller = Math.min(first, second);
    return switch (plan) {
      case THE_RELATION -> story.unknown() == Role.LARGER
          ? operation(plan, first, Operation.ADD, second, story.answer())
          : operation(plan, first, Operation.SUBTRACT, second, story.answer());
      case ADDS -> operation(plan, first, Operation.ADD, second, first + second);
      case TAKES_AWAY_LARGER_FIRST -> operation(plan, larger, Operation.SUBTRACT, smaller, larger - smaller);
      // 14 − 52 is worked out as 52 − 14, or the smaller digit is taken from the larger: only the equation tells.
      case TAKES_AWAY_SMALLER_FIRST -> operation(plan, smaller, Operation.SUBTRACT, larger, larger - smaller);
      case REPEATS_THE_DIFFERENCE -> repeated(plan, story.value(Role.DIFFERENCE));
      // "How many more has Ines" is heard as "how many has Ines": the one the question begins with (ours).
      case REPEATS_AN_AMOUNT -> repeated(plan,
          story.value(story.wording() == Wording.FEWER ? Role.SMALLER : Role.LARGER));
      case SOME_OTHER_NUMBER, BLANK -> throw new IllegalStateException("no way plans " + plan);
    };
  }

  private Prediction operation(Plan plan, int left, Operation operation, int right, int answer) {
    return new Prediction(this, plan, left + " " + operation.sign() + " " + right + " = " + Prediction.UNKNOWN, answer);
  }

  private Prediction repeated(Plan plan, int number) {
    return new Prediction(this, plan, Prediction.UNKNOWN + " = " + number, number);
  }
}
