package fewermore.store.backup;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import fewermore.store.backup.Tables.Column;
import fewermore.store.backup.Tables.Reference;
import fewermore.store.backup.Tables.Table;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** All rows as lines, and back. */
final class Dump {
  /** H2's own isolation level: a transaction sees all as it was at its start (its manual, "Transaction Isolation"). */
  private static final int SNAPSHOT = 6;
  private static final int REPORT_EVERY = 1000;
  private static final int BATCH = 500;

  /** What came out: how many rows, and the SHA-256 of all lines. */
  record Sum(long rows, String sha256) {}

  /** Which rows stay out: those of a table with such a key, and all that refer to them. */
  record Without(String table, String column, Set<Object> keys) {}

  private Dump() {}

  private interface InSnapshot<T> {
    T run() throws SQLException, IOException;
  }

  /** Everything read within sees the database as of one moment, however much is written meanwhile. */
  private static <T> T snapshot(Connection connection, InSnapshot<T> reading) throws SQLException, IOException {
    int usual = connection.getTransactionIsolation();
    boolean file = Tables.isFile(connection);
    connection.setAutoCommit(false);
    // PostgreSQL's REPEATABLE READ is a snapshot (its manual, "Transaction Isolation").
    connection.setTransactionIsolation(file ? SNAPSHOT : Connection.TRANSACTION_REPEATABLE_READ);
    try {
      lazily(connection, file, 1);
      return reading.run();
    } finally {
      connection.rollback();
      connection.setTransactionIsolation(usual);
      connection.setAutoCommit(true);
      lazily(connection, file, 0);
    }
  }

  private static void lazily(Connection connection, boolean file, int yes) throws SQLException {
    if (file) {
      try (Statement statement = connection.createStatement()) {
        statement.execute("SET LAZY_QUERY_EXECUTION " + yes);
      }
    }
  }

  /** How many rows there are and how many pieces of work were handed in, invented classes aside. */
  record Count(long rows, long pieces) {}

  static Count count(Connection connection) throws SQLException {
    long rows = 0;
    try (Statement statement = connection.createStatement()) {
      for (Table table : Tables.of(connection)) {
        try (ResultSet row = statement.executeQuery("SELECT COUNT(*) FROM " + table.name())) {
          row.next();
          rows += row.getLong(1);
        }
      }
      try (ResultSet row = statement.executeQuery("""
          SELECT COUNT(*)
            FROM revision r
            JOIN work w ON w.id = r.work_id
            JOIN child c ON c.id = w.child_id
            JOIN classroom k ON k.id = c.classroom_id
           WHERE r.kind = 'handed-in'
             AND k.invented = FALSE""")) {
        row.next();
        return new Count(rows, row.getLong(1));
      }
    }
  }

  private static final class Lines {
    private final OutputStream out;
    private final MessageDigest digest = sha256();
    private long rows;

    private Lines(OutputStream out) {
      this.out = out;
    }

    private void add(JsonNode line, boolean counted) throws IOException {
      byte[] bytes = (Json.write(line) + "\n").getBytes(StandardCharsets.UTF_8);
      if (counted) {
        digest.update(bytes);
      }
      out.write(bytes);
    }
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** Writes all rows but those to be left out, as of one moment. */
  static Sum write(Connection connection, OutputStream out, List<Without> without, long expected, Progress progress)
      throws SQLException, IOException {
    return snapshot(connection, () -> {
      Lines lines = new Lines(out);
      // Columns of left-out rows that others refer to: by table and columns, the values.
      Map<String, Map<List<String>, Set<List<Object>>>> leftOut = new HashMap<>();
      List<Table> tables = Tables.of(connection);
      for (Table table : tables) {
        write(connection, table, tables, without, leftOut, lines, expected, progress);
      }
      Sum sum = new Sum(lines.rows, HexFormat.of().formatHex(lines.digest.digest()));
      lines.add(Json.object().put("rows", sum.rows).put("sha256", sum.sha256), false);
      out.flush();
      return sum;
    });
  }

  private static void write(Connection connection, Table table, List<Table> tables, List<Without> without,
      Map<String, Map<List<String>, Set<List<Object>>>> leftOut, Lines lines, long expected, Progress progress)
      throws SQLException, IOException {
    ObjectNode head = Json.object().put("table", table.name());
    ArrayNode names = head.putArray("columns");
    StringBuilder kinds = new StringBuilder();
    StringBuilder select = new StringBuilder();
    for (Column column : table.columns()) {
      names.add(column.name());
      kinds.append(column.kind());
      select.append(select.length() == 0 ? "SELECT " : ", ").append(column.name());
    }
    lines.add(head.put("kinds", kinds.toString()), true);
    Set<List<String>> referredTo = new HashSet<>();
    tables.forEach(other -> other.references().stream().filter(reference -> reference.to().equals(table.name()))
        .forEach(reference -> referredTo.add(reference.toColumns())));
    // In the order the rows came, which a restored table has too: so that both give the same lines.
    String sql = select + " FROM " + table.name() + " ORDER BY " + table.order();
    try (Statement statement = few(connection); ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        Object[] row = new Object[table.columns().size()];
        for (int at = 0; at < row.length; at++) {
          row[at] = value(rows, at + 1, table.columns().get(at).kind());
        }
        if (staysOut(table, row, without, leftOut)) {
          for (List<String> columns : referredTo) {
            leftOut.computeIfAbsent(table.name(), name -> new HashMap<>())
                .computeIfAbsent(columns, key -> new HashSet<>()).add(values(table, row, columns));
          }
          continue;
        }
        ArrayNode line = Json.array();
        for (Object value : row) {
          add(line, value);
        }
        lines.add(line, true);
        if (++lines.rows % REPORT_EVERY == 0) {
          progress.at(lines.rows, expected);
        }
      }
    }
  }

