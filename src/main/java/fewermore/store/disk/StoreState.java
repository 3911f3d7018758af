package fewermore.store.disk;

/**
 * Whether work is kept at present, and if not, why and what to try.
 *
 * @param kind what is the matter
 * @param says one sentence for the teacher: what has stopped
 * @param tryThis one thing she can do; empty while all is well
 */
public record StoreState(Kind kind, String says, String tryThis) {
  /** What may be the matter. */
  public enum Kind {
    RUNNING,
    NO_ROOM,
    READ_ONLY,
    NOT_TAKING,
    /** A school's database is away: nothing can be read either. */
    LOST,
    FORCE_FAILED
  }

  public static final StoreState RUNNING = new StoreState(Kind.RUNNING, "", "");

  public boolean running() {
    return kind == Kind.RUNNING;
  }

  /** Both sentences. */
  public String whole() {
    return (says + " " + tryThis).strip();
  }
}
