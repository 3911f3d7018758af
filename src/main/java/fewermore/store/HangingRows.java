package fewermore.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/**
 * Deletes a row with everything that hangs on it by a foreign key, however deep. What hangs on what is asked of the
 * database itself, so that a table made later is emptied too and nobody has to remember it.
 */
final class HangingRows {
  /** Deeper than any chain of tables there is; a circle would end here. */
  private static final int DEEPEST = 12;

  /** A foreign key: {@code columns} of {@code table} name {@code named} of another table. */
  private record Link(String table, List<String> columns, List<String> named) {}

  private final Map<String, List<Link>> links = new LinkedHashMap<>();

  private HangingRows(Handle handle) {
    Map<String, Link> byName = new LinkedHashMap<>();
    handle
        .createQuery("""
            SELECT r.constraint_name, k.table_name, k.column_name, u.table_name AS to_table, u.column_name AS to_column
              FROM information_schema.referential_constraints r
              JOIN information_schema.key_column_usage k
                ON k.constraint_name = r.constraint_name AND k.constraint_schema = r.constraint_schema
              JOIN information_schema.key_column_usage u
                ON u.constraint_name = r.unique_constraint_name AND u.constraint_schema = r.unique_constraint_schema
               AND u.ordinal_position = k.position_in_unique_constraint
             WHERE r.constraint_schema = CURRENT_SCHEMA
             ORDER BY r.constraint_name, k.ordinal_position""")
        .map((row, at) -> List.of(row.getString("constraint_name"), row.getString("table_name"),
            row.getString("column_name"), row.getString("to_table"), row.getString("to_column")))
        .forEach(each -> {
          Link link = byName.computeIfAbsent(each.get(0), name -> {
            Link made = new Link(each.get(1), new ArrayList<>(), new ArrayList<>());
            links.computeIfAbsent(key(each.get(3)), none -> new ArrayList<>()).add(made);
            return made;
          });
          link.columns.add(each.get(2));
          link.named.add(each.get(4));
        });
  }

  private static String key(String table) {
    return table.toLowerCase(java.util.Locale.ROOT);
  }

  /** Deletes the row of {@code table} with that id, after all that hangs on it. */
  static void delete(Handle handle, String table, long id) {
    new HangingRows(handle).delete(handle, table, "id = :id", id, 0);
  }

  private void delete(Handle handle, String table, String where, long id, int depth) {
    if (depth > DEEPEST) {
      throw new IllegalStateException("tables hang on each other in a circle at " + table);
    }
    for (Link link : links.getOrDefault(key(table), List.of())) {
      String hanging = "(" + String.join(", ", link.columns) + ") IN (SELECT " + String.join(", ", link.named)
          + " FROM " + table + " WHERE " + where + ")";
      if (link.table.equalsIgnoreCase(table)) {
        // A row that names another of its own table, such as the version it took the place of, only forgets it.
        handle.createUpdate("UPDATE " + table + " SET " + String.join(" = NULL, ", link.columns) + " = NULL WHERE "
            + hanging).bind("id", id).execute();
      } else {
        delete(handle, link.table, hanging, id, depth + 1);
      }
    }
    handle.createUpdate("DELETE FROM " + table + " WHERE " + where).bind("id", id).execute();
  }
}
