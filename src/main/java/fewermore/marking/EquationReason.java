package fewermore.marking;

/**
 * The main thing to say of an equation: exactly one holds. After {@link #FITS} they are tried in the order
 * given, and the first that holds is it. Examples are for a story of 52 and 14 with 38 asked.
 */
public enum EquationReason {
  /** States the story's relation: {@code 52 − 14 = x}, {@code 14 + x = 52}, {@code 52 − 10 − 4 = 38}. */
  FITS("fits"),
  /** Nothing is written. */
  BLANK("blank"),
  /** No equation by the grammar of {@link fewermore.equation.EquationReader}. */
  UNREADABLE("unreadable"),
  /** An operation and no equals sign: {@code 52 − 14}. Judged as "expression = x" besides. */
  NO_EQUALS("no-equals"),
  /** No operation: {@code x = 38}, {@code 38}, {@code 52 = 14}. */
  NUMBER_ONLY("number-only"),
  /** Fits after the given numbers change places: {@code 14 − 52 = x}. Never when the larger is asked. */
  TURNED_ROUND("turned-round"),
  /** The given numbers joined by the other operation: {@code 52 + 14 = x}, {@code x − 14 = 52}. */
  OPPOSITE_OPERATION("opposite-operation"),
  /** True, but the unknown sign stands for a quantity the story gives: {@code 52 − x = 38}. */
  UNKNOWN_MISPLACED("unknown-misplaced"),
  /** Uses a number of the story that is no part of the comparison. */
  EXTRA_NUMBER("extra-number"),
  /**
   * No numbers but given ones, one of them absent or used twice: {@code 52 − 52 = x}; or, when nothing was
   * miscopied, one given number beside one the story does not give: {@code 52 − 30 = x}.
   */
  MISSING_NUMBER("missing-number"),
  /** Fits after one given number is restored: {@code 25 − 14 = x}. See {@link Miscopy}. */
  MISCOPIED_NUMBER("miscopied-number"),
  /** Anything else. */
  OTHER_NUMBERS("other-numbers");

  private final String id;

  EquationReason(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
