package fewermore.calculation;

import fewermore.calculation.State.Check;
import fewermore.calculation.State.Moved;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** The steps of one strategy on one calculation. Immutable; never throws, whatever the steps are. */
public record Working(StrategyKind kind, Calculation calculation, List<Step> steps) {
  /** Most steps of one strategy: what a tablet may send. */
  public static final int MOST = 80;

  public Working {
    steps = List.copyOf(steps);
  }

  public static Working begin(StrategyKind kind, Calculation calculation) {
    return new Working(kind, calculation, List.of());
  }

  public Working then(Step step) {
    List<Step> more = new ArrayList<>(steps);
    more.add(step);
    return new Working(kind, calculation, more);
  }

  /** Without the last step; the same when there is none. */
  public Working undone() {
    return steps.isEmpty() ? this : new Working(kind, calculation, steps.subList(0, steps.size() - 1));
  }

  /** What each step made, in order. */
  public List<Moved> moves() {
    List<Moved> moves = new ArrayList<>();
    State state = kind.start(calculation);
    for (Step step : steps) {
      Moved moved = state.after(step);
      moves.add(moved);
      state = moved.state();
    }
    return moves;
  }

  public State state() {
    List<Moved> moves = moves();
    return moves.isEmpty() ? kind.start(calculation) : moves.get(moves.size() - 1).state();
  }

  /** The number it comes to: the one written, or else the one to be seen. */
  public OptionalInt result() {
    return state().result();
  }

  /** What the steps say. */
  public enum Verdict {
    /** No step was made. */
    BLANK("blank"),
    /** Each step is true, or was mended, and the result is that of the calculation. */
    FITS("fits"),
    /** The steps show a classic slip. */
    SLIP("slip"),
    /** Worked out to a number that is not this calculation's, and no classic slip is to be seen. */
    OTHER_CALCULATION("other-calculation"),
    /** On the way: nothing in it is wrong so far. */
    UNFINISHED("unfinished");

    private final String id;

    Verdict(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }

  /**
   * What the steps show.
   *
   * @param slips for {@code slip}: the rules that the steps show, in the order of the list; else empty
   * @param firstWrong index of the first step that is not true, or -1
   */
  public record Judgment(Verdict verdict, List<SlipRule> slips, int firstWrong) {
    public Judgment {
      slips = List.copyOf(slips);
    }
  }

  /**
   * Whether the steps serve the calculation. Slips are named from the steps: of all rules that predict the number it
   * comes to, those that the steps show. One piece of work is enough for that.
   */
  public Judgment judge() {
    if (steps.isEmpty()) {
      return new Judgment(Verdict.BLANK, List.of(), -1);
    }
    List<Moved> moves = moves();
    State end = moves.get(moves.size() - 1).state();
    int wrong = -1;
    for (int at = moves.size() - 1; at >= 0; at--) {
      wrong = moves.get(at).check() == Check.RIGHT ? wrong : at;
    }
    if (end.complete()) {
      return new Judgment(Verdict.FITS, List.of(), wrong);
    }
    List<SlipRule> slips = slips(end);
    if (!slips.isEmpty()) {
      return new Judgment(Verdict.SLIP, slips, wrong);
    }
    boolean over = wrong >= 0 || end.result().isPresent() && end.equals(written(end));
    return new Judgment(over ? Verdict.OTHER_CALCULATION : Verdict.UNFINISHED, List.of(), wrong);
  }

  private List<SlipRule> slips(State end) {
    OptionalInt result = end.result();
    return result.isEmpty() ? List.of()
        : SlipRule.predicting(calculation.first(), calculation.operation(), calculation.second(), result.getAsInt())
            .stream().filter(end::shows).toList();
  }

  /** The state with the number it comes to written down: the same when it was. */
  private static State written(State end) {
    return end.after(new Step.Write(end.result().orElseThrow())).state();
  }

  /** Whether two strategies come to the same number; empty-handed ones agree with none. */
  public static boolean agree(Working one, Working other) {
    return one.result().isPresent() && one.result().equals(other.result());
  }
}
