package fewermore.classroom;

import java.util.List;

/**
 * What one child's work shows: evidence, never a verdict.
 *
 * @param tally of the problems that could tell, how many say so
 * @param evidence first hand-ins on problems that could tell, the latest first
 * @param apart first hand-ins on problems that cannot tell: shown, never counted
 * @param was for {@link Strength#CHANGED}: what the earlier work showed; else null
 * @param also other patterns that the same child's work shows as well
 */
public record ChildFinding(
    Child child, Strength strength, Tally tally, List<Quote> evidence, List<Quote> apart, Pattern was,
    List<Pattern> also) {
  public ChildFinding {
    evidence = List.copyOf(evidence);
    apart = List.copyOf(apart);
    also = List.copyOf(also);
  }
}
