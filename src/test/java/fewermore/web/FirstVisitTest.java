package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.store.Stores;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** From nothing to the first child at work: every action is counted. */
class FirstVisitTest {
  private static final int MOST_OF_THE_TEACHER = 10;
  private static final int MOST_OF_THE_CHILD = 4;

  /** One action: filling a field, or pressing a button or a link. */
  private static final class Counting {
    private final Page page;
    private final List<String> actions = new ArrayList<>();

    Counting(Page page) {
      this.page = page;
    }

    void fill(String field, String text) {
      page.fill(field, text);
      actions.add("fill " + field);
    }

    void press(String what) {
      page.click(what);
      actions.add("press " + what);
    }
  }

  @Test
  void tenActionsOfTheTeacherAndFourTapsOfTheChildWithTwentyFiveNamesPastedIn() throws Exception {
    Path folder = Files.createTempDirectory("fewermore-first-visit");
    Settings settings = new Settings(folder, 0, 0, "127.0.0.1", null);
    try (App app = App.start(settings, Stores.open(folder), Network.loopbackOnly(), Clock.systemUTC());
        BrowserContext laptop = Chromium.tablet(1366, 768); BrowserContext hands = Chromium.tablet(1024, 600)) {
      Page page = laptop.newPage();
      page.setDefaultTimeout(60_000);
      page.navigate(app.teacherAddress() + "/");
      Counting teacher = new Counting(page);
      teacher.fill("#passphrase", "a quiet tide pool");
      teacher.fill("#again", "a quiet tide pool");
      teacher.press("main button[type=submit]");
      page.waitForURL("**/welcome");
      teacher.fill("#name", "Room 12");
      teacher.fill("#names", IntStream.rangeClosed(1, 25).mapToObj(at -> "Child" + (char) ('A' + at - 1))
          .collect(Collectors.joining("\n")));
      teacher.press("form[action='/classes'] button");
      page.waitForURL("**/plan");
      teacher.press("text=Take the proposed mix");
      page.waitForSelector("form[action='/plan/give']");
      teacher.press("form[action='/plan/give'] button");
      page.waitForURL("**/board");
      assertTrue(teacher.actions.size() <= MOST_OF_THE_TEACHER, teacher.actions.toString());
      assertEquals(25, app.services().classes.children(app.services().openClasses().get(0).id()).size());

      Page tablet = hands.newPage();
      tablet.setDefaultTimeout(60_000);
      var classroom = app.services().openClasses().get(0);
      tablet.navigate("http://127.0.0.1:" + app.port() + "/in/" + app.services().door(classroom).token());
      Counting child = new Counting(tablet);
      child.press("text=ChildD");
      tablet.waitForURL("**/come-in/*");
      child.press("main form button");
      tablet.waitForURL("**/mine");
      child.press("[data-open='1']");
      tablet.waitForSelector("[data-find=question]");
      assertTrue(tablet.url().contains("/mine#1"), "a tap that came before the script ends at the same problem: " + tablet.url());
      child.press("[data-find=question]");
      assertTrue(child.actions.size() <= MOST_OF_THE_CHILD, child.actions.toString());
      tablet.waitForCondition(() -> app.services().sittings.open(classroom.id()).size() == 1);
    }
  }
}
