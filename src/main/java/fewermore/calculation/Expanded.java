package fewermore.calculation;

import fewermore.calculation.Step.Break;
import fewermore.calculation.Step.Combine;
import fewermore.calculation.Step.Place;
import fewermore.calculation.Step.Regroup;
import fewermore.calculation.Step.Row;
import fewermore.calculation.Step.Write;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Two numbers as tens and ones, one above the other, and what the places come to.
 *
 * @param first the first number's parts; those that were struck come before those that stand
 * @param second the second number's
 * @param resultRow the result row's, from the first regrouping of it on
 */
public record Expanded(
    Calculation calculation, Broken first, Broken second, OptionalInt tens, OptionalInt ones, List<Parts> resultRow,
    OptionalInt written) implements State {
  public Expanded {
    resultRow = List.copyOf(resultRow);
  }

  /** Two parts of a number, as numbers: {@code 50 + 2}. */
  public record Parts(int tens, int ones) {
    int sum() {
      return tens + ones;
    }
  }

  /** A number, or none yet, and its parts; all but the last are struck. */
  public record Broken(OptionalInt number, List<Parts> parts) {
    static final Broken NOT_YET = new Broken(OptionalInt.empty(), List.of());

    public Broken {
      parts = List.copyOf(parts);
    }

    public Optional<Parts> standing() {
      return parts.isEmpty() ? Optional.empty() : Optional.of(parts.get(parts.size() - 1));
    }
  }

  static Expanded empty(Calculation calculation) {
    return new Expanded(calculation, Broken.NOT_YET, Broken.NOT_YET, OptionalInt.empty(), OptionalInt.empty(),
        List.of(), OptionalInt.empty());
  }

  @Override
  public Moved after(Step step) {
    return step.tell(new Moves());
  }

  private final class Moves implements Step.OfExpanded<Moved> {
    @Override
    public Moved elsewhere() {
      return no();
    }

    private Moved no() {
      return new Moved(Expanded.this, Check.NOT_POSSIBLE);
    }

    private Moved check(Expanded expanded, boolean right) {
      return new Moved(expanded, right ? Check.RIGHT : Check.WRONG);
    }

    @Override
    public Moved breakUp(Break step) {
      Parts parts = new Parts(step.tens(), step.ones());
      if (step.row() == Row.RESULT || !broken(step.row()).parts().isEmpty()) {
        return no();
      }
      return check(with(step.row(), new Broken(OptionalInt.of(step.number()), List.of(parts))),
          parts.sum() == step.number() && parts.tens % 10 == 0 && isOf(step.row(), step.number()));
    }

    @Override
    public Moved regroup(Regroup step) {
      Parts parts = new Parts(step.tens(), step.ones());
      if (step.row() == Row.RESULT) {
        if (tens.isEmpty() || ones.isEmpty()) {
          return no();
        }
        List<Parts> more = new ArrayList<>(resultRow);
        more.add(parts);
        return check(new Expanded(calculation, first, second, tens, ones, more, written),
            parts.sum() == standingResult().orElseThrow().sum() && parts.tens % 10 == 0);
      }
      Broken broken = broken(step.row());
      if (broken.parts().isEmpty()) {
        return no();
      }
      List<Parts> more = new ArrayList<>(broken.parts());
      more.add(parts);
      return check(with(step.row(), new Broken(broken.number(), more)),
          parts.sum() == broken.standing().orElseThrow().sum() && parts.tens % 10 == 0);
    }

    @Override
    public Moved combine(Combine step) {
      boolean inTens = step.place() == Place.TENS;
      Expanded next = new Expanded(calculation, first, second, inTens ? OptionalInt.of(step.to()) : tens,
          inTens ? ones : OptionalInt.of(step.to()), resultRow, written);
      OptionalInt right = rightIn(step.place());
      return resultRow.isEmpty() ? check(next, right.isPresent() && right.getAsInt() == step.to()) : no();
    }

    @Override
    public Moved write(Write step) {
      return check(new Expanded(calculation, first, second, tens, ones, resultRow, OptionalInt.of(step.number())),
          standingResult().isPresent() && standingResult().get().sum() == step.number());
    }
  }

  private Broken broken(Row row) {
    return row == Row.FIRST ? first : second;
  }

  private Expanded with(Row row, Broken broken) {
    return new Expanded(calculation, row == Row.FIRST ? broken : first, row == Row.SECOND ? broken : second, tens,
        ones, resultRow, written);
  }

  /** Whether a number belongs in a row. Addends may stand in either order. */
  private boolean isOf(Row row, int number) {
    int wanted = row == Row.FIRST ? calculation.first() : calculation.second();
    return number == wanted
        || calculation.adds() && (number == calculation.first() || number == calculation.second());
  }

  /** What a place comes to, from the parts that stand; empty when a part is missing or there are too few ones. */
  private OptionalInt rightIn(Place place) {
    if (first.standing().isEmpty() || second.standing().isEmpty()) {
      return OptionalInt.empty();
    }
    int above = place == Place.TENS ? first.standing().get().tens : first.standing().get().ones;
    int below = place == Place.TENS ? second.standing().get().tens : second.standing().get().ones;
    int right = calculation.adds() ? above + below : above - below;
    return right < 0 ? OptionalInt.empty() : OptionalInt.of(right);
  }

  /** The parts of the result row that stand. */
  public Optional<Parts> standingResult() {
    if (!resultRow.isEmpty()) {
      return Optional.of(resultRow.get(resultRow.size() - 1));
    }
    return tens.isPresent() && ones.isPresent()
        ? Optional.of(new Parts(tens.getAsInt(), ones.getAsInt())) : Optional.empty();
  }

  @Override
  public OptionalInt result() {
    if (written.isPresent()) {
      return written;
    }
    return standingResult().isPresent() ? OptionalInt.of(standingResult().get().sum()) : OptionalInt.empty();
  }

  @Override
  public boolean complete() {
    boolean numbers = calculation.adds()
        ? sumOf(first) + sumOf(second) == calculation.result()
            && (sumOf(first) == calculation.first() || sumOf(first) == calculation.second())
        : sumOf(first) == calculation.first() && sumOf(second) == calculation.second();
    return numbers && standingResult().isPresent() && standingResult().get().sum() == calculation.result()
        && result().orElse(-1) == calculation.result();
  }

  private static int sumOf(Broken broken) {
    return broken.standing().map(Parts::sum).orElse(-1);
  }

  @Override
  public boolean shows(SlipRule rule) {
    Places a = calculation.firstPlaces();
    Places b = calculation.secondPlaces();
    if (first.standing().isEmpty() || second.standing().isEmpty()) {
      return false;
    }
    return calculation.adds() ? showsInAddition(rule, a, b) || showsInAddition(rule, b, a)
        : showsInSubtraction(rule, a, b);
  }

  private boolean stand(int tensAbove, int onesAbove, int tensBelow, int onesBelow) {
    return first.standing().equals(Optional.of(new Parts(tensAbove, onesAbove)))
        && second.standing().equals(Optional.of(new Parts(tensBelow, onesBelow)));
  }

  private boolean come(int toTens, int toOnes) {
    return tens.equals(OptionalInt.of(toTens)) && ones.equals(OptionalInt.of(toOnes));
  }

  private boolean showsInSubtraction(SlipRule rule, Places a, Places b) {
    int t1 = 10 * a.tens();
    int o1 = a.ones();
    int t2 = 10 * b.tens();
    int o2 = b.ones();
    Parts above = first.standing().orElseThrow();
    boolean secondThere = second.standing().orElseThrow().equals(new Parts(t2, o2));
    boolean firstThere = above.sum() == calculation.first();
    boolean plain = stand(t1, o1, t2, o2);
    return switch (rule) {
      case SMALLER_FROM_LARGER, ZERO_LESS_N_IS_N -> plain && come(t1 - t2, Math.abs(o1 - o2));
      case BORROW_TENS_LEFT -> stand(t1, o1 + 10, t2, o2) && come(t1 - t2, o1 + 10 - o2);
      case TRADED_TEN_NOT_ADDED -> stand(t1 - 10, o1, t2, o2) && come(t1 - 10 - t2, Math.abs(o1 - o2));
      case ZERO_FOR_BORROW, ZERO_LESS_N_IS_ZERO, N_LESS_ZERO_IS_ZERO -> plain && come(t1 - t2, 0);
      case BORROWED_TWICE -> stand(t1 - 20, o1 + 10, t2, o2) && come(t1 - 20 - t2, o1 + 10 - o2);
      case BORROWED_WITHOUT_NEED -> stand(t1 - 10, o1, t2, o2) && come(t1 - 10 - t2, o1 - o2);
      case TAKEN_FROM_BOTH_PLACES -> first.standing().get().equals(new Parts(t1, o1))
          && come(Math.abs(t1 - 10 * o2), o1 - o2);
      case STOPPED_AT_THE_BLANK -> plain && tens.isEmpty() && ones.equals(OptionalInt.of(o1 - o2));
      case TENS_ONLY -> plain && come(t1 - t2, o1);
      case ONES_ONLY -> firstThere && secondThere && come(above.tens, above.ones - o2);
      case TEN_TOO_FEW_TAKEN -> firstThere && secondThere && come(above.tens - t2 + 10, above.ones - o2)
          && !(t2 == 10);
      case TEN_TOO_MANY_TAKEN -> firstThere && secondThere && come(above.tens - t2 - 10, above.ones - o2);
      case DIFFERENCE_DIGITS_SWAPPED -> firstThere && secondThere && come(above.tens - t2, above.ones - o2);
      case ADDED_INSTEAD -> plain && come(t1 + t2, o1 + o2);
      // Neither a mended jump nor a count stands on paper here.
      case MENDED_THE_WRONG_WAY, COUNTED_THE_START_BACK, COUNTED_BOTH_ENDS, COUNTED_NEITHER_END -> false;
      case CARRIED_TEN_DROPPED, BOTH_DIGITS_WRITTEN, TEN_AND_ONES_EXCHANGED, CARRIED_WITHOUT_NEED, ALL_DIGITS_AS_ONES,
          ONES_ADDED_TO_TENS, ADDED_TO_BOTH_PLACES, FIRST_MENDED_THE_WRONG_WAY, SECOND_MENDED_THE_WRONG_WAY,
          COUNTED_THE_START_ON, TEN_TOO_MANY_ADDED, TEN_TOO_FEW_ADDED, SUM_DIGITS_SWAPPED, SUBTRACTED_INSTEAD -> false;
    };
  }

  private boolean showsInAddition(SlipRule rule, Places a, Places b) {
    int t1 = 10 * a.tens();
    int o1 = a.ones();
    int t2 = 10 * b.tens();
    int o2 = b.ones();
    int w = o1 + o2;
    boolean plain = stand(t1, o1, t2, o2);
    boolean there = plain && come(t1 + t2, w);
    Optional<Parts> regrouped = resultRow.isEmpty() ? Optional.empty() : standingResult();
    return switch (rule) {
      case CARRIED_TEN_DROPPED -> there && (regrouped.isEmpty() || regrouped.get().equals(new Parts(t1 + t2, w - 10)));
      case BOTH_DIGITS_WRITTEN -> there && regrouped.isEmpty();
      case TEN_AND_ONES_EXCHANGED -> {
        Parts exchanged = new Parts(t1 + t2 + 10 * (w % 10), w / 10);
        yield plain && (come(exchanged.tens, exchanged.ones) || there && regrouped.equals(Optional.of(exchanged)));
      }
      case CARRIED_WITHOUT_NEED -> there && regrouped.equals(Optional.of(new Parts(t1 + t2 + 10, w)));
      case ALL_DIGITS_AS_ONES -> stand(a.tens(), o1, b.tens(), o2) && come(a.tens() + b.tens(), w);
      case ONES_ADDED_TO_TENS -> t2 == 0 && stand(t1, o1, 10 * o2, 0);
      case ADDED_TO_BOTH_PLACES -> t2 == 0 && stand(t1, o1, 10 * o2, o2);
      case TEN_TOO_MANY_ADDED -> plain && come(t1 + t2 + 10, w);
      case TEN_TOO_FEW_ADDED -> plain && come(t1 + t2 - 10, w);
      case SUM_DIGITS_SWAPPED -> there && (regrouped.isEmpty() || regrouped.get().sum() == calculation.result());
      case SUBTRACTED_INSTEAD -> plain && come(Math.abs(t1 - t2), Math.abs(o1 - o2));
      case FIRST_MENDED_THE_WRONG_WAY, SECOND_MENDED_THE_WRONG_WAY, COUNTED_THE_START_ON -> false;
      case SMALLER_FROM_LARGER, BORROW_TENS_LEFT, TRADED_TEN_NOT_ADDED, ZERO_FOR_BORROW, BORROWED_TWICE,
          ZERO_LESS_N_IS_N, ZERO_LESS_N_IS_ZERO, N_LESS_ZERO_IS_ZERO, BORROWED_WITHOUT_NEED, TAKEN_FROM_BOTH_PLACES,
          STOPPED_AT_THE_BLANK, TENS_ONLY, ONES_ONLY, MENDED_THE_WRONG_WAY, COUNTED_THE_START_BACK, COUNTED_BOTH_ENDS,
          COUNTED_NEITHER_END, TEN_TOO_FEW_TAKEN, TEN_TOO_MANY_TAKEN, DIFFERENCE_DIGITS_SWAPPED, ADDED_INSTEAD -> false;
    };
  }

  @Override
  public List<Said> says() {
    List<Said> says = new ArrayList<>();
    for (Broken broken : List.of(first, second)) {
      for (int at = 0; at < broken.parts().size(); at++) {
        Parts parts = broken.parts().get(at);
        says.add(Said.of(at == 0 ? "expanded.row" : "expanded.regrouped", broken.number().orElse(0), parts.tens,
            parts.ones));
      }
    }
    tens.ifPresent(number -> says.add(Said.of("expanded.tens", number)));
    ones.ifPresent(number -> says.add(Said.of("expanded.ones", number)));
    resultRow.forEach(parts -> says.add(Said.of("expanded.result", parts.tens, parts.ones)));
    written.ifPresent(number -> says.add(Said.of("written", number)));
    if (says.isEmpty()) {
      says.add(Said.of("expanded.empty"));
    }
    return says;
  }
}
