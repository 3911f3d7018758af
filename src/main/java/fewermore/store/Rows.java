package fewermore.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;

/** How columns become values. */
final class Rows {
  private Rows() {}

  /** A UTC instant, or null. */
  static Instant instant(ResultSet row, String column) throws SQLException {
    OffsetDateTime time = row.getObject(column, OffsetDateTime.class);
    return time == null ? null : time.toInstant();
  }

  static LocalDate day(ResultSet row, String column) throws SQLException {
    return row.getObject(column, LocalDate.class);
  }
}
