package fewermore.web;

import fewermore.store.backup.BackupFile;
import fewermore.store.backup.BackupProblem;
import fewermore.store.backup.Key;
import fewermore.store.backup.Progress;
import fewermore.store.backup.Restore;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Supplier;

/**
 * The app as long as the program runs: it can be closed, get a backup in the place of its data, and be opened again on
 * the same ports. Nothing that was in memory goes on. Tablets keep what is handed in meanwhile and send it by themselves.
 */
public final class Serving implements AutoCloseable {
  private static final Logger LOG = System.getLogger(Serving.class.getName());
  /** So long the page that says what happens has to reach the browser before the app is closed. */
  private static final long LAST_ANSWER_MILLIS = 700;
  private static final int TRIES = 20;
  private static final long TRY_AGAIN_MILLIS = 500;

  private final Path data;
  private final Supplier<App> opening;
  private App app;
  private boolean closed;

  private Serving(Path data, Supplier<App> opening) {
    this.data = data;
    this.opening = opening;
  }

  /** @param opening opens the app; always on the same ports and data */
  public static Serving begin(Path data, Supplier<App> opening) {
    Serving serving = new Serving(data, opening);
    serving.opened(opening.get(), null);
    return serving;
  }

  private synchronized void opened(App opened, String outcome) {
    app = opened;
    if (!app.services().database.inSchool()) {
      app.services().backups.canBePutBack(this::putBack, outcome);
    }
  }

  /** The app at present. */
  public synchronized App app() {
    return app;
  }

  private void putBack(BackupFile backup, Key key) {
    Thread thread = new Thread(() -> {
      pause(LAST_ANSWER_MILLIS);
      try {
        restore(backup, key);
      } catch (RuntimeException e) {
        LOG.log(Level.ERROR, "Fewermore could not be opened again. Start it again. " + e.getMessage());
        System.exit(1);
      }
    }, "restore");
    thread.start();
  }

  private synchronized void restore(BackupFile backup, Key key) {
    if (closed) {
      return;
    }
    app.close();
    String outcome;
    try {
      Restore.Done done = Restore.run(data, backup, key, Instant.now(), newer -> { }, Progress.NONE);
      outcome = "The backup was put back: " + done.pieces() + (done.pieces() == 1 ? " piece" : " pieces")
          + " of work. The data before it are kept in " + done.beside() + ".";
    } catch (BackupProblem e) {
      outcome = "Nothing was put back. " + e.getMessage();
    } catch (RuntimeException e) {
      LOG.log(Level.ERROR, "a restore failed", e);
      outcome = "Nothing was put back. Look into the log beside the data.";
    }
    LOG.log(Level.INFO, outcome);
    for (int tries = 1; ; tries++) {
      try {
        opened(opening.get(), outcome);
        return;
      } catch (App.CannotListen e) {
        // The port was ours a moment ago; some systems give it back after a while only.
        if (tries == TRIES) {
          throw e;
        }
        pause(TRY_AGAIN_MILLIS);
      }
    }
  }

  private static void pause(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public synchronized void close() {
    if (!closed) {
      closed = true;
      app.close();
    }
  }
}
