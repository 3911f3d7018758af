package fewermore.marking;

import fewermore.equation.Equation;
import fewermore.equation.Expression;
import fewermore.equation.Term;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** One equation beside one story: the first reason that holds, and what is noted with it. */
final class EquationJudgment {
  private final Comparison story;
  private final Equation equation;
  private final List<Side> sides;
  private final boolean lastIsEmpty;
  private final List<Interpretation> interpretations;
  private final int given;
  private final int otherGiven;

  /** What the main reason rests on, once it is found. */
  private Interpretation understood;
  private Arrangement relation;
  private Arrangement.Match match;
  private SourceSpan at;

  EquationJudgment(Comparison story, Equation equation) {
    this(story, equation, sides(equation));
  }

  private EquationJudgment(Comparison story, Equation equation, List<Side> sides) {
    this.story = story;
    this.equation = equation;
    this.sides = sides;
    this.lastIsEmpty = equation.sides().get(sides.size() - 1) instanceof Expression.Unknown unknown
        && unknown.isEmptySide();
    this.interpretations = Interpretations.of(sides, lastIsEmpty);
    this.given = story.value(story.given().get(0));
    this.otherGiven = story.value(story.given().get(1));
  }

  private static List<Side> sides(Equation equation) {
    List<Side> sides = new ArrayList<>(equation.sides().size());
    for (Expression side : equation.sides()) {
      sides.add(new Side(side.terms()));
    }
    return sides;
  }

  EquationMark mark() {
    if (!equation.hasOperation()) {
      return EquationMark.of(EquationReason.NUMBER_ONLY);
    }
    EquationReason reason = structure();
    boolean cueLed = reason == EquationReason.OPPOSITE_OPERATION && isCueLed();
    if (!equation.hasEqualsSign()) {
      return new EquationMark(EquationReason.NO_EQUALS, reason, false, cueLed, false, false, null, at);
    }
    boolean fits = reason == EquationReason.FITS;
    boolean notTrue = fits && (match.flawed() || !understood.isTrue(story.answer()));
    Optional<SourceSpan> carriedOn = carriedOn(fits);
    if (fits && carriedOn.isPresent()) {
      at = carriedOn.get();
    }
    return new EquationMark(reason, null, fits && isSolvedForm(), cueLed,
        carriedOn.isPresent(), notTrue, null, at);
  }

  /** The first reason that holds for what the equation states, an expression being taken as "expression = x". */
  private EquationReason structure() {
    if (states(asked())) {
      return EquationReason.FITS;
    }
    if (story.unknown() != Role.LARGER && states(Arrangement.ofPart(otherGiven, given))) {
      at = stretchOfGivens();
      return EquationReason.TURNED_ROUND;
    }
    if (statesOpposite()) {
      at = tellingSign();
      return EquationReason.OPPOSITE_OPERATION;
    }
    if (isUnknownMisplaced()) {
      at = firstTerm(Term::unknown);
      return EquationReason.UNKNOWN_MISPLACED;
    }
    return numbers();
  }

  private EquationReason numbers() {
    WrittenNumbers numbers = new WrittenNumbers(sides, given, otherGiven);
    at = numbers.extra(story);
    if (at != null) {
      return EquationReason.EXTRA_NUMBER;
    }
    if (numbers.areGivenOnesMisused()) {
      at = numbers.repeated();
      return EquationReason.MISSING_NUMBER;
    }
    at = miscopied(numbers);
    if (at != null) {
      return EquationReason.MISCOPIED_NUMBER;
    }
    if (numbers.areOneGivenAndOthers()) {
      at = numbers.firstOther();
      return EquationReason.MISSING_NUMBER;
    }
    return EquationReason.OTHER_NUMBERS;
  }

  /** The story's own relation, with its unknown unknown. */
  private Arrangement asked() {
    return story.unknown() == Role.LARGER
        ? Arrangement.ofTotal(given, otherGiven) : Arrangement.ofPart(given, otherGiven);
  }