  /** A statement whose rows come a few at a time: a school-year does not fit into memory. */
  private static Statement few(Connection connection) throws SQLException {
    Statement statement = connection.createStatement();
    statement.setFetchSize(BATCH);
    return statement;
  }

  private static List<Object> values(Table table, Object[] row, List<String> columns) {
    List<Object> values = new ArrayList<>();
    columns.forEach(column -> values.add(row[table.at(column)]));
    return values;
  }

  private static boolean staysOut(Table table, Object[] row, List<Without> without,
      Map<String, Map<List<String>, Set<List<Object>>>> leftOut) {
    for (Without each : without) {
      if (each.table.equals(table.name()) && each.keys.contains(row[table.at(each.column)])) {
        return true;
      }
    }
    // A tablet of an invented class refers to nothing: it is known by its name.
    if (table.name().equals("TABLET") && String.valueOf(row[table.at("ID")]).startsWith("invented-")) {
      return true;
    }
    for (Reference reference : table.references()) {
      Set<List<Object>> gone = leftOut.getOrDefault(reference.to(), Map.of()).get(reference.toColumns());
      if (gone != null && gone.contains(values(table, row, reference.columns()))) {
        return true;
      }
    }
    return false;
  }

  /** What keeps invented classes out. */
  static final Without INVENTED = new Without("CLASSROOM", "INVENTED", Set.of(Boolean.TRUE));

  private static Object value(ResultSet row, int at, char kind) throws SQLException {
    Object value = switch (kind) {
      case 'n' -> row.getLong(at);
      case 'b' -> row.getBoolean(at);
      case 'd' -> row.getObject(at, LocalDate.class);
      case 't' -> row.getObject(at, OffsetDateTime.class);
      case 'f' -> row.getDouble(at);
      case 'm' -> row.getBigDecimal(at);
      case 'x' -> row.getBytes(at);
      default -> row.getString(at);
    };
    return row.wasNull() ? null : value;
  }

  private static void add(ArrayNode line, Object value) {
    if (value == null) {
      line.addNull();
    } else if (value instanceof Long number) {
      line.add(number);
    } else if (value instanceof Boolean yes) {
      line.add(yes);
    } else if (value instanceof Double number) {
      line.add(number);
    } else if (value instanceof byte[] bytes) {
      line.add(Base64.getEncoder().encodeToString(bytes));
    } else {
      line.add(value.toString());
    }
  }

  // ---- back ----

  /** Told each row of the lines: its table and the values by column. */
  interface Rows {
    void row(String table, List<String> columns, JsonNode row) throws SQLException;
  }

