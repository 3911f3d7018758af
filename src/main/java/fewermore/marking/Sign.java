package fewermore.marking;

/** All that a tablet is told of a part. */
public enum Sign {
  THERE("there"),
  LOOK_AGAIN("look-again"),
  FITS("fits");

  private final String id;

  Sign(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
