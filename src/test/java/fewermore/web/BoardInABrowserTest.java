package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import fewermore.classroom.Child;
import fewermore.marking.Work;
import fewermore.problem.NumberRange;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.story.Kind;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The Board as the class sees it, in a real browser against the real app. */
class BoardInABrowserTest {
  private static final int[][] SIZES = {{960, 540}, {1920, 1080}, {1024, 768}, {1280, 720}};
  /** What is drawn beyond the picture, or is cut in its own box. */
  private static final String CUT = """
      () => [...document.querySelectorAll('main *, .board-nav *')].filter(each => {
        const box = each.getBoundingClientRect();
        if (box.width === 0 || each.closest('.aloud') || getComputedStyle(each).visibility === 'hidden') return false;
        return box.right > innerWidth + 1 || box.bottom > innerHeight + 1 || box.left < -1 || box.top < -1
          || each.scrollWidth > each.clientWidth + 2 && getComputedStyle(each).overflowX !== 'visible'
             && !each.matches('.box, .choose-list');
      }).map(each => each.tagName + '.' + each.className + ' ' + each.textContent.slice(0, 40))""";
  /** Parts of the Board that lie on one another. */
  private static final String OVERLAP = """
      () => { const parts = [...document.querySelectorAll('.slide:not(.out) > *, .steps, .b-because > *')]
          .filter(each => each.getBoundingClientRect().height > 0 && !each.matches('.later, .out') && !each.classList.contains('aloud'));
        const found = [];
        parts.forEach((one, at) => parts.slice(at + 1).forEach(other => {
          const a = one.getBoundingClientRect(), b = other.getBoundingClientRect();
          const x = Math.min(a.right, b.right) - Math.max(a.left, b.left), y = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
          if (x > 3 && y > 3 && !one.contains(other) && !other.contains(one)) found.push(one.className + ' / ' + other.className + ' ' + Math.round(y));
        }));
        return found; }""";

  private static Rig rig;
  private BrowserContext window;

  @BeforeAll
  static void start() {
    rig = Rig.start();
    rig.services.classes.addChildren(rig.classroom.id(),
        Rig.children("Zadie", "Oskar", "Priya", "Ravi", "Talia"), rig.now());
    Set<String> names = Set.of("Noor", "Elsie", "Kofi", "Zadie", "Oskar", "Priya", "Ravi", "Talia");
    List<NewProblem> problems = new ArrayList<>();
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, names);
    for (Kind kind : Kind.values()) {
      problems.add(NewProblem.of(writer.write(kind, 40 + kind.ordinal())));
    }
    rig.give(problems);
    List<String> equations = List.of("52 - 14 = x", "52 − 14 = □", "52 + 14 = x", "52+14=x", "14 - 52 = x", "52 - 14 = 38");
    List<Child> children = rig.services.classes.children(rig.classroom.id());
    for (int at = 0; at < equations.size(); at++) {
      Tablet tablet = Tablet.comeIn(rig, children.get(at));
      tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", new Work(equations.get(at), "38", "shells", null, null)));
    }
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  @AfterEach
  void close() {
    if (window != null) {
      window.close();
    }
  }

  private Page open(int width, int height, String path) {
    window = Chromium.tablet(width, height);
    Browser teacher = RouteTableTest.signedInTo(rig);
    window.addCookies(List.of(new Cookie("desk", teacher.cookies.get("desk")).setUrl(rig.teacherAddress())));
    Page page = window.newPage();
    go(page, path);
    return page;
  }

  private static void go(Page page, String path) {
    page.navigate(rig.teacherAddress() + path);
    page.waitForSelector("[data-ready]");
  }

