package fewermore.calculation;

import fewermore.calculation.Step.Jump;
import fewermore.calculation.Step.Start;
import fewermore.calculation.Step.Write;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** An open number line: a start, and jumps each with its size and the number it lands on. */
public record NumberLine(Calculation calculation, OptionalInt start, List<Jump> jumps, OptionalInt written)
    implements State {
  /** The largest number on the line. */
  public static final int LARGEST = 220;

  /** Most jumps on one line: more can't be drawn. */
  public static final int MOST = 24;

  public NumberLine {
    jumps = List.copyOf(jumps);
  }

  static NumberLine empty(Calculation calculation) {
    return new NumberLine(calculation, OptionalInt.empty(), List.of(), OptionalInt.empty());
  }

  /** Where the last jump landed, or the start; empty before there is one. */
  public OptionalInt at() {
    return jumps.isEmpty() ? start : OptionalInt.of(jumps.get(jumps.size() - 1).to());
  }

  @Override
  public Moved after(Step step) {
    return step.tell(new Moves());
  }

  private final class Moves implements Step.OfLine<Moved> {
    @Override
    public Moved elsewhere() {
      return no();
    }

    private Moved no() {
      return new Moved(NumberLine.this, Check.NOT_POSSIBLE);
    }

    private Moved check(NumberLine line, boolean right) {
      return new Moved(line, right ? Check.RIGHT : Check.WRONG);
    }

    @Override
    public Moved start(Start step) {
      boolean can = jumps.isEmpty() && step.at() >= 0 && step.at() <= LARGEST;
      return can ? check(new NumberLine(calculation, OptionalInt.of(step.at()), jumps, written), true) : no();
    }

    @Override
    public Moved jump(Jump step) {
      if (start.isEmpty() || step.by() == 0 || step.to() < 0 || step.to() > LARGEST || jumps.size() >= MOST) {
        return no();
      }
      List<Jump> more = new ArrayList<>(jumps);
      more.add(step);
      return check(new NumberLine(calculation, start, more, written), at().getAsInt() + step.by() == step.to());
    }

    @Override
    public Moved write(Write step) {
      return check(new NumberLine(calculation, start, jumps, OptionalInt.of(step.number())),
          toBeSeen().isPresent() && toBeSeen().getAsInt() == step.number());
    }
  }

  /** The sum of the sizes written over the jumps, those back below 0. */
  public int sum() {
    return jumps.stream().mapToInt(Jump::by).sum();
  }

  /** Whether the jumps go from one number of a subtraction to the other: their sum is then the difference. */
  public boolean goesBetween() {
    if (calculation.adds() || start.isEmpty() || jumps.isEmpty()) {
      return false;
    }
    int from = start.getAsInt();
    int to = at().getAsInt();
    return from == calculation.second() && to == calculation.first()
        || from == calculation.first() && to == calculation.second();
  }

  private OptionalInt toBeSeen() {
    return goesBetween() ? OptionalInt.of(Math.abs(sum())) : at();
  }

  @Override
  public OptionalInt result() {
    return written.isPresent() ? written : jumps.isEmpty() ? OptionalInt.empty() : toBeSeen();
  }

  @Override
  public boolean complete() {
    if (result().orElse(-1) != calculation.result() || !isTrue() || start.isEmpty()) {
      return false;
    }
    if (jumps.isEmpty()) {
      return calculation.first() == 0 || calculation.second() == 0;
    }
    int end = at().getAsInt();
    int from = start.getAsInt();
    if (goesBetween()) {
      return true;
    }
    // A start moved a little and jumps moved with it come to the same: 64 − 30 for 62 − 28, 40 + 28 − 6 for 34 + 28.
    boolean near = Math.abs(from - calculation.first()) < 10
        || calculation.adds() && Math.abs(from - calculation.second()) < 10;
    return near && end == calculation.result();
  }

  private boolean isTrue() {
    return wrongBy().stream().allMatch(by -> by == 0);
  }

  /** How far beside the truth each jump lands. */
  private List<Integer> wrongBy() {
    List<Integer> wrong = new ArrayList<>();
    int at = start.orElse(0);
    for (Jump jump : jumps) {
      wrong.add(jump.to() - at - jump.by());
      at = jump.to();
    }
    return wrong;
  }

  /** Whether one jump lands so far beside the truth, and all others right. */
  private boolean oneIsOff(int by) {
    List<Integer> wrong = wrongBy();
    return wrong.stream().filter(each -> each == by).count() == 1
        && wrong.stream().filter(each -> each == 0).count() == wrong.size() - 1;
  }

  private int lastBy() {
    return jumps.get(jumps.size() - 1).by();
  }

  @Override
  public boolean shows(SlipRule rule) {
    if (start.isEmpty() || jumps.isEmpty()) {
      return false;
    }
    if (!calculation.adds()) {
      return showsInSubtraction(rule);
    }
    int from = start.getAsInt();
    int first = calculation.first();
    int second = calculation.second();
    return showsInAddition(rule, from, first, second, SlipRule.FIRST_MENDED_THE_WRONG_WAY,
        SlipRule.SECOND_MENDED_THE_WRONG_WAY)
        || showsInAddition(rule, from, second, first, SlipRule.SECOND_MENDED_THE_WRONG_WAY,
            SlipRule.FIRST_MENDED_THE_WRONG_WAY);
  }

  private boolean showsInSubtraction(SlipRule rule) {
    int first = calculation.first();
    int second = calculation.second();
    int ones = second % 10;
    boolean fromFirst = start.getAsInt() == first;
    boolean right = isTrue();
    return switch (rule) {
      case COUNTED_THE_START_BACK -> fromFirst && sum() == -second && oneIsOff(1);
      case COUNTED_BOTH_ENDS -> goesBetween() && (right || oneIsOff(lastSign() * -1));
      case COUNTED_NEITHER_END -> goesBetween() && (right || oneIsOff(lastSign()));
      case TEN_TOO_FEW_TAKEN -> fromFirst && (right && sum() == -(second - 10) && written.isPresent() && second != 10
          || sum() == -second && oneIsOff(10));
      case TEN_TOO_MANY_TAKEN -> fromFirst && (right && sum() == -(second + 10) || sum() == -second && oneIsOff(-10));
      case MENDED_THE_WRONG_WAY -> fromFirst && right && lastBy() == ones - 10
          && sum() == -(second + 2 * (10 - ones)) && jumps.size() > 1;
      case TENS_ONLY -> fromFirst && right && sum() == ones - second && written.isPresent();
      case ONES_ONLY -> fromFirst && right && sum() == -ones && written.isPresent();
      case TAKEN_FROM_BOTH_PLACES -> fromFirst && right && sum() == -11 * second;
      case DIFFERENCE_DIGITS_SWAPPED -> right && (goesBetween() || fromFirst && sum() == -second);
      case ADDED_INSTEAD -> right && (fromFirst && sum() == second || start.getAsInt() == second && sum() == first);
      // The line knows no digits: nothing is traded, no place is left out.
      case SMALLER_FROM_LARGER, BORROW_TENS_LEFT, TRADED_TEN_NOT_ADDED, ZERO_FOR_BORROW, BORROWED_TWICE,
          ZERO_LESS_N_IS_N, ZERO_LESS_N_IS_ZERO, N_LESS_ZERO_IS_ZERO, BORROWED_WITHOUT_NEED, STOPPED_AT_THE_BLANK
          -> false;
      case CARRIED_TEN_DROPPED, BOTH_DIGITS_WRITTEN, TEN_AND_ONES_EXCHANGED, CARRIED_WITHOUT_NEED, ALL_DIGITS_AS_ONES,
          ONES_ADDED_TO_TENS, ADDED_TO_BOTH_PLACES, FIRST_MENDED_THE_WRONG_WAY, SECOND_MENDED_THE_WRONG_WAY,
          COUNTED_THE_START_ON, TEN_TOO_MANY_ADDED, TEN_TOO_FEW_ADDED, SUM_DIGITS_SWAPPED, SUBTRACTED_INSTEAD -> false;
    };
  }

  private int lastSign() {
    return Integer.signum(sum());
  }

  /** With {@code from} as the start of an addition of {@code a}, the start, and {@code b}, the jumps. */
  private boolean showsInAddition(SlipRule rule, int from, int a, int b, SlipRule aMended, SlipRule bMended) {
    boolean right = isTrue();
    boolean fromA = from == a;
    int toTenOfA = 10 - a % 10;
    int toTenOfB = 10 - b % 10;
    if (rule == bMended) {
      return right && fromA && jumps.size() > 1 && lastBy() == toTenOfB && sum() == b + 2 * toTenOfB;
    }
    if (rule == aMended) {
      return right && jumps.size() > 1 && lastBy() == toTenOfA
          && (from == a + toTenOfA && sum() == b + toTenOfA
              || fromA && jumps.get(0).by() == toTenOfA && sum() == b + 2 * toTenOfA);
    }
    return switch (rule) {
      case COUNTED_THE_START_ON -> fromA && sum() == b && oneIsOff(-1);
      case TEN_TOO_MANY_ADDED -> fromA && (right && sum() == b + 10 || sum() == b && oneIsOff(10));
      case TEN_TOO_FEW_ADDED -> fromA && (right && sum() == b - 10 && written.isPresent() || sum() == b && oneIsOff(-10));
      case ONES_ADDED_TO_TENS -> fromA && right && b < 10 && sum() == 10 * b;
      case ADDED_TO_BOTH_PLACES -> fromA && right && b < 10 && sum() == 11 * b;
      case SUM_DIGITS_SWAPPED -> fromA && right && sum() == b;
      case SUBTRACTED_INSTEAD -> fromA && right && sum() == -b;
      case FIRST_MENDED_THE_WRONG_WAY, SECOND_MENDED_THE_WRONG_WAY -> false;
      case CARRIED_TEN_DROPPED, BOTH_DIGITS_WRITTEN, TEN_AND_ONES_EXCHANGED, CARRIED_WITHOUT_NEED, ALL_DIGITS_AS_ONES
          -> false;
      case SMALLER_FROM_LARGER, BORROW_TENS_LEFT, TRADED_TEN_NOT_ADDED, ZERO_FOR_BORROW, BORROWED_TWICE,
          ZERO_LESS_N_IS_N, ZERO_LESS_N_IS_ZERO, N_LESS_ZERO_IS_ZERO, BORROWED_WITHOUT_NEED, TAKEN_FROM_BOTH_PLACES,
          STOPPED_AT_THE_BLANK, TENS_ONLY, ONES_ONLY, MENDED_THE_WRONG_WAY, COUNTED_THE_START_BACK, COUNTED_BOTH_ENDS,
          COUNTED_NEITHER_END, TEN_TOO_FEW_TAKEN, TEN_TOO_MANY_TAKEN, DIFFERENCE_DIGITS_SWAPPED, ADDED_INSTEAD -> false;
    };
  }

  @Override
  public List<Said> says() {
    List<Said> says = new ArrayList<>();
    says.add(start.isPresent() ? Said.of("line.start", start.getAsInt()) : Said.of("line.empty"));
    jumps.forEach(jump -> says.add(
        Said.of(jump.by() > 0 ? "line.forward" : "line.back", Math.abs(jump.by()), jump.to())));
    written.ifPresent(number -> says.add(Said.of("written", number)));
    return says;
  }
}
