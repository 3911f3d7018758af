package fewermore.calculation;

/** One classic slip of two-digit calculation, as an exact rule that predicts one wrong number. */
public enum SlipRule {
  ;

  /** The word used in JSON, in the store and in CSV files. */
  public String id() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
