package fewermore.marking;

import fewermore.equation.Term;
import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/** The numbers of an equation that does not state a relation of the story: which of them the story gives. */
final class WrittenNumbers {
  private final List<Side> sides;
  private final int given;
  private final int otherGiven;
  private final int loneResult;
  private final List<Term> all = new ArrayList<>();
  /** Numbers that are the true result of the side before (or, of two sides, of the other): reached, not used. */
  private final Set<Term> reached = Collections.newSetFromMap(new IdentityHashMap<>(4));

  WrittenNumbers(List<Side> sides, int given, int otherGiven) {
    this.sides = sides;
    this.given = given;
    this.otherGiven = otherGiven;
    this.loneResult = loneResult();
    for (int i = 0; i < sides.size(); i++) {
      for (Term term : sides.get(i).terms()) {
        if (!term.unknown()) {
          all.add(term);
        }
      }
      if (i > 0) {
        addReached(sides.get(i - 1), sides.get(i));
      }
    }
    if (sides.size() == 2) {
      addReached(sides.get(1), sides.get(0));
    }
  }

  private void addReached(Side calculation, Side next) {
    Term result = calculation.hasOperation() && calculation.unknowns() == 0
        ? next.trueResultOf(calculation, 0) : null;
    if (result != null) {
      reached.add(result);
    }
  }

  /** The side that is the result of an equation without unknown sign: one number alone; −1 when there is none. */
  private int loneResult() {
    if (sides.size() < 2 || sides.stream().anyMatch(side -> side.unknowns() > 0)) {
      return -1;
    }
    int last = sides.size() - 1;
    return sides.get(last).isNumber() ? last : sides.get(0).isNumber() ? 0 : -1;
  }

  boolean isLoneResult(int side) {
    return side == loneResult;
  }

  /** A number of the story that is no part of the comparison and was not reached by calculating, or null. */
  SourceSpan extra(Comparison story) {
    for (Term term : all) {
      int value = term.value();
      if (story.extras().contains(value) && value != story.value(Role.LARGER) && value != story.value(Role.SMALLER)
          && value != story.value(Role.DIFFERENCE) && !reached.contains(term)) {
        return term.at();
      }
    }
    return null;
  }

  /** No numbers but given ones, results aside, and at least one of them absent or used twice. */
  boolean areGivenOnesMisused() {
    int times = 0;
    int timesOther = 0;
    for (Term term : all) {
      if (!isResult(term)) {
        if (term.value() == given) {
          times++;
        } else if (term.value() == otherGiven) {
          timesOther++;
        } else {
          return false;
        }
      }
    }
    return given == otherGiven ? times != 2 : times != 1 || timesOther != 1;
  }

  /** The second place of a given number used twice, or null. */
  SourceSpan repeated() {
    int times = 0;
    int timesOther = 0;
    for (Term term : all) {
      if (!isResult(term) && (term.value() == given ? ++times : ++timesOther) == 2) {
        return term.at();
      }
    }
    return null;
  }

  /** One of the two given numbers is there, the other is not, and a number is there that is none of them. */
  boolean areOneGivenAndOthers() {
    int times = count(given);
    int timesOther = given == otherGiven ? 0 : count(otherGiven);
    boolean oneGiven = given == otherGiven ? times == 1 : times > 0 != timesOther > 0;
    return oneGiven && times + timesOther < all.size();
  }

  /** The first number that is not a given one and not a result, or null. */
  SourceSpan firstOther() {
    for (Term term : all) {
      if (term.value() != given && term.value() != otherGiven && !isResult(term)) {
        return term.at();
      }
    }
    return null;
  }

  private int count(int value) {
    int times = 0;
    for (Term term : all) {
      times += term.value() == value ? 1 : 0;
    }
    return times;
  }

  private boolean isResult(Term term) {
    return reached.contains(term) || loneResult >= 0 && term == sides.get(loneResult).first();
  }
}