  private static void picture(Page page, String name) {
    String folder = System.getProperty("fewermore.pictures");
    if (folder != null) {
      page.waitForTimeout(250);
      page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(folder, name + ".png")));
    }
  }

  /** A click on a link is over before the next page is there. */
  private static void follow(Page page, String link, int step) {
    page.click(link);
    page.waitForURL(url -> url.endsWith("step=" + step));
  }

  private static int step(Page page) {
    return page.url().contains("step=") ? Integer.parseInt(page.url().replaceFirst(".*step=", "")) : 1;
  }

  @SuppressWarnings("unchecked")
  private static List<String> found(Page page, String script) {
    return (List<String>) page.evaluate(script);
  }

  private static void look(Page page, String at, List<String> wrong) {
    found(page, CUT).forEach(each -> wrong.add(at + " cut: " + each));
    found(page, OVERLAP).forEach(each -> wrong.add(at + " over: " + each));
    if ((Boolean) page.evaluate("document.documentElement.scrollHeight > innerHeight")) {
      wrong.add(at + " scrolls");
    }
    picture(page, at.replace('/', '-').replace(' ', '-'));
  }

  @Test
  void eachKindIsTaughtWithTheSpaceBarAloneAndNothingIsCut() {
    Page page = open(1280, 720, "/board/problem/3");
    List<String> wrong = new ArrayList<>();
    int problems = 0;
    String path = "";
    while (true) {
      String now = page.getAttribute("main", "data-path");
      problems += now.equals(path) ? 0 : 1;
      path = now;
      look(page, String.format("1280%s-%02d", now, step(page)), wrong);
      if (now.equals("/board/problem/8") && Integer.parseInt(page.getAttribute("main", "data-steps")) == step(page)) {
        break;
      }
      String before = page.url();
      page.keyboard().press("Space");
      page.waitForFunction("before => location.href !== before", before);
    }
    assertEquals(List.of(), wrong);
    assertEquals(6, problems);
  }

  @Test
  void theFullestStepsFitEveryProjector() {
    List<String> wrong = new ArrayList<>();
    for (int[] size : SIZES) {
      Page page = open(size[0], size[1], "/board");
      look(page, size[0] + "/board", wrong);
      for (int number = 3; number <= 8; number++) {
        for (int step : new int[] {5, 15, 99}) {
          go(page, "/board/problem/" + number + "?step=" + step);
          look(page, size[0] + "/problem/" + number + "-" + step, wrong);
        }
      }
      for (String path : List.of("/board/strategy", "/board/strategy?first=52&op=minus&second=14&kind=pieces&step=6",
          "/board/strategy?first=100&op=minus&second=37&kind=pieces&check=compensation&step=99",
          "/board/strategy?first=87&op=plus&second=96&kind=expanded&step=6",
          "/board/strategy?first=92&op=minus&second=27&kind=count-up&step=4", "/board/class?step=99", "/board/warm-up?step=2", "/board/warm-up?step=99", "/board/size",
          "/board/two", "/board/two/" + problem(1) + "?line=" + line("52 − 14 = □") + "&line=" + line("52 + 14 = □")
              + "&step=3")) {
        go(page, path);
        look(page, size[0] + path.replaceFirst("\\?line.*", ""), wrong);
      }
      window.close();
    }
    assertEquals(List.of(), wrong);
  }

  private static long problem(int number) {
    return rig.set.problems().get(number - 1).id();
  }

  private static String line(String text) {
    return java.net.URLEncoder.encode(text, java.nio.charset.StandardCharsets.UTF_8).replace("+", "%20");
  }

  @Test
  void keysAndClickersMoveAHeldKeyMovesOnceAndF5KeepsTheStep() {
    Page page = open(1280, 720, "/board/problem/3");
    assertEquals(1, step(page));
    for (String forward : List.of("Space", "PageDown", "ArrowRight", "n")) {
      page.keyboard().press(forward);
    }
    assertEquals(5, step(page));
    for (String back : List.of("PageUp", "ArrowLeft", "Shift+Space", "p")) {
      page.keyboard().press(back);
    }
    assertEquals(1, step(page));
    page.keyboard().down("ArrowRight");
    page.keyboard().down("ArrowRight");
    page.keyboard().down("ArrowRight");
    page.keyboard().up("ArrowRight");
    assertEquals(2, step(page), "a held key moves once");
    page.keyboard().press("PageDown");
    page.waitForURL("**step=3*");
    page.reload();
    page.waitForSelector("[data-ready]");
    assertEquals(3, step(page), "F5 keeps the step");
    assertEquals(0, page.locator(".say-bars:visible").count());
    page.keyboard().press("b");
    assertFalse(page.isVisible(".say-story"));
    page.keyboard().press(".");
    assertTrue(page.isVisible(".say-story"));
    page.keyboard().press("Home");
    assertEquals(1, step(page));
    page.click(".leave-board");
    page.waitForSelector("dialog[open]");
    page.keyboard().press("PageDown");
    page.keyboard().press("b");
    assertEquals(1, step(page), "keys are dead inside a dialog");
    page.keyboard().press("Escape");
    page.waitForSelector("dialog", new Page.WaitForSelectorOptions().setState(com.microsoft.playwright.options.WaitForSelectorState.DETACHED));
    assertTrue(page.url().contains("/board/problem/3"), "she stays");
    page.click(".leave-board");
    page.click("dialog button[value=go]");
    page.waitForURL("**/room");
  }

  @Test
  void whatTheClassChoosesAndWhatSheCoversStandsInBothWindows() {
    Page page = open(1280, 720, "/board/problem/3?step=6");
    Page stage = window.newPage();
    stage.navigate(rig.teacherAddress() + "/board/stage");
    stage.waitForSelector(".on-stage [data-path='/board/problem/3'][data-ready]");
    stage.waitForSelector(".say-bars:visible");
    assertEquals(0, stage.locator(".board-nav").count(), "no controls on the stage");
    page.bringToFront();
    page.click("[data-mark=more1]");
    stage.waitForSelector("[data-mark=more1][aria-pressed=true]");
    page.click("[data-mark=more0]");
    stage.waitForSelector("[data-mark=more1][aria-pressed=false]");
    picture(page, "choice");
    page.keyboard().press("Space");
    stage.waitForSelector(".bar.longer:visible");
    for (int press = 0; press < 7; press++) {
      page.keyboard().press("Space");
    }
    stage.waitForSelector("[data-mark=eq1]:visible");
    page.click("[data-mark=eq0]");
    stage.waitForSelector("[data-mark=eq0][aria-pressed=true]");
    picture(page, "covered");
    page.keyboard().press("b");
    stage.waitForSelector("body.blank");
    page.keyboard().press("b");
    go(page, "/board/problem/4?step=2");
    stage.waitForSelector("[data-path='/board/problem/4']");
    picture(stage, "stage");
  }

  @Test
  void noPageOfTheBoardHoldsANameOfTheClass() {
    Browser teacher = RouteTableTest.signedInTo(rig);
    List<String> names = rig.services.classes.children(rig.classroom.id()).stream().map(Child::name).toList();
    for (String path : List.of("/board", "/board/class?step=99", "/board/warm-up", "/board/two", "/board/size",
        "/board/stage", "/board/problem/1?step=99", "/board/problem/3?step=99", "/board/problem/8?step=99")) {
      String html = teacher.get(path).body();
      assertTrue(html.contains("data-board"), path);
      names.forEach(name -> assertFalse(html.contains(name), path + " holds " + name));
    }
  }

  @Test
  void aStoryWithANameOfTheClassIsNotShown() {
    try (Rig own = Rig.start()) {
      own.services.classes.addChildren(own.classroom.id(), Rig.children("Tomas"), own.now());
      String html = RouteTableTest.signedInTo(own).get("/board/problem/1").body();
      assertTrue(html.contains("also a name in the class"));
      assertFalse(html.contains("Tomas"));
    }
  }

  @Test
  void theStoryCanBeReadFromTheBackRow() {
    for (String[] row : new String[][] {{"27", "4"}, {"8", "1.2"}, {"9", "1"}, {"3", "1"}}) {
      Browser teacher = RouteTableTest.signedInTo(rig);
      teacher.get("/board/size");
      assertEquals(303, teacher.post("/board/size", java.util.Map.of("distance", row[0], "height", row[1])).statusCode());
      Page page = open(1280, 720, "/board/problem/3?step=15");
      double small = ((Number) page.evaluate("""
          async () => { await document.fonts.ready; const story = document.querySelector('.say-bars .b-story p:not([hidden])');
            const pen = document.createElement('canvas').getContext('2d');
            pen.font = '1000px ' + getComputedStyle(story).fontFamily;
            return pen.measureText('x').actualBoundingBoxAscent / 1000 * parseFloat(getComputedStyle(story).fontSize); }"""))
          .doubleValue();
      double needed = Double.parseDouble(row[0]) / (Double.parseDouble(row[1]) * 200) * 720;
      assertTrue(small >= needed, row[0] + " from " + row[1] + ": " + small + " of " + needed);
      picture(page, "row-" + row[0]);
      window.close();
    }
    Browser teacher = RouteTableTest.signedInTo(rig);
    teacher.get("/board/size");
    teacher.post("/board/size", java.util.Map.of("distance", "27", "height", "4"));
  }

  @Test
  void withoutScriptTheLinksShowStepByStep() {
    window = Chromium.tablet(new com.microsoft.playwright.Browser.NewContextOptions().setViewportSize(1280, 720)
        .setJavaScriptEnabled(false));
    window.addCookies(List.of(new Cookie("desk", RouteTableTest.signedInTo(rig).cookies.get("desk"))
        .setUrl(rig.teacherAddress())));
    Page page = window.newPage();
    page.navigate(rig.teacherAddress() + "/board/problem/3");
    assertTrue(page.isVisible(".say-story"));
    assertFalse(page.isVisible(".say-bars"));
    for (int step = 2; step <= 7; step++) {
      follow(page, "[data-onward]", step);
    }
    assertTrue(page.isVisible(".bar.longer"));
    assertFalse(page.isVisible(".say-story"));
    follow(page, "[data-back]", 6);
  }

  @Test
  void axeFindsNothing() {
    Page page = open(1280, 720, "/board");
    List<String> wrong = new ArrayList<>();
    for (String path : List.of("/board", "/board/class?step=1", "/board/class?step=99", "/board/warm-up?step=2", "/board/two",
        "/board/size")) {
      go(page, path);
      axe(page, path, wrong);
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void axeFindsNothingInAnyStepLightOrDark() {
    Browser teacher = RouteTableTest.signedInTo(rig);
    Page page = open(1280, 720, "/board/problem/5?step=99");
    int last = Integer.parseInt(page.getAttribute("main", "data-step"));
    List<String> wrong = new ArrayList<>();
    for (String dark : List.of("", "yes")) {
      teacher.get("/board/size");
      teacher.post("/board/size", java.util.Map.of("distance", "27", "height", "4", "dark", dark));
      for (int step = 0; step <= last; step++) {
        go(page, "/board/problem/5?step=" + step);
        axe(page, dark + " " + step, wrong);
      }
    }
    assertTrue(last > 20, "pieces, a number line and both beside each other are among the " + last + " steps");
    assertEquals(List.of(), wrong);
  }

  private static void axe(Page page, String at, List<String> wrong) {
    new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().forEach(rule ->
        wrong.add(at + " " + rule.getId() + " " + rule.getNodes().get(0).getHtml()));
  }

  @Test
  void aDarkBoardIsChosenByTheTeacher() {
    Browser teacher = RouteTableTest.signedInTo(rig);
    teacher.get("/board/size");
    teacher.post("/board/size", java.util.Map.of("distance", "27", "height", "4", "dark", "yes"));
    Page page = open(1280, 720, "/board/problem/4?step=14");
    assertTrue((Boolean) page.evaluate("document.body.classList.contains('board-dark')"));
    picture(page, "dark");
    go(page, "/board/problem/3?step=99");
    picture(page, "dark-check");
    go(page, "/board");
    picture(page, "dark-door");
    teacher.get("/board/size");
    teacher.post("/board/size", java.util.Map.of("distance", "27", "height", "4"));
  }
}