  private boolean statesOpposite() {
    return story.unknown() == Role.LARGER
        ? states(Arrangement.ofPart(given, otherGiven)) || states(Arrangement.ofPart(otherGiven, given))
        : states(Arrangement.ofTotal(given, otherGiven));
  }

  private boolean isUnknownMisplaced() {
    int answer = story.answer();
    boolean misplaced = switch (story.unknown()) {
      case LARGER -> states(Arrangement.ofPart(answer, given)) || states(Arrangement.ofPart(answer, otherGiven));
      case SMALLER, DIFFERENCE ->
          states(Arrangement.ofTotal(answer, otherGiven)) || states(Arrangement.ofPart(given, answer));
    };
    return misplaced && !match.byNumber();
  }

  /** Whether the equation, in some interpretation, states this relation; a true one is taken before others. */
  private boolean states(Arrangement wanted) {
    understood = null;
    match = null;
    relation = wanted;
    for (int i = 0; i < interpretations.size(); i++) {
      Interpretation interpretation = interpretations.get(i);
      Arrangement.Match found = interpretation.match(wanted);
      if (found != null) {
        boolean isTrue = !found.flawed() && interpretation.isTrue(wanted.unknownValue());
        if (understood == null || isTrue) {
          understood = interpretation;
          match = found;
        }
        if (isTrue) {
          return true;
        }
      }
    }
    return understood != null;
  }

  private boolean isCueLed() {
    return story.wording() != Wording.DIFFERENCE && !story.kind().agrees() && match.sign() == story.kind().cue();
  }

  /** A solved form holds numbers only; an empty last side may stand for a number that the jumps reach. */
  private boolean isSolvedForm() {
    return match.byNumber() && (understood.manner() == Interpretation.Manner.RUN_ON_REACHING
        || sides.stream().allMatch(side -> side.unknowns() == 0));
  }

  /** The side that carries an operation on from a result, in a chain that is false as mathematics. */
  private Optional<SourceSpan> carriedOn(boolean fits) {
    if (!isFalse(fits)) {
      return Optional.empty();
    }
    boolean runOn = understood != null && understood.isRunOn();
    for (int i = 1; i < sides.size(); i++) {
      Side side = sides.get(i);
      boolean carries = side.hasOperation() && side.startsWithNumber()
          && (runOn || comesTo(sides.get(i - 1), side.first().value(), fits));
      if (carries) {
        return Optional.of(stretch(side));
      }
    }
    Side first = sides.get(0);
    return sides.size() == 2 && first.hasOperation() && first.startsWithNumber()
        && sides.get(1).hasOperation() && comesTo(sides.get(1), first.first().value(), fits)
        ? Optional.of(stretch(first)) : Optional.empty();
  }

  private boolean comesTo(Side side, int result, boolean fits) {
    return (side.unknowns() == 0 || fits) && side.value(story.answer()) == result;
  }

  private boolean isFalse(boolean fits) {
    Side before = null;
    for (Side side : sides) {
      if (side.unknowns() == 0 || fits) {
        if (before != null && before.value(story.answer()) != side.value(story.answer())) {
          return true;
        }
        before = side;
      }
    }
    return false;
  }

  private static SourceSpan stretch(Side side) {
    return side.first().at().through(side.terms().get(side.size() - 1).at());
  }

  /** The number that, restored to a given one, makes the equation fit; null when there is none. */
  private SourceSpan miscopied(WrittenNumbers numbers) {
    for (int i = 0; i < sides.size(); i++) {
      List<Term> terms = sides.get(i).terms();
      for (int j = 0; j < terms.size(); j++) {
        Term term = terms.get(j);
        if (!term.unknown()
            && (fitsWith(given, i, j, numbers.isLoneResult(i)) || fitsWith(otherGiven, i, j, numbers.isLoneResult(i)))) {
          return term.at();
        }
      }
    }
    return null;
  }

