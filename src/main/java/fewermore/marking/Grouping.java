package fewermore.marking;

import fewermore.equation.Term;
import java.math.BigInteger;

/**
 * Parting the numbers of one side into two groups, neither of them empty: those that make a known
 * quantity, and the others.
 *
 * <p>Up to {@value #FEW} numbers all groupings are tried; with more, the sums that can be reached are kept
 * as a set of bits. A side of more numbers whose amounts add up to over {@value #WIDEST} is taken as not
 * to be grouped: nobody writes it by hand for a story within 100.
 */
final class Grouping {
  private static final int FEW = 10;
  private static final int WIDEST = 20_000;

  /** What must hold of the numbers that are left over. */
  interface Others {
    /** Whether this term may be left over. */
    boolean may(Term term);

    /** Whether this term, left over, is enough for the others to stand for a quantity. */
    boolean suffices(Term term);
  }

  private static final Others ANY = new Others() {
    @Override
    public boolean may(Term term) {
      return true;
    }

    @Override
    public boolean suffices(Term term) {
      return true;
    }
  };

  private Grouping() {}

  /** Whether some of the numbers make {@code target} and some are left over. */
  static boolean makes(Side side, long target) {
    return makes(side, target, ANY);
  }

  /** Whether some of the numbers make {@code target} and some are left over, these as {@code others} says. */
  static boolean makes(Side side, long target, Others others) {
    return side.size() <= FEW
        ? tries(side, 0, target, others, false, false)
        : reaches(side, target, others);
  }

  private static boolean tries(Side side, int from, long rest, Others others, boolean some, boolean enough) {
    if (from == side.size()) {
      return rest == 0 && some && enough;
    }
    Term term = side.terms().get(from);
    return tries(side, from + 1, rest - term.signed(), others, true, enough)
        || others.may(term)
            && tries(side, from + 1, rest, others, some, enough || others.suffices(term));
  }

  /**
   * The sums reached so far, as bits: [0] with no term in the group, [1] with one and the others not enough
   * yet, [2] with none and the others enough, [3] with one and the others enough. So that no sum is below
   * 0, the sum of all falling numbers is added to each.
   */
  private static boolean reaches(Side side, long target, Others others) {
    long falling = 0;
    long wide = 0;
    for (Term term : side.terms()) {
      falling -= Math.min(0, term.signed());
      wide += term.value();
    }
    if (wide > WIDEST || target + falling < 0 || target + falling > wide) {
      return false;
    }
    BigInteger[] sums = {BigInteger.ONE.shiftLeft((int) falling), BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO};
    for (Term term : side.terms()) {
      boolean may = others.may(term);
      boolean enough = may && others.suffices(term);
      BigInteger[] next = {BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO};
      for (int state = 0; state < 4; state++) {
        int taken = state | 1;
        next[taken] = next[taken].or(sums[state].shiftLeft(term.signed()));
        if (may) {
          int left = enough ? state | 2 : state;
          next[left] = next[left].or(sums[state]);
        }
      }
      sums = next;
    }
    return sums[3].testBit((int) (target + falling));
  }
}
