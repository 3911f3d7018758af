package fewermore.store;

/** The data can't be opened; the message is a plain sentence that says what to do. */
public class CannotOpen extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public CannotOpen(String message) {
    super(message);
  }
}
