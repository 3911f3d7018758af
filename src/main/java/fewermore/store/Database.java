package fewermore.store;

import fewermore.store.disk.Disk;
import fewermore.store.disk.StoreState;
import fewermore.store.disk.SystemDisk;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.h2.jdbcx.JdbcDataSource;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/**
 * The database of one app: opened once, checked, migrated, and closed cleanly. Its rows lie in the file of a data folder
 * ({@link FolderKeeping}) or, where many laptops share one, in a school's database ({@link SchoolKeeping}).
 *
 * <p>{@link #write} returns when what it wrote is on disk. While nothing is taken, {@link #write} refuses;
 * {@link #state} says why.
 */
public final class Database implements AutoCloseable {
  /** Something that has to be done before the tables of a folder are changed. */
  public interface BeforeMigration {
    /** @param from the version of the data as they are */
    void run(DataSource data, String from);
  }

  private static final System.Logger LOG = System.getLogger(Database.class.getName());
  static final String FILE = "fewermore";
  private static final long TRY_AGAIN_MILLIS = 500;
  private static final long LOOK_MILLIS = 5_000;

  private final Path folder;
  private final Keeping keeping;
  private final Jdbi jdbi;
  private final List<Consumer<StoreState>> watchers = new CopyOnWriteArrayList<>();
  private final Thread keeper;
  private final Changes changes = new Changes();
  private volatile long lastWrite = System.nanoTime();
  private volatile StoreState state = StoreState.RUNNING;
  private volatile boolean closed;

  private Database(Path folder, Keeping keeping) {
    this.folder = folder;
    this.keeping = keeping;
    this.jdbi = keeping.prepare(Jdbi.create(keeping::connection));
    this.keeper = new Thread(this::keepTrying, "disk");
    keeper.setDaemon(true);
    keeper.start();
  }

  /**
   * Opens, or makes, the database in a folder and brings its tables up to date.
   *
   * @throws DamagedData when the data are not as they were written; nothing was changed
   * @throws CannotOpen with a sentence for the teacher when the folder can't be used, another Fewermore
   *     has it open, or the data come from a newer Fewermore
   */
  public static Database open(Path folder) {
    return open(folder, new SystemDisk(), (data, from) -> {});
  }

  /** {@link #open(Path)} on a disk of one's own, with something to be done before tables change. */
  public static Database open(Path folder, Disk disk, BeforeMigration before) {
    Path data = folder.toAbsolutePath().normalize();
    return new Database(data, FolderKeeping.open(data, disk, before));
  }

  /**
   * Opens, or makes, this app's own part of a school's database. Which part that is stands in the data folder.
   *
   * @throws CannotOpen with a sentence for the teacher when the database can't be reached or used, another Fewermore
   *     works on the same part, or the data come from a newer Fewermore
   */
  public static Database open(Path folder, School school, BeforeMigration before) {
    Path data = folder.toAbsolutePath().normalize();
    return new Database(data, SchoolKeeping.open(data, school, before));
  }

  /** Whether the rows lie in a school's database, whose backups are not this app's matter. */
  public boolean inSchool() {
    return keeping instanceof SchoolKeeping;
  }

  /** Where the rows lie, for the teacher. */
  public String where() {
    return keeping.where();
  }

  /** The file the data of a folder lie in. */
  public static Path dataFile(Path folder) {
    return folder.toAbsolutePath().normalize().resolve(FILE + ".mv.db");
  }

  /** Whether a file of a data folder is one of the database's own. */
  public static boolean isDatabaseFile(Path file) {
    return file.getFileName().toString().startsWith(FILE + ".mv.db");
  }

  /** Whether a running Fewermore, this one or another, has the data of a folder open. */
  public static boolean inUse(Path folder) {
    return FolderLock.inUse(folder);
  }

  static void closeQuietly(AutoCloseable open) {
    if (open != null) {
      try {
        open.close();
      } catch (Exception e) {
        LOG.log(System.Logger.Level.DEBUG, "a file did not close", e);
      }
    }
  }

