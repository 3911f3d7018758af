package fewermore.store.backup;

import fewermore.store.Database;
import fewermore.store.backup.Dump.Sum;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.h2.jdbcx.JdbcDataSource;

/** A database of its own in a folder of its own, not forced: made from a backup, and thrown away or put in place. */
final class Scratch implements AutoCloseable {
  private final Path folder;
  final Connection connection;
  private boolean open = true;

  private Scratch(Path folder, Connection connection) {
    this.folder = folder;
    this.connection = connection;
  }

  private static String url(Path folder) {
    return "jdbc:h2:file:" + folder.toAbsolutePath().resolve("scratch") + ";MODE=PostgreSQL;DB_CLOSE_ON_EXIT=FALSE";
  }

  /** Makes one with the tables of a version and no rows. @param version {@code latest} for the newest */
  static Scratch make(Path beside, String version) throws BackupProblem {
    try {
      Files.createDirectories(beside);
      Path folder = Files.createTempDirectory(beside, "scratch");
      JdbcDataSource source = source(folder);
      Connection first = source.getConnection();
      Database.migrate(source, version);
      return new Scratch(folder, first);
    } catch (IOException e) {
      throw new BackupProblem("There is no room to try the backup out in " + beside + ". Free some of the disk.", e);
    } catch (SQLException e) {
      throw new BackupProblem("The backup could not be tried out: " + e.getMessage(), e);
    }
  }

  /** Fills it from a backup, checks that what it then holds gives the same lines, and brings its tables up to date. */
  static Scratch from(BackupFile backup, Key key, Path beside, Progress progress) throws BackupProblem {
    if (!Database.knows(backup.data())) {
      throw new BackupProblem("This backup was made by a newer Fewermore (data version " + backup.data()
          + "). Start that newer one; this one would not understand it.");
    }
    Scratch scratch = make(beside, backup.data());
    try {
      Sum said;
      try (Dump.Inserts inserts = new Dump.Inserts(scratch.connection, backup.rows(), progress, false)) {
        said = backup.read(key, inserts);
        inserts.finish();
      }
      Sum found = Dump.write(scratch.connection, OutputStream.nullOutputStream(), List.of(), 0, Progress.NONE);
      if (!said.equals(found)) {
        throw new BackupProblem("This backup did not come out as it went in. Take another one.");
      }
      return scratch;
    } catch (SQLException | IOException e) {
      scratch.close();
      throw new BackupProblem(Dump.NOT_WHOLE, e);
    } catch (BackupProblem | RuntimeException e) {
      scratch.close();
      throw e;
    }
  }

  Dump.Count count() throws SQLException {
    return Dump.count(connection);
  }

  private static JdbcDataSource source(Path folder) {
    JdbcDataSource source = new JdbcDataSource();
    source.setUrl(url(folder));
    source.setUser("sa");
    source.setPassword("");
    return source;
  }

  void bringUpToDate() {
    Database.migrate(source(folder), "latest");
  }

  /** Brings the tables up to date, closes the database and puts its file, forced, in the place of another. */
  void putInPlaceOf(Path dataFile) throws IOException, SQLException {
    bringUpToDate();
    try (Statement statement = connection.createStatement()) {
      statement.execute("SHUTDOWN");
    }
    open = false;
    Path made = folder.resolve("scratch.mv.db");
    try (FileChannel channel = FileChannel.open(made, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(made, dataFile, java.nio.file.StandardCopyOption.ATOMIC_MOVE,
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
  }

  @Override
  public void close() {
    if (open) {
      try (Statement statement = connection.createStatement()) {
        statement.execute("SHUTDOWN IMMEDIATELY");
      } catch (SQLException e) {
        System.getLogger(Scratch.class.getName()).log(System.Logger.Level.DEBUG, "scratch closed already");
      }
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
        Files.deleteIfExists(each);
      }
    } catch (IOException e) {
      System.getLogger(Scratch.class.getName()).log(System.Logger.Level.WARNING, "a scratch folder could not be removed");
    }
  }

  /** A connection to a copy of damaged data, by which what is whole can be read. */
  static Connection damaged(String url) throws SQLException {
    return DriverManager.getConnection(url + ";MODE=PostgreSQL;DB_CLOSE_ON_EXIT=FALSE", "sa", "");
  }
}
