package fewermore.store;

import java.nio.file.Path;

/** The data are not as they were written: a sentence says so. Nothing was changed. */
public final class DamagedData extends CannotOpen {
  private static final long serialVersionUID = 1L;

  private final transient Path folder;

  DamagedData(Path folder, String found, long blocks, long of) {
    super("The data in " + folder + " are damaged: they are not as Fewermore wrote them (" + found
        + (of > 0 ? ", of " + of : "") + "). A failing disk, a copy that was cut short or another program can do that. "
        + "Nothing was changed.");
    this.folder = folder;
  }

  public Path folder() {
    return folder;
  }
}
