package fewermore.store;

import fewermore.store.disk.StoreState;
import fewermore.store.disk.StoreState.Kind;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.time.Duration;
import java.util.HexFormat;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import javax.sql.DataSource;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.argument.AbstractArgumentFactory;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.config.ConfigRegistry;
import org.postgresql.ds.PGConnectionPoolDataSource;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * Rows in a schema of its own of a PostgreSQL that many laptops share ({@link Installation}). No statement of this app
 * names another schema, so no laptop reads or overwrites what is another's, and each is brought up to date for itself.
 *
 * <p>One app works on a schema at a time: it holds an advisory lock on a connection of its own, by which it also sees
 * that the server is there. A commit of PostgreSQL's is on the server's disk when it returns ({@code fsync} is looked at,
 * {@code synchronous_commit} asked for). When a connection fails, all are given up, and the database is tried again.
 */
final class SchoolKeeping implements Keeping {
  /** With the one that holds the lock four a laptop: 24 laptops fit into PostgreSQL's usual hundred. */
  static final int CONNECTIONS = 3;
  private static final int OLDEST = 12;
  private static final int CONNECT_SECONDS = 5;
  /** Longer than any single statement of a class's day; a pulled cable is noticed sooner, by the lock's connection. */
  private static final int ANSWER_SECONDS = 30;
  private static final int LOOK_SECONDS = 3;
  /** A laptop that lost its power holds its lock until the server notices: see the keepalives. */
  private static final Duration GHOST = Duration.ofSeconds(35);
  /** A program that was killed leaves its lock at once, or nearly. */
  private static final Duration KILLED = Duration.ofSeconds(2);
  /** Who holds the lock asks after it more often than this: see {@link Database}. */
  private static final int ALIVE_SECONDS = 12;
  private static final long TRY_AGAIN_MILLIS = 500;

  private static final String OPTIONS = "-c synchronous_commit=on -c lock_timeout=10s"
      + " -c idle_in_transaction_session_timeout=60s"
      + " -c tcp_keepalives_idle=10 -c tcp_keepalives_interval=5 -c tcp_keepalives_count=3";

  private final School school;
  private final Installation installation;
  private final FolderLock folderLock;
  private final String sessions;
  private final Lock use = new ReentrantReadWriteLock().readLock();
  private final Lock transaction = new ReentrantReadWriteLock().readLock();
  private final ReentrantLock looking = new ReentrantLock();
  private volatile FairConnections pool;
  private Connection holding;
  private boolean heldByTheLiving;

  private SchoolKeeping(School school, Installation installation, FolderLock folderLock) {
    this.school = school;
    this.installation = installation;
    this.folderLock = folderLock;
    this.sessions = "fewermore " + HexFormat.of().toHexDigits(System.nanoTime() ^ ProcessHandle.current().pid() << 40);
    this.pool = newPool();
  }

  /** {@link Database#open(Path, School, Database.BeforeMigration)}. */
  static SchoolKeeping open(Path data, School school, Database.BeforeMigration before) {
    FolderLock folderLock = FolderLock.take(data);
    SchoolKeeping keeping = null;
    try {
      keeping = new SchoolKeeping(school, Installation.of(data), folderLock);
      keeping.begin();
      Database.migrate(keeping.pool, before);
      return keeping;
    } catch (SQLException e) {
      abandon(keeping, folderLock);
      throw new CannotOpen(cannot(school, e));
    } catch (RuntimeException e) {
      abandon(keeping, folderLock);
      SQLException cause = sql(e);
      throw e instanceof CannotOpen || cause == null ? e : new CannotOpen(cannot(school, cause));
    }
  }

  private static void abandon(SchoolKeeping keeping, FolderLock folderLock) {
    if (keeping != null) {
      keeping.close();
    } else {
      Database.closeQuietly(folderLock);
    }
  }

  private void begin() throws SQLException {
    long began = System.nanoTime();
    while (!hold()) {
      Duration waited = Duration.ofNanos(System.nanoTime() - began);
      if (waited.compareTo(GHOST) > 0 || waited.compareTo(KILLED) > 0 && heldByTheLiving) {
        throw new CannotOpen("Another Fewermore works on the same classes of the school's database " + school.name()
            + ". Stop that one. If this folder was copied from another laptop, delete the file " + Installation.FILE
            + " here, and this laptop gets classes of its own.");
      }
      pause();
    }
    try (Statement statement = holding.createStatement()) {
      if (holding.getMetaData().getDatabaseMajorVersion() < OLDEST) {
        throw new CannotOpen("The school's database is PostgreSQL " + holding.getMetaData().getDatabaseProductVersion()
            + "; " + OLDEST + " or newer is needed. Ask whoever looks after it.");
      }
      if (!"on".equals(one(statement, "SHOW fsync"))) {
        throw new CannotOpen("The school's database does not bring work to its disk before it says so (fsync is off): a power"
            + " cut there would lose it. Ask whoever looks after it to set fsync to on.");
      }
      statement.execute("CREATE SCHEMA IF NOT EXISTS " + installation.schema());
    }
  }

