package fewermore.store.backup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.Database;
import fewermore.store.SchoolDay;
import fewermore.store.TeacherStore;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
  private static final Instant NOW = Instant.parse("2026-11-25T21:30:00Z");

  @TempDir Path temp;

  private Path data() {
    return temp.resolve("data");
  }

  /** A class of three with ten pieces each, and an invented one; closed again. */
  private BackupFile madeAndBackedUp(Key key) throws Exception {
    try (Database database = Database.open(data())) {
      SchoolDay day = new SchoolDay(database, 3, false, "real");
      for (int child = 0; child < 3; child++) {
        day.handInMany(child, "page" + child, 10);
      }
      new SchoolDay(database, 2, true, "madeup").handInMany(0, "page", 7);
      return new Backups(data()).make(database, "asked", key, NOW, Progress.NONE);
    }
  }

  private static String lines(BackupFile backup) throws Exception {
    byte[] all = Files.readAllBytes(backup.path());
    int head = 0;
    while (all[head] != '\n') {
      head++;
    }
    try (var in = new GZIPInputStream(new java.io.ByteArrayInputStream(all, head + 1, all.length - head - 1))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void whatWasBackedUpComesBackAndThePresentDataStayBeside() throws Exception {
    BackupFile backup = madeAndBackedUp(null);
    assertEquals(30, backup.pieces());
    Map<String, String> newer;
    try (Database database = Database.open(data())) {
      SchoolDay more = new SchoolDay(database, 1, false, "later");
      more.handInMany(0, "late", 5);
      newer = SchoolDay.there(database);
      assertEquals(5, Restore.newer(database, backup, null));
    }
    long[] told = {-1};
    Restore.Done done = Restore.run(data(), backup, null, NOW, newer5 -> told[0] = newer5, Progress.NONE);
    assertEquals(5, told[0]);
    assertEquals(30, done.pieces());
    assertEquals(5, done.newer());
    try (Database database = Database.open(data())) {
      Map<String, String> there = SchoolDay.there(database);
      assertEquals(30, there.size());
      there.forEach((name, answer) -> assertEquals(newer.get(name), answer));
      // New rows get numbers of their own.
      new SchoolDay(database, 1, false, "after").handInMany(0, "p", 1);
      assertEquals(31, SchoolDay.there(database).size());
    }
    try (Database beside = Database.open(done.beside())) {
      assertEquals(newer, SchoolDay.there(beside));
    }
    assertEquals(List.of("before-restore", "asked"),
        new Backups(data()).list().stream().map(BackupFile::why).sorted(java.util.Comparator.reverseOrder()).toList());
    assertFalse(Files.list(data().resolve("scratch")).findAny().isPresent(), "nothing is left in scratch");
  }

  @Test
  void anInventedClassIsLeftOutWithAllThatHangsOnIt() throws Exception {
    String lines = lines(madeAndBackedUp(null));
    assertTrue(lines.contains("\"real0\""), lines);
    assertFalse(lines.contains("madeup") || lines.contains("invented-"), lines);
  }

  @Test
  void aLockedBackupTellsNothingAndOpensWithItsPassphraseOnly() throws Exception {
    BackupFile backup = madeAndBackedUp(Key.fresh("a pail of tide water"));
    assertTrue(backup.locked());
    assertFalse(Files.readString(backup.path(), StandardCharsets.ISO_8859_1).contains("real"));
    Map<String, byte[]> before = files(data());
    for (String wrong : new String[] {"A pail of tide water", "", null}) {
      assertThrows(BackupProblem.class,
          () -> Restore.run(data(), backup, backup.key(wrong), NOW, each -> { }, Progress.NONE));
    }
    Map<String, byte[]> after = files(data());
    assertEquals(before.keySet(), after.keySet());
    Restore.Done done = Restore.run(data(), backup, backup.key("a pail of tide water"), NOW, each -> { }, Progress.NONE);
    assertEquals(30, done.pieces());
  }

  private static Map<String, byte[]> files(Path data) throws Exception {
    Map<String, byte[]> files = new TreeMap<>();
    try (Database database = Database.open(data)) {
      files.put("pieces " + SchoolDay.there(database), new byte[0]);
    }
    return files;
  }

  @Test
  void aChangedOrCutBackupIsRefusedAndThePresentDataStay() throws Exception {
    for (boolean locked : new boolean[] {false, true}) {
      Key key = locked ? Key.fresh("a pail of tide water") : null;
      BackupFile whole;
      try (Database database = Database.open(data())) {
        SchoolDay day = new SchoolDay(database, 1, false, locked ? "l" : "p");
        day.handInMany(0, "page", 10);
        whole = new Backups(data()).make(database, "asked", key, NOW, Progress.NONE);
      }
      byte[] bytes = Files.readAllBytes(whole.path());
      int start = new String(bytes, StandardCharsets.ISO_8859_1).indexOf('\n') + 1;
      for (int place = start + 12; place < bytes.length - 9; place += Math.max(1, bytes.length / 25)) {
        byte[] flipped = bytes.clone();
        flipped[place] ^= 1;
        Files.write(temp.resolve("flipped.fewermore"), flipped);
        Files.write(temp.resolve("cut.fewermore"), java.util.Arrays.copyOf(bytes, place));
        for (String name : List.of("flipped.fewermore", "cut.fewermore")) {
          BackupFile changed = BackupFile.of(temp.resolve(name));
          assertThrows(BackupProblem.class, () -> changed.read(key, (table, columns, row) -> { }), name + " at " + place);
        }
      }
      assertTrue(whole.read(key, (table, columns, row) -> { }).rows() > 10);
    }
    try (Database database = Database.open(data())) {
      assertEquals(20, SchoolDay.there(database).size());
    }
  }

  @Test
  void aBackupOfANewerFewermoreAndAFileThatIsNoneGetASentence() throws Exception {
    BackupFile backup = madeAndBackedUp(null);
    String all = Files.readString(backup.path(), StandardCharsets.ISO_8859_1);
    Path newer = temp.resolve("newer.fewermore");
    Files.writeString(newer, all.replaceFirst("\"data\":\"[0-9]+\"", "\"data\":\"999\""), StandardCharsets.ISO_8859_1);
    BackupProblem problem = assertThrows(BackupProblem.class,
        () -> Restore.run(data(), BackupFile.of(newer), null, NOW, each -> { }, Progress.NONE));
    assertTrue(problem.getMessage().contains("newer Fewermore"), problem.getMessage());
    Path note = Files.writeString(temp.resolve("note.txt"), "a shopping list");
    assertTrue(assertThrows(BackupProblem.class, () -> BackupFile.of(note)).getMessage().contains("not a backup"));
    assertThrows(BackupProblem.class, () -> BackupFile.of(temp.resolve("nowhere")));
  }

  @Test
  void whileFewermoreRunsNothingIsRestored() throws Exception {
    BackupFile backup = madeAndBackedUp(null);
    try (Database running = Database.open(data())) {
      BackupProblem problem = assertThrows(BackupProblem.class,
          () -> Restore.run(data(), backup, null, NOW, each -> { }, Progress.NONE));
      assertTrue(problem.getMessage().contains("Stop it first"), problem.getMessage());
    }
  }

  @Test
  void oldBackupsGoButNeverTheNewestThreeAndAClockAheadThrowsNothingAway() throws Exception {
    madeAndBackedUp(null);
    Backups backups = new Backups(data());
    try (Database database = Database.open(data())) {
      for (int day : new int[] {1, 2, 40, 41, 42}) {
        backups.make(database, "day", null, NOW.minusSeconds(day * 86_400L), Progress.NONE);
      }
      assertEquals(6, backups.list().size());
      assertEquals(3, backups.forget(30));
      assertEquals(3, backups.list().size());
      backups.make(database, "day", null, NOW.plusSeconds(400 * 86_400L), Progress.NONE);
      assertEquals(0, backups.forget(30));
      assertEquals(4, backups.list().size());
    }
  }

  @Test
  void aCopyGoesToAnotherFolderAndAMissingOneGetsASentence() throws Exception {
    BackupFile backup = madeAndBackedUp(null);
    Path stick = Files.createDirectory(temp.resolve("stick"));
    Path copy = new Backups(data()).copyTo(backup, stick);
    assertEquals(-1, Files.mismatch(backup.path(), copy));
    assertTrue(assertThrows(BackupProblem.class, () -> new Backups(data()).copyTo(backup, temp.resolve("none")))
        .getMessage().contains("Plug in the stick"));
  }

  @Test
  void aLongBackupIsStoppedOnRequestAndLeavesNothing() throws Exception {
    try (Database database = Database.open(data())) {
      new SchoolDay(database, 1, false, "p").handInMany(0, "page", 1500);
      assertThrows(Progress.Stopped.class, () -> new Backups(data()).make(database, "asked", null, NOW, (done, of) -> {
        throw new Progress.Stopped();
      }));
      assertEquals(List.of(), new Backups(data()).list());
      assertFalse(Files.list(new Backups(data()).folder()).findAny().isPresent());
      new TeacherStore(database).set("still", "writes");
    }
  }
}
