package fewermore.marking;

import fewermore.equation.Equation;
import fewermore.equation.Expression;
import fewermore.equation.Term;
import fewermore.marking.Interpretation.Manner;
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
  private final List<Interpretation> interpretations;
  private final int given;
  private final int otherGiven;
  private final Whereabouts whereabouts;

  /** The relation found to be stated, in which interpretation and how; set by {@link #states}. */
  private Arrangement relation;
  private Interpretation understood;
  private Arrangement.Match match;

  private SourceSpan at;

  EquationJudgment(Comparison story, Equation equation) {
    this(story, equation, sides(equation));
  }

  private EquationJudgment(Comparison story, Equation equation, List<Side> sides) {
    this.story = story;
    this.equation = equation;
    this.sides = sides;
    this.given = story.value(story.given().get(0));
    this.otherGiven = story.value(story.given().get(1));
    boolean lastIsEmpty =
        equation.sides().get(sides.size() - 1) instanceof Expression.Unknown last && last.isEmptySide();
    this.interpretations = Interpretations.of(sides, lastIsEmpty, given, otherGiven);
    this.whereabouts = new Whereabouts(sides, given, otherGiven);
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
    Side carriedOn = carriedOn(fits);
    if (notTrue) {
      at = whereabouts.wrongNumber(understood, story.answer());
    } else if (fits && carriedOn != null) {
      at = Whereabouts.of(carriedOn);
    }
    return new EquationMark(reason, null, fits && isSolvedForm(), cueLed, carriedOn != null, notTrue, null, at);
  }

  /** The first reason that holds for what the equation states, an expression being taken as "expression = x". */
  private EquationReason structure() {
    if (states(asked())) {
      return EquationReason.FITS;
    }
    if (story.unknown() != Role.LARGER && states(Arrangement.ofPart(otherGiven, given))) {
      at = whereabouts.givens();
      return EquationReason.TURNED_ROUND;
    }
    if (statesOpposite()) {
      at = whereabouts.tellingSign();
      return EquationReason.OPPOSITE_OPERATION;
    }
    if (isUnknownMisplaced()) {
      at = whereabouts.unknownSign();
      return EquationReason.UNKNOWN_MISPLACED;
    }
    understood = null;
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
    return story.unknown() == Role.LARGER
        ? asksFor(Arrangement.ofPart(answer, given)) || asksFor(Arrangement.ofPart(answer, otherGiven))
        : asksFor(Arrangement.ofTotal(answer, otherGiven)) || asksFor(Arrangement.ofPart(given, answer));
  }

  private boolean asksFor(Arrangement wanted) {
    return states(wanted) && !match.byNumber();
  }

  /** Whether the equation, in some interpretation, states this relation; a true one is taken before others. */
  private boolean states(Arrangement wanted) {
    relation = wanted;
    understood = null;
    match = null;
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
    return match.byNumber() && (understood.manner() == Manner.RUN_ON_REACHING || isWithoutUnknown());
  }

  private boolean isWithoutUnknown() {
    for (Side side : sides) {
      if (side.unknowns() > 0) {
        return false;
      }
    }
    return true;
  }

  /** The side that carries an operation on from a result, in a chain that is false as mathematics; or null. */
  private Side carriedOn(boolean fits) {
    if (!isFalse(fits)) {
      return null;
    }
    for (int i = 1; i < sides.size(); i++) {
      if (carriesOn(sides.get(i - 1), sides.get(i), fits)) {
        return sides.get(i);
      }
    }
    if (sides.size() == 2 && carriesOn(sides.get(1), sides.get(0), fits)) {
      return sides.get(0);
    }
    if (understood == null || !understood.isRunOn()) {
      return null;
    }
    Term start = understood.says().get(0).left().first();
    int step = 0;
    while (sides.get(step).first() != start) {
      step++;
    }
    step = (step + 1) % sides.size();
    while (!sides.get(step).hasOperation()) {
      step++;
    }
    return sides.get(step);
  }

  private boolean carriesOn(Side before, Side side, boolean fits) {
    return side.hasOperation() && before.hasOperation() && (before.unknowns() == 0 || fits)
        && side.trueResultOf(before, story.answer()) != null;
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

  /** The number that, restored to a given one, makes the equation fit; null when there is none. */
  private SourceSpan miscopied(WrittenNumbers numbers) {
    for (int i = 0; i < sides.size(); i++) {
      List<Term> terms = sides.get(i).terms();
      for (int j = 0; j < terms.size(); j++) {
        if (isFirstOfItsValue(terms, j) && (fitsWith(given, i, j, numbers.isLoneResult(i))
            || fitsWith(otherGiven, i, j, numbers.isLoneResult(i)))) {
          return terms.get(j).at();
        }
      }
    }
    return null;
  }

  private static boolean isFirstOfItsValue(List<Term> terms, int place) {
    Term term = terms.get(place);
    if (term.unknown()) {
      return false;
    }
    // From 1: the first of a side may be a result, so the same number there is another matter.
    for (int i = 1; i < place; i++) {
      Term before = terms.get(i);
      if (!before.unknown() && before.sign() == term.sign() && before.value() == term.value()) {
        return false;
      }
    }
    return true;
  }

  /**
   * A result alone on its side is a copy of a given number only if the equation is true with that one; and a
   * chain is taken whole only if it is then true, since otherwise its steps say what is meant.
   */
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
    return other.states(other.asked())
        && (!mustBeTrue && (sides.size() <= 2 || other.understood.isRunOn())
            || other.understood.isTrue(story.answer()));
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
      if (statement.left().isCalculation() && statement.right().size() == 1) {
        return OptionalLong.of(statement.left().sum());
      }
      if (statement.right().isCalculation() && statement.left().size() == 1) {
        return OptionalLong.of(statement.right().sum());
      }
    }
    return OptionalLong.empty();
  }
}
