package fewermore.classroom;

import fewermore.marking.Work;
import java.time.Instant;

/**
 * One thing a tablet sent: a draft, a hand-in, a good-bye or a raised hand. Named for ever by work, page
 * and seq: sent again it is the same thing.
 *
 * @param written when, by the laptop's clock
 * @param approximate true when it had waited on the tablet for more than a minute
 */
public record SentItem(
    String work, String page, int seq, Kind kind, Work parts, Instant written, boolean approximate) {

  /** What was sent. */
  public enum Kind {
    DRAFT("draft"),
    HANDED_IN("handed-in"),
    LEAVE("leave"),
    HELP("help");

    private final String id;

    Kind(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }

    public static java.util.Optional<Kind> of(String id) {
      for (Kind kind : values()) {
        if (kind.id.equals(id)) {
          return java.util.Optional.of(kind);
        }
      }
      return java.util.Optional.empty();
    }
  }
}
