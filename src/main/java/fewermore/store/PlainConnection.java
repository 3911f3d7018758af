package fewermore.store;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sql.ConnectionEvent;
import javax.sql.ConnectionEventListener;
import javax.sql.PooledConnection;
import javax.sql.StatementEventListener;

/**
 * A connection to H2 that goes from hand to hand as it is: with the plans of its statements, and rolled back only where
 * somebody left a transaction open.
 */
final class PlainConnection implements PooledConnection {
  private final Connection kept;
  private final List<ConnectionEventListener> listeners = new CopyOnWriteArrayList<>();

  private PlainConnection(Connection kept) {
    this.kept = kept;
  }

  static PlainConnection to(String url) throws SQLException {
    return new PlainConnection(DriverManager.getConnection(url, "sa", ""));
  }

  @Override
  public Connection getConnection() {
    return (Connection) Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] {Connection.class}, new Hand());
  }

  /** What somebody has of it until it is closed. */
  private final class Hand implements java.lang.reflect.InvocationHandler {
    private boolean open = true;

    @Override
    public Object invoke(Object hand, Method method, Object[] with) throws Throwable {
      switch (method.getName()) {
        case "close":
          if (open) {
            open = false;
            giveBack();
          }
          return null;
        case "isClosed":
          return !open || kept.isClosed();
        case "equals":
          return hand == with[0];
        case "hashCode":
          return System.identityHashCode(hand);
        default:
          return asked(method, with);
      }
    }

    private Object asked(Method method, Object[] with) throws Throwable {
      if (!open && method.getDeclaringClass() != Object.class) {
        throw new SQLException("this connection was given back", "08003");
      }
      try {
        return method.invoke(kept, with);
      } catch (InvocationTargetException e) {
        throw e.getCause();
      }
    }
  }

  private void giveBack() {
    ConnectionEvent event;
    try {
      if (!kept.getAutoCommit()) {
        kept.rollback();
        kept.setAutoCommit(true);
      }
      event = new ConnectionEvent(this);
    } catch (SQLException e) {
      event = new ConnectionEvent(this, e);
    }
    for (ConnectionEventListener each : listeners) {
      if (event.getSQLException() != null) {
        each.connectionErrorOccurred(event);
      }
      each.connectionClosed(event);
    }
  }

  @Override
  public void close() throws SQLException {
    kept.close();
  }

  @Override
  public void addConnectionEventListener(ConnectionEventListener listener) {
    listeners.add(listener);
  }

  @Override
  public void removeConnectionEventListener(ConnectionEventListener listener) {
    listeners.remove(listener);
  }

  @Override
  public void addStatementEventListener(StatementEventListener listener) {}

  @Override
  public void removeStatementEventListener(StatementEventListener listener) {}
}
