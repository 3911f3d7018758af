package fewermore.store;

import fewermore.store.disk.BlockFile;
import fewermore.store.disk.Damaged;
import fewermore.store.disk.Disk;
import fewermore.store.disk.KeptFilePath;
import fewermore.store.disk.NotTaken;
import fewermore.store.disk.StoreState;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import javax.sql.DataSource;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.h2.mvstore.MVStore;
import org.h2.mvstore.MVStoreException;

/**
 * Rows in H2, in one file of the data folder.
 *
 * <p>H2 does not force data to disk at a commit. Under it lies a {@link BlockFile}; {@link #keep} waits for a flush of
 * it that began after the commit, shared by all who wait ({@link GroupedForce}).
 */
final class FolderKeeping implements Keeping {
  private static final System.Logger LOG = System.getLogger(FolderKeeping.class.getName());
  /** With less room than this nothing more is taken: what was taken has to get to its place. */
  private static final long LEAST_ROOM = 24L << 20;

  /** More hands than that would only wait for each other on a laptop. */
  private static final int CONNECTIONS = 16;
  /** Of so many statements each connection keeps the plan; a save takes ten, a page of the teacher's up to thirty. */
  private static final int PLANS_KEPT = 64;
  /**
   * A result of more rows than that H2 writes to a file outside the data folder. By itself it would do so from 5,000 rows
   * in 128 MB: a child's marks of a year.
   */
  private static final int ROWS_IN_MEMORY = 20_000;

  /** What H2's store takes for never: less than no delay. */
  private static final int BY_ITSELF_NEVER = -1;
  /**
   * So long a force waits for transactions under way, and those who come meanwhile wait for it. Longer than any while
   * children work: what is on disk then holds no half of a transaction.
   */
  private static final long CALM_MILLIS = 10_000;

  /** A file smaller than this is left as it is, however little of it lives. */
  private static final long MUCH_ROOM = 128L << 20;
  /** So much larger than when it was last in order the file may become before it is written anew. */
  private static final int GROWN = 4;
  private static final Duration QUIET = Duration.ofMinutes(2);
  private static final Duration WAIT_TO_BE_ALONE = Duration.ofSeconds(30);

  private final Path folder;
  private final FolderLock lock;
  private final Disk disk;
  /** Held shared by whoever uses the pool, alone by {@link #rewrite}. */
  private final ReadWriteLock using = new ReentrantReadWriteLock();
  /** Held shared by a transaction that writes, alone while a line is drawn under what is written. */
  private final ReadWriteLock settling = new ReentrantReadWriteLock();
  private volatile BlockFile file;
  private volatile FairConnections pool;
  private final GroupedForce force;
  private volatile long sizeInOrder;
  /** The file could not be opened again: only the next start can. */
  private volatile boolean gone;

  private FolderKeeping(Path folder, Disk disk, FolderLock lock, BlockFile file, FairConnections pool) {
    this.folder = folder;
    this.disk = disk;
    this.lock = lock;
    this.file = file;
    this.pool = pool;
    this.sizeInOrder = file.size();
    this.force = new GroupedForce(this::forceAll);
  }

  /** {@link Database#open(Path, Disk, Database.BeforeMigration)}. */
  static FolderKeeping open(Path data, Disk disk, Database.BeforeMigration before) {
    FolderLock lock = FolderLock.take(data);
    BlockFile file = null;
    FairConnections pool = null;
    try {
      disk.delete(anew(data));
      file = BlockFile.open(Database.dataFile(data), disk);
      KeptFilePath.put(Database.dataFile(data), file);
      pool = pool(url(data));
      store(pool);
      Database.migrate(pool, before);
      store(pool).commit();
      file.flush();
      return new FolderKeeping(data, disk, lock, file, pool);
    } catch (Damaged e) {
      abandon(data, lock, file, pool);
      throw new DamagedData(data, e.getMessage(), e.blocks(), e.of());
    } catch (SQLException | IOException e) {
      abandon(data, lock, file, pool);
      throw new CannotOpen("The data in " + data + " can't be opened (" + Database.firstLine(e.getMessage())
          + "). Nothing was changed. Keep the folder, and start with another one: --data");
    } catch (RuntimeException e) {
      abandon(data, lock, file, pool);
      throw e;
    }
  }

