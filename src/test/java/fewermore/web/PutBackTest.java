package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.HandIn;
import fewermore.marking.Work;
import fewermore.store.Database;
import fewermore.store.backup.BackupFile;
import fewermore.store.backup.Backups;
import fewermore.store.backup.Key;
import fewermore.store.backup.Progress;
import fewermore.store.backup.Restore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup is put back from its page: the app closes, and opens again on the same ports with the data of then. */
class PutBackTest {
  @TempDir Path folder;

  private static ObjectNode work(Tablet tablet, int seq, String answer) {
    return tablet.item(tablet.work(1), seq, "handed-in", new Work("52 - 14 = x", answer, "shells", null, null));
  }

  private static Browser signedIn(int port) {
    Browser teacher = new Browser("http://127.0.0.1:" + port);
    teacher.get("/sign-in");
    assertEquals(303, teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE)).statusCode());
    teacher.get("/setup/backups");
    return teacher;
  }

  private static App waitForAnother(Serving serving, App before) throws InterruptedException {
    for (int tries = 0; tries < 1200 && serving.app() == before; tries++) {
      Thread.sleep(100);
    }
    assertNotSame(before, serving.app(), "the app was not opened again within two minutes");
    return serving.app();
  }

  private static List<String> answers(App app) {
    return app.services().works.pieces(app.services().classes.all().get(0).id()).stream()
        .flatMap(piece -> piece.handIns().stream()).map(HandIn::parts).map(Work::answer).toList();
  }

  @Test
  void itSaysFirstWhatIsNewerAsksOnceAndTabletsGoOn() throws Exception {
    int port = KillRig.freePort();
    int teacherPort = KillRig.freePort();
    Tablet tablet;
    BackupFile open;
    BackupFile locked;
    try (Rig rig = Rig.startAgain(folder, port, teacherPort, null)) {
      tablet = Tablet.comeIn(rig, rig.children.get(0));
      tablet.sent(work(tablet, 1, "39"));
      Backups backups = new Backups(folder);
      open = backups.make(rig.services.database, "asked", null, rig.now(), Progress.NONE);
      locked = backups.make(rig.services.database, "asked", Key.fresh("a pail of tide"), rig.now(), Progress.NONE);
      tablet.sent(work(tablet, 2, "40"));
      String page = signedIn(teacherPort).get("/setup/backups/" + open.path().getFileName()).body();
      assertFalse(page.contains("/restore\""), "where the app can't be opened again there is no button");
    }
    try (Serving serving = Serving.begin(folder, () -> App.start(new Settings(folder, port, teacherPort, "127.0.0.1", null),
        Database.open(folder), Network.loopbackOnly(), Clock.systemUTC()))) {
      Browser teacher = signedIn(teacherPort);
      String page = "/setup/backups/" + open.path().getFileName();
      assertTrue(teacher.get(page).body().contains("Go back without the newer piece"));
      assertEquals(422, teacher.post(page + "/restore", Map.of("newer", "0")).statusCode(), "shown another number");
      App before = serving.app();
      assertEquals(200, teacher.post(page + "/restore", Map.of("newer", "1")).statusCode());
      App after = waitForAnother(serving, before);
      assertEquals(List.of("39"), answers(after));
      assertEquals(303, teacher.get("/setup/backups").statusCode(), "she signs in again");
      assertTrue(signedIn(teacherPort).get("/setup/backups").body().contains("The backup was put back: 1 piece of work"));
      tablet.sent(work(tablet, 3, "38"));
      assertEquals(List.of("39", "38"), answers(after), "the tablet's next work is taken");
      Path beside = Restore.besides(folder).get(0);
      try (Database kept = Database.open(beside)) {
        assertEquals(2L, kept.<Long>read(handle ->
            handle.createQuery("SELECT COUNT(*) FROM revision").mapTo(Long.class).one()), "the data before are beside");
      }

      teacher = signedIn(teacherPort);
      String lockedPage = "/setup/backups/" + locked.path().getFileName();
      assertTrue(teacher.get(lockedPage).body().contains("Look what is newer"));
      assertEquals(422, teacher.post(lockedPage + "/restore", Map.of("newer", "1", "passphrase", "mud")).statusCode());
      var asked = teacher.post(lockedPage + "/restore", Map.of("newer", "", "passphrase", "a pail of tide"));
      assertEquals(422, asked.statusCode(), "first it says what is newer");
      assertTrue(asked.body().contains("Go back without the newer piece"), asked.body());
      assertEquals(List.of("39", "38"), answers(serving.app()), "nothing was done yet");
      assertEquals(200, teacher.post(lockedPage + "/restore", Map.of("newer", "1", "passphrase", "a pail of tide"))
          .statusCode());
      assertEquals(List.of("39"), answers(waitForAnother(serving, after)));
    }
  }
}
