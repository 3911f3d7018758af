package fewermore.marking;

import fewermore.equation.Term;
import fewermore.story.Operation;

/**
 * A relation {@code total = part + otherPart} of which two quantities are known and one is not: what an
 * equation may state. With all terms brought to one side, the total counts against the two parts; so the
 * eight ways to write it differ only in which quantities stand on which side. Each quantity may be written
 * as numbers that make it, standing together on one side.
 *
 * @param unknown which of the three is not known: {@value #TOTAL}, {@value #PART} or {@value #OTHER_PART}
 */
record Arrangement(long total, long part, long otherPart, int unknown) {
  static final int TOTAL = 0;
  static final int PART = 1;
  static final int OTHER_PART = 2;

  /** {@code x = part + otherPart}. */
  static Arrangement ofTotal(long part, long otherPart) {
    return new Arrangement(part + otherPart, part, otherPart, TOTAL);
  }

  /** {@code total = part + x}; x may come out below 0. */
  static Arrangement ofPart(long total, long part) {
    return new Arrangement(total, part, total - part, OTHER_PART);
  }

  /**
   * How a statement states it.
   *
   * @param byNumber numbers stand where the unknown sign would
   * @param sign what is written between the two known quantities or, when they stand on different sides,
   *     between one of them and the unknown
   * @param flawed a number in it is wrong that its own sums do not show
   */
  record Match(boolean byNumber, Operation sign, boolean flawed) {}

  /** Null when the statement does not state this relation. */
  Match match(Statement statement) {
    return match(statement, false);
  }

  /** Null when the statement does not state this relation with, if asked, a known quantity on its right. */
  Match match(Statement statement, boolean knownOnRight) {
    Side left = statement.left();
    Side right = statement.right();
    if (left.size() + right.size() < 3 || left.unknowns() + right.unknowns() > 1) {
      return null;
    }
    for (int alone = TOTAL; alone <= OTHER_PART; alone++) {
      Match match = match(alone, 1, left, right);
      match = match == null ? match(alone, -1, left, right) : match;
      if (match == null && !(knownOnRight && alone == unknown)) {
        match = match(alone, 1, right, left);
        match = match == null ? match(alone, -1, right, left) : match;
      }
      if (match != null) {
        return match;
      }
    }
    return null;
  }

  /** With one quantity alone on {@code here} and two on {@code there}; {@code way} −1 is all signs reversed. */
  private Match match(int alone, int way, Side here, Side there) {
    boolean byNumber = here.unknowns() + there.unknowns() == 0;
    int one = (alone + 1) % 3;
    int two = (alone + 2) % 3;
    int signAlone = way * side(alone);
    int signOne = -way * side(one);
    int signTwo = -way * side(two);
    boolean states;
    if (alone == unknown) {
      states = there.unknowns() == 0 && there.size() > 1
          && there.sum() == signOne * value(one) + signTwo * value(two)
          && isUnknown(here, signAlone)
          && Grouping.makes(there, signOne * value(one));
    } else if (here.unknowns() == 0 && here.sum() == signAlone * value(alone) && there.size() > 1) {
      states = one == unknown
          ? hasUnknown(there, signOne, signTwo * value(two))
          : hasUnknown(there, signTwo, signOne * value(one));
    } else {
      states = false;
    }
    return states
        ? new Match(byNumber, signOne == signTwo ? Operation.ADD : Operation.SUBTRACT, false) : null;
  }

  private static int side(int quantity) {
    return quantity == TOTAL ? 1 : -1;
  }

  /** What the two known quantities leave for the unknown. */
  long unknownValue() {
    return value(unknown);
  }

  private long value(int quantity) {
    return quantity == TOTAL ? total : quantity == PART ? part : otherPart;
  }

  /** Whether the side, all of it, stands for the unknown. */
  private boolean isUnknown(Side side, int sign) {
    if (side.unknowns() > 0) {
      return side.isUnknown() && side.unknownSign() == sign;
    }
    if (side.size() == 1) {
      return side.allCountWith(sign);
    }
    boolean right = isRight(side.sum(), sign);
    return holdsOther(side) ? right || side.allCountWith(sign)
        : right && side.allCountWith(sign) && isOneNumberRepeated(side);
  }

  /** Whether the side is numbers that make {@code known}, and the unknown. */
  private boolean hasUnknown(Side side, int sign, long known) {
    if (side.unknowns() > 0) {
      return side.unknowns() == 1 && side.unknownSign() == sign && side.sum() == known;
    }
    if (!isRight(side.sum() - known, sign)) {
      return Grouping.makes(side, known, new Jumps(this, sign));
    }
    return Grouping.makes(side, known, new Jumps(this, 0))
        || Grouping.makes(side, known, new Repeated(value((unknown + 1) % 3), sign))
        || Grouping.makes(side, known, new Repeated(value((unknown + 2) % 3), sign));
  }

  private static boolean isOneNumberRepeated(Side side) {
    for (Term term : side.terms()) {
      if (term.value() != side.first().value()) {
        return false;
      }
    }
    return true;
  }

  private boolean isRight(long jumps, int sign) {
    return unknownValue() >= 0 && jumps == sign * unknownValue();
  }

  private boolean holdsOther(Side side) {
    for (Term term : side.terms()) {
      if (isOther(term)) {
        return true;
      }
    }
    return false;
  }

  /** Whether it is a number that is not known. */
  private boolean isOther(Term term) {
    for (int quantity = TOTAL; quantity <= OTHER_PART; quantity++) {
      if (quantity != unknown && term.value() == value(quantity)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Numbers in the unknown's place that are not all known ones.
   *
   * @param way +1 or −1 when all must count with that sign, 0 when they may go both ways
   */
  private record Jumps(Arrangement of, int way) implements Grouping.Others {
    @Override
    public boolean may(Term term) {
      return way == 0 || term.sign() == way;
    }

    @Override
    public boolean suffices(Term term) {
      return of.isOther(term);
    }
  }

  /** One known number, once or again and again, in the unknown's place: only where that is right. */
  private record Repeated(long value, int way) implements Grouping.Others {
    @Override
    public boolean may(Term term) {
      return term.value() == value && term.sign() == way;
    }

    @Override
    public boolean suffices(Term term) {
      return true;
    }
  }
}
