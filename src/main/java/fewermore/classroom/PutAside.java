package fewermore.classroom;

import fewermore.prediction.WayOfReasoning;
import java.time.LocalDate;

/**
 * A way of reasoning the teacher put aside for a child ("I asked her: she reads the story"). It stays put aside, and
 * shown with its note; it is never used as evidence.
 */
public record PutAside(long id, long child, WayOfReasoning way, String note, LocalDate day) {
  /** Longest note, in characters. */
  public static final int LONGEST_NOTE = 300;
}
