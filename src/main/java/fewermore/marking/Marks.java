package fewermore.marking;

/** The marks of one piece of work; a part that was not asked is null. */
public record Marks(
    EquationMark equation,
    AnswerMark answer,
    LabelVerdict label,
    BarsVerdict bars,
    EstimateVerdict estimate,
    StrategyMark strategy) {

  /** Marks where no strategy was asked. */
  public Marks(EquationMark equation, AnswerMark answer, LabelVerdict label, BarsVerdict bars,
      EstimateVerdict estimate) {
    this(equation, answer, label, bars, estimate, null);
  }
}
