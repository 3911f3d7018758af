package fewermore.web;

import fewermore.store.NotOnDisk;
import fewermore.store.backup.BackupFile;
import fewermore.store.backup.BackupProblem;
import fewermore.store.backup.Backups;
import fewermore.store.backup.Key;
import fewermore.store.backup.Progress;
import fewermore.store.backup.Restore;
import fewermore.store.backup.RunningApp;
import java.io.IOException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Makes backups while the app serves: on the button, and by itself after a day with work, that is when there is work
 * that no backup has and nothing came for half an hour, or a minute after the app has started with such work. How long is measured
 * by a clock that nobody can set.
 */
final class BackupDesk implements AutoCloseable {
  static final String FOLDER = "backup folder";
  static final String DAYS = "backup days";
  static final String KEY = Backups.LOCK;
  /** Days a backup is kept where the teacher says nothing else. */
  static final int USUAL_DAYS = 60;

  private static final Logger LOG = System.getLogger(BackupDesk.class.getName());
  private static final Duration QUIET = Duration.ofMinutes(30);
  private static final Duration NEWS = Duration.ofMinutes(10);
  private static final long LOOK_MILLIS = 60_000;
  /** A backup under way is given so long to end when the app does. */
  private static final long CLOSING_MILLIS = 10_000;

  /** A backup being made. {@code of} is 0 while nobody knows how much it will be. */
  record Running(long done, long of) {}

  /** Closes the app, puts a backup in the place of its data and opens it again. */
  interface PuttingBack {
    void putBack(BackupFile backup, Key key);
  }

  private final Services services;
  private final Backups backups;
  private final String token;
  private final Thread clock;
  private volatile Running running;
  private volatile boolean stopAsked;
  private volatile String problem;
  private volatile boolean closed;
  private volatile Thread work;
  private boolean started;
  private volatile PuttingBack puttingBack;
  private volatile String putBack;
  private volatile long putBackAt;

  BackupDesk(Services services) {
    this.services = services;
    this.backups = new Backups(services.settings.data());
    this.token = services.tokens.id();
    this.clock = new Thread(this::afterDaysWithWork, "backups");
    clock.setDaemon(true);
  }

  /** The app serves: it can be asked for backups by whoever may read the data folder, and looks by itself. */
  void serving(int port) {
    try {
      new RunningApp(port, token).write(services.settings.data());
    } catch (IOException e) {
      LOG.log(Level.WARNING, "no backup can be asked for from another window: running.json was not written");
    }
    started = true;
    clock.start();
  }

  /** @param outcome what became of the backup that was put back before; null when none was */
  void canBePutBack(PuttingBack by, String outcome) {
    puttingBack = by;
    putBack = outcome;
    putBackAt = System.nanoTime();
  }

  /** {@link #putBack} as long as it is news: for the sign-in page. */
  Optional<String> justPutBack() {
    return System.nanoTime() - putBackAt > NEWS.toNanos() ? Optional.empty() : Optional.ofNullable(putBack);
  }

  /** How a backup is put back without stopping the program; empty where that can't be done. */
  Optional<PuttingBack> puttingBack() {
    return Optional.ofNullable(puttingBack);
  }

  /** What became of the backup that was put back since the program was started; null when none was. */
  String putBack() {
    return putBack;
  }

  Backups backups() {
    return backups;
  }

  /**
   * Backups made before something was erased still hold it: those of the data folder go and one new one is made. What
   * lies elsewhere this app does not touch.
   *
   * @return a sentence for each copy that may still hold what was erased
   */
  List<String> somethingWasErased() {
    List<String> remains = new ArrayList<>();
    // One that is being made has read what is erased now.
    stop();
    waitForTheEnd();
    for (BackupFile backup : backups.list()) {
      try {
        backups.delete(backup);
      } catch (IOException e) {
        remains.add("The backup " + backup.path().getFileName() + " could not be removed. Delete it by hand.");
      }
    }
    begin("after erasing");
    otherFolder().ifPresent(folder -> remains.add("Copies of backups in " + folder + " still hold what was erased. "
        + "Delete those made before today."));
    for (Path beside : Restore.besides(services.settings.data())) {
      remains.add("The folder " + beside + " holds data as they were before a backup was put back. Delete it when you "
          + "no longer need it.");
    }
    return remains;
  }

  boolean isToken(String said) {
    return Tokens.same(token, said);
  }

  /** Null when none is being made. */
  Running running() {
    return running;
  }

  /** What went wrong with the last one; null when nothing did. */
  String problem() {
    return problem;
  }

  Optional<Path> otherFolder() {
    return services.teachers.setting(FOLDER).filter(text -> !text.isBlank()).map(Path::of);
  }

  int days() {
    return services.teachers.setting(DAYS).map(Integer::parseInt).orElse(USUAL_DAYS);
  }

  Optional<Key> key() {
    return services.teachers.setting(KEY).flatMap(Key::read);
  }

  /** Begins one, unless one is being made. */
  synchronized void begin(String why) {
    if (running != null) {
      return;
    }
    running = new Running(0, 0);
    problem = null;
    stopAsked = false;
    work = new Thread(() -> make(why), "backup");
    work.setDaemon(true);
    work.start();
  }

  void stop() {
    stopAsked = true;
  }

  private void make(String why) {
    try {
      long[] said = {System.nanoTime()};
      BackupFile made = backups.make(services.database, why, key().orElse(null), services.now(), (done, of) -> {
        if (stopAsked || closed) {
          throw new Progress.Stopped();
        }
        running = new Running(done, of);
        if (System.nanoTime() - said[0] > 500_000_000L) {
          said[0] = System.nanoTime();
          services.live.changedEverywhere();
        }
      });
      backups.forget(days());
      Optional<Path> other = otherFolder();
      if (other.isPresent()) {
        backups.copyTo(made, other.get());
      }
    } catch (BackupProblem | Progress.Stopped e) {
      problem = e.getMessage();
      LOG.log(Level.WARNING, "no backup: " + e.getMessage());
    } catch (RuntimeException e) {
      problem = "The backup could not be made. Look into the log beside the data.";
      LOG.log(Level.ERROR, "a backup failed", e);
    } finally {
      running = null;
      services.live.changedEverywhere();
    }
  }

  private void afterDaysWithWork() {
    long seen = -1;
    long since = System.nanoTime() - QUIET.toNanos();
    while (!closed) {
      try {
        Thread.sleep(LOOK_MILLIS);
        long now = services.works.realHandIns();
        if (seen >= 0 && now != seen) {
          since = System.nanoTime();
        }
        seen = now;
        boolean quiet = System.nanoTime() - since >= QUIET.toNanos();
        if (quiet && seen > 0 && services.database.state().running() && newest() != seen) {
          begin("day");
          since = System.nanoTime();
        }
      } catch (InterruptedException e) {
        return;
      } catch (NotOnDisk e) {
        continue; // Said already; the next minute looks again.
      } catch (RuntimeException e) {
        LOG.log(Level.WARNING, "could not look whether a backup is due", e);
        return;
      }
    }
  }

  /** Pieces in the newest backup; -1 without one. */
  private long newest() {
    return backups.list().stream().findFirst().map(BackupFile::pieces).orElse(-1L);
  }

  private void waitForTheEnd() {
    Thread making = work;
    try {
      if (making != null) {
        making.join(CLOSING_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    closed = true;
    clock.interrupt();
    waitForTheEnd();
    if (started) {
      RunningApp.remove(services.settings.data());
    }
  }
}
