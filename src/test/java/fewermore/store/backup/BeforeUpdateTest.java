package fewermore.store.backup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.CannotOpen;
import fewermore.store.Database;
import fewermore.store.SchoolDay;
import fewermore.store.TeacherStore;
import fewermore.store.disk.BlockFile;
import fewermore.store.disk.KeptFilePath;
import fewermore.store.disk.SystemDisk;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Data of an older Fewermore: a backup comes before their tables are changed. */
class BeforeUpdateTest {
  @TempDir Path temp;

  private Path data() {
    return temp.resolve("data");
  }

  /** A folder as the first version left it, with a teacher. */
  private void ofTheFirstVersion(String key) throws Exception {
    Files.createDirectories(data());
    Path file = Database.dataFile(data());
    String path = file.toString();
    BlockFile blocks = BlockFile.open(file, new SystemDisk());
    KeptFilePath.put(file, blocks);
    String url = "jdbc:h2:" + KeptFilePath.PREFIX + path.substring(0, path.length() - ".mv.db".length())
        + ";MODE=PostgreSQL";
    try (var connection = DriverManager.getConnection(url, "sa", ""); var statement = connection.createStatement()) {
      org.h2.jdbcx.JdbcDataSource source = new org.h2.jdbcx.JdbcDataSource();
      source.setUrl(url);
      source.setUser("sa");
      source.setPassword("");
      Database.migrate(source, "1");
      statement.execute("INSERT INTO setting (name, content) VALUES ('word', 'from the first version')");
      if (key != null) {
        statement.execute("INSERT INTO setting (name, content) VALUES ('backup key', '" + key + "')");
      }
      statement.execute("SHUTDOWN");
    } finally {
      KeptFilePath.remove(file);
      blocks.close();
    }
  }

  @Test
  void aBackupOfTheOldTablesIsMadeAndCanBeRestoredIntoTheNewOnes() throws Exception {
    ofTheFirstVersion(null);
    try (Database database = Backups.openAfterBackup(data())) {
      assertFalse(database.version().equals("001"), "the tables were brought up to date");
      assertEquals("from the first version", new TeacherStore(database).setting("word").orElseThrow());
    }
    BackupFile made = new Backups(data()).list().get(0);
    assertEquals("before-update", made.why());
    assertEquals("001", made.data());
    Path other = Files.createDirectory(temp.resolve("other"));
    Restore.run(other, made, null, made.made(), newer -> { }, Progress.NONE);
    try (Database database = Backups.openAfterBackup(other)) {
      assertEquals("from the first version", new TeacherStore(database).setting("word").orElseThrow());
      new SchoolDay(database, 1, false, "n").handInMany(0, "page", 2);
    }
    assertTrue(new Backups(other).list().isEmpty(), "tables that are up to date need none");
  }

  @Test
  void itIsLockedWhereBackupsAreLockedWithAPassphrase() throws Exception {
    Key key = Key.fresh("a pail of tide water");
    ofTheFirstVersion(key.kept());
    Backups.openAfterBackup(data()).close();
    BackupFile made = new Backups(data()).list().get(0);
    assertTrue(made.locked());
    assertTrue(made.read(made.key("a pail of tide water"), (table, columns, row) -> { }).rows() >= 2);
  }

  @Test
  void whereNoBackupCanBeMadeNothingIsChanged() throws Exception {
    ofTheFirstVersion(null);
    Files.writeString(data().resolve("backups"), "a file where the folder should be");
    CannotOpen refused = assertThrows(CannotOpen.class, () -> Backups.openAfterBackup(data()));
    assertTrue(refused.getMessage().contains("makes a backup before it changes them"), refused.getMessage());
    Files.delete(data().resolve("backups"));
    try (Database database = Backups.openAfterBackup(data())) {
      assertEquals("from the first version", new TeacherStore(database).setting("word").orElseThrow());
    }
    assertEquals("001", new Backups(data()).list().get(0).data(), "the tables had stayed as they were");
  }
}
