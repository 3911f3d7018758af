package fewermore.classroom;

import fewermore.marking.Part;
import fewermore.text.SourceSpan;
import java.time.LocalDate;

/**
 * A piece of work quoted as evidence: what the child wrote, and what it says about a pattern.
 *
 * @param work the piece of work; only its first hand-in is quoted
 * @param part the part the quoted text stands in
 * @param text exactly as the child wrote it; empty when the part was left empty
 * @param telling the stretch of the text that tells, for example the sign; null when no one stretch does
 */
public record Quote(PieceOfWork work, Says says, Part part, String text, SourceSpan telling) {
  public LocalDate day() {
    return work.evidence().day();
  }

  public AssignedProblem problem() {
    return work.problem();
  }

  public Child child() {
    return work.child();
  }
}
