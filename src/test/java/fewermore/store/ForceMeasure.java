package fewermore.store;

import fewermore.store.disk.BlockFile;
import fewermore.store.disk.KeptFilePath;
import fewermore.store.disk.SystemDisk;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.h2.jdbcx.JdbcConnectionPool;

/**
 * Forces a save and saves a second, with one writer and with thirty: a force of H2's own after each commit, shared
 * by all who wait, beside the journaled file. Run by {@code mvn -q test-compile exec:exec
 * -Dexec.classpathScope=test -Dmain.class=fewermore.store.ForceMeasure}.
 */
public final class ForceMeasure {
  private ForceMeasure() {}

  public static void main(String[] arguments) throws Exception {
    for (int writers : new int[] {1, 30}) {
      schoolDay(writers, 600);
      checkpoint(writers, 600);
      journal(writers, 600);
    }
    System.exit(0);
  }

  private interface Save {
    void run(int writer, int number) throws Exception;
  }

  private static double perSecond(int writers, int saves, Save save) throws Exception {
    List<Thread> threads = new ArrayList<>();
    long start = System.nanoTime();
    for (int writer = 0; writer < writers; writer++) {
      int mine = writer;
      Thread thread = new Thread(() -> {
        try {
          for (int number = 1; number <= saves / writers; number++) {
            save.run(mine, number);
          }
        } catch (Exception e) {
          throw new IllegalStateException(e);
        }
      });
      thread.start();
      threads.add(thread);
    }
    for (Thread thread : threads) {
      thread.join();
    }
    return saves / ((System.nanoTime() - start) / 1e9);
  }

  /** The real store: a child hands in. */
  private static void schoolDay(int writers, int saves) throws Exception {
    Path folder = Files.createTempDirectory("fewermore-force");
    try (Database database = Database.open(folder)) {
      SchoolDay day = new SchoolDay(database, 30, false, "f");
      long before = database.forces();
      double speed = perSecond(writers, saves, (writer, number) -> day.handIn(writer, "page" + writer, number));
      System.out.printf("hand-ins, %d writers: %.3f forces a save, %.0f saves a second%n", writers,
          (database.forces() - before) / (double) saves, speed);
    }
    PowerCuts.remove(folder);
  }

  private static JdbcConnectionPool table(String url) throws Exception {
    JdbcConnectionPool pool = JdbcConnectionPool.create(url + ";WRITE_DELAY=0", "sa", "");
    pool.setMaxConnections(40);
    try (var connection = pool.getConnection(); var statement = connection.createStatement()) {
      statement.execute("CREATE TABLE piece (writer INT, number INT, parts VARCHAR(400), PRIMARY KEY (writer, number))");
    }
    return pool;
  }

  private static void insert(JdbcConnectionPool pool, int writer, int number) throws Exception {
    try (var connection = pool.getConnection();
        var statement = connection.prepareStatement("INSERT INTO piece VALUES (?, ?, ?)")) {
      statement.setInt(1, writer);
      statement.setInt(2, number);
      statement.setString(3, "x".repeat(200));
      statement.executeUpdate();
    }
  }

  private static void checkpoint(int writers, int saves) throws Exception {
    Path folder = Files.createTempDirectory("fewermore-force");
    JdbcConnectionPool pool = table("jdbc:h2:file:" + folder.resolve("plain"));
    GroupedForce force = new GroupedForce(() -> {
      try (var connection = pool.getConnection(); var statement = connection.createStatement()) {
        statement.execute("CHECKPOINT SYNC");
      }
    });
    report("bare inserts, H2 and CHECKPOINT SYNC", writers, saves, force, perSecond(writers, saves, (writer, number) -> {
      insert(pool, writer, number);
      force.await();
    }));
    pool.dispose();
    PowerCuts.remove(folder);
  }

  private static void journal(int writers, int saves) throws Exception {
    Path folder = Files.createTempDirectory("fewermore-force").toRealPath();
    Path file = folder.resolve("kept.mv.db");
    BlockFile blocks = BlockFile.open(file, new SystemDisk());
    KeptFilePath.put(file, blocks);
    JdbcConnectionPool pool = table("jdbc:h2:" + KeptFilePath.PREFIX + folder.resolve("kept"));
    GroupedForce force = new GroupedForce(() -> {
      try (var connection = pool.getConnection(); var statement = connection.createStatement()) {
        statement.execute("CHECKPOINT SYNC");
      }
      blocks.flush();
    });
    report("bare inserts, H2 over the journaled file", writers, saves, force, perSecond(writers, saves,
        (writer, number) -> {
          insert(pool, writer, number);
          force.await();
        }));
    pool.dispose();
    PowerCuts.remove(folder);
  }

  private static void report(String what, int writers, int saves, GroupedForce force, double speed) {
    System.out.printf("%s, %d writers: %.3f forces a save, %.0f saves a second%n", what, writers,
        force.forces() / (double) saves, speed);
  }
}
