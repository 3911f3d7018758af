package fewermore.store.disk;

import java.io.IOException;

/**
 * The disk said that what was written may not have reached it. The system may have dropped the very pages that
 * failed, and a later force would say nothing of them: nothing more is kept before the file is opened anew.
 */
public final class ForceFailed extends IOException {
  private static final long serialVersionUID = 1L;

  ForceFailed(IOException cause) {
    super(cause.getMessage(), cause);
  }
}
