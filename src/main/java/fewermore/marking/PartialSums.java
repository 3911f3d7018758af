package fewermore.marking;

import fewermore.equation.Term;
import fewermore.story.Operation;
import java.util.List;

/**
 * Adding two numbers by their tens and their ones in steps: {@code 40 + 30 = 70 + 12 = 82} for 47 + 35.
 * The first step adds the tens of both, or the ones; the sum of the others comes later as one number,
 * right or wrong. (Parts that are not added up are numbers that make the two, which
 * {@link Arrangement} finds.)
 */
final class PartialSums {
  private PartialSums() {}

  /** @param steps the first step's numbers and what later steps add; null is returned when it is none */
  static Arrangement.Match match(Statement steps, int firstStep, Arrangement relation) {
    List<Term> terms = steps.left().terms();
    Side last = steps.right();
    if (relation.unknown() != Arrangement.TOTAL || firstStep != 2 || terms.size() != 3
        || last.size() != 1 || steps.left().unknowns() > 0 || !steps.left().allCountWith(1)) {
      return null;
    }
    long onesOfPart = relation.part() % 10;
    long onesOfOther = relation.otherPart() % 10;
    long tensOfPart = relation.part() - onesOfPart;
    long tensOfOther = relation.otherPart() - onesOfOther;
    if (onesOfPart * onesOfOther * tensOfPart * tensOfOther == 0) {
      return null;
    }
    int added = terms.get(2).value();
    long due;
    if (are(terms, tensOfPart, tensOfOther)) {
      due = onesOfPart + onesOfOther;
    } else if (are(terms, onesOfPart, onesOfOther)) {
      due = tensOfPart + tensOfOther;
    } else {
      return null;
    }
    boolean isGiven = added == relation.part() || added == relation.otherPart();
    return added != due && isGiven
        ? null : new Arrangement.Match(last.unknowns() == 0, Operation.ADD, added != due);
  }

  private static boolean are(List<Term> terms, long one, long other) {
    int first = terms.get(0).value();
    int second = terms.get(1).value();
    return first == one && second == other || first == other && second == one;
  }
}
