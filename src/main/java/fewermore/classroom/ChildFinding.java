package fewermore.classroom;

import fewermore.reasoning.Strength;
import java.time.LocalDate;
import java.util.List;

/**
 * What one child's work shows: evidence, never a verdict.
 *
 * @param tally of the problems that could tell, how many say so
 * @param evidence first hand-ins on problems that could tell, the latest first
 * @param apart first hand-ins on problems that cannot tell: shown, never counted
 * @param reasoning the estimate behind it
 * @param also other patterns that the same child's work shows as well
 */
public record ChildFinding(
    Child child, Strength strength, Tally tally, List<Quote> evidence, List<Quote> apart,
    List<Pattern> also, ChildReasoning reasoning) {
  public ChildFinding {
    evidence = List.copyOf(evidence);
    apart = List.copyOf(apart);
    also = List.copyOf(also);
  }

  /** The last day of the work behind it; null when there is none. */
  public LocalDate asOf() {
    return reasoning.says().asOf();
  }

  /** How many of the first hand-ins apart, those whose word agrees with the story, state the story. */
  public int apartFitting() {
    return (int) apart.stream().filter(quote -> Findings.fits(quote.work())).count();
  }
}
