package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.json.Json;
import fewermore.marking.Work;
import fewermore.store.OneLossIsALoss;
import fewermore.store.disk.FailingDisk;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;

/** A disk that takes nothing: nothing is acknowledged, the teacher is told, and it goes on when the disk does. */
@OneLossIsALoss
class StoppedDiskTest {
  private static Work work(String answer) {
    return new Work("52 - 14 = x", answer, "shells", null, null);
  }

  private static HttpResponse<String> handIn(Tablet tablet, int seq) {
    return tablet.send(tablet.item(tablet.work(1), seq, "handed-in", work("" + seq)));
  }

  @Test
  void aFullDiskIsSaidEverywhereAndSavingGoesOnByItself() throws Exception {
    FailingDisk disk = new FailingDisk();
    try (Rig rig = Rig.startOn(disk)) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      Browser teacher = signedIn(rig);
      assertEquals(200, handIn(tablet, 1).statusCode());
      disk.full = true;
      HttpResponse<String> refused = handIn(tablet, 2);
      assertEquals(503, refused.statusCode());
      assertFalse(refused.body().contains("took"), refused.body());
      assertEquals(503, handIn(tablet, 3).statusCode());
      assertFalse(rig.services.database.state().running());
      String findings = teacher.get("/findings").body();
      assertTrue(findings.contains("disk is full") && findings.contains("Empty the trash"), "the band is on every page");
      assertEquals(200, teacher.get("/setup").statusCode(), "reading goes on");
      disk.full = false;
      int status = 503;
      for (int tries = 0; tries < 60 && status != 200; tries++) {
        Thread.sleep(250);
        status = handIn(tablet, 2).statusCode();
      }
      assertEquals(200, status, "saving goes on by itself");
      assertTrue(Json.read(handIn(tablet, 3).body()).path("took").size() == 1);
      assertFalse(teacher.get("/findings").body().contains("not-saved"));
      assertEquals(3, rig.services.works.handIns());
    }
  }

  @Test
  void afterAFailedForceNothingIsAcknowledgedUntilTheNextStart() throws Exception {
    FailingDisk disk = new FailingDisk();
    try (Rig rig = Rig.startOn(disk)) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      assertEquals(200, handIn(tablet, 1).statusCode());
      disk.forceFails = true;
      assertEquals(503, handIn(tablet, 2).statusCode());
      disk.forceFails = false;
      Thread.sleep(1500);
      HttpResponse<String> still = handIn(tablet, 3);
      assertEquals(503, still.statusCode());
      assertTrue(rig.services.database.state().whole().contains("start it again"), still.body());
      rig.stop();
      try (Rig again = Rig.startAgain(rig.folder, 0, 0, null)) {
        assertTrue(again.services.works.handIns() >= 1);
        Tablet next = Tablet.comeIn(again, again.children.get(0));
        assertEquals(200, handIn(next, 4).statusCode());
      }
    }
  }

  private static Browser signedIn(Rig rig) {
    Browser browser = new Browser(rig.teacherAddress());
    browser.get("/sign-in");
    browser.post("/sign-in", java.util.Map.of("passphrase", Rig.PASSPHRASE));
    browser.get("/welcome");
    return browser;
  }
}