  private static Flyway flyway(DataSource data, String target) {
    return Flyway.configure()
        .dataSource(data)
        .locations("classpath:db/migration")
        .ignoreMigrationPatterns("*:future")
        .target(target)
        .load();
  }

  /** Makes or brings up to date the tables of any database, as far as a version; {@code latest} for the newest. */
  public static void migrate(DataSource data, String version) {
    flyway(data, version).migrate();
  }

  /** Whether this program knows a version of the tables. */
  public static boolean knows(String version) {
    JdbcDataSource none = new JdbcDataSource();
    none.setUrl("jdbc:h2:mem:");
    for (MigrationInfo info : flyway(none, "latest").info().all()) {
      if (info.getVersion() != null && info.getVersion().getVersion().equals(version)) {
        return true;
      }
    }
    return false;
  }

  /** The version of the tables as they are now. */
  public String version() {
    return read(handle -> handle
        .createQuery("""
            SELECT "version"
              FROM "flyway_schema_history"
             WHERE "success" = TRUE
               AND "version" IS NOT NULL
             ORDER BY "installed_rank" DESC
             LIMIT 1""")
        .mapTo(String.class)
        .one());
  }

  static void migrate(DataSource data, BeforeMigration before) {
    Flyway flyway = flyway(data, "latest");
    for (MigrationInfo info : flyway.info().all()) {
      if (info.getState() == MigrationState.FUTURE_SUCCESS || info.getState() == MigrationState.FUTURE_FAILED) {
        throw new CannotOpen("These data were last used by a newer Fewermore (data version " + info.getVersion()
            + "). Start that newer one; this one would not understand them.");
      }
    }
    MigrationInfo now = flyway.info().current();
    if (now != null && flyway.info().pending().length > 0) {
      before.run(data, now.getVersion().getVersion());
    }
    flyway.migrate();
  }

  /**
   * Reads; sees all that was written before.
   *
   * @throws NotOnDisk when the data can't be reached at present
   */
  public <T> T read(Function<Handle, T> reading) {
    refuseWhileLost();
    keeping.use().lock();
    try {
      return jdbi.inTransaction(reading::apply);
    } catch (JdbiException e) {
      lost(e);
      throw e;
    } finally {
      keeping.use().unlock();
    }
  }

  /**
   * Writes in one transaction and returns after it is on disk.
   *
   * @throws NotOnDisk when it may not be: then say nothing to anybody
   */
  public <T> T write(Function<Handle, T> writing) {
    return write(writing, changes::committed);
  }

  /** @param works the only works this touches, by their ids: for those who keep what they read */
  <T> T write(Set<String> works, Function<Handle, T> writing) {
    return write(writing, () -> changes.committed(works));
  }

  private <T> T write(Function<Handle, T> writing, Runnable committed) {
    refuseWhileStopped();
    keeping.use().lock();
    try {
      T result = commit(writing);
      committed.run();
      lastWrite = System.nanoTime();
      keeping.keep();
      return result;
    } catch (JdbiException e) {
      lost(e);
      throw new NotOnDisk("The data could not be written: " + firstLine(String.valueOf(e.getMessage())), e);
    } catch (NotOnDisk e) {
      stopped(e.getCause());
      refuseWhileStopped();
      throw e;
    } finally {
      keeping.use().unlock();
    }
  }

  private <T> T commit(Function<Handle, T> writing) {
    keeping.transaction().lock();
    try {
      return jdbi.inTransaction(writing::apply);
    } finally {
      keeping.transaction().unlock();
    }
  }

  /**
   * Writes the data file anew, with nothing in it but what is there now: what was deleted before is in the file no
   * longer. All who read or write wait meanwhile. H2 keeps old pages until it needs their room; only a compacted copy
   * in its place has none of them. A crash or a power cut on the way leaves the old file or the new one, each whole.
   *
   * @return false when it could not be written anew, for example for want of room: then the old file goes on
   * @throws NotOnDisk when no file could be opened again
   */
  public boolean rewrite() {
    try {
      return keeping.rewrite();
    } catch (NotOnDisk e) {
      stopped(e.getCause());
      throw e;
    }
  }

