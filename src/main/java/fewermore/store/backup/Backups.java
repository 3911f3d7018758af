package fewermore.store.backup;

import fewermore.store.CannotOpen;
import fewermore.store.Database;
import fewermore.store.School;
import fewermore.store.backup.Dump.Sum;
import fewermore.store.backup.Dump.Without;
import fewermore.store.disk.SystemDisk;
import java.io.IOException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.sql.DataSource;

/**
 * The backups the app made of one data folder: in its folder {@code backups}, and copies where the teacher wants them.
 * One is made at a time. A backup holds first names and work: whoever has the file can read it unless it is locked.
 */
public final class Backups {
  /** What the name of every backup ends in. */
  public static final String ENDING = ".fewermore";

  private static final Logger LOG = System.getLogger(Backups.class.getName());
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss").withZone(ZoneOffset.UTC);
  /** So many stay however old they are. */
  private static final int ALWAYS_KEPT = 3;

  private final Path folder;

  /** @param data the data folder */
  public Backups(Path data) {
    this.folder = data.toAbsolutePath().normalize().resolve("backups");
  }

  /**
   * Opens the data of a folder; before their tables are changed by a newer Fewermore, a backup is made.
   *
   * @throws CannotOpen also when that backup can't be made: then nothing was changed
   */
  public static Database openAfterBackup(Path data) {
    return Database.open(data, new SystemDisk(), (source, from) -> beforeUpdate(data, source, from));
  }

  /** {@link #openAfterBackup(Path)} of a folder's own part of a school's database; the backup lies in the folder. */
  public static Database openAfterBackup(Path data, School school) {
    return Database.open(data, school, (source, from) -> beforeUpdate(data, source, from));
  }

  private static void beforeUpdate(Path data, DataSource source, String from) {
    try {
      new Backups(data).make(source, from, "before-update", lock(source), Instant.now(), Progress.NONE);
    } catch (BackupProblem e) {
      throw new CannotOpen("This Fewermore is newer than the data and makes a backup before it changes them. "
          + e.getMessage());
    }
  }

  /** The name of the setting that says what backups are locked with. */
  public static final String LOCK = "backup key";

  /** What the teacher has backups locked with, as her data say; null when they are not locked. */
  static Key lock(DataSource data) throws BackupProblem {
    try (Connection connection = data.getConnection();
        PreparedStatement asked = connection.prepareStatement("SELECT content FROM setting WHERE name = ?")) {
      asked.setString(1, LOCK);
      try (ResultSet row = asked.executeQuery()) {
        return row.next() ? Key.read(row.getString(1)).orElse(null) : null;
      }
    } catch (SQLException e) {
      throw new BackupProblem("It can't be read whether backups are locked.", e);
    }
  }

  /** Where the app's own backups lie. */
  public Path folder() {
    return folder;
  }

  /** All backups the app has here, newest first; files that are none are passed over. */
  public List<BackupFile> list() {
    return list(folder);
  }

