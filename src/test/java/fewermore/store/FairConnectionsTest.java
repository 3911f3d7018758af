package fewermore.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The connections to the data file: few, handed on as they are. */
class FairConnectionsTest {
  private static final String SAME = "SELECT COUNT(*) FROM kept WHERE id > ?";

  private final String url = "jdbc:h2:mem:" + UUID.randomUUID() + ";DB_CLOSE_DELAY=-1";
  private final AtomicInteger made = new AtomicInteger();
  private final FairConnections pool = new FairConnections(() -> {
    made.incrementAndGet();
    return PlainConnection.to(url);
  }, 2);

  FairConnectionsTest() throws SQLException {
    run("CREATE TABLE kept (id INT)");
  }

  @AfterEach
  void close() {
    pool.giveUp();
  }

  private void run(String sql) throws SQLException {
    try (Connection connection = pool.getConnection(); var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private int rows(Connection connection) throws SQLException {
    try (var statement = connection.prepareStatement(SAME)) {
      statement.setInt(1, 0);
      try (var row = statement.executeQuery()) {
        row.next();
        return row.getInt(1);
      }
    }
  }

  private static SessionLocal session(Connection connection) throws SQLException {
    return (SessionLocal) connection.unwrap(JdbcConnection.class).getSession();
  }

  @Test
  void oneAfterTheOtherGetsTheSameAndItsPlans() throws SQLException {
    Object plan;
    SessionLocal session;
    try (Connection connection = pool.getConnection()) {
      connection.setAutoCommit(false);
      rows(connection);
      connection.commit();
      connection.setAutoCommit(true);
      session = session(connection);
      plan = session.prepareLocal(SAME);
      ((org.h2.command.Command) plan).close();
    }
    try (Connection connection = pool.getConnection()) {
      assertEquals(session, session(connection));
      assertEquals(plan, session.prepareLocal(SAME), "a statement of before is planned once");
    }
    assertEquals(1, made.get());
  }

  @Test
  void aTransactionThatWasLeftOpenIsRolledBack() throws SQLException {
    try (Connection connection = pool.getConnection(); var statement = connection.createStatement()) {
      connection.setAutoCommit(false);
      statement.execute("INSERT INTO kept VALUES (1)");
    }
    try (Connection connection = pool.getConnection()) {
      assertTrue(connection.getAutoCommit());
      assertEquals(0, rows(connection));
    }
  }

  @Test
  void whatWasGivenBackIsUsedNoMore() throws SQLException {
    Connection connection = pool.getConnection();
    assertFalse(connection.isClosed());
    connection.close();
    connection.close();
    assertTrue(connection.isClosed());
    assertThrows(SQLException.class, connection::createStatement);
    try (Connection one = pool.getConnection(); Connection other = pool.getConnection()) {
      assertNotEquals(session(one), session(other), "twice closed is once given back");
      assertNotEquals(one, other);
    }
    assertEquals(2, made.get());
  }
}
