package fewermore.calculation;

import fewermore.calculation.Step.Break;
import fewermore.calculation.Step.Combine;
import fewermore.calculation.Step.CrossOut;
import fewermore.calculation.Step.Join;
import fewermore.calculation.Step.Jump;
import fewermore.calculation.Step.Place;
import fewermore.calculation.Step.Put;
import fewermore.calculation.Step.Regroup;
import fewermore.calculation.Step.Row;
import fewermore.calculation.Step.Start;
import fewermore.calculation.Step.Trade;
import fewermore.calculation.Step.Write;
import fewermore.calculation.WorkedSolution.WorkedStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Good ways to work a calculation out, for showing and for holding a child's steps against. */
public final class WorkedSolutions {
  private WorkedSolutions() {}

  /** Every way that makes sense for these numbers, in the order of {@link Way}; at least one of each kind. */
  public static List<WorkedSolution> of(Calculation calculation) {
    List<WorkedSolution> all = new ArrayList<>();
    for (Way way : Way.values()) {
      of(calculation, way).ifPresent(all::add);
    }
    return List.copyOf(all);
  }

  /** Those of one kind. */
  public static List<WorkedSolution> of(Calculation calculation, StrategyKind kind) {
    return of(calculation).stream().filter(each -> each.way().kind() == kind).toList();
  }

  /** One way; empty where it makes no sense: compensation with a number that ends in 1, say. */
  public static Optional<WorkedSolution> of(Calculation calculation, Way way) {
    Told told = new Told(way, calculation);
    boolean can = switch (way) {
      case TRADE_FIRST -> told.tradeFirst();
      case TRADE_WHEN_NEEDED -> told.tradeWhenNeeded();
      case BUILD_UP -> told.buildUp();
      case JOIN_AND_TRADE -> told.joinAndTrade();
      case PUT_ON -> told.putOn();
      case TENS_FIRST -> told.tensFirst();
      case THROUGH_THE_TEN -> told.throughTheTen();
      case COMPENSATION -> told.compensation();
      case COUNT_UP -> told.countUp();
      case SAME_DIFFERENCE -> told.sameDifference();
      case REGROUP -> told.regroup();
      case BREAK_TO_FIT -> told.breakToFit();
    };
    return can ? Optional.of(new WorkedSolution(way, calculation, told.steps)) : Optional.empty();
  }

  /** Which good way a child's steps go, as far as it can be seen from them; empty when they end at another number. */
  public static Optional<Way> wayOf(Working working) {
    if (working.result().isEmpty() || working.result().getAsInt() != working.calculation().result()) {
      return Optional.empty();
    }
    return working.state() instanceof NumberLine line ? wayOf(line)
        : of(working.calculation(), working.kind()).stream()
            .filter(each -> looksLike(each.working(), working)).map(WorkedSolution::way).findFirst();
  }

  private static boolean looksLike(Working good, Working own) {
    return shape(good).equals(shape(own));
  }

  /** The sorts of steps, repeated ones once and without the writing: a child lays pieces one by one. */
  private static List<String> shape(Working working) {
    List<String> shape = new ArrayList<>();
    for (Step step : working.steps()) {
      String name = step.getClass().getSimpleName() + (step instanceof Put put ? put.pile() : "");
      if (!(step instanceof Write) && (shape.isEmpty() || !shape.get(shape.size() - 1).equals(name))) {
        shape.add(name);
      }
    }
    return shape;
  }

  private static Optional<Way> wayOf(NumberLine line) {
    if (line.jumps().isEmpty() || line.start().isEmpty()) {
      return Optional.empty();
    }
    Calculation calculation = line.calculation();
    int from = line.start().getAsInt();
    if (line.goesBetween()) {
      return Optional.of(Way.COUNT_UP);
    }
    if (from != calculation.first() && !(calculation.adds() && from == calculation.second())) {
      return Optional.of(calculation.adds() ? Way.COMPENSATION : Way.SAME_DIFFERENCE);
    }
    boolean forward = line.jumps().stream().allMatch(jump -> jump.by() > 0);
    boolean back = line.jumps().stream().allMatch(jump -> jump.by() < 0);
    Jump first = line.jumps().get(0);
    return Optional.of(!forward && !back ? Way.COMPENSATION
        : first.to() % 10 == 0 && first.by() % 10 != 0 ? Way.THROUGH_THE_TEN : Way.TENS_FIRST);
  }

  /** A solution while it is told. */
  private static final class Told {
    private final Calculation calculation;
    private final int first;
    private final int second;
    private final boolean adds;
    private final List<WorkedStep> steps = new ArrayList<>();
    private State state;