  /**
   * H2 is asked to write all that is committed, and a line is drawn while it writes nothing and no transaction is under
   * way; then the block file brings what is above the line to disk. Without the line a chunk of H2's could be on disk in
   * part, or whole and not yet named at the file's beginning, and H2's recovery might take an older one. With a
   * transaction under way H2 writes some of its tables as they were before and others as they are after: the next start
   * then finds half of it.
   */
  private void forceAll() throws SQLException, IOException, InterruptedException {
    MVStore store = store(pool);
    boolean calm = settling.writeLock().tryLock(CALM_MILLIS, TimeUnit.MILLISECONDS);
    try {
      store.commit();
      store.executeFilestoreOperation(file::seal);
    } finally {
      if (calm) {
        settling.writeLock().unlock();
      }
    }
    file.flushSealed();
  }

  /**
   * What H2 keeps its pages in. By itself it would write at every commit, or in the background; here it writes when
   * {@link #forceAll} asks, once for all who wait.
   */
  private static MVStore store(FairConnections pool) throws SQLException {
    try (var connection = pool.getConnection()) {
      var session = (SessionLocal) connection.unwrap(JdbcConnection.class).getSession();
      MVStore store = session.getDatabase().getStore().getMvStore();
      if (store.getAutoCommitDelay() != BY_ITSELF_NEVER) {
        // 0 first: that waits for the end of what writes in the background.
        store.setAutoCommitDelay(0);
        store.setAutoCommitDelay(BY_ITSELF_NEVER);
        // Where the newest chunk lies in the room of an older one, H2's recovery takes the one before the newest: of
        // that simulated power cuts lost the last acknowledged work. Room is used again when the app closes.
        store.setRetentionTime(Integer.MAX_VALUE);
      }
      return store;
    }
  }

  private static String url(Path data) {
    return "jdbc:h2:" + KeptFilePath.PREFIX + data.resolve(Database.FILE);
  }

  private static FairConnections pool(String url) {
    return new FairConnections(() -> PlainConnection.to(url + ";MODE=PostgreSQL;LOCK_TIMEOUT=10000;DB_CLOSE_ON_EXIT=FALSE"
        + ";QUERY_CACHE_SIZE=" + PLANS_KEPT + ";MAX_MEMORY_ROWS=" + ROWS_IN_MEMORY), CONNECTIONS);
  }

  private static void abandon(Path data, FolderLock lock, BlockFile file, FairConnections pool) {
    if (pool != null) {
      shutDown(pool, "SHUTDOWN IMMEDIATELY");
    }
    KeptFilePath.remove(Database.dataFile(data));
    Database.closeQuietly(file);
    Database.closeQuietly(lock);
  }

  private static void shutDown(FairConnections pool, String how) {
    try (var connection = pool.getConnection(); var statement = connection.createStatement()) {
      statement.execute(how);
    } catch (SQLException e) {
      LOG.log(System.Logger.Level.DEBUG, "the database did not close in good order");
    } finally {
      pool.giveUp();
    }
  }

  @Override
  public Connection connection() throws SQLException {
    return pool.getConnection();
  }

  @Override
  public String where() {
    return folder.toString();
  }

  @Override
  public DataSource source() {
    return pool;
  }

  @Override
  public Lock use() {
    return using.readLock();
  }

  @Override
  public Lock transaction() {
    return settling.readLock();
  }

  @Override
  public void keep() {
    force.await();
  }

  @Override
  public StoreState why(Throwable cause) {
    return !gone && cause instanceof NotTaken taken ? Stops.of(folder, taken) : Stops.forceFailed();
  }

