package fewermore.reasoning;

/** How sure one may be of a statement about a way of reasoning. */
public enum Strength {
  TOO_EARLY("too-early", "too early"),
  LOOKS_AS_IF("looks-as-if", "looks as if"),
  /** On work of two days or more. */
  CLEAR("reasons", "clear"),
  /** Said before, and the last day's work says another. */
  CHANGED("changed", "changed"),
  /** The work follows no one way so far. */
  MIXED("mixed", "mixed");

  private final String id;
  private final String word;

  Strength(String id, String word) {
    this.id = id;
    this.word = word;
  }

  /** The word used in JSON and CSV files. */
  public String id() {
    return id;
  }

  /** What the teacher reads. */
  public String word() {
    return word;
  }
}
