package fewermore.store;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;

/** Opens a database of the kind a test is run on: the file of a folder, or the folder's own part of a real PostgreSQL. */
public final class Stores {
  private static final boolean ALWAYS_POSTGRES = Boolean.getBoolean("fewermore.tests.postgres");
  private static final AtomicInteger ON_POSTGRES = new AtomicInteger();

  private Stores() {}

  /** A class of tests on PostgreSQL begins, perhaps inside another: each is ended by one {@link #backFromPostgres()}. */
  static void toPostgres() {
    ON_POSTGRES.incrementAndGet();
  }

  static void backFromPostgres() {
    ON_POSTGRES.decrementAndGet();
  }

  static boolean areOnPostgres() {
    return ALWAYS_POSTGRES || ON_POSTGRES.get() > 0;
  }

  /** {@link Database#open(Path)} on either. */
  public static Database open(Path folder) {
    return areOnPostgres() ? Database.open(folder, Postgres.school(), (data, from) -> { }) : Database.open(folder);
  }
}
