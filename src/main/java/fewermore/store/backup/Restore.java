package fewermore.store.backup;

import fewermore.store.CannotOpen;
import fewermore.store.DamagedData;
import fewermore.store.Database;
import fewermore.store.disk.BlockFile;
import fewermore.store.disk.KeptFilePath;
import fewermore.store.disk.SystemDisk;
import fewermore.store.backup.Dump.Sum;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.System.Logger.Level;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.stream.Stream;
import javax.sql.DataSource;

/** Puts a backup in the place of the present data, which stay beside it. Never while Fewermore runs on them. */
public final class Restore {
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss").withZone(ZoneOffset.UTC);

  /**
   * What came of it.
   *
   * @param pieces handed-in pieces now there
   * @param newer acknowledged pieces of the data before that the backup did not have
   * @param saved how many of these were whole and were added to the backup's
   * @param beside the folder the data before are kept in; null when there were none
   */
  public record Done(long pieces, long newer, long saved, Path beside) {}

  private Restore() {}

  /** How many acknowledged pieces of a running database are not in a backup. */
  public static long newer(Database database, BackupFile backup, Key key) throws BackupProblem {
    return database.readWhole(source -> {
      try (Connection connection = source.getConnection()) {
        return newer(connection, backup, key);
      } catch (SQLException e) {
        throw new BackupProblem("The present data could not be counted.", e);
      }
    });
  }

