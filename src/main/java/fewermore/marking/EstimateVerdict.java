package fewermore.marking;

/** Whether the estimate is reasonable: the first that holds. */
public enum EstimateVerdict {
  BLANK("blank"),
  FITS("fits"),
  WRONG_DIRECTION("wrong-direction"),
  FAR_OFF("far-off");

  private final String id;

  EstimateVerdict(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
