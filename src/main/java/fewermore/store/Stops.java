package fewermore.store;

import fewermore.store.disk.NotTaken;
import fewermore.store.disk.StoreState;
import fewermore.store.disk.StoreState.Kind;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.Locale;

/** Why the disk takes nothing, in words for the teacher, and one thing to try. */
final class Stops {
  private static final String TABLETS_KEEP = "Work is not being saved: ";
  private static final String ON_THEIR_OWN = " Tablets keep the children's work meanwhile and send it by themselves.";

  private Stops() {}

  /** Looks at a folder before anything goes wrong. */
  static StoreState look(Path folder, long leastRoom) {
    try {
      if (!Files.isWritable(folder)) {
        return readOnly(folder);
      }
      return Files.getFileStore(folder).getUsableSpace() < leastRoom ? noRoom() : StoreState.RUNNING;
    } catch (IOException e) {
      return notTaking(folder, e);
    }
  }

  static StoreState of(Path folder, NotTaken taken) {
    Throwable cause = taken.getCause();
    String said = String.valueOf(taken.getMessage()).toLowerCase(Locale.ROOT);
    if (said.contains("no space") || said.contains("not enough space") || said.contains("quota")) {
      return noRoom();
    }
    if (cause instanceof AccessDeniedException || cause instanceof ReadOnlyFileSystemException
        || said.contains("read-only") || said.contains("permission denied") || said.contains("access is denied")) {
      return readOnly(folder);
    }
    return notTaking(folder, taken);
  }

  private static StoreState noRoom() {
    return new StoreState(Kind.NO_ROOM, TABLETS_KEEP + "this laptop's disk is full.",
        "Empty the trash or delete a large file; saving goes on by itself." + ON_THEIR_OWN);
  }

  private static StoreState readOnly(Path folder) {
    return new StoreState(Kind.READ_ONLY, TABLETS_KEEP + "nothing may be written in the folder " + folder + ".",
        "Allow writing in that folder; saving goes on by itself." + ON_THEIR_OWN);
  }

  private static StoreState notTaking(Path folder, IOException problem) {
    String said = problem.getMessage() == null ? "no reason given" : problem.getMessage().lines().findFirst().orElse("");
    return new StoreState(Kind.NOT_TAKING, TABLETS_KEEP + "the disk of the folder " + folder + " takes nothing ("
        + said + ").", "See that the disk is plugged in; saving goes on by itself." + ON_THEIR_OWN);
  }

  static StoreState forceFailed() {
    return new StoreState(Kind.FORCE_FAILED, TABLETS_KEEP + "the disk said that it may have lost something.",
        "Stop Fewermore and start it again; it then checks all that is there." + ON_THEIR_OWN);
  }

  static StoreState lost(School school) {
    return new StoreState(Kind.LOST, TABLETS_KEEP + "the school's database " + school.name() + " can't be reached.",
        "See that this laptop is in the school's network; saving goes on by itself." + ON_THEIR_OWN);
  }

  static StoreState tooMany(School school) {
    return new StoreState(Kind.NOT_TAKING, TABLETS_KEEP + "the school's database " + school.name()
        + " takes no more connections.", "Ask whoever looks after it to raise max_connections; saving goes on by itself."
        + ON_THEIR_OWN);
  }

  static StoreState schoolTakesNothing(School school) {
    return new StoreState(Kind.NOT_TAKING, TABLETS_KEEP + "the school's database " + school.name()
        + " takes nothing at present.", "Ask whoever looks after it whether its disk is full; saving goes on by itself."
        + ON_THEIR_OWN);
  }

  static StoreState elsewhere(School school) {
    return new StoreState(Kind.LOST, TABLETS_KEEP + "another Fewermore took these classes of the school's database "
        + school.name() + " while it could not be reached from here.",
        "Stop that one; saving goes on by itself." + ON_THEIR_OWN);
  }
}
