package fewermore.reasoning;

import fewermore.marking.Marks;
import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * One piece of work as evidence: whose it is does not matter here. Only a first hand-in is evidence; that is for the
 * caller to see to, as is leaving out work done together, copied or walked on the board.
 *
 * @param day the day it was written
 * @param kind of the problem
 * @param weights how well the work fits each plan
 */
public record Evidence(LocalDate day, Kind kind, PlanWeights weights) {
  public Evidence {
    Objects.requireNonNull(day);
    Objects.requireNonNull(kind);
    Objects.requireNonNull(weights);
  }

  /**
   * What the work says, by its marks (the teacher's where she overruled one).
   *
   * @return empty when neither an equation nor an answer was asked, or nothing can be read: such work moves nothing
   */
  public static Optional<Evidence> of(LocalDate day, Comparison story, Work work, Marks marks, ReasoningTable table) {
    return new PlanReading(story, work, marks, table).weights().map(weights -> new Evidence(day, story.kind(), weights));
  }

  /** How likely a child of that way writes just this, up to a factor that is the same for every way. */
  public double support(WayOfReasoning way, ReasoningTable table) {
    return weights.likelihood(table.row(kind, way.ordinal()), table.floor());
  }
}