  private static long newer(Connection connection, BackupFile backup, Key key) throws BackupProblem, SQLException {
    Names names = new Names();
    backup.read(key, (table, columns, row) -> {
      if (table.equals("REVISION")) {
        names.add(row.get(columns.indexOf("WORK_ID")).asText(), row.get(columns.indexOf("PAGE")).asText(),
            row.get(columns.indexOf("SEQ")).asInt());
      }
    });
    names.sort();
    long newer = 0;
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("""
            SELECT r.work_id, r.page, r.seq
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN child c ON c.id = w.child_id
              JOIN classroom k ON k.id = c.classroom_id
             WHERE k.invented = FALSE
               AND r.kind IN ('handed-in', 'draft')""")) {
      while (rows.next()) {
        newer += names.has(rows.getString(1), rows.getString(2), rows.getInt(3)) ? 0 : 1;
      }
    }
    return newer;
  }

  /** Names of pieces as 64-bit hashes: a school-year's 864,000 in 7 MB. */
  private static final class Names {
    private long[] hashes = new long[1024];
    private int count;

    /** FNV-1a, 64 bits (Fowler, Noll, Vo; RFC 9923). */
    private static long hash(String work, String page, int seq) {
      long hash = 0xcbf29ce484222325L;
      String name = work + "/" + page + "/" + seq;
      for (int at = 0; at < name.length(); at++) {
        hash = (hash ^ name.charAt(at)) * 0x100000001b3L;
      }
      return hash;
    }

    private void add(String work, String page, int seq) {
      if (count == hashes.length) {
        hashes = Arrays.copyOf(hashes, count * 2);
      }
      hashes[count++] = hash(work, page, seq);
    }

    private void sort() {
      Arrays.sort(hashes, 0, count);
    }

    private boolean has(String work, String page, int seq) {
      return Arrays.binarySearch(hashes, 0, count, hash(work, page, seq)) >= 0;
    }
  }

  /**
   * Puts a backup in the place of the data of a folder. Before that the present data are backed up, if they are whole.
   *
   * @param newerFound is told how many acknowledged pieces the backup lacks, before anything is changed
   * @throws BackupProblem with a sentence; then the present data are as they were
   */
  public static Done run(Path folder, BackupFile backup, Key key, Instant now, LongConsumer newerFound, Progress progress)
      throws BackupProblem {
    Path data = folder.toAbsolutePath().normalize();
    refuseWhileServing(data);
    long newer = 0;
    boolean there = Files.exists(Database.dataFile(data));
    if (there) {
      try (Database present = Database.open(data)) {
        newer = newer(present, backup, key);
        newerFound.accept(newer);
        new Backups(data).make(present, "before-restore", present.readWhole(Backups::lock), now, Progress.NONE);
      } catch (DamagedData e) {
        System.getLogger(Restore.class.getName()).log(Level.WARNING, "the present data are damaged; they are kept");
      } catch (CannotOpen e) {
        throw new BackupProblem(e.getMessage(), e);
      }
    }
    try (Scratch scratch = Scratch.from(backup, key, data.resolve("scratch"), progress)) {
      long pieces = scratch.count().pieces();
      Path beside = there ? putInPlace(scratch, data, "before-restore", now) : first(scratch, data);
      return new Done(pieces, newer, 0, beside);
    } catch (SQLException | IOException e) {
      throw new BackupProblem("The backup could not be put in place. See that the disk has room; the data are as they "
          + "were, or the next start says that they are damaged and what to do.", e);
    }
  }

  /**
   * Puts a backup into the empty part of a school's database that is this laptop's: so a laptop's classes move there. All
   * of it comes in or nothing.
   *
   * @throws BackupProblem with a sentence, also when there are classes already; then nothing was changed
   */
  public static Done intoSchool(Database school, BackupFile backup, Key key, Progress progress) throws BackupProblem {
    Path folder = school.folder().resolve("scratch");
    Path lines = folder.resolve("lines");
    try (Scratch scratch = Scratch.from(backup, key, folder, progress)) {
      scratch.bringUpToDate();
      Sum all;
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(lines))) {
        all = Dump.write(scratch.connection, out, List.of(), backup.rows(), Progress.NONE);
      }
      Sum found = school.readWhole(source -> fill(source, lines, all.rows(), progress));
      if (!all.equals(found)) {
        throw new BackupProblem("The school's database did not take the backup as it is. Nothing was changed.");
      }
      return new Done(scratch.count().pieces(), 0, 0, null);
    } catch (SQLException | IOException e) {
      throw new BackupProblem("The backup could not be put into the school's database. Nothing was changed; try again.", e);
    } finally {
      try {
        Files.deleteIfExists(lines);
      } catch (IOException e) {
        System.getLogger(Restore.class.getName()).log(Level.WARNING, "the lines of a backup stay in scratch");
      }
    }
  }

  private static Sum fill(DataSource source, Path lines, long rows, Progress progress)
      throws BackupProblem {
    try (Connection connection = source.getConnection()) {
      for (Tables.Table table : Tables.of(connection)) {
        if (!table.name().equals("SETTING") && !isEmpty(connection, table)) {
          throw new BackupProblem("There are classes of this laptop in the school's database already. A backup goes only "
              + "where there are none: use another folder with --data, or ask for a backup of the database itself.");
        }
      }
      try (Dump.Inserts inserts = new Dump.Inserts(connection, rows, progress, false, true);
          Statement statement = connection.createStatement(); InputStream in = Files.newInputStream(lines)) {
        statement.execute("DELETE FROM setting");
        Sum read = Dump.read(in, inserts);
        inserts.finish();
        return read;
      } catch (SQLException | IOException | BackupProblem | RuntimeException e) {
        connection.rollback();
        throw e;
      }
    } catch (SQLException | IOException e) {
      throw new BackupProblem("The backup could not be put into the school's database. Nothing was changed; try again.", e);
    }
  }

  private static boolean isEmpty(Connection connection, Tables.Table table) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT 1 FROM " + table.name() + " LIMIT 1")) {
      return !row.next();
    }
  }

  private static void refuseWhileServing(Path data) throws BackupProblem {
    if (Database.inUse(data)) {
      throw new BackupProblem("Fewermore is running on the data in " + data
          + ". Stop it first (Ctrl-C in its window), then restore.");
    }
  }

  private static Path first(Scratch scratch, Path data) throws IOException, SQLException {
    scratch.putInPlaceOf(Database.dataFile(data));
    Backups.forceFolder(data);
    return null;
  }

  /**
   * First all present files are copied beside, forced; then the new file takes the old one's place at once; then the
   * old checksums and journals go. Cut short in between, the next start notices that they do not belong together.
   */
  private static Path putInPlace(Scratch scratch, Path data, String name, Instant now)
      throws IOException, SQLException {
    Path beside = data.resolve(name + "-" + NAME.format(now));
    for (int more = 2; Files.exists(beside); more++) {
      beside = data.resolve(name + "-" + NAME.format(now) + "-" + more);
    }
    copyDatabase(data, beside);
    scratch.putInPlaceOf(Database.dataFile(data));
    for (Path each : databaseFiles(data)) {
      if (!each.equals(Database.dataFile(data))) {
        Files.delete(each);
      }
    }
    Backups.forceFolder(data);
    return beside;
  }

  private static List<Path> databaseFiles(Path data) throws IOException {
    try (Stream<Path> files = Files.list(data)) {
      return files.filter(Database::isDatabaseFile).toList();
    }
  }

  private static void copyDatabase(Path data, Path to) throws IOException {
    Files.createDirectories(to);
    for (Path each : databaseFiles(data)) {
      Path copy = to.resolve(each.getFileName());
      Files.copy(each, copy, StandardCopyOption.REPLACE_EXISTING);
      try (FileChannel channel = FileChannel.open(copy, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
    }
    Backups.forceFolder(to);
    Backups.forceFolder(data);
  }

  /** The newest backup of a folder that can be read without a passphrase and is whole. */
  public static Optional<BackupFile> newestWhole(Path data) {
    for (BackupFile backup : new Backups(data).list()) {
      if (!backup.locked()) {
        try {
          Scratch.from(backup, null, data.resolve("scratch"), Progress.NONE).close();
          return Optional.of(backup);
        } catch (BackupProblem e) {
          System.getLogger(Restore.class.getName()).log(Level.WARNING, "a backup is not whole: "
              + backup.path().getFileName());
        }
      }
    }
    return Optional.empty();
  }

  /**
   * Mends damaged data: the backup, and on top of it every newer row of the damaged data that lies wholly in blocks
   * that are as they were written. The damaged files are kept beside.
   *
   * @param backup may be null: then only what is whole in the damaged data
   */
  public static Done mend(Path folder, BackupFile backup, Key key, Instant now, Progress progress) throws BackupProblem {
    Path data = folder.toAbsolutePath().normalize();
    refuseWhileServing(data);
    Path copy = data.resolve("scratch").resolve("damaged");
    try (Scratch scratch = backup == null ? Scratch.make(data.resolve("scratch"), "latest")
        : Scratch.from(backup, key, data.resolve("scratch"), progress)) {
      long before = scratch.count().pieces();
      if (backup != null) {
        scratch.bringUpToDate();
      }
      copyDatabase(data, copy);
      addWhatIsWhole(copy, scratch.connection);
      long pieces = scratch.count().pieces();
      Path beside = putInPlace(scratch, data, "damaged", now);
      return new Done(pieces, pieces - before, pieces - before, beside);
    } catch (SQLException | IOException e) {
      throw new BackupProblem("The data could not be mended. See that the disk has room; the damaged files are as they "
          + "were.", e);
    } finally {
      removeCopy(copy);
    }
  }

  private static void removeCopy(Path copy) {
    try {
      if (Files.isDirectory(copy)) {
        try (Stream<Path> all = Files.walk(copy)) {
          for (Path each : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
            Files.delete(each);
          }
        }
      }
    } catch (IOException e) {
      System.getLogger(Restore.class.getName()).log(Level.WARNING, "the working copy of damaged data stays in scratch");
    }
  }

  private static void addWhatIsWhole(Path copy, Connection into) throws SQLException {
    Path file = Database.dataFile(copy);
    BlockFile blocks = null;
    try {
      blocks = BlockFile.openDamaged(file, new SystemDisk());
      KeptFilePath.put(file, blocks);
      String path = file.toString();
      try (Connection from = Scratch.damaged("jdbc:h2:" + KeptFilePath.PREFIX
          + path.substring(0, path.length() - ".mv.db".length()))) {
        addWhatIsWhole(from, into);
        try (Statement statement = from.createStatement()) {
          statement.execute("SHUTDOWN IMMEDIATELY");
        }
      }
    } catch (SQLException | IOException | RuntimeException e) {
      // Where even the beginning is damaged nothing newer can be read: the backup stands alone.
      System.getLogger(Restore.class.getName()).log(Level.WARNING, "part of the damaged data could not be read at all", e);
    } finally {
      KeptFilePath.remove(file);
      if (blocks != null) {
        try {
          blocks.close();
        } catch (IOException e) {
          System.getLogger(Restore.class.getName()).log(Level.DEBUG, "the working copy did not close");
        }
      }
    }
  }

  private static void addWhatIsWhole(Connection from, Connection into) throws SQLException {
    try (Dump.Inserts inserts = new Dump.Inserts(into, 0, Progress.NONE, true)) {
      List<Tables.Table> known = Tables.of(into);
      for (Tables.Table table : Tables.of(from)) {
        if (known.stream().anyMatch(each -> each.name().equals(table.name()))) {
          long last = lastRow(from, table);
          addRange(from, table, 1, last, inserts);
        }
      }
      inserts.finish();
    }
  }

  /** The highest row number; where that can't be read, one that is surely higher. */
  private static long lastRow(Connection from, Tables.Table table) {
    try (Statement statement = from.createStatement();
        ResultSet row = statement.executeQuery("SELECT MAX(_ROWID_) FROM " + table.name())) {
      row.next();
      return row.getLong(1);
    } catch (SQLException e) {
      return 1L << 21;
    }
  }

  /** Adds the rows of a range; where one of them can't be read, by halves, down to the single row. */
  private static void addRange(Connection from, Tables.Table table, long first, long last, Dump.Inserts inserts)
      throws SQLException {
    if (first > last) {
      return;
    }
    StringBuilder columns = new StringBuilder();
    table.columns().forEach(column -> columns.append(columns.length() == 0 ? "" : ", ")
        .append(column.name()));
    List<Object[]> rows = new ArrayList<>();
    boolean whole = last - first < 2000;
    if (whole) {
      try (Statement statement = from.createStatement();
          ResultSet found = statement.executeQuery("SELECT " + columns + " FROM " + table.name()
              + " WHERE _ROWID_ BETWEEN " + first + " AND " + last + " ORDER BY _ROWID_")) {
        while (found.next()) {
          rows.add(Dump.row(found, table));
        }
      } catch (SQLException e) {
        whole = false;
      }
    }
    if (whole) {
      for (Object[] row : rows) {
        inserts.one(table, row);
      }
    } else if (first < last) {
      long middle = first + (last - first) / 2;
      addRange(from, table, first, middle, inserts);
      addRange(from, table, middle + 1, last, inserts);
    }
  }

  /** The folders in which data are kept that another backup or a repair took the place of, in order. */
  public static List<Path> besides(Path folder) {
    try (var entries = Files.list(folder.toAbsolutePath().normalize())) {
      return entries.filter(entry -> Files.isDirectory(entry) && BESIDE.matcher(entry.getFileName().toString()).matches())
          .sorted().toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  private static final Pattern BESIDE = Pattern.compile("(before-restore|damaged)-.*");
}
