package fewermore.classroom;

import fewermore.marking.Part;
import java.time.Instant;

/**
 * A child in the room, as she is now.
 *
 * @param problem the number of the problem she is on, from 1; 0 where there is none
 * @param part the part she last changed, or null
 * @param handedIn problems of today she handed in
 * @param problems problems of today
 * @param since when that began which {@code why} says; null where it says no time
 * @param tablet its name; null where she is on none
 * @param heard how lately the tablet was heard
 * @param tablets on how many tablets she is at once
 * @param hand whether her hand is up
 * @param late pieces of work that came late today
 */
public record Seat(
    Child child, Status status, Why why, int problem, Part part, int handedIn, int problems, Instant since,
    String tablet, Heard heard, int tablets, boolean newTablet, boolean noVoice, boolean hand, int late) {

  /** In the word the page shows. */
  public enum Status {
    WORKING("working"),
    STUCK("stuck"),
    WAITING("waiting"),
    DONE("done"),
    AWAY("away");

    private final String word;

    Status(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** What the status rests on. */
  public enum Why {
    ASKED_FOR_HELP,
    NO_TRIES_LEFT,
    NO_CHANGE,
    ON_A_PART,
    LOOKING_AGAIN,
    BETWEEN_PROBLEMS,
    JUST_CAME_IN,
    NOT_COME_IN,
    NOT_HEARD,
    LEFT_EARLY,
    NO_PROBLEMS,
    ALL_HANDED_IN,
    MARKED_ABSENT
  }

  /** How lately a tablet was heard; the limits in {@link Room}. */
  public enum Heard {
    HERE,
    QUIET,
    AWAY,
    NONE
  }
}
