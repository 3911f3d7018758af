package fewermore.story;

import java.util.Optional;

/**
 * What the comparing sentence (or, when the difference is asked, the question) says: <i>more</i> with
 * taller, older, longer …; <i>fewer</i> with less, shorter, younger …; or "what is the difference".
 */
public enum Wording {
  MORE("more"),
  FEWER("fewer"),
  DIFFERENCE("difference");

  private final String id;

  Wording(String id) {
    this.id = id;
  }

  /** The word used in JSON, in the store and in CSV files. */
  public String id() {
    return id;
  }

  public static Optional<Wording> of(String id) {
    for (Wording wording : values()) {
      if (wording.id.equals(id)) {
        return Optional.of(wording);
      }
    }
    return Optional.empty();
  }
}
