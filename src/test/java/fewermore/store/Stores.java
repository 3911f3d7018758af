package fewermore.store;

import java.nio.file.Path;

/** Opens a database of the kind a test is run on: the file of a folder, or the folder's own part of a real PostgreSQL. */
public final class Stores {
  private static volatile boolean postgres = Boolean.getBoolean("fewermore.tests.postgres");

  private Stores() {}

  static boolean onPostgres(boolean yes) {
    boolean before = postgres;
    postgres = yes;
    return before;
  }

  static boolean areOnPostgres() {
    return postgres;
  }

  /** {@link Database#open(Path)} on either. */
  public static Database open(Path folder) {
    return postgres ? Database.open(folder, Postgres.school(), (data, from) -> { }) : Database.open(folder);
  }
}
