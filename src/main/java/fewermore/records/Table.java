package fewermore.records;

import java.util.List;

/**
 * A table of values: texts, whole numbers, dates, or null where there is none.
 *
 * @param columns each with its name in the file and what it means
 * @param rows each as long as {@code columns}
 */
public record Table(String name, List<Column> columns, List<List<Object>> rows) {
  public Table {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
    for (List<Object> row : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException(name + ": a row of " + row.size() + " in a table of " + columns.size());
      }
    }
  }

  /** @param name the header in the file, lower case with underscores; @param means what the teacher reads in Records */
  public record Column(String name, String means) {}

  public List<String> header() {
    return columns.stream().map(Column::name).toList();
  }
}