    Told(Way way, Calculation calculation) {
      this.calculation = calculation;
      this.first = calculation.first();
      this.second = calculation.second();
      this.adds = calculation.adds();
      this.state = way.kind().start(calculation);
    }

    private void step(Step step, String key, Object... with) {
      state = state.after(step).state();
      steps.add(new WorkedStep(step, Said.of(key, with), state));
    }

    private static Pile some(Piece piece, int count) {
      return Pile.EMPTY.with(piece, count);
    }

    private Mat mat() {
      return (Mat) state;
    }

    private void layOut(int pile, int number) {
      Pile pieces = Pile.of(number);
      for (Piece piece : Piece.values()) {
        if (pieces.count(piece) > 0) {
          step(new Put(pile, piece, pieces.count(piece)), "do.put", number, some(piece, pieces.count(piece)));
        }
      }
    }

    private void trade(Piece give) {
      Piece get = Piece.values()[give.ordinal() + 1];
      step(new Trade(give, get), "do.trade." + give.id(), mat().first());
    }

    /** Opens larger pieces until there is at least one ten, or the ones wanted. */
    private void openFor(Piece piece, int wanted) {
      while (mat().first().count(piece) < wanted) {
        if (piece == Piece.ONE && mat().first().tens() == 0 && mat().first().hundreds() > 0) {
          trade(Piece.HUNDRED);
        }
        trade(piece == Piece.ONE ? Piece.TEN : Piece.HUNDRED);
      }
    }

    private void crossOut(Piece piece, int count) {
      if (count > 0) {
        step(new CrossOut(piece, count), "do.cross-out", some(piece, count));
      }
    }

    private void writeLeft() {
      step(new Write(calculation.result()), "do.write.left", calculation.result());
    }

    boolean tradeFirst() {
      if (adds) {
        return false;
      }
      Pile away = Pile.of(second);
      layOut(1, first);
      openFor(Piece.TEN, away.hundreds() == 1 ? 0 : away.tens());
      openFor(Piece.ONE, away.ones());
      openFor(Piece.TEN, away.hundreds() == 1 ? 0 : away.tens());
      crossOut(Piece.ONE, away.ones());
      crossOut(Piece.TEN, away.tens());
      crossOut(Piece.HUNDRED, away.hundreds());
      writeLeft();
      return true;
    }

    boolean tradeWhenNeeded() {
      int missing = second % 10 - first % 10;
      if (adds || missing <= 0 || first == SlipRule.LARGEST) {
        return false;
      }
      layOut(1, first);
      crossOut(Piece.TEN, second / 10);
      crossOut(Piece.ONE, first % 10);
      openFor(Piece.ONE, missing);
      crossOut(Piece.ONE, missing);
      writeLeft();
      return true;
    }

    boolean buildUp() {
      if (adds || second == 0 || first == second || first == SlipRule.LARGEST) {
        return false;
      }
      layOut(1, second);
      int on = first - second;
      if (on / 10 > 0) {
        step(new Put(2, Piece.TEN, on / 10), "do.put-on", some(Piece.TEN, on / 10), second + 10 * (on / 10));
      }
      if (on % 10 > 0) {
        step(new Put(2, Piece.ONE, on % 10), "do.put-on", some(Piece.ONE, on % 10), first);
      }
      step(new Write(on), "do.write.put-on", on);
      return true;
    }

    private void gather() {
      if (mat().first().ones() >= 10) {
        step(new Trade(Piece.ONE, Piece.TEN), "do.trade.one", mat().first());
      }
      if (mat().first().tens() >= 10) {
        step(new Trade(Piece.TEN, Piece.HUNDRED), "do.gather.ten", mat().first());
      }
    }

    private void writeAll() {
      step(new Write(calculation.result()), "do.write.all", calculation.result());
    }

    boolean joinAndTrade() {
      if (!adds) {
        return false;
      }
      layOut(1, first);
      if (second > 0) {
        layOut(2, second);
        step(new Join(), "do.join");
      }
      gather();
      writeAll();
      return true;
    }

    boolean putOn() {
      if (!adds || first == 0 || second == 0) {
        return false;
      }
      layOut(1, first);
      Pile on = Pile.of(second);
      for (Piece piece : Piece.values()) {
        if (on.count(piece) > 0) {
          step(new Put(1, piece, on.count(piece)), "do.put-on", some(piece, on.count(piece)),
              mat().first().value() + on.count(piece) * piece.worth());
        }
      }
      gather();
      writeAll();
      return true;
    }

