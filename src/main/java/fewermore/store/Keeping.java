package fewermore.store;

import fewermore.store.disk.StoreState;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.concurrent.locks.Lock;
import javax.sql.DataSource;
import org.jdbi.v3.core.Jdbi;

/** Where the rows of one app are kept, and what makes it sure that they are: a folder's file or a school's database. */
interface Keeping extends AutoCloseable {
  /** A connection of the pool; whoever closes it gives it back. */
  Connection connection() throws SQLException;

  /** Where the rows lie, for the teacher. */
  String where();

  /** What this database needs of Jdbi. */
  default Jdbi prepare(Jdbi jdbi) {
    return jdbi;
  }

  /** The pool, for those who read without Jdbi. */
  DataSource source();

  /** Held by whoever uses a connection. */
  Lock use();

  /** Held by a transaction that writes. */
  Lock transaction();

  /** Returns when all that this thread committed is kept. @throws NotOnDisk when it may not be */
  void keep();

  /** What the matter is after {@link #keep} failed. */
  StoreState why(Throwable cause);

  /** What the matter is after a statement failed; {@link StoreState#RUNNING} when it was the statement itself. */
  StoreState lost(Throwable problem);

  /** What is said when work is kept again. */
  String takesAgain();

  /** Looks whether work is kept. @param running whether it was when it was last looked at */
  StoreState look(boolean running);

  /** {@link Database#rewrite}. */
  boolean rewrite();

  /** Whether it is time to {@link #putInOrder}. @param quiet how long nobody has written */
  boolean disordered(Duration quiet);

  /** Writes the file anew if nobody uses it just now. */
  void putInOrder();

  /** How often data were forced to disk: for measuring. */
  long forces();

  @Override
  void close();
}
