package fewermore.store.backup;

/** A backup could not be made, read or put back; the message is a plain sentence. Nothing was lost or changed. */
public final class BackupProblem extends Exception {
  private static final long serialVersionUID = 1L;

  public BackupProblem(String sentence) {
    super(sentence);
  }

  public BackupProblem(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
