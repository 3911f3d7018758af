package fewermore.marking;

import fewermore.equation.Term;
import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;

/** The numbers of an equation that does not state a relation of the story: which of them the story gives. */
final class WrittenNumbers {
  private final List<Side> sides;
  private final int given;
  private final int otherGiven;
  private final int loneResult;
  private final List<Term> all = new ArrayList<>();
  private final List<Term> reached = new ArrayList<>();

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
      if (isReached(i)) {
        reached.add(sides.get(i).first());
      }
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

  /** Whether the side starts with the true result of the side before it (or, of two sides, of the other). */
  private boolean isReached(int i) {
    Side side = sides.get(i);
    return side.startsWithNumber()
        && (i > 0 && comesTo(sides.get(i - 1), side) || sides.size() == 2 && i == 0 && comesTo(sides.get(1), side));
  }

  private static boolean comesTo(Side calculation, Side result) {
    return calculation.hasOperation() && calculation.unknowns() == 0
        && calculation.sum() == result.first().value();
  }

  /** A number of the story that is no part of the comparison and was not reached by calculating, or null. */
  SourceSpan extra(Comparison story) {
    for (Term term : all) {
      int value = term.value();
      if (story.extras().contains(value) && value != story.value(Role.LARGER) && value != story.value(Role.SMALLER)
          && value != story.value(Role.DIFFERENCE) && !isReached(term)) {
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
    for (int i = 0; i < all.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (all.get(i).value() == all.get(j).value() && !isResult(all.get(i)) && !isResult(all.get(j))) {
          return all.get(i).at();
        }
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
    return isReached(term) || loneResult >= 0 && term == sides.get(loneResult).first();
  }

  private boolean isReached(Term term) {
    return reached.stream().anyMatch(result -> result == term);
  }
}