  @Override
  public StoreState lost(Throwable problem) {
    return StoreState.RUNNING;
  }

  @Override
  public String takesAgain() {
    return "The disk takes work again. Tablets send what they kept.";
  }

  @Override
  public StoreState look(boolean running) {
    StoreState found = Stops.look(folder, LEAST_ROOM);
    if (found.running()) {
      using.readLock().lock();
      try {
        force.await();
      } catch (NotOnDisk e) {
        return why(e.getCause());
      } finally {
        using.readLock().unlock();
      }
    }
    return found;
  }

  @Override
  public boolean rewrite() {
    if (!alone(WAIT_TO_BE_ALONE)) {
      using.writeLock().lock();
    }
    try {
      return rewriteAlone();
    } finally {
      using.writeLock().unlock();
    }
  }

  /** Waits without being waited for: a lock that is queued for would hold up every save behind a long backup. */
  private boolean alone(Duration atMost) {
    long until = System.nanoTime() + atMost.toNanos();
    while (!using.writeLock().tryLock()) {
      if (System.nanoTime() - until >= 0 || Thread.currentThread().isInterrupted()) {
        return false;
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
    return true;
  }

  /**
   * Room in the file is not used again while the app runs, so a long day makes it many times larger than what lives in
   * it. When it is, and nobody has written for a while, it is written anew.
   */
  @Override
  public boolean disordered(Duration quiet) {
    return file.size() > Math.max(MUCH_ROOM, GROWN * sizeInOrder) && quiet.compareTo(QUIET) > 0;
  }

  @Override
  public void putInOrder() {
    if (!alone(Duration.ZERO)) {
      return;
    }
    try {
      rewriteAlone();
    } finally {
      using.writeLock().unlock();
    }
  }

  private boolean rewriteAlone() {
    Path path = Database.dataFile(folder);
    try {
      shutDown(pool, "SHUTDOWN");
      KeptFilePath.remove(path);
      boolean anew = closeAndCompact(path);
      file = BlockFile.open(path, disk);
      KeptFilePath.put(path, file);
      pool = pool(url(folder));
      store(pool).commit();
      file.flush();
      sizeInOrder = file.size();
      return anew;
    } catch (SQLException | IOException | MVStoreException e) {
      gone = true;
      throw new NotOnDisk("The data file could not be opened again: " + Database.firstLine(e.getMessage()), e);
    }
  }

  /** The copy is on disk before anything of the old file goes; then it takes the old one's place at once. */
  private boolean closeAndCompact(Path path) {
    Path anew = anew(folder);
    try {
      file.close();
      disk.delete(anew);
      MVStore.compact(path.toString(), anew.toString(), false, null);
      try (Disk.OpenFile made = disk.open(anew)) {
        made.force();
      }
      BlockFile.forget(path, disk);
      disk.replace(anew, path);
      disk.forceFolder(folder);
      return true;
    } catch (IOException | MVStoreException e) {
      LOG.log(System.Logger.Level.WARNING, "the data file could not be written anew: "
          + Database.firstLine(e.getMessage()));
      return false;
    }
  }

  /** Where {@link #rewrite} writes; what a crash left there is removed at the next start. */
  private static Path anew(Path folder) {
    return folder.resolve(Database.FILE + ".mv.db.anew");
  }

  @Override
  public long forces() {
    return file.forces();
  }

  @Override
  public void close() {
    shutDown(pool, "SHUTDOWN");
    KeptFilePath.remove(Database.dataFile(folder));
    try {
      file.close();
    } catch (IOException e) {
      LOG.log(System.Logger.Level.WARNING, "the data were not put in order at the end: "
          + Database.firstLine(e.getMessage())
          + ". What was acknowledged is on disk; the next start puts it in order.");
    } finally {
      Database.closeQuietly(lock);
    }
  }
}
