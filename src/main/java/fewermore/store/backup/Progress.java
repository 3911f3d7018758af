package fewermore.store.backup;

/** Told how far a long piece of work is, and asked whether to go on. */
public interface Progress {
  /** Nobody looks. */
  Progress NONE = (done, of) -> {};

  /** A long piece of work was stopped on request; nothing was changed. */
  final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public Stopped() {
      super("Stopped. Nothing was changed.");
    }
  }

  /**
   * @param done rows so far
   * @param of rows in all, as far as is known; 0 when it is not
   * @throws Stopped to end the work
   */
  void at(long done, long of);
}
