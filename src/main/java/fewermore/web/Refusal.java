package fewermore.web;

/** A request that is not served; the message is a sentence for whoever sees the page. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final int status;

  Refusal(int status, String message) {
    super(message, null, false, false);
    this.status = status;
  }

  int status() {
    return status;
  }

  static Refusal notFound() {
    return new Refusal(404, "There is nothing at this address.");
  }

  static Refusal forbidden() {
    return new Refusal(403, "This page is not for this tablet or this sign-in.");
  }
}
