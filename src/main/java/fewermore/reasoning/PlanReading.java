package fewermore.reasoning;

import fewermore.calculation.SlipRule;
import fewermore.equation.Equation;
import fewermore.equation.EquationReader;
import fewermore.equation.Expression;
import fewermore.equation.Term;
import fewermore.marking.AnswerMark;
import fewermore.marking.AnswerMarker;
import fewermore.marking.EquationMark;
import fewermore.marking.EquationMarker;
import fewermore.marking.EquationReason;
import fewermore.marking.Marks;
import fewermore.marking.OwnCalculation;
import fewermore.marking.Work;
import fewermore.prediction.Plan;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * Reads one piece of work for the plans it may come from. In this order:
 *
 * <ol>
 *   <li>An operation is written: its structure decides. The answer beside it says nothing, since a slip is a matter of
 *       calculation and few first-graders can match the two (Carpenter 1980, abstract).
 *   <li>No operation: the number in the answer box decides, else the one number of the equation.
 *   <li>Nothing is written: weak evidence for having no way to begin.
 * </ol>
 *
 * <p>Of the label and the bars nothing is read here. Where nothing was published, as for an opposite operation stated
 * with the other sign, the rule is ours.
 */
final class PlanReading {
  private final Comparison story;
  private final Work work;
  private final Marks marks;
  private final ReasoningTable table;

  PlanReading(Comparison story, Work work, Marks marks, ReasoningTable table) {
    this.story = story;
    this.work = work;
    this.marks = marks;
    this.table = table;
  }

  Optional<PlanWeights> weights() {
    if (marks.equation() == null && marks.answer() == null) {
      return Optional.empty();
    }
    EquationReason structure = structure();
    return switch (structure) {
      case FITS, MISCOPIED_NUMBER -> Optional.of(relation());
      case UNKNOWN_MISPLACED -> Optional.of(situationForm());
      case TURNED_ROUND -> Optional.of(PlanWeights.of(Plan.TAKES_AWAY_SMALLER_FIRST, 1).made());
      case OPPOSITE_OPERATION, NO_EQUALS -> Optional.of(opposite());
      case EXTRA_NUMBER, MISSING_NUMBER, OTHER_NUMBERS -> Optional.of(PlanWeights.of(Plan.SOME_OTHER_NUMBER, 1).made());
      case BLANK, UNREADABLE, NUMBER_ONLY -> byNumber(structure);
    };
  }

  /** The main reason, an expression without equals sign being judged as "expression = x". */
  private EquationReason structure() {
    EquationMark mark = marks.equation();
    if (mark == null) {
      return EquationReason.BLANK;
    }
    if (mark.reason() != EquationReason.NO_EQUALS) {
      return mark.reason();
    }
    EquationReason expression =
        mark.expression() != null ? mark.expression() : EquationMarker.mark(story, work.equation()).expression();
    return expression == null ? EquationReason.OTHER_NUMBERS : expression;
  }

  // An operation is written

  private boolean asksLarger() {
    return story.unknown() == Role.LARGER;
  }

  /** A miscopied number is read as if restored: the form is what tells. */
  private PlanWeights relation() {
    if (!isSolutionForm()) {
      return situationForm();
    }
    return asksLarger()
        ? PlanWeights.of(Plan.THE_RELATION, 1).and(Plan.ADDS, 1).made()
        : PlanWeights.of(Plan.THE_RELATION, table.value("work/solution-form")).and(Plan.TAKES_AWAY_LARGER_FIRST, 1).made();
  }

  /** {@code □ + 14 = 52}: who always takes away, or adds what is given, does not write it. */
  private PlanWeights situationForm() {
    return PlanWeights.of(Plan.THE_RELATION, 1 - table.value("work/solution-form")).made();
  }

