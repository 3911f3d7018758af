package fewermore.story;

/** The two operations that join or part the numbers of a relation. */
public enum Operation {
  ADD('+'),
  SUBTRACT('−');

  private final char sign;

  Operation(char sign) {
    this.sign = sign;
  }

  /** {@code +}, or the true minus sign U+2212. */
  public char sign() {
    return sign;
  }

  public Operation opposite() {
    return this == ADD ? SUBTRACT : ADD;
  }
}
