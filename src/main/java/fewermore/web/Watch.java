package fewermore.web;

import fewermore.store.NotOnDisk;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** What goes on without anybody asking: sittings end at night, and a changed address of the laptop is noticed. */
final class Watch implements AutoCloseable {
  private static final Logger LOG = System.getLogger(Watch.class.getName());
  private static final String ADDRESS = "address";
  private static final String CHANGED = "address changed";
  private static final long LOOK_SECONDS = 5;
  private static final long NIGHT_SECONDS = 60;

  /** The address tablets used before and when it changed. */
  record Change(String before, Instant at) {}

  private final Services services;
  private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(work -> {
    Thread thread = new Thread(work, "watch");
    thread.setDaemon(true);
    return thread;
  });

  private Watch(Services services) {
    this.services = services;
  }

  static Watch over(Services services) {
    Watch watch = new Watch(services);
    watch.clock.scheduleWithFixedDelay(watch.calmly(watch::lookAtTheAddress), LOOK_SECONDS, LOOK_SECONDS,
        TimeUnit.SECONDS);
    watch.clock.scheduleWithFixedDelay(watch.calmly(services::endTheDays), 1, NIGHT_SECONDS, TimeUnit.SECONDS);
    return watch;
  }

  /** A look that fails, on a full disk for example, must not end all that would follow. */
  private Runnable calmly(Runnable look) {
    return () -> {
      try {
        look.run();
      } catch (NotOnDisk e) {
        LOG.log(Level.DEBUG, "not looked at the laptop: nothing is kept at present, which was said");
      } catch (RuntimeException e) {
        LOG.log(Level.WARNING, "a look at the laptop failed", e);
      }
    };
  }

  private void lookAtTheAddress() {
    look(services);
  }

  /** Compares the address with the one before; a change is kept in mind and told to all open pages. */
  static void look(Services services) {
    Optional<String> now = services.reach.address();
    Optional<String> before = services.teachers.setting(ADDRESS);
    if (now.isEmpty() || now.equals(before)) {
      return;
    }
    services.teachers.set(ADDRESS, now.get());
    before.ifPresent(old -> {
      services.teachers.set(CHANGED, services.now() + " " + old);
      services.classes.all().forEach(classroom -> services.live.changed(classroom.id()));
    });
  }

  /** The last change of the address, if there was one since an instant. */
  static Optional<Change> changedSince(Services services, Instant since) {
    return services.teachers.setting(CHANGED)
        .map(text -> text.split(" ", 2))
        .map(text -> new Change(text[1], Instant.parse(text[0])))
        .filter(change -> !change.at.isBefore(since));
  }

  /** Waits for a look that is going on. It is not interrupted: that would close the database's file under it. */
  @Override
  public void close() {
    clock.shutdown();
    try {
      clock.awaitTermination(30, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
