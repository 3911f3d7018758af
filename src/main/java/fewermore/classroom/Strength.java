package fewermore.classroom;

/** How sure one may be of a statement about a child's work, in the words the pages use. */
public enum Strength {
  TOO_EARLY("early", "too early"),
  LOOKS_AS_IF("looks", "looks as if"),
  CLEAR("clear", "clear"),
  CHANGED("changed", "changed");

  private final String id;
  private final String word;

  Strength(String id, String word) {
    this.id = id;
    this.word = word;
  }

  public String id() {
    return id;
  }

  /** What the teacher reads. */
  public String word() {
    return word;
  }
}
