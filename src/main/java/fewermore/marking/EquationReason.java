package fewermore.marking;

/** The main thing to say of an equation: exactly one holds, tried in the order of the page on marking. */
public enum EquationReason {
  FITS("fits"),
  BLANK("blank"),
  UNREADABLE("unreadable"),
  NO_EQUALS("no-equals"),
  NUMBER_ONLY("number-only"),
  TURNED_ROUND("turned-round"),
  OPPOSITE_OPERATION("opposite-operation"),
  UNKNOWN_MISPLACED("unknown-misplaced"),
  EXTRA_NUMBER("extra-number"),
  MISSING_NUMBER("missing-number"),
  MISCOPIED_NUMBER("miscopied-number"),
  OTHER_NUMBERS("other-numbers");

  private final String id;

  EquationReason(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
