package fewermore.store;

/** A write could not be brought to disk: nothing may be acknowledged. */
public final class NotOnDisk extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public NotOnDisk(String message, Throwable cause) {
    super(message, cause);
  }
}
