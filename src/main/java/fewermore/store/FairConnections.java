package fewermore.store;

import java.io.PrintWriter;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLFeatureNotSupportedException;
import java.util.Deque;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.logging.Logger;
import javax.sql.ConnectionEvent;
import javax.sql.ConnectionEventListener;
import javax.sql.DataSource;
import javax.sql.PooledConnection;

/**
 * A few connections to a database, handed out in the order they were asked for; who gave one back last gives the next.
 * Never more than that exist: a server takes a fixed number from the whole school. (H2's own pool makes some more when
 * many wait, and rolls back at every turn, at which H2 forgets the plans of all statements: half of a save's time.)
 */
final class FairConnections implements DataSource, ConnectionEventListener {
  /** The error code of an exception that says that all are in use; the server itself is not the matter. */
  static final int ALL_IN_USE = 8001;
  private static final long WAIT_SECONDS = 20;

  /** Opens one more. */
  interface Making {
    PooledConnection make() throws SQLException;
  }

  private final Making another;
  private final Semaphore places;
  private final Deque<PooledConnection> idle = new ConcurrentLinkedDeque<>();
  private final Set<PooledConnection> broken = ConcurrentHashMap.newKeySet();
  private volatile boolean givenUp;

  FairConnections(Making another, int most) {
    this.another = another;
    this.places = new Semaphore(most, true);
  }

  @Override
  public Connection getConnection() throws SQLException {
    take();
    PooledConnection pooled = null;
    Connection taken = null;
    try {
      pooled = idle.pollFirst();
      if (pooled == null) {
        pooled = another.make();
      }
      taken = pooled.getConnection();
      pooled.addConnectionEventListener(this);
      return taken;
    } finally {
      if (taken == null) {
        close(pooled);
        places.release();
      }
    }
  }

  private void take() throws SQLException {
    try {
      if (!places.tryAcquire(WAIT_SECONDS, TimeUnit.SECONDS)) {
        throw new SQLException("all connections to the database are in use", "08001", ALL_IN_USE);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new SQLException("stopped while waiting for a connection", "08001", ALL_IN_USE, e);
    }
  }

  @Override
  public void connectionClosed(ConnectionEvent event) {
    PooledConnection pooled = (PooledConnection) event.getSource();
    pooled.removeConnectionEventListener(this);
    if (broken.remove(pooled) || givenUp) {
      close(pooled);
    } else {
      idle.addFirst(pooled);
      if (givenUp) {
        closeIdle();
      }
    }
    places.release();
  }

  @Override
  public void connectionErrorOccurred(ConnectionEvent event) {
    broken.add((PooledConnection) event.getSource());
  }

  /** Closes them all; those in use when they are given back. */
  void giveUp() {
    givenUp = true;
    closeIdle();
  }

  private void closeIdle() {
    for (PooledConnection each = idle.pollFirst(); each != null; each = idle.pollFirst()) {
      close(each);
    }
  }

  private static void close(PooledConnection pooled) {
    if (pooled != null) {
      Database.closeQuietly(pooled::close);
    }
  }

  @Override
  public Connection getConnection(String user, String password) throws SQLException {
    throw new SQLFeatureNotSupportedException();
  }

  @Override
  public PrintWriter getLogWriter() {
    return null;
  }

  @Override
  public void setLogWriter(PrintWriter out) {}

  @Override
  public void setLoginTimeout(int seconds) {}

  @Override
  public int getLoginTimeout() {
    return 0;
  }

  @Override
  public Logger getParentLogger() throws SQLFeatureNotSupportedException {
    throw new SQLFeatureNotSupportedException();
  }

  @Override
  public <T> T unwrap(Class<T> type) throws SQLException {
    throw new SQLException("wraps nothing");
  }

  @Override
  public boolean isWrapperFor(Class<?> type) {
    return false;
  }
}