  /**
   * The opposite operation. Written with the other sign ({@code □ − 14 = 52} for 52 and 14) it is no more what one
   * who adds would write than what the word pulls to, so it counts as some other way of writing, a little for its sign.
   */
  private PlanWeights opposite() {
    Operation opposite = story.kind().operation().opposite();
    if (sign().orElse(opposite) != opposite) {
      return PlanWeights.of(opposite == Operation.ADD ? Plan.TAKES_AWAY_LARGER_FIRST : Plan.ADDS, table.value("work/other-sign"))
          .and(Plan.SOME_OTHER_NUMBER, 1).made();
    }
    if (opposite == Operation.ADD) {
      return PlanWeights.of(Plan.ADDS, 1).made();
    }
    Optional<OwnCalculation> own = EquationMarker.ownCalculation(story, work.equation());
    boolean smallerFirst = own.isPresent() && own.get().first() < own.get().second();
    return PlanWeights.of(smallerFirst ? Plan.TAKES_AWAY_SMALLER_FIRST : Plan.TAKES_AWAY_LARGER_FIRST, 1).made();
  }

  private Optional<Equation> equation() {
    return work.equation() == null ? Optional.empty() : EquationReader.read(work.equation()).equation();
  }

  /** The one sign written; empty when both are, or none. */
  private Optional<Operation> sign() {
    boolean plus = false;
    boolean minus = false;
    for (Expression side : equation().map(Equation::sides).orElse(List.of())) {
      for (Term term : side.terms()) {
        if (term.signAt() != null) {
          plus |= term.sign() > 0;
          minus |= term.sign() < 0;
        }
      }
    }
    return plus == minus ? Optional.empty() : Optional.of(plus ? Operation.ADD : Operation.SUBTRACT);
  }

  /**
   * Whether the unknown, or the number that stands for it, is alone on its side as the result of the story's own
   * operation: {@code 52 − 14 = □}, {@code 38 = 52 − 10 − 4}. Where a given number is the result ({@code 52 − □ = 14}),
   * the equation tells the story instead.
   */
  private boolean isSolutionForm() {
    Optional<Equation> read = equation();
    if (read.isEmpty()) {
      return true;
    }
    boolean unknownSign = false;
    boolean unknownAlone = false;
    boolean givenAlone = false;
    boolean operation = false;
    int wanted = asksLarger() ? 1 : -1;
    for (Expression side : read.get().sides()) {
      List<Term> terms = side.terms();
      for (Term term : terms) {
        unknownSign |= term.unknown();
        operation |= term.signAt() != null && term.sign() == wanted;
      }
      if (terms.size() == 1) {
        Term term = terms.get(0);
        unknownAlone |= term.unknown();
        givenAlone |= !term.unknown() && term.value() != story.answer()
            && story.given().stream().anyMatch(role -> story.value(role) == term.value());
      }
    }
    return operation && (unknownSign ? unknownAlone : !givenAlone);
  }

  // No operation is written

  private Optional<PlanWeights> byNumber(EquationReason structure) {
    OptionalInt number = answer();
    if (number.isEmpty() && structure == EquationReason.NUMBER_ONLY) {
      number = onlyNumber();
    }
    if (number.isPresent()) {
      return Optional.of(weights(number.getAsInt()));
    }
    boolean nothingWritten = structure == EquationReason.BLANK
        && (marks.answer() == null || work.answer() == null || work.answer().isBlank());
    return nothingWritten
        ? Optional.of(PlanWeights.all(table.value("work/blank-whatever-the-plan")).and(Plan.BLANK, 1).made())
        : Optional.empty();
  }

  private OptionalInt answer() {
    AnswerMark mark = marks.answer();
    if (mark == null) {
      return OptionalInt.empty();
    }
    return switch (mark.verdict()) {
      case RIGHT -> OptionalInt.of(story.answer());
      case BLANK -> OptionalInt.empty();
      default -> mark.repeats() != null ? OptionalInt.of(story.value(mark.repeats())) : AnswerMarker.number(work.answer());
    };
  }

