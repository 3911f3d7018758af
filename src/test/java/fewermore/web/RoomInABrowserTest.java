package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import fewermore.classroom.Child;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The room on the teacher's laptop, thirty children, in a real browser against the real app. */
class RoomInABrowserTest {
  private static final Work LINE = new Work("52 - 14 = x", "", "", new Bars("Tomas", "52", "x", "14"), null);
  private static final Work ALL = new Work("52 - 14 = x", "38", "shells", new Bars("Tomas", "52", "x", "14"), null);
  private static final Work WRONG = new Work("14 + 52 = x", "66", "shells", new Bars("Ines", "52", "x", "14"), null);
  private static final String[] NAMES = {"Amara", "Anton", "Bo", "Dario", "Felix", "Hana", "Jun", "Leif", "Lucía",
      "Marisol", "Mika", "Nils", "Oskar", "Priya", "Ravi", "Samuel", "Talia", "Wren", "Yara", "Zadie", "Zoran",
      "Maximiliano", "Anna-Luise", "Seraphina", "Tom", "Ida", "Kim"};
  private static final String CUT = """
      () => [...document.querySelectorAll('main *')].filter(each => {
        const box = each.getBoundingClientRect();
        if (box.width === 0 || each.closest('.aloud') || each.closest('svg')) return false;
        const seat = each.closest('.seat')?.getBoundingClientRect();
        return box.right > innerWidth + 1 || each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0
            && getComputedStyle(each).display !== 'inline'
          || seat && (box.right > seat.right + 1 || box.bottom > seat.bottom + 1);
      }).map(each => each.className + ' ' + each.textContent.slice(0, 30))""";
  private static final String PLACES = """
      () => [...document.querySelectorAll('.seat')].map(each => { const box = each.getBoundingClientRect();
        return [box.x, box.y + scrollY, box.width, box.height].map(Math.round).join(' '); })""";

  private static Rig rig;
  private static List<Child> children;
  private static List<Tablet> tablets;
  private BrowserContext window;

