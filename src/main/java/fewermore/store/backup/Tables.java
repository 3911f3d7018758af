package fewermore.store.backup;

import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The tables of a database as it says itself, those referred to before those that refer. Their names and columns are
 * said in capitals, whatever the database does with names that are not quoted.
 */
final class Tables {
  /** A row that refers to another by these columns. */
  record Reference(String to, List<String> columns, List<String> toColumns) {}

  record Column(String name, char kind, boolean identity) {}

  /** @param order by what its rows come as they were put in, those referred to first */
  record Table(String name, List<Column> columns, List<Reference> references, String order) {
    int at(String column) {
      for (int at = 0; at < columns.size(); at++) {
        if (columns.get(at).name.equals(column)) {
          return at;
        }
      }
      throw new IllegalStateException("no column " + column + " in " + name);
    }
  }

  private static final Set<String> LEFT_OUT = Set.of("FLYWAY_SCHEMA_HISTORY");

  private Tables() {}

  /** Whether a connection is to H2, as all but a school's database is. */
  static boolean isFile(Connection connection) throws SQLException {
    return connection.getMetaData().getDatabaseProductName().equals("H2");
  }

  static List<Table> of(Connection connection) throws SQLException {
    DatabaseMetaData about = connection.getMetaData();
    boolean file = isFile(connection);
    String schema = connection.getSchema();
    Map<String, Table> byName = new TreeMap<>();
    Map<String, String> saidAs = new TreeMap<>();
    try (ResultSet tables = about.getTables(null, schema, null, new String[] {"TABLE", "BASE TABLE"})) {
      while (tables.next()) {
        String said = tables.getString("TABLE_NAME");
        if (!LEFT_OUT.contains(capitals(said))) {
          saidAs.put(capitals(said), said);
        }
      }
    }
    for (Map.Entry<String, String> each : saidAs.entrySet()) {
      Table table = new Table(each.getKey(), new ArrayList<>(), new ArrayList<>(),
          file ? "_ROWID_" : key(about, schema, each.getValue()));
      byName.put(table.name, table);
      try (ResultSet columns = about.getColumns(null, schema, each.getValue(), null)) {
        while (columns.next()) {
          table.columns.add(new Column(capitals(columns.getString("COLUMN_NAME")), kind(columns.getInt("DATA_TYPE")),
              "YES".equals(columns.getString("IS_AUTOINCREMENT"))));
        }
      }
      Map<String, Reference> references = new LinkedHashMap<>();
      try (ResultSet keys = about.getImportedKeys(null, schema, each.getValue())) {
        while (keys.next()) {
          Reference reference = references.computeIfAbsent(keys.getString("FK_NAME"), name -> new Reference(
              capitals(stringOf(keys, "PKTABLE_NAME")), new ArrayList<>(), new ArrayList<>()));
          reference.columns.add(capitals(keys.getString("FKCOLUMN_NAME")));
          reference.toColumns.add(capitals(keys.getString("PKCOLUMN_NAME")));
        }
      }
      table.references.addAll(references.values());
    }
    return inOrder(byName);
  }

  /** The columns of the primary key: numbers given one after the other put a row behind those it refers to. */
  private static String key(DatabaseMetaData about, String schema, String table) throws SQLException {
    Map<Integer, String> columns = new TreeMap<>();
    try (ResultSet keys = about.getPrimaryKeys(null, schema, table)) {
      while (keys.next()) {
        columns.put(keys.getInt("KEY_SEQ"), keys.getString("COLUMN_NAME"));
      }
    }
    return String.join(", ", columns.values());
  }

  private static String capitals(String name) {
    return name.toUpperCase(Locale.ROOT);
  }

  private static String stringOf(ResultSet row, String column) {
    try {
      return row.getString(column);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<Table> inOrder(Map<String, Table> byName) {
    List<Table> ordered = new ArrayList<>();
    List<Table> left = new ArrayList<>(byName.values());
    while (!left.isEmpty()) {
      List<Table> ready = left.stream().filter(table -> table.references.stream().allMatch(reference ->
          reference.to.equals(table.name) || ordered.stream().anyMatch(done -> done.name.equals(reference.to)))).toList();
      if (ready.isEmpty()) {
        throw new IllegalStateException("tables refer to each other in a ring");
      }
      ordered.addAll(ready);
      left.removeAll(ready);
    }
    return Collections.unmodifiableList(ordered);
  }

  /** Numbers, booleans, texts, days, moments, decimals, bytes. */
  private static char kind(int type) {
    return switch (type) {
      case Types.BIGINT, Types.INTEGER, Types.SMALLINT, Types.TINYINT -> 'n';
      case Types.BOOLEAN, Types.BIT -> 'b';
      case Types.DATE -> 'd';
      case Types.TIMESTAMP_WITH_TIMEZONE, Types.TIMESTAMP -> 't';
      case Types.DOUBLE, Types.FLOAT, Types.REAL -> 'f';
      case Types.DECIMAL, Types.NUMERIC -> 'm';
      case Types.BINARY, Types.VARBINARY, Types.LONGVARBINARY, Types.BLOB -> 'x';
      default -> 's';
    };
  }
}
