package fewermore.web.teacher;

import fewermore.calculation.Calculation;
import fewermore.calculation.State;
import fewermore.calculation.Step.Regroup;
import fewermore.calculation.Step.Trade;
import fewermore.calculation.StepWords;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Way;
import fewermore.calculation.WorkedSolution;
import fewermore.calculation.WorkedSolutions;
import fewermore.story.Comparison;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * A calculation worked out on the Board, a step at each press, and then a second time in a way that checks it. Every
 * picture and sentence comes from the calculation. {@code pages/board/worked.html}.
 *
 * @param from the first step; @param until the step after the last
 * @param ways one, or two where the second checks the first
 * @param both the last step of two ways, with what each came to; null for one
 */
public record WorkedOut(Calculation calculation, int from, int until, List<Told> ways, Both both) {
  /** Ways named for trading, that trade only where it is needed. */
  private static final Set<Way> TRADES = Set.of(Way.TRADE_FIRST, Way.JOIN_AND_TRADE, Way.REGROUP);

  public WorkedOut {
    ways = List.copyOf(ways);
  }

  /**
   * @param title what with, and how
   * @param ask comes first, so that the class speaks first
   * @param broad whether its picture is broad: then the sentence stands beneath, else beside
   */
  public record Told(String title, String ask, int step, int until, boolean broad, List<Shown> shown) {
    public Told {
      shown = List.copyOf(shown);
    }

    /** What stands there at the end. */
    public Shown last() {
      return shown.get(shown.size() - 1);
    }
  }

  /** @param trade what is given for what in this step, for example {@code ten-one}; null where nothing is traded */
  public record Shown(int step, int until, String says, StrategyPicture picture, String trade) {}

  /** @param says that both came to the same */
  public record Both(int step, int until, String says) {}

  /** The calculation of a story in two ways; empty where its numbers are larger than can be laid out. */
  public static Optional<WorkedOut> of(Comparison story, int from) {
    return Calculation.of(story.value(story.given().get(0)), story.kind().operation(), story.value(story.given().get(1)))
        .map(calculation -> of(List.of(first(calculation, StrategyKind.PIECES), onTheLine(story, calculation)), from));
  }

  /** On the line a difference is what lies between; the rest is jumped on or back, tens first. */
  private static WorkedSolution onTheLine(Comparison story, Calculation calculation) {
    Way way = story.unknown() == Role.DIFFERENCE ? Way.COUNT_UP : Way.TENS_FIRST;
    return WorkedSolutions.of(calculation, way).orElseGet(() -> first(calculation, StrategyKind.LINE));
  }

  public static WorkedSolution first(Calculation calculation, StrategyKind kind) {
    return WorkedSolutions.of(calculation, kind).get(0);
  }

  /** @param solutions of one calculation, one or two */
  public static WorkedOut of(List<WorkedSolution> solutions, int from) {
    int at = from;
    List<Told> ways = new ArrayList<>();
    for (WorkedSolution solution : solutions) {
      Told told = told(solution, at, ways.isEmpty() ? "How can you work it out?" : "Check it another way.");
      ways.add(told);
      at = told.until;
    }
    Calculation calculation = solutions.get(0).calculation();
    Both both = solutions.size() == 1 ? null
        : new Both(at, at + 1, "Both ways: " + calculation.text() + " = " + calculation.result());
    return new WorkedOut(calculation, from, both == null ? at : both.until, ways, both);
  }

  private static Told told(WorkedSolution solution, int from, String ask) {
    StepWords words = StepWords.in(Locale.ENGLISH);
    List<State> states = new ArrayList<>();
    states.add(solution.way().kind().start(solution.calculation()));
    solution.steps().forEach(step -> states.add(step.state()));
    List<StrategyPicture> pictures = StrategyPicture.ofOneSize(states, Locale.ENGLISH);
    List<Shown> shown = new ArrayList<>();
    shown.add(new Shown(from, from + 1, ask, pictures.get(0), null));
    boolean trades = false;
    for (int at = 0; at < solution.steps().size(); at++) {
      WorkedSolution.WorkedStep step = solution.steps().get(at);
      trades |= step.step() instanceof Trade || step.step() instanceof Regroup;
      shown.add(new Shown(from + 1 + at, from + 2 + at, words.say(step.says()), pictures.get(at + 1),
          step.step() instanceof Trade trade ? trade.give().id() + "-" + trade.get().id() : null));
    }
    return new Told(title(words, solution.way(), trades), ask, from, from + shown.size(),
        solution.way().kind() != StrategyKind.EXPANDED, shown);
  }

  private static String title(StepWords words, Way way, boolean trades) {
    String kind = words.name(way.kind());
    String with = Character.toUpperCase(kind.charAt(0)) + kind.substring(1);
    return TRADES.contains(way) && !trades ? with : with + ": " + words.name(way).toLowerCase(Locale.ROOT);
  }
}
