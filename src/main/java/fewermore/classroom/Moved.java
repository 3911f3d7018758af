package fewermore.classroom;

import java.time.Instant;

/**
 * A note in the record: the teacher moved a work to another child.
 *
 * @param note why, in her words; may be empty
 */
public record Moved(long id, String work, Child from, Child to, String note, Instant at, State state) {
  /** How far a move is. */
  public enum State {
    /** Moved, and no evidence of anything until the teacher says that it is right. */
    WAITING,
    /** The teacher said that it is right. */
    CONFIRMED,
    /** Taken back, or moved on to another child. */
    UNDONE;

    public String id() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }
}