  @BeforeAll
  static void start() {
    rig = Rig.start();
    rig.services.classes.addChildren(rig.classroom.id(), Rig.children(NAMES), rig.now());
    children = rig.services.classes.children(rig.classroom.id());
    tablets = new ArrayList<>();
    for (int at = 0; at < 28; at++) {
      Tablet tablet = Tablet.comeIn(rig, children.get(at));
      tablets.add(tablet);
      String work = tablet.work(1 + at % 2);
      switch (at % 9) {
        case 1 -> tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", ALL), tablet.item(tablet.work(2), 1, "handed-in", ALL));
        case 4 -> tablet.sent(tablet.item(work, 1, "draft", LINE), tablet.item(work, 2, "help", null));
        case 6 -> tablet.sent(tablet.item(work, 1, "draft", LINE), tablet.item(work, 2, "leave", null));
        case 8 -> tablet.sent(tablet.item(work, 1, "handed-in", WRONG), tablet.item(work, 2, "handed-in", WRONG),
            tablet.item(work, 3, "handed-in", WRONG));
        default -> tablet.sent(tablet.item(work, 1, "draft", LINE));
      }
    }
    Tablet.comeIn(rig, children.get(2));
    rig.services.rooms.markAbsent(rig.classroom.id(), children.get(29).id(), rig.services.today(rig.classroom), rig.now());
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  @AfterEach
  void close() {
    window.close();
  }

  private Page open(int width, int height, String path) {
    // On a slow machine the tablets would else not have been heard for long.
    tablets.forEach(tablet -> tablet.browser.get("/pulse"));
    window = Chromium.tablet(width, height);
    window.addCookies(List.of(new Cookie("desk", RouteTableTest.signedInTo(rig).cookies.get("desk"))
        .setUrl(rig.teacherAddress())));
    Page page = window.newPage();
    page.navigate(rig.teacherAddress() + path);
    return page;
  }

  private static void picture(Page page, String name, boolean whole) {
    String folder = System.getProperty("fewermore.pictures");
    if (folder != null) {
      page.screenshot(new Page.ScreenshotOptions().setFullPage(whole).setPath(Path.of(folder, name + ".png")));
    }
  }

  @Test
  void thirtyTilesFitWithNoCutTextAndKeepTheirPlacesWhenTheirWordsChange() {
    Page page = open(1366, 768, "/room");
    page.waitForSelector("[data-ready]");
    page.waitForTimeout(600);
    picture(page, "room", false);
    assertEquals(30, page.locator(".seat").count());
    assertEquals(List.of(), page.evaluate(CUT));
    assertTrue((Boolean) page.evaluate("document.documentElement.scrollHeight <= innerHeight"), "no scroll");
    Object before = page.evaluate(PLACES);
    Tablet tablet = tablets.get(0);
    long child = children.get(0).id();
    tablet.sent(tablet.item(tablet.work(1), 2, "help", null));
    page.waitForSelector("[data-seat='" + child + "'].stuck");
    rig.services.pauses.pause(rig.classroom.id(), rig.now());
    rig.services.live.changed(rig.classroom.id());
    page.waitForSelector(".paused:not(.off)");
    picture(page, "room-paused", false);
    page.click("text=Go on");
    page.waitForSelector("[data-ready]");
    assertEquals(before, page.evaluate(PLACES), "tiles keep their seats");
    page.locator("[data-stuck] button").first().waitFor();
    int stuck = page.locator(".seat.stuck").count();
    page.locator("[data-stuck] button").first().click();
    page.waitForSelector("[data-ready]");
    page.waitForFunction("stuck => document.querySelectorAll('.seat.stuck').length === stuck - 1", stuck);
  }

  @Test
  void atTwiceTheSizeNothingIsCut() {
    Page page = open(683, 384, "/room");
    page.waitForSelector("[data-ready]");
    assertEquals(List.of(), page.evaluate(CUT));
    picture(page, "room-200", true);
    page.navigate(rig.teacherAddress() + "/room/child/" + children.get(4).id());
    picture(page, "room-child-200", true);
    assertTrue((Boolean) page.evaluate("document.documentElement.scrollWidth <= innerWidth"));
  }

  @Test
  void byKeyboardSheComesToAChildsWorkLowersTheHandAndMarksHerAbsent() {
    Page page = open(1366, 768, "/room");
    page.waitForSelector("[data-ready]");
    long asking = children.get(13).id();
    page.focus("[data-seat='" + asking + "']");
    page.keyboard().press("Enter");
    page.waitForURL("**/room/child/" + asking);
    picture(page, "room-child", true);
    page.focus("text=I’ve been with");
    page.keyboard().press("Enter");
    page.waitForURL("**/room");
    page.waitForSelector("[data-seat='" + asking + "']:not(.stuck)");
    page.focus("text=Take all as handed in");
    page.keyboard().press("Enter");
    page.waitForURL("**/room/take");
    picture(page, "room-take", false);
  }

  @Test
  void axeFindsNothing() {
    Page page = open(1366, 768, "/room");
    List<String> wrong = new ArrayList<>();
    for (String path : List.of("/room", "/room/child/" + children.get(4).id(), "/room/take")) {
      page.navigate(rig.teacherAddress() + path);
      new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().forEach(rule ->
          wrong.add(path + " " + rule.getId() + " " + rule.getNodes().get(0).getHtml()));
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void theSeventhTabLoadsAndEachHearsOfAChange() {
    Page first = open(1366, 768, "/room");
    List<Page> tabs = new ArrayList<>(List.of(first));
    for (int more = 1; more < 7; more++) {
      Page page = window.newPage();
      page.navigate(rig.teacherAddress() + "/room");
      page.waitForSelector("[data-ready]");
      tabs.add(page);
    }
    Tablet tablet = tablets.get(11);
    long child = children.get(11).id();
    tablet.sent(tablet.item(tablet.work(1), 2, "help", null));
    for (Page page : tabs) {
      page.bringToFront();
      page.waitForSelector("[data-seat='" + child + "'].stuck");
    }
  }

  @Test
  void aPageThatHearsNothingForTwentyFiveSecondsOpensItsStreamAgain() {
    window = Chromium.tablet(1366, 768);
    window.addCookies(List.of(new Cookie("desk", RouteTableTest.signedInTo(rig).cookies.get("desk"))
        .setUrl(rig.teacherAddress())));
    window.addInitScript("""
        window.opened = 0;
        window.EventSource = class { constructor() { window.opened += 1; this.readyState = 1; } addEventListener() {} close() {} };
        window.EventSource.CLOSED = 2;
        const real = Date.now; let ahead = 0; Date.now = () => real() + ahead; window.later = millis => { ahead += millis; };""");
    Page page = window.newPage();
    page.navigate(rig.teacherAddress() + "/room");
    page.waitForFunction("() => window.opened === 1");
    page.evaluate("window.later(24000)");
    page.waitForTimeout(100);
    assertEquals(1, page.evaluate("window.opened"));
    page.evaluate("window.later(2000)");
    page.waitForFunction("() => window.opened === 2");
    page.evaluate("window.later(20000)");
    page.waitForSelector(".link-lost:visible");
  }

  @Test
  void theLaptopStaysAwakeWhileTheRoomIsSeen() {
    window = Chromium.tablet(1366, 768);
    window.addCookies(List.of(new Cookie("desk", RouteTableTest.signedInTo(rig).cookies.get("desk"))
        .setUrl(rig.teacherAddress())));
    window.addInitScript("""
        window.asked = [];
        Object.defineProperty(navigator, 'wakeLock', { value: { request: what => { window.asked.push(what); return Promise.resolve(); } } });""");
    Page page = window.newPage();
    page.navigate(rig.teacherAddress() + "/room");
    page.waitForFunction("() => window.asked.includes('screen')");
  }

  @Test
  void withoutScriptTheRoomComesAnewByItself() {
    String html = RouteTableTest.signedInTo(rig).get("/room").body();
    assertTrue(html.contains("<noscript><meta http-equiv=\"refresh\" content=\"15\""), "a refresh of 15 s");
    assertTrue(html.contains("problem 1, equation"));
    window = Chromium.tablet(400, 400);
  }

  @Test
  void anUnusableMinuteIsRefusedWithASentence() {
    Browser teacher = RouteTableTest.signedInTo(rig);
    teacher.get("/room");
    assertEquals(422, teacher.post("/room/stuck", Map.of("minutes", "0")).statusCode());
    assertEquals(303, teacher.post("/room/stuck", Map.of("minutes", "6")).statusCode());
    assertEquals(6, rig.services.room.stuckAfter().toMinutes());
    teacher.post("/room/stuck", Map.of("minutes", "4"));
    window = Chromium.tablet(400, 400);
  }
}
