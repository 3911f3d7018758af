package fewermore.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.backup.BackupFile;
import fewermore.store.backup.BackupProblem;
import fewermore.store.backup.Backups;
import fewermore.store.backup.Progress;
import fewermore.store.backup.Restore;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many laptops on one PostgreSQL, and what is said when it can't be used. */
class SchoolTest {
  private static final Instant NOW = Instant.parse("2026-11-25T15:00:00Z");

  @TempDir Path temp;

  private Database open(String laptop) {
    return Database.open(temp.resolve(laptop), Postgres.school(), (data, from) -> { });
  }

  @Test
  void twoAppsAtOnceNeverSeeOrOverwriteEachOther() {
    try (Database one = open("one"); Database other = open("other")) {
      SchoolDay first = new SchoolDay(one, 3, false, "same");
      SchoolDay second = new SchoolDay(other, 2, false, "same");
      assertEquals(first.classroom.id(), second.classroom.id(), "the very same numbers");
      first.handIn(0, "page", 1);
      second.handIn(0, "page", 2);
      assertEquals(Map.of("samew1/page/1", "page-1"), SchoolDay.there(one));
      assertEquals(Map.of("samew1/page/2", "page-2"), SchoolDay.there(other));
      new TeacherStore(one).set("secret", "of one");
      assertEquals(Optional.empty(), new TeacherStore(other).setting("secret"));
      new TeacherStore(other).set("secret", "of the other");
      assertEquals(Optional.of("of one"), new TeacherStore(one).setting("secret"));
      new TeacherStore(one).changePassphrase(1, "another");
      assertEquals("hash", new TeacherStore(other).first().orElseThrow().passphrase());
      new Erasing(one, List::of).classroom(first.classroom.teacher(), first.classroom.id());
      assertEquals(List.of(), new ClassStore(one).all());
      assertEquals(2, new ClassStore(other).children(second.classroom.id()).size());
      assertEquals(Map.of("samew1/page/2", "page-2"), SchoolDay.there(other));
    }
  }

  @Test
  void whatWasErasedIsInNoTable() {
    try (Database database = open("erased")) {
      SchoolDay day = new SchoolDay(database, 2, false, "Quetzalina");
      day.handIn(0, "page", 1);
      assertTrue(everything(database).contains("Quetzalina"));
      new Erasing(database, List::of).classroom(day.classroom.teacher(), day.classroom.id());
      String left = everything(database);
      assertFalse(left.contains("Quetzalina0") || left.contains("page-1"), left);
    }
  }

  /** Every row of this app's tables as text. */
  private static String everything(Database database) {
    return database.read(handle -> {
      List<String> tables = handle.createQuery(
          "SELECT table_name FROM information_schema.tables WHERE table_schema = CURRENT_SCHEMA ORDER BY table_name")
          .mapTo(String.class).list();
      StringBuilder all = new StringBuilder();
      tables.forEach(table -> handle.createQuery("SELECT CAST(t AS TEXT) FROM " + table + " t").mapTo(String.class)
          .forEach(row -> all.append(row).append('\n')));
      return all.toString();
    });
  }

  @Test
  void aFolderKeepsItsClassesAndACopyOfItIsRefusedWhileTheOtherRuns() throws IOException {
    String id;
    try (Database database = open("mine")) {
      new TeacherStore(database).add("Teacher", "hash", true, NOW);
      id = Files.readString(temp.resolve("mine/school-id"));
      Files.createDirectories(temp.resolve("copy"));
      Files.writeString(temp.resolve("copy/school-id"), id);
      CannotOpen refused = assertThrows(CannotOpen.class, () -> open("copy"));
      assertTrue(refused.getMessage().contains("Another Fewermore works on the same classes"), refused.getMessage());
      assertEquals(1, new TeacherStore(database).all().size());
    }
    try (Database moved = open("copy")) {
      assertEquals("Teacher", new TeacherStore(moved).first().orElseThrow().name());
    }
    assertNotEquals(id, Files.readString(other().resolve("school-id")));
  }

  private Path other() {
    open("new").close();
    return temp.resolve("new");
  }

  @Test
  void aTextThatPostgresDoesNotTakeIsKeptWithoutWhatItDoesNotTake() {
    try (Database database = open("nul")) {
      new TeacherStore(database).set("note", "a\0b");
      assertEquals(Optional.of("ab"), new TeacherStore(database).setting("note"));
    }
  }

  @Test
  void noTransactionWaitsForAConnectionWhileItHoldsOne() throws Exception {
    try (Database database = open("many")) {
      SchoolDay day = new SchoolDay(database, 30, false, "m");
      List<Thread> tablets = new ArrayList<>();
      for (int child = 0; child < 30; child++) {
        int at = child;
        Thread tablet = new Thread(() -> {
          for (int seq = 1; seq <= 5; seq++) {
            day.handIn(at, "p", seq);
            new WorkStore(database).pieces(day.classroom.id());
          }
        });
        tablet.start();
        tablets.add(tablet);
      }
      for (Thread tablet : tablets) {
        tablet.join();
      }
      assertEquals(150, SchoolDay.there(database).size());
    }
  }