  private static String one(Statement statement, String query) throws SQLException {
    try (ResultSet row = statement.executeQuery(query)) {
      row.next();
      return row.getString(1);
    }
  }

  private static void pause() {
    try {
      Thread.sleep(TRY_AGAIN_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CannotOpen("Fewermore was stopped while it waited for the school's database.");
    }
  }

  private FairConnections newPool() {
    return new FairConnections(set(new PGConnectionPoolDataSource())::getPooledConnection, CONNECTIONS);
  }

  private <S extends org.postgresql.ds.common.BaseDataSource> S set(S source) {
    source.setUrl(school.url());
    if (!school.user().isEmpty()) {
      source.setUser(school.user());
    }
    if (!school.password().isEmpty()) {
      source.setPassword(school.password());
    }
    source.setCurrentSchema(installation.schema());
    source.setConnectTimeout(CONNECT_SECONDS);
    source.setLoginTimeout(2 * CONNECT_SECONDS);
    source.setSocketTimeout(ANSWER_SECONDS);
    source.setTcpKeepAlive(true);
    source.setApplicationName(sessions);
    source.setOptions(OPTIONS);
    return source;
  }

  /** Takes the lock on a connection of its own. False when another app has it. */
  private boolean hold() throws SQLException {
    Connection made = set(new PGSimpleDataSource()).getConnection();
    boolean held = false;
    try {
      held = locked(made) || endOwnGhosts(made) && locked(made);
      heldByTheLiving = !held && askedLately(made);
    } finally {
      if (held) {
        Database.closeQuietly(holding);
        holding = made;
      } else {
        made.close();
      }
    }
    return held;
  }

  private boolean locked(Connection connection) throws SQLException {
    try (PreparedStatement lock = connection.prepareStatement("SELECT pg_try_advisory_lock(?)")) {
      lock.setLong(1, installation.lock());
      try (ResultSet row = lock.executeQuery()) {
        return row.next() && row.getBoolean(1);
      }
    }
  }

  /** Whether whoever holds the lock has asked anything lately: a laptop that lost its power has not. */
  private boolean askedLately(Connection connection) throws SQLException {
    try (PreparedStatement holder = connection.prepareStatement("""
        SELECT a.pid
          FROM pg_locks l
          JOIN pg_database d ON d.oid = l.database
          JOIN pg_stat_activity a ON a.pid = l.pid
         WHERE d.datname = current_database()
           AND l.locktype = 'advisory'
           AND l.granted
           AND (l.classid::bigint << 32 | l.objid::bigint) = ?
           AND a.state_change > clock_timestamp() - make_interval(secs => ?)""")) {
      holder.setLong(1, installation.lock());
      holder.setInt(2, ALIVE_SECONDS);
      try (ResultSet row = holder.executeQuery()) {
        return row.next();
      }
    }
  }

  /** After a cut of the network the server may still hold sessions of this very program, with the lock and with rows. */
  private boolean endOwnGhosts(Connection connection) throws SQLException {
    try (PreparedStatement end = connection.prepareStatement("""
        SELECT pg_terminate_backend(pid)
          FROM pg_stat_activity
         WHERE application_name = ?
           AND pid <> pg_backend_pid()""")) {
      end.setString(1, sessions);
      boolean some = false;
      try (ResultSet rows = end.executeQuery()) {
        while (rows.next()) {
          some = true;
        }
      }
      return some;
    }
  }

  @Override
  public Connection connection() throws SQLException {
    return pool.getConnection();
  }

  @Override
  public String where() {
    return school.name() + ", " + installation.schema();
  }

  @Override
  public DataSource source() {
    return pool;
  }

  /** A text with a NUL, which no keyboard writes and PostgreSQL does not take, is kept without it. */
  @Override
  public Jdbi prepare(Jdbi jdbi) {
    return jdbi.registerArgument(new AbstractArgumentFactory<String>(Types.VARCHAR) {
      @Override
      protected Argument build(String text, ConfigRegistry registry) {
        String kept = text.indexOf('\0') < 0 ? text : text.replace("\0", "");
        return (at, statement, context) -> statement.setString(at, kept);
      }
    });
  }

  @Override
  public Lock use() {
    return use;
  }

  @Override
  public Lock transaction() {
    return transaction;
  }

  /** A commit returns when it is on the server's disk. */
  @Override
  public void keep() {}

  @Override
  public StoreState why(Throwable cause) {
    return lost(cause);
  }

  /** By the classes of SQLSTATE: PostgreSQL's documentation, "PostgreSQL Error Codes". */
  @Override
  public StoreState lost(Throwable problem) {
    SQLException cause = sql(problem);
    String code = cause == null || cause.getSQLState() == null ? "" : cause.getSQLState();
    if (cause == null || cause.getErrorCode() == FairConnections.ALL_IN_USE) {
      return StoreState.RUNNING;
    }
    if (code.equals("53300")) {
      return Stops.tooMany(school);
    }
    if (code.startsWith("08") || code.startsWith("57P") || code.startsWith("28") || code.equals("3D000")) {
      giveUp();
      return Stops.lost(school);
    }
    if (code.startsWith("53") || code.startsWith("58") || code.equals("25006")) {
      return Stops.schoolTakesNothing(school);
    }
    return StoreState.RUNNING;
  }

  private void giveUp() {
    FairConnections old = pool;
    pool = newPool();
    old.giveUp();
  }

  @Override
  public String takesAgain() {
    return "The school's database takes work again. Tablets send what they kept.";
  }

  @Override
  public StoreState look(boolean running) {
    looking.lock();
    try {
      if (holding != null && holding.isValid(LOOK_SECONDS)) {
        return running || takes() ? StoreState.RUNNING : Stops.schoolTakesNothing(school);
      }
      Database.closeQuietly(holding);
      holding = null;
      // What the pool holds is of the same server, and as dead.
      giveUp();
      return hold() ? StoreState.RUNNING : Stops.elsewhere(school);
    } catch (SQLException e) {
      StoreState found = lost(e);
      return found.running() ? Stops.lost(school) : found;
    } finally {
      looking.unlock();
    }
  }

  /** Changes nothing, but has to be written. */
  private boolean takes() throws SQLException {
    try (Statement statement = holding.createStatement()) {
      statement.executeUpdate("UPDATE setting SET content = content WHERE name = 'secret'");
      return true;
    } catch (SQLException e) {
      if (lost(e).kind() == Kind.LOST) {
        throw e;
      }
      return false;
    }
  }

  private static SQLException sql(Throwable problem) {
    for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException found) {
        return found;
      }
    }
    return null;
  }

  /** Why it can't be opened, and one thing to try. The driver's own words may name the user, never the password. */
  private static String cannot(School school, SQLException problem) {
    String code = problem.getSQLState() == null ? "" : problem.getSQLState();
    String database = "The school's database " + school.name();
    if (code.startsWith("28")) {
      return database + " does not let this laptop in. Check FEWERMORE_SCHOOL_USER and FEWERMORE_SCHOOL_PASSWORD, or the"
          + " file of --school-file.";
    }
    if (code.equals("3D000")) {
      return database + " does not exist on that server. Check the name at the end of the address, or ask whoever looks after"
          + " the server to make it.";
    }
    if (code.equals("42501")) {
      return database + " does not let this user make a schema. Ask whoever looks after it for"
          + " GRANT CREATE ON DATABASE … TO …";
    }
    if (code.equals("53300")) {
      return database + " takes no more connections; each laptop uses up to " + (CONNECTIONS + 1)
          + ". Ask whoever looks after it to raise max_connections.";
    }
    if (code.startsWith("08") || code.startsWith("57P")) {
      return database + " can't be reached. See that this laptop is in the school's network, and try again; without it, start"
          + " without --school: then with classes of this laptop's own.";
    }
    return database + " can't be used (" + Database.firstLine(problem.getMessage()) + "). Nothing was changed.";
  }

  /** The school's own backups hold what was deleted as long as they hold it; here the server uses the room again. */
  @Override
  public boolean rewrite() {
    return true;
  }

  @Override
  public boolean disordered(Duration quiet) {
    return false;
  }

  @Override
  public void putInOrder() {}

  @Override
  public long forces() {
    return 0;
  }

  @Override
  public void close() {
    pool.giveUp();
    Database.closeQuietly(holding);
    Database.closeQuietly(folderLock);
  }
}