  /** The backups in any folder, newest first. */
  public static List<BackupFile> list(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    List<BackupFile> backups = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(each -> each.getFileName().toString().endsWith(ENDING)).sorted().toList()) {
        try {
          backups.add(BackupFile.of(file));
        } catch (BackupProblem e) {
          LOG.log(Level.WARNING, "a file among the backups is none: " + file.getFileName());
        }
      }
    } catch (IOException e) {
      LOG.log(Level.WARNING, "the folder of the backups can't be read");
    }
    backups.sort(Comparator.comparing(BackupFile::made).thenComparing(backup -> backup.path().toString()).reversed());
    return backups;
  }

  /** One of {@link #list} by its file's name. */
  public Optional<BackupFile> find(String name) {
    return list().stream().filter(each -> each.path().getFileName().toString().equals(name)).findFirst();
  }

  /** Throws a backup away. */
  public void delete(BackupFile backup) throws IOException {
    Files.deleteIfExists(backup.path());
  }

  /** Makes one among the app's own. */
  public BackupFile make(Database database, String why, Key key, Instant now, Progress progress) throws BackupProblem {
    return database.readWhole(data -> make(data, database.version(), why, key, now, progress));
  }

  /** {@link #make(Database, String, Key, Instant, Progress)} of a database whose tables are of a version. */
  public BackupFile make(DataSource data, String version, String why, Key key, Instant now, Progress progress)
      throws BackupProblem {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new BackupProblem("The folder " + folder + " can't be made. Allow writing there.", e);
    }
    Path to = folder.resolve(NAME.format(now) + "-" + why + ENDING);
    for (int more = 2; Files.exists(to); more++) {
      to = folder.resolve(NAME.format(now) + "-" + why + "-" + more + ENDING);
    }
    return make(data, version, to, why, key, now, progress);
  }

  /** Makes one as a file of its own; a file that is there already stays until the new one is verified. */
  public BackupFile make(DataSource data, String version, Path to, String why, Key key, Instant now, Progress progress)
      throws BackupProblem {
    return write(data, version, to, why, key, now, List.of(Dump.INVENTED), progress);
  }

  private synchronized BackupFile write(DataSource data, String version, Path to, String why, Key key, Instant now,
      List<Without> without, Progress progress) throws BackupProblem {
    Path part = to.resolveSibling(to.getFileName() + ".part");
    try (Connection connection = data.getConnection()) {
      Sum written = BackupFile.write(connection, part, now, version, why, key, without, progress);
      BackupFile made = BackupFile.of(part);
      Scratch.from(made, key, scratchFolder(), (done, of) -> progress.at(done, of)).close();
      LOG.log(Level.DEBUG, "backup of " + written.rows() + " rows verified");
      Files.move(part, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      forceFolder(to.toAbsolutePath().getParent());
      return BackupFile.of(to);
    } catch (IOException | SQLException e) {
      throw new BackupProblem("The backup could not be written to " + to.getParent()
          + ". See that the disk has room and may be written; nothing else was changed.", e);
    } finally {
      try {
        Files.deleteIfExists(part);
      } catch (IOException e) {
        LOG.log(Level.DEBUG, "an unfinished backup stays");
      }
    }
  }

  private Path scratchFolder() {
    return folder.resolveSibling("scratch");
  }

  static void forceFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      LOG.log(Level.DEBUG, "folder not forced: some systems do not open folders");
    }
  }

  /** Copies a backup to another folder or a stick, forced, under its own name. */
  public Path copyTo(BackupFile backup, Path other) throws BackupProblem {
    Path to = other.resolve(backup.path().getFileName());
    Path part = other.resolve(backup.path().getFileName() + ".part");
    try {
      if (!Files.isDirectory(other)) {
        throw new BackupProblem("The folder " + other + " is not there. Plug in the stick, or name another folder.");
      }
      Files.copy(backup.path(), part, StandardCopyOption.REPLACE_EXISTING);
      try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      Files.move(part, to, StandardCopyOption.REPLACE_EXISTING);
      if (Files.mismatch(backup.path(), to) >= 0) {
        throw new BackupProblem("The copy in " + other + " is not the same as the backup. Try another stick.");
      }
      return to;
    } catch (IOException e) {
      throw new BackupProblem("The copy could not be written to " + other
          + ". See that it has room and may be written; the backup itself is there.", e);
    }
  }

  /**
   * Throws away what is older than so many days, but never the newest three. By the days between backups, not by
   * today's date: a clock that stands a year ahead throws nothing away.
   */
  public int forget(int days) {
    List<BackupFile> all = list();
    int gone = 0;
    for (int at = ALWAYS_KEPT; at < all.size(); at++) {
      // Measured from the third newest, so that one backup under a wrong date does not make the rest look old.
      if (Duration.between(all.get(at).made(), all.get(ALWAYS_KEPT - 1).made()).toDays() > days) {
        try {
          delete(all.get(at));
          gone++;
        } catch (IOException e) {
          LOG.log(Level.WARNING, "an old backup could not be removed");
        }
      }
    }
    return gone;
  }
}