  @Test
  void aLaptopsClassesMoveIntoTheSchoolAndBack() throws Exception {
    Path laptop = temp.resolve("laptop");
    BackupFile backup;
    Map<String, String> there;
    try (Database database = Database.open(laptop)) {
      SchoolDay day = new SchoolDay(database, 3, false, "real");
      new SchoolDay(database, 2, true, "madeup").handInMany(0, "p", 3);
      day.handInMany(0, "p", 20);
      day.handInMany(1, "q", 10);
      new TeacherStore(database).set("secret", "of the laptop");
      backup = new Backups(laptop).make(database, "asked", null, NOW, Progress.NONE);
      there = SchoolDay.there(database);
      there.keySet().removeIf(name -> name.startsWith("madeup"));
    }
    try (Database school = open("moved")) {
      new TeacherStore(school).set("secret", "made before");
      assertEquals(30, Restore.intoSchool(school, backup, null, Progress.NONE).pieces());
      assertEquals(there, SchoolDay.there(school));
      assertEquals(Optional.of("of the laptop"), new TeacherStore(school).setting("secret"));
      // New rows get numbers of their own.
      new SchoolDay(school, 1, false, "after").handIn(0, "p", 1);
      BackupProblem again =
          assertThrows(BackupProblem.class, () -> Restore.intoSchool(school, backup, null, Progress.NONE));
      assertTrue(again.getMessage().contains("already"), again.getMessage());
      assertEquals(31, SchoolDay.there(school).size());
      BackupFile back = new Backups(temp.resolve("moved")).make(school, "asked", null, NOW, Progress.NONE);
      assertEquals(31, back.pieces());
      assertEquals(0, Restore.newer(school, back, null));
      assertEquals(31, Restore.run(temp.resolve("alone"), back, null, NOW, newer -> { }, Progress.NONE).pieces());
      try (Database alone = Database.open(temp.resolve("alone"))) {
        assertEquals(SchoolDay.there(school), SchoolDay.there(alone));
      }
    }
  }

  // ---- what is said ----

  private String refused(School school) {
    return assertThrows(CannotOpen.class, () -> Database.open(temp.resolve("refused"), school, (data, from) -> { }))
        .getMessage();
  }

  @Test
  void whyItCantBeOpenedIsSaidInASentence() throws IOException {
    String there = Postgres.school().url();
    String nobody = refused(new School(there, "nobody", "tide pool"));
    assertTrue(nobody.contains("does not let this laptop in"), nobody);
    assertFalse(nobody.contains("tide pool"), nobody);
    String missing = refused(new School(there.replace("/postgres", "/elsewhere"), "postgres", ""));
    assertTrue(missing.contains("/elsewhere does not exist"), missing);
    int free;
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      free = socket.getLocalPort();
    }
    String away = refused(new School("jdbc:postgresql://127.0.0.1:" + free + "/school", "postgres", ""));
    assertTrue(away.contains("can't be reached") && away.contains("127.0.0.1:" + free + "/school"), away);
    Database.open(temp.resolve("refused")).close();
  }

  @Test
  void aUserWhoMayNotMakeASchemaIsToldWhatToAskFor() {
    try (Database database = open("owner")) {
      database.change(handle -> handle.execute("DO $$ BEGIN CREATE ROLE visitor LOGIN; EXCEPTION WHEN duplicate_object"
          + " THEN NULL; END $$"));
    }
    String refused = refused(new School(Postgres.school().url(), "visitor", ""));
    assertTrue(refused.contains("GRANT CREATE ON DATABASE"), refused);
  }

  @Test
  void anAddressThatIsNoneOrHoldsAPasswordIsRefused() {
    for (String url : new String[] {null, "", "jdbc:mysql://host/school", "postgres://host/school", "jdbc:postgresql://host"}) {
      assertTrue(assertThrows(CannotOpen.class, () -> new School(url, "", "")).getMessage().contains("jdbc:postgresql://db"));
    }
    String url = "jdbc:postgresql://host/school?sslmode=verify-full&password=secret";
    String refused = assertThrows(CannotOpen.class, () -> new School(url, "", "")).getMessage();
    assertTrue(refused.contains("FEWERMORE_SCHOOL_PASSWORD") && !refused.contains("=secret"), refused);
    assertEquals("host/school", new School("jdbc:postgresql://host/school?sslmode=require", "me", "hidden").toString());
  }

  @Test
  void theAddressAndWhoSignsInCanStandInAFile() throws IOException {
    Path file = Files.writeString(temp.resolve("school"),
        "url=jdbc:postgresql://db.school.example/fewermore\nuser=room12\npassword=a quiet tide pool\n");
    assertEquals(new School("jdbc:postgresql://db.school.example/fewermore", "room12", "a quiet tide pool"),
        School.read(file));
    assertThrows(CannotOpen.class, () -> School.read(temp.resolve("nowhere")));
  }
}