  /**
   * Reads lines to their end and says what they were.
   *
   * @throws BackupProblem when they are not whole
   */
  static Sum read(InputStream in, Rows into) throws IOException, SQLException, BackupProblem {
    BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8), 1 << 16);
    MessageDigest digest = sha256();
    String table = null;
    List<String> columns = List.of();
    long rows = 0;
    for (String line = reader.readLine(); line != null; line = reader.readLine()) {
      JsonNode node;
      try {
        node = Json.read(line);
      } catch (Json.Unusable e) {
        throw new BackupProblem(NOT_WHOLE, e);
      }
      if (node.has("sha256")) {
        String found = HexFormat.of().formatHex(digest.digest());
        if (!found.equals(node.get("sha256").asText()) || node.path("rows").asLong(-1) != rows) {
          throw new BackupProblem(NOT_WHOLE);
        }
        return new Sum(rows, found);
      }
      digest.update((line + "\n").getBytes(StandardCharsets.UTF_8));
      if (node.isObject()) {
        table = node.path("table").asText();
        columns = new ArrayList<>();
        for (JsonNode name : node.path("columns")) {
          columns.add(name.asText());
        }
      } else if (table != null && node.isArray() && node.size() == columns.size()) {
        rows++;
        into.row(table, columns, node);
      } else {
        throw new BackupProblem(NOT_WHOLE);
      }
    }
    throw new BackupProblem(NOT_WHOLE);
  }

  static final String NOT_WHOLE =
      "This backup is not whole: it was cut short or changed since it was made. Take another one.";

  /** Puts rows into the empty tables of a database, many at once. */
  static final class Inserts implements Rows, AutoCloseable {
    private final Connection connection;
    private final Map<String, Table> tables = new LinkedHashMap<>();
    private final Progress progress;
    private final long expected;
    private final boolean onlyNew;
    private final boolean allOrNothing;
    private Table table;
    private PreparedStatement statement;
    private int waiting;
    private long done;

    /** @param onlyNew leaves a row alone whose key is there already */
    Inserts(Connection connection, long expected, Progress progress, boolean onlyNew) throws SQLException {
      this(connection, expected, progress, onlyNew, false);
    }

    /** @param allOrNothing nothing is committed before the end */
    Inserts(Connection connection, long expected, Progress progress, boolean onlyNew, boolean allOrNothing)
        throws SQLException {
      this.allOrNothing = allOrNothing;
      this.connection = connection;
      this.expected = expected;
      this.progress = progress;
      this.onlyNew = onlyNew;
      Tables.of(connection).forEach(each -> tables.put(each.name(), each));
      connection.setAutoCommit(false);
    }

    @Override
    public void row(String name, List<String> columns, JsonNode row) throws SQLException {
      if (table == null || !table.name().equals(name)) {
        begin(name, columns);
      }
      for (int at = 0; at < columns.size(); at++) {
        set(at + 1, table.columns().get(table.at(columns.get(at))).kind(), row.get(at));
      }
      statement.addBatch();
      if (++waiting == BATCH) {
        send();
      }
    }

    /** One row of its own; false when it was there already or what it refers to is not there. */
    boolean one(Table of, Object[] row) throws SQLException {
      if (table == null || !table.name().equals(of.name())) {
        begin(of.name(), of.columns().stream().map(Column::name).toList());
      }
      for (int at = 0; at < row.length; at++) {
        if (row[at] == null) {
          statement.setNull(at + 1, Types.NULL);
        } else {
          statement.setObject(at + 1, row[at]);
        }
      }
      try {
        return statement.executeUpdate() == 1;
      } catch (SQLException e) {
        return false;
      }
    }

    private void begin(String name, List<String> columns) throws SQLException {
      send();
      if (statement != null) {
        statement.close();
      }
      table = tables.get(name);
      if (table == null) {
        throw new SQLException("no table " + name);
      }
      for (String column : columns) {
        // Names that stand in a file become part of a statement: only those there are.
        if (table.columns().stream().noneMatch(each -> each.name().equals(column))) {
          throw new SQLException("no column " + column + " in " + name);
        }
      }
      StringBuilder names = new StringBuilder();
      StringBuilder places = new StringBuilder();
      for (String column : columns) {
        names.append(names.length() == 0 ? "" : ", ").append(column);
        places.append(places.length() == 0 ? "?" : ", ?");
      }
      statement = connection.prepareStatement("INSERT INTO " + name + " (" + names + ") VALUES ("
          + places + ")" + (onlyNew ? " ON CONFLICT DO NOTHING" : ""));
    }

    private void set(int at, char kind, JsonNode value) throws SQLException {
      if (value.isNull()) {
        statement.setNull(at, Types.NULL);
        return;
      }
      switch (kind) {
        case 'n' -> statement.setLong(at, value.asLong());
        case 'b' -> statement.setBoolean(at, value.asBoolean());
        case 'd' -> statement.setObject(at, LocalDate.parse(value.asText()));
        case 't' -> statement.setObject(at, OffsetDateTime.parse(value.asText()));
        case 'f' -> statement.setDouble(at, value.asDouble());
        case 'm' -> statement.setBigDecimal(at, new BigDecimal(value.asText()));
        case 'x' -> statement.setBytes(at, Base64.getDecoder().decode(value.asText()));
        default -> statement.setString(at, value.asText());
      }
    }

    private void send() throws SQLException {
      if (waiting > 0) {
        statement.executeBatch();
        if (!allOrNothing) {
          connection.commit();
        }
        done += waiting;
        waiting = 0;
        progress.at(done, expected);
      }
    }

    /** Sends what waits, and lets new rows be numbered after those that came. */
    void finish() throws SQLException {
      send();
      if (!allOrNothing) {
        connection.commit();
        connection.setAutoCommit(true);
      }
      try (Statement numbering = connection.createStatement()) {
        for (Table each : tables.values()) {
          for (Column column : each.columns()) {
            if (column.identity()) {
              long next;
              try (ResultSet last = numbering.executeQuery("SELECT COALESCE(MAX(" + column.name()
                  + "), 0) + 1 FROM " + each.name())) {
                last.next();
                next = last.getLong(1);
              }
              numbering.execute("ALTER TABLE " + each.name() + " ALTER COLUMN "
                  + column.name() + " RESTART WITH " + next);
            }
          }
        }
      }
      if (allOrNothing) {
        connection.commit();
        connection.setAutoCommit(true);
      }
    }

    @Override
    public void close() throws SQLException {
      if (statement != null) {
        statement.close();
      }
    }
  }

  /** A row of a table as values, for {@link Inserts#one}. */
  static Object[] row(ResultSet rows, Table table) throws SQLException {
    Object[] row = new Object[table.columns().size()];
    for (int at = 0; at < row.length; at++) {
      row[at] = value(rows, at + 1, table.columns().get(at).kind());
    }
    return row;
  }
}
