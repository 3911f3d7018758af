package fewermore.wording;

/** What came of writing a story: a text, or the reason why there is none. */
public sealed interface Writing permits WrittenText, Writing.Declined {

  /**
   * No text.
   *
   * @param says where, what was expected, and one thing to try, in the middle of a sentence
   */
  record Declined(Reason reason, String says) implements Writing {}

  /** Why a story could not be written. */
  enum Reason {
    /** The story does not name two different holders, nor two kinds of thing. */
    NO_HOLDERS("no-holders"),
    /** A noun or a holder of the story has no Spanish yet. */
    NO_SPANISH("no-spanish");

    private final String id;

    Reason(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }
}