  /** A result alone on its side is a copy of a given number only if the equation is true with that one. */
  private boolean fitsWith(int restored, int side, int place, boolean mustBeTrue) {
    Term term = sides.get(side).terms().get(place);
    if (!Miscopy.is(term.value(), restored)) {
      return false;
    }
    List<Term> terms = new ArrayList<>(sides.get(side).terms());
    terms.set(place, term.withValue(restored));
    List<Side> with = new ArrayList<>(sides);
    with.set(side, new Side(terms));
    EquationJudgment other = new EquationJudgment(story, equation, with);
    return other.states(other.asked()) && !(mustBeTrue && !other.understood.isTrue(story.answer()));
  }

  private SourceSpan firstTerm(java.util.function.Predicate<Term> wanted) {
    for (Side side : sides) {
      for (Term term : side.terms()) {
        if (wanted.test(term)) {
          return term.at();
        }
      }
    }
    return null;
  }

  /** From one given number to the other when both stand on one side, else null. */
  private SourceSpan stretchOfGivens() {
    for (Side side : sides) {
      Term one = find(side, given);
      Term other = find(side, otherGiven);
      if (one != null && other != null) {
        return one.at().through(other.at());
      }
    }
    return null;
  }

  /** The + or − that joins what should not be joined by it. */
  private SourceSpan tellingSign() {
    SourceSpan first = null;
    for (Side side : sides) {
      Term one = find(side, given);
      Term other = find(side, otherGiven);
      for (Term term : side.terms()) {
        if (term.signAt() != null) {
          first = first == null ? term.signAt() : first;
          boolean joinsGivens = one != null && other != null && (term == one || term == other);
          if (joinsGivens || term.unknown()) {
            return term.signAt();
          }
        }
      }
    }
    return first;
  }

  private static Term find(Side side, int value) {
    for (Term term : side.terms()) {
      if (!term.unknown() && term.value() == value) {
        return term;
      }
    }
    return null;
  }

  Optional<OwnCalculation> ownCalculation() {
    if (!equation.hasOperation()) {
      return Optional.empty();
    }
    if (!equation.hasEqualsSign() && sides.get(0).size() == 2 && sides.get(0).unknowns() == 0) {
      List<Term> terms = sides.get(0).terms();
      return Optional.of(new OwnCalculation(terms.get(0).value(),
          terms.get(1).sign() > 0 ? Operation.ADD : Operation.SUBTRACT, terms.get(1).value()));
    }
    return switch (structure()) {
      case FITS, TURNED_ROUND, OPPOSITE_OPERATION -> Optional.of(calculation());
      default -> Optional.empty();
    };
  }

  private OwnCalculation calculation() {
    if (relation.unknown() != Arrangement.TOTAL) {
      return new OwnCalculation((int) relation.total(), Operation.SUBTRACT, (int) relation.part());
    }
    for (Side side : sides) {
      for (Term term : side.terms()) {
        if (!term.unknown() && (term.value() == given || term.value() == otherGiven)) {
          return term.value() == given ? new OwnCalculation(given, Operation.ADD, otherGiven)
              : new OwnCalculation(otherGiven, Operation.ADD, given);
        }
      }
    }
    return new OwnCalculation(given, Operation.ADD, otherGiven);
  }

  OptionalLong ownValue() {
    Optional<OwnCalculation> own = ownCalculation();
    if (own.isPresent()) {
      return OptionalLong.of(own.get().value());
    }
    OptionalLong solution = equation.hasEqualsSign() ? equation.solution() : equation.value();
    if (solution.isPresent()) {
      return solution;
    }
    for (Interpretation interpretation : interpretations) {
      Statement statement = interpretation.says().get(0);
      if (statement.left().unknowns() == 0 && statement.left().hasOperation() && statement.right().size() == 1) {
        return OptionalLong.of(statement.left().sum());
      }
      if (statement.right().unknowns() == 0 && statement.right().hasOperation() && statement.left().size() == 1) {
        return OptionalLong.of(statement.right().sum());
      }
    }
    return OptionalLong.empty();
  }
}