    private void start(int at) {
      step(new Start(at), "do.start", at);
    }

    private void jump(int by) {
      if (by != 0) {
        int to = ((NumberLine) state).at().orElseThrow() + by;
        boolean friendly = to % 10 == 0 && by % 10 != 0;
        step(new Jump(by, to), (by > 0 ? "do.forward" : "do.back") + (friendly ? ".friendly" : ""), Math.abs(by), to);
      }
    }

    private void writeLanding() {
      step(new Write(calculation.result()), "do.write.landing", calculation.result());
    }

    private int way() {
      return adds ? 1 : -1;
    }

    boolean tensFirst() {
      start(first);
      jump(way() * (second - second % 10));
      jump(way() * (second % 10));
      writeLanding();
      return true;
    }

    boolean throughTheTen() {
      int ones = second % 10;
      int toTen = adds ? (10 - first % 10) % 10 : first % 10;
      if (toTen == 0 || ones < toTen) {
        return false;
      }
      start(first);
      jump(way() * toTen);
      jump(way() * (ones - toTen));
      jump(way() * (second - ones));
      writeLanding();
      return true;
    }

    boolean compensation() {
      int over = (10 - second % 10) % 10;
      if (over == 0 || over > 4 || !adds && first < second + over) {
        return false;
      }
      start(first);
      int round = way() * (second + over);
      step(new Jump(round, first + round), adds ? "do.round.forward" : "do.round.back", second + over,
          first + round, over);
      int back = -way() * over;
      step(new Jump(back, first + round + back), adds ? "do.mend.back" : "do.mend.forward", over,
          first + round + back);
      writeLanding();
      return true;
    }

    boolean countUp() {
      if (adds || second == 0 || first == second) {
        return false;
      }
      start(second);
      int toTen = (10 - second % 10) % 10;
      if (second + toTen < first) {
        jump(toTen);
      }
      int at = ((NumberLine) state).at().orElseThrow();
      jump((first - at) / 10 * 10);
      jump(first - ((NumberLine) state).at().orElseThrow());
      step(new Write(first - second), "do.write.jumps", first - second);
      return true;
    }

    boolean sameDifference() {
      int more = (10 - second % 10) % 10;
      if (adds || more == 0 || more > 4) {
        return false;
      }
      step(new Start(first + more), "do.start.moved", first + more, second + more, more);
      jump(-(second + more));
      writeLanding();
      return true;
    }

    private void breakUp(Row row, int number) {
      step(new Break(row, number, number / 10 * 10, number % 10), "do.break", number, number / 10 * 10, number % 10);
    }

    private void combine(Place place, int above, int below) {
      int to = adds ? above + below : above - below;
      step(new Combine(place, to), (adds ? "do.add." : "do.take.") + place.id(), above, below, to);
    }

    private void putTogether() {
      Expanded.Parts parts = ((Expanded) state).standingResult().orElseThrow();
      step(new Write(calculation.result()), "do.write.together", parts.tens(), parts.ones(), calculation.result());
    }

    boolean regroup() {
      int t1 = first / 10 * 10;
      int o1 = first % 10;
      int t2 = second / 10 * 10;
      int o2 = second % 10;
      breakUp(Row.FIRST, first);
      breakUp(Row.SECOND, second);
      if (!adds && o1 < o2) {
        step(new Regroup(Row.FIRST, t1 - 10, o1 + 10), "do.regroup", first, t1 - 10, o1 + 10);
        t1 -= 10;
        o1 += 10;
      }
      combine(Place.ONES, o1, o2);
      combine(Place.TENS, t1, t2);
      if (adds && o1 + o2 >= 10) {
        step(new Regroup(Row.RESULT, t1 + t2 + 10, o1 + o2 - 10), "do.regroup.result", o1 + o2, t1 + t2 + 10,
            o1 + o2 - 10);
      }
      putTogether();
      return true;
    }

    boolean breakToFit() {
      int o1 = first % 10;
      int o2 = second % 10;
      if (adds ? o1 + o2 < 10 : o1 >= o2) {
        return false;
      }
      int t1 = adds ? first - o1 : first - o1 - 10;
      int above = first - t1;
      step(new Break(Row.FIRST, first, t1, above), adds ? "do.break" : "do.break.fit", first, t1, above);
      breakUp(Row.SECOND, second);
      combine(Place.TENS, t1, second - o2);
      combine(Place.ONES, above, o2);
      putTogether();
      return true;
    }
  }
}
