package fewermore.web.teacher;

import fewermore.calculation.Calculation;
import fewermore.calculation.State;
import fewermore.calculation.State.Check;
import fewermore.calculation.State.Moved;
import fewermore.calculation.StepWords;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.WorkedSolution;
import fewermore.calculation.WorkedSolution.WorkedStep;
import fewermore.calculation.Working;
import fewermore.marking.StrategyMarker;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A strategy step by step: what was done, and what then lay or stood there. A child's own steps, exactly as done, or a
 * worked solution for the Board. {@code pages/teacher/strategy.html}.
 *
 * @param title what with, or the name of the way
 * @param calculation {@code 52 − 14}
 * @param steps in order; at most {@link Working#MOST}
 */
public record StrategyReplay(String title, String calculation, List<Shown> steps) {
  public StrategyReplay {
    steps = List.copyOf(steps);
  }

  /**
   * @param number from 1
   * @param says one sentence
   * @param right whether it is true as arithmetic
   * @param changes whether it did anything: a step that could not be done changes nothing
   */
  public record Shown(int number, String says, boolean right, boolean changes, StrategyPicture picture) {}

  /** The strategies of a piece of work, the first and the one that checks it; empty where none was chosen. */
  public static List<StrategyReplay> of(Comparison story, Work work) {
    if (work.strategy() == null || work.strategy().blank()) {
      return List.of();
    }
    Calculation calculation = StrategyMarker.calculation(story, work.equation()).orElse(null);
    if (calculation == null) {
      return List.of();
    }
    List<StrategyReplay> replays = new ArrayList<>();
    replays.add(of(new Working(work.strategy().kind(), calculation, work.strategy().steps()), ""));
    if (work.strategy().check() != null && !work.strategy().check().blank()) {
      replays.add(of(new Working(work.strategy().check().kind(), calculation, work.strategy().check().steps()),
          ", to check"));
    }
    return replays;
  }

  private static StrategyReplay of(Working working, String more) {
    StepWords words = StepWords.in(Locale.ENGLISH);
    List<Shown> steps = new ArrayList<>();
    List<Moved> moves = working.moves();
    for (int at = 0; at < moves.size(); at++) {
      steps.add(new Shown(at + 1, words.did(working.steps().get(at)), moves.get(at).check() == Check.RIGHT,
          moves.get(at).check() != Check.NOT_POSSIBLE, StrategyPicture.of(moves.get(at).state(), Locale.ENGLISH)));
    }
    return new StrategyReplay(words.name(working.kind()) + more, working.calculation().text(), steps);
  }

  /** A worked solution: each step with the sentence that says what is done and why. */
  public static StrategyReplay of(WorkedSolution solution, Locale language) {
    StepWords words = StepWords.in(language);
    List<Shown> steps = new ArrayList<>();
    for (WorkedStep step : solution.steps()) {
      steps.add(new Shown(steps.size() + 1, words.say(step.says()), true, true,
          StrategyPicture.of(step.state(), language)));
    }
    return new StrategyReplay(words.name(solution.way()), solution.calculation().text(), steps);
  }

  /** What lies or stands there before the first step: an empty mat, line or paper. */
  public static StrategyPicture before(StrategyKind kind, Calculation calculation, Locale language) {
    State start = kind.start(calculation);
    return StrategyPicture.of(start, language);
  }
}