  private OptionalInt onlyNumber() {
    int[] numbers = equation().map(Equation::sides).orElse(List.of()).stream()
        .flatMap(side -> side.terms().stream()).filter(term -> !term.unknown()).mapToInt(Term::value).toArray();
    return numbers.length == 1 ? OptionalInt.of(numbers[0]) : OptionalInt.empty();
  }

  private PlanWeights weights(int number) {
    PlanWeights.Builder weights = new PlanWeights.Builder();
    for (Plan plan : Plan.values()) {
      weights.and(plan, chance(story, plan, number, table));
    }
    return weights.made();
  }

  /** Every number that some plan, or one slip of its calculation, makes likely. */
  static Set<Integer> likelyNumbers(Comparison story) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    Set<Integer> numbers = new TreeSet<>(List.of(first));
    numbers.add(second);
    for (Operation operation : Operation.values()) {
      int high = Math.max(first, second);
      int low = Math.min(first, second);
      int result = operation == Operation.ADD ? first + second : high - low;
      numbers.addAll(List.of(result, result + 1, result + 10));
      numbers.add(Math.max(0, result - 1));
      numbers.add(Math.max(0, result - 10));
      slipRule(operation).predicts(high, operation, low).ifPresent(numbers::add);
    }
    return numbers;
  }

  private static SlipRule slipRule(Operation operation) {
    return operation == Operation.ADD ? SlipRule.CARRIED_TEN_DROPPED : SlipRule.SMALLER_FROM_LARGER;
  }

  /** The chance that a child of this plan gives this number, where no operation is written. */
  static double chance(Comparison story, Plan plan, int number, ReasoningTable table) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    return switch (plan) {
      case THE_RELATION -> calculated(first, story.kind().operation(), second, number, table);
      case ADDS -> calculated(first, Operation.ADD, second, number, table);
      // 14 − 52 is worked out as 52 − 14: only the equation tells the two apart.
      case TAKES_AWAY_LARGER_FIRST, TAKES_AWAY_SMALLER_FIRST ->
          calculated(Math.max(first, second), Operation.SUBTRACT, Math.min(first, second), number, table);
      case REPEATS_THE_DIFFERENCE -> repeated(story.value(repeatsTheDifference(story)), number, table);
      case REPEATS_AN_AMOUNT -> repeated(story.value(repeatsAnAmount(story)), number, table);
      case SOME_OTHER_NUMBER -> table.value("work/number-any");
      case BLANK -> 0;
    };
  }

  /** The gap's number; where the difference is asked none is given, and it is the number of the one not named. */
  private static Role repeatsTheDifference(Comparison story) {
    return story.unknown() != Role.DIFFERENCE ? Role.DIFFERENCE
        : story.wording() == Wording.FEWER ? Role.LARGER : Role.SMALLER;
  }

  /** The given amount; where both are given, that of the one the question begins with. */
  private static Role repeatsAnAmount(Comparison story) {
    return switch (story.unknown()) {
      case LARGER -> Role.SMALLER;
      case SMALLER -> Role.LARGER;
      case DIFFERENCE -> story.wording() == Wording.FEWER ? Role.SMALLER : Role.LARGER;
    };
  }

  private static double repeated(int repeated, int number, ReasoningTable table) {
    return number == repeated ? table.value("work/number-hit") : table.value("work/number-else");
  }

  private static double calculated(int first, Operation operation, int second, int number, ReasoningTable table) {
    int result = operation == Operation.ADD ? first + second : first - second;
    if (number == result) {
      return table.value("work/number-hit");
    }
    int slips = Math.abs(number - result) == 1 || Math.abs(number - result) == 10 ? 1 : 0;
    OptionalInt slipped = slipRule(operation).predicts(first, operation, second);
    slips += slipped.isPresent() && slipped.getAsInt() == number ? 1 : 0;
    return slips == 0 ? table.value("work/number-else") : slips * table.value("work/number-slip");
  }
}
