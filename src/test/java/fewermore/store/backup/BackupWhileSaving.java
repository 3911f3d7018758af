package fewermore.store.backup;

import fewermore.store.Database;
import fewermore.store.SchoolDay;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Backups while ten children hand in: is each consistent, and how long was the longest save? Then how long a class-year
 * or a school-year takes. Run by {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test
 * -Dmain.class=fewermore.store.backup.BackupWhileSaving -Dargs=10} (backups), or with {@code -Dargs="year 40320"}.
 */
public final class BackupWhileSaving {
  /**
   * What was found.
   *
   * @param consistent backups in which every hand-in has all its marks and all acknowledged before it began is there
   * @param longestMillis the longest save
   */
  public record Outcome(int backups, int consistent, long saves, long longestMillis, long p99Millis) {}

  private BackupWhileSaving() {}

  public static void main(String[] arguments) throws Exception {
    if (arguments.length > 0 && arguments[0].equals("year")) {
      year(Integer.parseInt(arguments[1]));
    } else {
      System.out.println(run(arguments.length == 0 ? 10 : Integer.parseInt(arguments[0])));
    }
    System.exit(0);
  }

  /** @param backups how many are made, one after the other, while ten children save about six times a second each */
  public static Outcome run(int backups) throws Exception {
    Path data = Files.createTempDirectory("fewermore-saving");
    int consistent = 0;
    List<Long> nanos = new ArrayList<>();
    AtomicLong saves = new AtomicLong();
    try (Database database = Database.open(data)) {
      SchoolDay day = new SchoolDay(database, 10, false, "w");
      for (int child = 0; child < 10; child++) {
        day.handInMany(child, "before" + child, 200);
      }
      Set<String> acknowledged = ConcurrentHashMap.newKeySet();
      AtomicBoolean over = new AtomicBoolean();
      List<Thread> children = new ArrayList<>();
      for (int child = 0; child < 10; child++) {
        int mine = child;
        Thread thread = new Thread(() -> {
          for (int seq = 1; !over.get(); seq++) {
            long start = System.nanoTime();
            acknowledged.add(day.handIn(mine, "while" + mine, seq));
            long took = System.nanoTime() - start;
            synchronized (nanos) {
              nanos.add(took);
            }
            saves.incrementAndGet();
            try {
              Thread.sleep(160);
            } catch (InterruptedException e) {
              return;
            }
          }
        });
        thread.start();
        children.add(thread);
      }
      Backups all = new Backups(data);
      for (int round = 0; round < backups; round++) {
        Set<String> before = Set.copyOf(acknowledged);
        BackupFile backup = all.make(database, "asked", null, Instant.now(), Progress.NONE);
        try (Scratch scratch = Scratch.from(backup, null, data.resolve("looked-at"), Progress.NONE)) {
          consistent += isConsistent(scratch.connection, before) ? 1 : 0;
        }
      }
      over.set(true);
      for (Thread child : children) {
        child.join();
      }
    }
    remove(data);
    nanos.sort(null);
    return new Outcome(backups, consistent, saves.get(), nanos.get(nanos.size() - 1) / 1_000_000,
        nanos.get(nanos.size() * 99 / 100) / 1_000_000);
  }

  private static boolean isConsistent(Connection connection, Set<String> before) throws Exception {
    Set<String> left = ConcurrentHashMap.newKeySet();
    left.addAll(before);
    try (Statement statement = connection.createStatement()) {
      try (ResultSet rows = statement.executeQuery("""
          SELECT COUNT(*)
            FROM revision r
           WHERE (SELECT COUNT(*)
                    FROM mark m
                   WHERE m.work_id = r.work_id AND m.page = r.page AND m.seq = r.seq) <> 4""")) {
        rows.next();
        if (rows.getLong(1) != 0) {
          return false;
        }
      }
      try (ResultSet rows = statement.executeQuery("SELECT work_id, page, seq FROM revision")) {
        while (rows.next()) {
          left.remove(rows.getString(1) + "/" + rows.getString(2) + "/" + rows.getInt(3));
        }
      }
    }
    return left.isEmpty();
  }

  /** A year of a class (40,320 pieces) or of a school (864,000): backed up, verified and restored. */
  private static void year(int pieces) throws Exception {
    Path data = Files.createTempDirectory("fewermore-year");
    BackupFile backup;
    try (Database database = Database.open(data)) {
      SchoolDay day = new SchoolDay(database, 28, false, "y");
      int each = 500;
      for (int done = 0; done < pieces; done += each) {
        day.handInMany(done / each, "page" + done, Math.min(each, pieces - done));
      }
      long start = System.nanoTime();
      backup = new Backups(data).make(database, "asked", null, Instant.now(), Progress.NONE);
      System.out.printf("%,d pieces: backed up and verified in %.1f s, %.1f MB%n", backup.pieces(),
          (System.nanoTime() - start) / 1e9, backup.bytes() / 1e6);
    }
    long start = System.nanoTime();
    Database.open(data).close();
    System.out.printf("checked and opened (%.0f MB on disk) in %.1f s%n", Files.size(Database.dataFile(data)) / 1e6,
        (System.nanoTime() - start) / 1e9);
    start = System.nanoTime();
    Restore.Done done = Restore.run(Files.createDirectory(data.resolve("other")), backup, null, Instant.now(),
        newer -> { }, Progress.NONE);
    System.out.printf("restored %,d pieces in %.1f s%n", done.pieces(), (System.nanoTime() - start) / 1e9);
    remove(data);
  }

  private static void remove(Path folder) throws Exception {
    try (var all = Files.walk(folder)) {
      for (Path each : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
        Files.deleteIfExists(each);
      }
    }
  }
}
