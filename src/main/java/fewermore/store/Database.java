package fewermore.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.function.Consumer;
import java.util.function.Function;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.h2.jdbcx.JdbcConnectionPool;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The database file of one data folder: opened once, migrated, and closed cleanly.
 *
 * <p>H2 does not force data to disk at a commit. {@link #write} therefore commits and then waits for a
 * {@code CHECKPOINT SYNC}, shared by all who wait ({@link GroupedForce}); only then does it return.
 */
public final class Database implements AutoCloseable {
  private static final String FILE = "fewermore";
  /** H2's code for a database file that another process holds. */
  private static final int IN_USE = 90020;

  private final JdbcConnectionPool pool;
  private final Jdbi jdbi;
  private final GroupedForce force;

  private Database(JdbcConnectionPool pool) {
    this.pool = pool;
    this.jdbi = Jdbi.create(pool);
    this.force = new GroupedForce(() -> {
      try (var connection = pool.getConnection(); var statement = connection.createStatement()) {
        statement.execute("CHECKPOINT SYNC");
      }
    });
  }

  /**
   * Opens, or makes, the database in a folder and brings its tables up to date.
   *
   * @throws CannotOpen with a sentence for the teacher when the folder can't be used, another Fewermore
   *     has it open, or the data come from a newer Fewermore
   */
  public static Database open(Path folder) {
    Path data = folder.toAbsolutePath().normalize();
    boolean made = !Files.exists(data.resolve(FILE + ".mv.db"));
    try {
      Files.createDirectories(data);
      Path probe = Files.createTempFile(data, "writable", ".tmp");
      Files.delete(probe);
    } catch (IOException e) {
      throw new CannotOpen("I can't write in the folder " + data
          + ". Choose another folder with --data, or allow writing there.");
    }
    JdbcConnectionPool pool = JdbcConnectionPool.create(
        "jdbc:h2:file:" + data.resolve(FILE) + ";MODE=PostgreSQL;WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE", "sa", "");
    pool.setMaxConnections(32);
    try {
      pool.getConnection().close();
      migrate(pool);
    } catch (SQLException e) {
      pool.dispose();
      if (e.getErrorCode() == IN_USE) {
        throw new CannotOpen("Fewermore is already running on the data in " + data
            + ". Use the one that runs, or stop it first (Ctrl-C in its window).");
      }
      throw new CannotOpen("The data in " + data + " can't be opened (" + firstLine(e.getMessage())
          + "). Nothing was changed. Keep the folder, and start with another one: --data");
    } catch (CannotOpen e) {
      pool.dispose();
      throw e;
    }
    Database database = new Database(pool);
    if (made) {
      forceFolder(data);
    }
    return database;
  }

  private static void migrate(JdbcConnectionPool pool) {
    Flyway flyway = Flyway.configure()
        .dataSource(pool)
        .locations("classpath:db/migration")
        .ignoreMigrationPatterns("*:future")
        .load();
    for (MigrationInfo info : flyway.info().all()) {
      if (info.getState() == MigrationState.FUTURE_SUCCESS || info.getState() == MigrationState.FUTURE_FAILED) {
        throw new CannotOpen("These data were last used by a newer Fewermore (data version " + info.getVersion()
            + "). Start that newer one; this one would not understand them.");
      }
    }
    flyway.migrate();
  }

  /** The data file's name has to reach the disk as well as its content. */
  private static void forceFolder(Path folder) {
    try (var channel = java.nio.channels.FileChannel.open(folder)) {
      channel.force(true);
    } catch (IOException e) {
      // Some systems do not open folders as files; there a name is kept with its content.
      System.getLogger(Database.class.getName()).log(System.Logger.Level.DEBUG, "folder not forced", e);
    }
  }

  /** Reads; sees all that was written before. */
  public <T> T read(Function<Handle, T> reading) {
    return jdbi.inTransaction(reading::apply);
  }

  /**
   * Writes in one transaction and returns after it is on disk.
   *
   * @throws NotOnDisk when it may not be: then say nothing to anybody
   */
  public <T> T write(Function<Handle, T> writing) {
    T result;
    try {
      result = jdbi.inTransaction(writing::apply);
    } catch (org.jdbi.v3.core.JdbiException e) {
      throw new NotOnDisk("The data could not be written: " + firstLine(String.valueOf(e.getMessage())), e);
    }
    force.await();
    return result;
  }

  /** {@link #write} for what gives nothing back. */
  public void change(Consumer<Handle> writing) {
    write(handle -> {
      writing.accept(handle);
      return null;
    });
  }

  /** How many times data were forced to disk since the start: for measuring. */
  public long forces() {
    return force.forces();
  }

  @Override
  public void close() {
    try (var connection = pool.getConnection(); var statement = connection.createStatement()) {
      statement.execute("SHUTDOWN");
    } catch (SQLException e) {
      System.getLogger(Database.class.getName())
          .log(System.Logger.Level.WARNING, "the database did not close in good order: " + firstLine(e.getMessage()));
    } finally {
      pool.dispose();
    }
  }

  static OffsetDateTime utc(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }

  private static String firstLine(String message) {
    return message == null ? "no reason given" : message.lines().findFirst().orElse("");
  }
}
