package fewermore.store.disk;

import java.io.IOException;

/** The disk did not take a write. Nothing is lost: the same write may be tried again. */
public final class NotTaken extends IOException {
  private static final long serialVersionUID = 1L;

  NotTaken(IOException cause) {
    super(cause.getMessage(), cause);
  }
}
