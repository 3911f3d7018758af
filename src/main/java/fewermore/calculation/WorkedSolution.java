package fewermore.calculation;

import java.util.List;

/** One good way to work a calculation out, step by step, with a sentence for each step. */
public record WorkedSolution(Way way, Calculation calculation, List<WorkedStep> steps) {
  public WorkedSolution {
    steps = List.copyOf(steps);
  }

  /** A step, the sentence that says what is done and why, and what then lies or stands there. */
  public record WorkedStep(Step step, Said says, State state) {}

  /** The same as a sequence of steps. */
  public Working working() {
    return new Working(way.kind(), calculation, steps.stream().map(WorkedStep::step).toList());
  }
}
