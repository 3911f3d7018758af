package fewermore.marking;

/** What the bars show: the first that holds. */
public enum BarsVerdict {
  BLANK("blank"),
  FITS("fits"),
  LONGER_SHORTER_SWAPPED("longer-shorter-swapped"),
  DIFFERENCE_AS_AMOUNT("difference-as-amount"),
  UNKNOWN_MISPLACED("unknown-misplaced"),
  OTHER_NUMBERS("other-numbers"),
  INCOMPLETE("incomplete");

  private final String id;

  BarsVerdict(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