  /** Writes the file anew if nobody uses it just now; by itself the database does so in a pause of the class. */
  public void putInOrder() {
    try {
      keeping.putInOrder();
    } catch (NotOnDisk e) {
      stopped(e.getCause());
      LOG.log(System.Logger.Level.WARNING, e.getMessage());
    }
  }

  Changes changes() {
    return changes;
  }

  /** {@link #write} for what gives nothing back. */
  public void change(Consumer<Handle> writing) {
    write(handle -> {
      writing.accept(handle);
      return null;
    });
  }

  /** What reads without {@link #read}'s transaction, as a backup's snapshot does. It writes nothing. */
  @FunctionalInterface
  public interface Reading<T, E extends Exception> {
    T from(DataSource source) throws E;
  }

  /** Reads without {@link #read}'s transaction; the file is not written anew meanwhile. */
  public <T, E extends Exception> T readWhole(Reading<T, E> reading) throws E {
    refuseWhileLost();
    keeping.use().lock();
    try {
      return reading.from(keeping.source());
    } finally {
      keeping.use().unlock();
    }
  }

  /** The folder the data lie in. */
  public Path folder() {
    return folder;
  }

  /** Whether what children hand in is kept at present. */
  public StoreState state() {
    return state;
  }

  /** Is told, from a thread of the database, whenever {@link #state} changes. */
  public void watch(Consumer<StoreState> watcher) {
    watchers.add(watcher);
  }

  private void refuseWhileStopped() {
    StoreState now = state;
    if (!now.running()) {
      throw new NotOnDisk(now.whole(), null);
    }
  }

  /** Where the database itself is away, nothing can be read either. */
  private void refuseWhileLost() {
    StoreState now = state;
    if (now.kind() == StoreState.Kind.LOST) {
      throw new NotOnDisk(now.whole(), null);
    }
  }

  /**
   * After a statement failed: when that was not the statement's own fault, the database is stopped until it is there
   * again. Whether a transaction that was being committed came through is then not known, so whoever kept what he read
   * reads it anew.
   */
  private void lost(JdbiException problem) {
    StoreState found = keeping.lost(problem);
    if (!found.running()) {
      changes.committed();
      change(found);
      throw new NotOnDisk(found.whole(), problem);
    }
  }

  private void stopped(Throwable cause) {
    change(keeping.why(cause));
  }

  private synchronized void change(StoreState now) {
    boolean news = state.kind() != now.kind() || now.kind() == StoreState.Kind.LOST && !state.equals(now);
    if (!news || state.kind() == StoreState.Kind.FORCE_FAILED) {
      return;
    }
    state = now;
    LOG.log(System.Logger.Level.WARNING, now.running() ? keeping.takesAgain() : now.whole());
    watchers.forEach(watcher -> watcher.accept(now));
  }

  /** Tries again while the disk takes nothing, and looks ahead while it does. */
  private void keepTrying() {
    while (!closed && state.kind() != StoreState.Kind.FORCE_FAILED) {
      try {
        Thread.sleep(state.running() ? LOOK_MILLIS : TRY_AGAIN_MILLIS);
      } catch (InterruptedException e) {
        return;
      }
      if (closed) {
        return;
      }
      StoreState found = keeping.look(state.running());
      change(found);
      if (found.running() && keeping.disordered(Duration.ofNanos(System.nanoTime() - lastWrite))) {
        putInOrder();
      }
    }
  }

  /** How many times data were forced to disk since the start: for measuring. */
  public long forces() {
    return keeping.forces();
  }

  @Override
  public void close() {
    synchronized (this) {
      if (closed) {
        return;
      }
      closed = true;
    }
    keeper.interrupt();
    keeping.close();
  }

  static OffsetDateTime utc(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }

  static String firstLine(String message) {
    return message == null ? "no reason given" : message.lines().findFirst().orElse("");
  }
}