package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import fewermore.marking.Work;
import fewermore.store.disk.FailingDisk;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class BackupPagesTest {
  private static void picture(Page page, String name) {
    String folder = System.getProperty("fewermore.pictures");
    if (folder != null) {
      page.screenshot(new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of(folder, name + ".png")));
    }
  }

  private static void isClean(Page page) {
    assertEquals(List.of(), new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().stream()
        .map(each -> each.getId() + " " + each.getNodes().get(0).getHtml()).toList());
    assertTrue((boolean) page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"));
  }

  @Test
  void aBackupIsMadeOnTheButtonAndShownWithWhatIsNewer() throws Exception {
    FailingDisk disk = new FailingDisk();
    try (Rig rig = Rig.startOn(disk); BrowserContext context = Chromium.tablet(1366, 768)) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", new Work("52 - 14 = x", "38", "shells", null, null)));
      Page page = context.newPage();
      Browser teacher = new Browser(rig.teacherAddress());
      teacher.get("/sign-in");
      teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
      context.addCookies(List.of(new Cookie("desk", teacher.cookies.get("desk")).setUrl(rig.teacherAddress())));
      context.setDefaultTimeout(40_000);
      page.navigate(rig.teacherAddress() + "/setup/backups");
      page.click("text=Back up now");
      page.waitForSelector(".backup-list tbody tr");
      isClean(page);
      picture(page, "backups");
      tablet.sent(tablet.item(tablet.work(1), 2, "handed-in", new Work("52 - 14 = x", "39", "shells", null, null)));
      page.click(".backup-list tbody tr:last-child a");
      page.waitForSelector(".command");
      assertTrue(page.textContent("main").contains("newer than this backup"), page.textContent("main"));
      isClean(page);
      picture(page, "backup");
      page.setViewportSize(683, 384);
      page.navigate(rig.teacherAddress() + "/setup/backups");
      isClean(page);
      picture(page, "backups-small");
      page.setViewportSize(1366, 768);
      disk.full = true;
      tablet.send(tablet.item(tablet.work(1), 3, "handed-in", new Work("52 - 14 = x", "40", "shells", null, null)));
      page.navigate(rig.teacherAddress() + "/findings");
      page.waitForSelector(".not-saved");
      isClean(page);
      picture(page, "not-saved");
      disk.full = false;
    }
  }

  @Test
  void howBackupsAreKeptIsCheckedAndALockedOneNeedsItsPassphrase() throws Exception {
    try (Rig rig = Rig.start()) {
      Browser teacher = new Browser(rig.teacherAddress());
      teacher.get("/sign-in");
      teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
      teacher.get("/setup/backups");
      assertEquals(422, teacher.post("/setup/backups/keeping", Map.of("days", "0")).statusCode());
      assertEquals(422, teacher.post("/setup/backups/keeping", Map.of("days", "30", "folder", "/nowhere/at/all"))
          .statusCode());
      assertEquals(422, teacher.post("/setup/backups/keeping",
          Map.of("days", "30", "passphrase", "a pail of tide", "again", "a pail of mud")).statusCode());
      Path stick = Files.createTempDirectory("fewermore-stick");
      assertEquals(303, teacher.post("/setup/backups/keeping", Map.of("days", "30", "folder", stick.toString(),
          "passphrase", "a pail of tide", "again", "a pail of tide")).statusCode());
      assertEquals(303, teacher.post("/setup/backups", Map.of()).statusCode());
      for (int tries = 0; tries < 200 && rig.services.backups.running() != null; tries++) {
        Thread.sleep(100);
      }
      var made = rig.services.backups.backups().list();
      assertEquals(1, made.size(), String.valueOf(rig.services.backups.problem()));
      assertTrue(made.get(0).locked());
      Path copy = stick.resolve(made.get(0).path().getFileName());
      assertEquals(-1, Files.mismatch(made.get(0).path(), copy));
      assertEquals(200, teacher.get("/setup/backups/" + made.get(0).path().getFileName()).statusCode());
      Files.delete(copy);
      Files.delete(stick);
    }
  }
}
