package fewermore.store.disk;

import java.io.IOException;

/** A file is not as it was written. Nothing was changed. */
public final class Damaged extends IOException {
  private static final long serialVersionUID = 1L;

  private final long blocks;
  private final long of;

  Damaged(String what, long blocks, long of) {
    super(what);
    this.blocks = blocks;
    this.of = of;
  }

  /** How many blocks are not as they were written. */
  public long blocks() {
    return blocks;
  }

  /** How many blocks there should be; 0 when that can't be told. */
  public long of() {
    return of;
  }
}
