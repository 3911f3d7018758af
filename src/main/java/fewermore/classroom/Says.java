package fewermore.classroom;

/** What one piece of evidence says about one {@link Pattern}. */
public enum Says {
  /** The work is what the pattern would write. */
  SO,
  /** The work is what a child would write who does not follow the pattern. */
  AGAINST,
  /** An operation is written, but one that speaks neither for nor against. */
  NEITHER,
  /** Nothing is written that could tell: blank, unreadable, a bare number, or not asked. */
  NOTHING;

  /** Whether the work counts among the problems that could tell. */
  public boolean tells() {
    return this != NOTHING;
  }
}
