package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import fewermore.web.Assets;
import fewermore.web.Chromium;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** The teacher's pages in a real browser, without a server: each answer is given to the browser as it asks. */
class TeacherPagesBrowserTest {
  private static final String ORIGIN = "http://tablet.test/";
  private static final Map<String, String> PAGES = TeacherTemplatesTest.allPages();
  private static final Assets ASSETS = Assets.load();
  /** One of each template; axe is slow. */
  private static final Set<String> FOR_AXE = Set.of("first", "sign-in", "welcome", "plan", "findings-fewer", "child", "child-whole",
      "groups", "numbers",
      "work", "records", "setup", "help", "stopped", "door", "wall", "reach", "reach-nothing", "reach-note", "cards", "card-sheet", "sittings", "work-moved", "sign-in-several", "classes", "change-class", "people",
      "today", "roster-in", "roster-classes", "roster", "child-setup", "year", "erased", "class-report", "child-record",
      "family", "conference-es", "conference-all", "paper", "help-week");

  /** What sticks out at the right of a page that scrolls sideways. */
  private static final String BEYOND = """
      document.documentElement.scrollWidth <= window.innerWidth ? [] : [...document.querySelectorAll('body *')]
        .filter(each => !each.closest('.wide') && each.getBoundingClientRect().right > window.innerWidth + 1)
        .map(each => each.tagName + ' ' + each.className)""";

  private static BrowserContext window(int width, int height) {
    BrowserContext context = Chromium.tablet(width, height);
    context.route("**/*", TeacherPagesBrowserTest::answer);
    return context;
  }

  private static void answer(Route route) {
    String path = route.request().url().substring(ORIGIN.length()).replaceFirst("\\?.*", "");
    var options = new Route.FulfillOptions().setStatus(404);
    if (PAGES.containsKey(path)) {
      options.setStatus(200).setContentType("text/html; charset=utf-8").setBody(PAGES.get(path));
    } else if (path.startsWith("static/")) {
      ASSETS.find(path.replaceFirst("static/[^/]+/", "")).ifPresent(file ->
          options.setStatus(200).setContentType(file.type()).setBodyBytes(file.content()));
    }
    route.fulfill(options);
  }

  /** Keeps a picture where the property {@code fewermore.pictures} names a folder. */
  private static void picture(Page page, String name) {
    String folder = System.getProperty("fewermore.pictures");
    if (folder != null) {
      page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(folder, name + ".png")));
    }
  }

  @Test
  void axeFindsNothingAndNoPageScrollsSidewaysAtItsSizes() {
    List<Executable> all = new ArrayList<>();
    for (int[] size : new int[][] {{1366, 768}, {683, 384}}) {
      try (BrowserContext context = window(size[0], size[1])) {
        Page page = context.newPage();
        for (String name : PAGES.keySet()) {
          boolean board = name.equals("door") || name.startsWith("wall");
          if (board && size[0] < 900) {
            continue;
          }
          page.navigate(ORIGIN + name);
          String where = name + " at " + size[0];
          picture(page, where.replace(' ', '-'));
          Object beyond = page.evaluate(BEYOND);
          all.add(() -> assertEquals(List.of(), beyond, where + " scrolls sideways"));
          if (size[0] > 900 && FOR_AXE.contains(name)) {
            page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true; })");
            List<String> found = new AxeBuilder(page).analyze().getViolations().stream()
                .map(rule -> rule.getId() + " " + rule.getNodes().get(0).getHtml()).toList();
            all.add(() -> assertEquals(List.of(), found, where));
          }
        }
      }
    }
    assertAll(all);
  }

  @Test
  void theWallShowsOneThingMoreAtEachPressAndComesBackToItsStep() {
    for (int[] size : new int[][] {{1280, 720}, {1920, 1080}}) {
      try (BrowserContext context = window(size[0], size[1])) {
        Page page = context.newPage();
        page.navigate(ORIGIN + "wall");
        page.waitForSelector("[data-ready]");
        assertEquals(1, visible(page, ".on-wall li"));
        page.keyboard().press("Space");
        page.keyboard().press("PageDown");
        assertEquals(3, visible(page, ".on-wall li"));
        page.keyboard().press("PageUp");
        assertEquals(2, visible(page, ".on-wall li"));
        page.reload();
        page.waitForSelector("[data-ready]");
        assertEquals(2, visible(page, ".on-wall li"), "F5 keeps the step");
        for (int step = 3; step <= 20; step++) {
          page.keyboard().press("n");
          picture(page, "wall-" + size[0] + "-" + step);
          assertTrue((Boolean) page.evaluate("document.documentElement.scrollHeight <= innerHeight"), "step " + step);
          assertTrue((Boolean) page.evaluate("""
              [...document.querySelectorAll('.slide:not(.out) *')].every(each => {
                const box = each.getBoundingClientRect();
                return box.width === 0 || box.right <= innerWidth + 1 && box.bottom <= innerHeight + 1;
              })"""), "nothing is cut at step " + step + ", " + size[0]);
        }
        page.keyboard().press("b");
        assertEquals(0, visible(page, ".b-story p"));
        page.keyboard().press(".");
        page.keyboard().press("Home");
        assertEquals(1, visible(page, ".on-wall li"));
      }
    }
  }

  private static int visible(Page page, String selector) {
    return (int) page.locator(selector).all().stream().filter(each -> each.isVisible()).count();
  }
}
