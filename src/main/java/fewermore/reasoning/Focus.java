package fewermore.reasoning;

import java.util.Optional;

/** The one thing a small group talks about: never a level. */
public enum Focus {
  WHO_HAS_MORE("who-has-more"),
  THE_GAP_IS_NOT_AN_AMOUNT("the-gap-is-not-an-amount"),
  WRITING_THE_SUBTRACTION("writing-the-subtraction"),
  /** Nothing can be said yet: the next problems that tell. */
  LOOK_CLOSER("look-closer"),
  /** No sitting with the teacher today. */
  ON_THEIR_OWN("on-their-own");

  private final String id;

  Focus(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }

  public static Optional<Focus> of(String id) {
    for (Focus focus : values()) {
      if (focus.id.equals(id)) {
        return Optional.of(focus);
      }
    }
    return Optional.empty();
  }
}
