package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import com.microsoft.playwright.options.WaitForSelectorState;
import fewermore.classroom.Child;
import fewermore.classroom.ProblemSet;
import fewermore.command.BackupCommand;
import fewermore.command.RestoreCommand;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a week brings, as the teacher and a child see it: a fire drill, a day away, an early finisher, a new laptop. */
class WeekInABrowserTest {
  private static final Work ALL = new Work("52 - 14 = x", "38", "shells", new Bars("Tomas", "52", "x", "14"), null);

  private static Page teacher(Rig rig, BrowserContext window, String path) {
    window.addCookies(List.of(new Cookie("desk", RouteTableTest.signedInTo(rig).cookies.get("desk"))
        .setUrl(rig.teacherAddress())));
    Page page = window.newPage();
    page.navigate(rig.teacherAddress() + path);
    return page;
  }

  private static Page child(Rig rig, BrowserContext tablet, Child child) {
    Page page = tablet.newPage();
    String at = "http://tablet.test:" + rig.app.port();
    page.navigate(at + "/in/" + rig.door());
    page.navigate(at + "/come-in/" + child.id());
    page.click("form[action='/come-in/" + child.id() + "'] button");
    page.waitForURL("**/mine");
    page.waitForSelector("[data-open='1'][href='#1']");
    return page;
  }

  @Test
  void afterAFireDrillTheWorkIsThere() {
    try (Rig rig = Rig.startForTablets(); BrowserContext tablet = Chromium.tablet(1024, 600);
        BrowserContext window = Chromium.tablet(1366, 768)) {
      Page page = child(rig, tablet, rig.children.get(0));
      page.click("[data-open='1']");
      page.waitForSelector(".show");
      page.click("[data-part=equation]");
      page.click("[data-for=equation] [data-key='5']");
      page.click("[data-for=equation] [data-key='2']");
      Page room = teacher(rig, window, "/room");
      room.click("text=Pause all");
      page.waitForSelector("dialog[data-pause][open]");
      room.waitForSelector("[data-paused]:has-text('1 of 1')");
      room.click("text=Go on");
      page.waitForSelector("dialog[data-pause]:not([open])",
          new Page.WaitForSelectorOptions().setState(WaitForSelectorState.ATTACHED));
      assertEquals("52", page.inputValue("[data-for=equation] [data-field]"), "as it was");
      room.waitForSelector("text=Pause all");
      room.click("[data-seat='" + rig.children.get(0).id() + "']");
      room.waitForSelector(".now-parts :text('52')");
    }
  }

  @Test
  void whoWasMarkedAbsentFindsTheDaysProblemsWaitingThoughATabletWasInHerName() {
    try (Rig rig = Rig.startForTablets(); BrowserContext tablet = Chromium.tablet(1024, 600)) {
      LocalDate missed = rig.services.today(rig.classroom).minusDays(1);
      rig.services.problems.addSet(rig.classroom.id(), missed, true, 3, false, ProblemSet.USUAL_PARTS,
          List.of(Stories.BEADS), rig.now());
      Child kofi = rig.children.get(2);
      rig.services.sittings.meetTablet("t", "otter", rig.now());
      rig.services.sittings.start("s", kofi.id(), "t", "c",
          missed.atTime(10, 0).atZone(rig.classroom.zone()).toInstant());
      rig.services.rooms.markAbsent(rig.classroom.id(), kofi.id(), missed,
          missed.atTime(10, 5).atZone(rig.classroom.zone()).toInstant());
      Page page = child(rig, tablet, kofi);
      assertEquals(3, page.locator("[data-open]:has(.first-line)").count());
      assertTrue(page.textContent("main").contains("from "
          + missed.getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.US)), "the day stands beside it");
    }
  }

  @Test
  void anEarlyFinisherTakesOneMoreWithATap() {
    try (Rig rig = Rig.startForTablets(); BrowserContext tablet = Chromium.tablet(1024, 600)) {
      Child noor = rig.children.get(0);
      Tablet before = Tablet.comeIn(rig, noor);
      for (int at = 1; at <= before.problems.size(); at++) {
        before.sent(before.item(before.work(at), at, "handed-in", ALL));
      }
      Page page = child(rig, tablet, noor);
      int given = page.locator("[data-open]:has(.first-line)").count();
      page.click("[data-more] button");
      page.waitForSelector("[data-open='" + (given + 1) + "']");
      assertEquals(given + 1, page.locator("[data-open]:has(.first-line)").count());
      page.click("[data-open='" + (given + 1) + "']:has(.first-line)");
      page.waitForSelector(".show");
    }
  }

  @Test
  void onANewLaptopTheWorkIsThereTheDoorIsNewAndHelpSaysWhereWaitingWorkIs(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("backup.zip");
    Path data = folder.resolve("data");
    String oldDoor;
    long noor;
    try (Rig old = Rig.startForTablets()) {
      noor = old.children.get(0).id();
      oldDoor = old.door();
      Tablet tablet = Tablet.comeIn(old, old.children.get(0));
      tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", ALL));
      old.stop();
      assertEquals(BackupCommand.DONE, BackupCommand.run(old.folder, null, file, null, old.now(), nowhere(), nowhere()));
    }
    Files.createDirectories(data);
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    assertEquals(BackupCommand.DONE,
        RestoreCommand.run(data, file, null, java.time.Instant.now(), new PrintStream(said), nowhere()), said::toString);
    try (Rig rig = Rig.startAgain(data, 0, 0, null); BrowserContext window = Chromium.tablet(1366, 768)) {
      assertEquals(1, rig.pieces().size(), "her work came along");
      Page page = teacher(rig, window, "/records/child/" + noor);
      page.waitForSelector("text=1 piece of work");
      page.navigate(rig.teacherAddress() + "/setup");
      page.click("text=Make a new door");
      assertNotEquals(oldDoor, rig.door());
      page.navigate(rig.teacherAddress() + "/help");
      page.click("text=A new laptop");
      page.waitForSelector("text=Work that waits under the old address");
    }
  }

  private static PrintStream nowhere() {
    return new PrintStream(PrintStream.nullOutputStream());
  }
}
