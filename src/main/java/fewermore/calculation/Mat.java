package fewermore.calculation;

import fewermore.calculation.Step.CrossOut;
import fewermore.calculation.Step.Join;
import fewermore.calculation.Step.Put;
import fewermore.calculation.Step.PutBack;
import fewermore.calculation.Step.Trade;
import fewermore.calculation.Step.Write;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * A mat with base-ten pieces.
 *
 * @param first pile 1, what is not crossed out
 * @param second pile 2, until it is joined
 * @param crossedOut what was crossed out of pile 1
 * @param traded pieces given in a trade of one for ten: where they lay can still be seen
 * @param changes what was put and lifted, before and after joining: trades don't count
 */
public record Mat(
    Calculation calculation, Pile first, Pile second, Pile crossedOut, Pile traded, boolean joined, int trades,
    Changes changes, OptionalInt written) implements State {
  /** Most pieces of one kind that a pile holds: more can't be drawn. */
  public static final int MOST = 29;

  /** Pieces put less pieces lifted: on pile 1 and 2 before joining, and on the joined pile. */
  record Changes(Places first, Places second, Places later) {
    static final Changes NONE = new Changes(Places.NONE, Places.NONE, Places.NONE);
  }

  static Mat empty(Calculation calculation) {
    return new Mat(calculation, Pile.EMPTY, Pile.EMPTY, Pile.EMPTY, Pile.EMPTY, false, 0, Changes.NONE,
        OptionalInt.empty());
  }

  @Override
  public Moved after(Step step) {
    return step.tell(new Moves());
  }

  private final class Moves implements Step.OfPieces<Moved> {
    @Override
    public Moved elsewhere() {
      return no();
    }

    private Moved no() {
      return new Moved(Mat.this, Check.NOT_POSSIBLE);
    }

    private Moved check(Mat mat, boolean right) {
      return new Moved(mat, right ? Check.RIGHT : Check.WRONG);
    }

    @Override
    public Moved put(Put step) {
      Pile pile = step.pile() == 2 ? second : first;
      boolean can = step.count() > 0 && (step.pile() == 1 || step.pile() == 2 && !joined)
          && pile.count(step.piece()) + step.count() <= MOST;
      return can ? check(changed(step.pile(), step.piece(), step.count()), mayHold(step.pile(),
          pile.value() + step.count() * step.piece().worth())) : no();
    }

    @Override
    public Moved putBack(PutBack step) {
      Pile pile = step.pile() == 2 ? second : first;
      boolean can = step.count() > 0 && (step.pile() == 1 || step.pile() == 2)
          && pile.count(step.piece()) >= step.count();
      // Mending a pile that is too large is right; lifting pieces off a number that is there changes the number.
      return can ? check(changed(step.pile(), step.piece(), -step.count()), !isWhole(step.pile(), pile.value()))
          : no();
    }

    @Override
    public Moved trade(Trade step) {
      if (!step.possible() || first.count(step.give()) < step.gives()
          || first.count(step.get()) + step.gets() > MOST) {
        return no();
      }
      Pile pile = first.with(step.give(), -step.gives()).with(step.get(), step.gets());
      Pile gone = step.gives() == 1 ? traded.with(step.give(), 1) : traded;
      return check(new Mat(calculation, pile, second, crossedOut, gone, joined, trades + 1, changes, written), true);
    }

    @Override
    public Moved crossOut(CrossOut step) {
      if (step.count() < 1 || first.count(step.piece()) < step.count()) {
        return no();
      }
      Pile out = crossedOut.with(step.piece(), step.count());
      return check(new Mat(calculation, first.with(step.piece(), -step.count()), second, out, traded, joined, trades,
          changes, written), !calculation.adds() && out.value() <= calculation.second());
    }

    @Override
    public Moved join(Join step) {
      if (joined || second.isEmpty()) {
        return no();
      }
      int all = first.value() + second.value();
      return check(new Mat(calculation, first.plus(second), Pile.EMPTY, crossedOut, traded, true, trades, changes,
          written), calculation.adds() || all == calculation.first());
    }

    @Override
    public Moved write(Write step) {
      return check(new Mat(calculation, first, second, crossedOut, traded, joined, trades, changes,
          OptionalInt.of(step.number())), step.number() == toBeSeen());
    }
  }

  private Mat changed(int pile, Piece piece, int more) {
    Places change = new Pile(0, 0, 0).with(piece, more).places();
    Changes all = joined ? new Changes(changes.first, changes.second, changes.later.plus(change))
        : pile == 1 ? new Changes(changes.first.plus(change), changes.second, changes.later)
            : new Changes(changes.first, changes.second.plus(change), changes.later);
    return new Mat(calculation, pile == 1 ? first.with(piece, more) : first,
        pile == 2 ? second.with(piece, more) : second, crossedOut, traded, joined, trades, all, written);
  }

  /** Whether a pile may still become a number of the calculation. */
  private boolean mayHold(int pile, int value) {
    int most = pile == 1 && calculation.adds() ? calculation.result()
        : Math.max(calculation.first(), calculation.second());
    return value + (pile == 1 ? crossedOut.value() : 0) <= most;
  }

  private boolean isWhole(int pile, int value) {
    int all = value + (pile == 1 ? crossedOut.value() : 0);
    return calculation.adds() && all == calculation.result()
        || !joined && (all == calculation.first() || all == calculation.second());
  }

  /** Whether the smaller number was laid out and built up to the larger: what was put on is then the difference. */
  private boolean buildsUp() {
    return !calculation.adds() && crossedOut.isEmpty() && changes.second.value() > 0
        && changes.first.value() == calculation.second();
  }

  private int toBeSeen() {
    return buildsUp() && changes.first.value() + changes.second.value() + changes.later.value() == calculation.first()
        ? changes.second.plus(changes.later).value() : first.value() + second.value();
  }

  @Override
  public OptionalInt result() {
    return written.isPresent() ? written
        : first.isEmpty() && second.isEmpty() && crossedOut.isEmpty() ? OptionalInt.empty()
            : OptionalInt.of(toBeSeen());
  }

  @Override
  public boolean complete() {
    boolean same = result().orElse(-1) == calculation.result();
    if (calculation.adds()) {
      return same && laid().value() == calculation.result() && crossedOut.isEmpty()
          && (isLaid(calculation.first()) || isLaid(calculation.second()) || written.isPresent());
    }
    boolean taken = laid().value() == calculation.first() && changes.second.equals(Places.NONE)
        && crossedOut.value() == calculation.second();
    return same && (taken || buildsUp());
  }

  private boolean isLaid(int number) {
    return changes.first.value() == number && (changes.second.value() > 0 || joined);
  }

  private Places laid() {
    return changes.first.plus(changes.second).plus(changes.later);
  }

  @Override
  public boolean shows(SlipRule rule) {
    Places a = calculation.firstPlaces();
    Places b = calculation.secondPlaces();
    return calculation.adds() ? showsInAddition(rule, a, b) || showsInAddition(mirrored(rule), b, a)
        : showsInSubtraction(rule, a, b);
  }

  /** The rule that says of the second number what this one says of the first. */
  private static SlipRule mirrored(SlipRule rule) {
    return switch (rule) {
      case FIRST_MENDED_THE_WRONG_WAY -> SlipRule.SECOND_MENDED_THE_WRONG_WAY;
      case SECOND_MENDED_THE_WRONG_WAY -> SlipRule.FIRST_MENDED_THE_WRONG_WAY;
      default -> rule;
    };
  }

  private boolean takes(int laidTens, int laidOnes, int outTens, int outOnes) {
    return laid().equals(new Places(laidTens, laidOnes)) && crossedOut.places().equals(new Places(outTens, outOnes));
  }

  private boolean showsInSubtraction(SlipRule rule, Places a, Places b) {
    int t1 = a.tens();
    int o1 = a.ones();
    int t2 = b.tens();
    int o2 = b.ones();
    boolean firstThere = laid().value() == calculation.first();
    boolean untouched = laid().equals(a);
    if (crossedOut.isEmpty() && written.isEmpty() && rule != SlipRule.ADDED_INSTEAD) {
      return false;  // nothing is taken away yet, and the smaller number may be laid out to be built up
    }
    return switch (rule) {
      case SMALLER_FROM_LARGER, ZERO_LESS_N_IS_N -> takes(t1, o2, t2, o1);
      case BORROW_TENS_LEFT -> takes(t1, o1 + 10, t2, o2);
      case TRADED_TEN_NOT_ADDED -> takes(t1 - 1, o2, t2, o1);
      case ZERO_FOR_BORROW, ZERO_LESS_N_IS_ZERO -> takes(t1, o1, t2, o1) && written.isPresent();
      case BORROWED_TWICE -> takes(t1 - 1, o1, t2, o2) && trades > 0 || takes(t1 - 2, o1 + 10, t2, o2);
      case N_LESS_ZERO_IS_ZERO -> takes(t1, o1, t2, o1);
      case BORROWED_WITHOUT_NEED -> takes(t1 - 1, o1, t2, o2);
      case TAKEN_FROM_BOTH_PLACES -> takes(Math.max(t1, o2), o1, Math.min(t1, o2), o2);
      case STOPPED_AT_THE_BLANK -> untouched && crossedOut.value() == o2 && written.isPresent();
      case TENS_ONLY -> takes(t1, o1, t2, 0) && written.isPresent();
      case ONES_ONLY -> takes(t1, o1, 0, o2) && written.isPresent();
      case MENDED_THE_WRONG_WAY -> takes(t1, o1, t2 + 1, 10 - o2);
      case TEN_TOO_FEW_TAKEN -> firstThere && crossedOut.value() == calculation.second() - 10
          && crossedOut.ones() % 10 == o2 && written.isPresent() && !takes(t1, o1, 0, o2);
      case TEN_TOO_MANY_TAKEN -> firstThere && crossedOut.value() == calculation.second() + 10;
      case DIFFERENCE_DIGITS_SWAPPED -> firstThere && crossedOut.value() == calculation.second();
      case ADDED_INSTEAD -> crossedOut.isEmpty() && laid().equals(a.plus(b));
      // One by one the pieces are there to be seen: a count is not a step.
      case COUNTED_THE_START_BACK, COUNTED_BOTH_ENDS, COUNTED_NEITHER_END -> false;
      case CARRIED_TEN_DROPPED, BOTH_DIGITS_WRITTEN, TEN_AND_ONES_EXCHANGED, CARRIED_WITHOUT_NEED, ALL_DIGITS_AS_ONES,
          ONES_ADDED_TO_TENS, ADDED_TO_BOTH_PLACES, FIRST_MENDED_THE_WRONG_WAY, SECOND_MENDED_THE_WRONG_WAY,
          COUNTED_THE_START_ON, TEN_TOO_MANY_ADDED, TEN_TOO_FEW_ADDED, SUM_DIGITS_SWAPPED, SUBTRACTED_INSTEAD -> false;
    };
  }

  private boolean lays(Places one, Places two, int laterTens, int laterOnes) {
    return crossedOut.isEmpty() && changes.equals(new Changes(one, two, new Places(laterTens, laterOnes)));
  }

  private boolean showsInAddition(SlipRule rule, Places a, Places b) {
    int w = a.ones() + b.ones();
    boolean there = lays(a, b, 0, 0);
    Places shorter = a.tens() == 0 ? a : b;
    return switch (rule) {
      case CARRIED_TEN_DROPPED -> lays(a, b, 0, -10) || there && first.ones() + second.ones() >= 10;
      case BOTH_DIGITS_WRITTEN -> there;
      case TEN_AND_ONES_EXCHANGED -> lays(a, b, w % 10, w / 10 - w);
      case CARRIED_WITHOUT_NEED -> lays(a, b, 1, 0);
      case ALL_DIGITS_AS_ONES -> lays(new Places(0, a.tens() + a.ones()), new Places(0, b.tens() + b.ones()), 0, 0);
      case ONES_ADDED_TO_TENS -> shorter == b && lays(a, new Places(b.ones(), 0), 0, 0);
      case ADDED_TO_BOTH_PLACES -> shorter == b && lays(a, new Places(b.ones(), b.ones()), 0, 0);
      case FIRST_MENDED_THE_WRONG_WAY -> lays(new Places(a.tens() + 1, 0), b, 0, 10 - a.ones())
          || lays(new Places(a.tens() + 1, 10 - a.ones()), b, 0, 0);
      case SECOND_MENDED_THE_WRONG_WAY -> lays(a, new Places(b.tens() + 1, 0), 0, 10 - b.ones())
          || lays(a, new Places(b.tens() + 1, 10 - b.ones()), 0, 0);
      case TEN_TOO_MANY_ADDED -> lays(a, new Places(b.tens() + 1, b.ones()), 0, 0);
      case TEN_TOO_FEW_ADDED -> lays(a, new Places(b.tens() - 1, b.ones()), 0, 0) && written.isPresent();
      case SUM_DIGITS_SWAPPED -> there;
      case SUBTRACTED_INSTEAD -> laid().equals(a) && crossedOut.value() == b.value();
      case COUNTED_THE_START_ON -> false;
      case SMALLER_FROM_LARGER, BORROW_TENS_LEFT, TRADED_TEN_NOT_ADDED, ZERO_FOR_BORROW, BORROWED_TWICE,
          ZERO_LESS_N_IS_N, ZERO_LESS_N_IS_ZERO, N_LESS_ZERO_IS_ZERO, BORROWED_WITHOUT_NEED, TAKEN_FROM_BOTH_PLACES,
          STOPPED_AT_THE_BLANK, TENS_ONLY, ONES_ONLY, MENDED_THE_WRONG_WAY, COUNTED_THE_START_BACK, COUNTED_BOTH_ENDS,
          COUNTED_NEITHER_END, TEN_TOO_FEW_TAKEN, TEN_TOO_MANY_TAKEN, DIFFERENCE_DIGITS_SWAPPED, ADDED_INSTEAD -> false;
    };
  }

  @Override
  public List<Said> says() {
    List<Said> says = new ArrayList<>();
    if (second.isEmpty()) {
      says.add(first.isEmpty() && crossedOut.isEmpty() ? Said.of("mat.empty") : Said.of("mat.there", first));
    } else {
      says.add(Said.of("mat.piles", first, second));
    }
    if (!crossedOut.isEmpty()) {
      says.add(Said.of("mat.out", crossedOut));
    }
    written.ifPresent(number -> says.add(Said.of("written", number)));
    return says;
  }
}
