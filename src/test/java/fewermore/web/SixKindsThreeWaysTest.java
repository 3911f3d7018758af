package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.HandIn;
import fewermore.classroom.ProblemSet;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.marking.Work;
import fewermore.problem.NumberRange;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.store.ClassStore.NewChild;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.story.Kind;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** One problem of each of the six kinds, by touch, by keyboard alone and without script: the laptop holds the same. */
class SixKindsThreeWaysTest {
  private static final long SEED = 11;
  /** More taps than this for one problem and a child of seven loses the thread (ours). */
  private static final int MOST_TAPS = 40;

  private static Rig rig;
  private static final List<NewProblem> written = new ArrayList<>();
  private static List<AssignedProblem> problems;
  private final List<String> complaints = new ArrayList<>();

  @BeforeAll
  static void start() {
    rig = Rig.startForTablets();
    rig.services.problems.sets(rig.classroom.id(), rig.services.today(rig.classroom))
        .forEach(set -> rig.services.problems.putAway(rig.classroom.id(), set.id()));
    for (Kind kind : Kind.values()) {
      written.add(NewProblem.of(ProblemWriter.generate(kind, NumberRange.WITHIN_100, Regrouping.EITHER,
          SEED + kind.ordinal())));
    }
    rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, 3, false,
        ProblemSet.USUAL_PARTS, written, rig.now());
    List<ProblemSet> given = rig.services.problems.given(rig.classroom.id(), rig.services.today(rig.classroom));
    problems = given.get(given.size() - 1).problems();
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  private static Child child(String name, String language) {
    rig.services.classes.addChildren(rig.classroom.id(), List.of(new NewChild(name, "fish", "sea", language)),
        rig.now());
    List<Child> all = rig.services.classes.children(rig.classroom.id());
    return all.get(all.size() - 1);
  }

  private Page comeIn(BrowserContext tablet, Child child) {
    Page page = tablet.newPage();
    page.onPageError(complaints::add);
    page.onConsoleMessage(message -> {
      if (message.type().equals("error")) {
        complaints.add(message.text());
      }
    });
    page.navigate("http://tablet.test:" + rig.app.port() + "/in/" + rig.door());
    page.click("a[href='/come-in/" + child.id() + "']");
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(
        "es".equals(child.language()) ? "Sí, soy yo" : "Yes, it’s me")).click();
    page.waitForURL("**/mine");
    return page;
  }

  /** Where today's six stand among all problems a child sees. */
  private static int number(int at) {
    return rig.services.problems.given(rig.classroom.id(), rig.services.today(rig.classroom)).stream()
        .mapToInt(set -> set.problems().size()).sum() - problems.size() + at + 1;
  }

  private static Work held(Child child, AssignedProblem problem) {
    HandIn last = rig.services.works.state(child.id(), problem.id()).lastHandIn();
    assertTrue(last != null, "nothing was handed in");
    return last.parts();
  }

  @Test
  void theLaptopHoldsTheSameWorkHoweverItWasDone() {
    Child finger = child("Finger", "en");
    Child keyboard = child("Keyboard", "en");
    Child plain = child("Plain", "en");
    Map<Kind, Integer> taps = new LinkedHashMap<>();
    try (BrowserContext tablet = Chromium.tablet(new NewContextOptions().setViewportSize(1024, 600).setHasTouch(true))) {
      Page page = comeIn(tablet, finger);
      problems.forEach(problem -> taps.put(problem.kind(),
          new Finger(page, "en").does(problem, number(problems.indexOf(problem)))));
    }
    try (BrowserContext tablet = Chromium.tablet(1024, 600)) {
      Page page = comeIn(tablet, keyboard);
      problems.forEach(problem -> new Keys(page).does(problem, number(problems.indexOf(problem))));
    }
    try (BrowserContext tablet = Chromium.tablet(
        new NewContextOptions().setViewportSize(768, 1024).setJavaScriptEnabled(false))) {
      Page page = comeIn(tablet, plain);
      problems.forEach(problem -> plainForm(page, problem, number(problems.indexOf(problem))));
    }
    problems.forEach(problem -> {
      Work work = held(finger, problem);
      assertEquals(work, held(keyboard, problem), problem.kind() + " by keyboard");
      assertEquals(work, held(plain, problem), problem.kind() + " without script");
      Marks marks = Marker.mark(problem.story(), work);
      assertTrue(Signs.of(marks, false).values().stream().allMatch(Sign.FITS::equals), problem.text() + " " + work);
    });
    taps.forEach((kind, count) -> System.out.println("taps, " + kind.id() + ": " + count));
    taps.forEach((kind, count) -> assertTrue(count < MOST_TAPS, kind + ": " + count + " taps"));
    assertEquals(List.of(), complaints, "the browser's console");
  }

  @Test
  void aSpanishChildDoesAllSixInSpanishAndTheMarksAreTheSame() {
    Child child = child("Lucía", "es");
    try (BrowserContext tablet = Chromium.tablet(new NewContextOptions().setViewportSize(1024, 600).setHasTouch(true))) {
      Page page = comeIn(tablet, child);
      for (AssignedProblem problem : problems) {
        assertEquals(false, problem.spanish().isEmpty(), problem.text());
        int taps = new Finger(page, "es").does(problem, number(problems.indexOf(problem)));
        assertTrue(taps < MOST_TAPS, problem.kind() + ": " + taps + " taps");
      }
      assertEquals("es", page.getAttribute("html", "lang"));
    }
    problems.forEach(problem -> {
      Work work = held(child, problem);
      Marks marks = Marker.mark(problem.story(), work);
      assertTrue(Signs.of(marks, false).values().stream().allMatch(Sign.FITS::equals),
          problem.spanish() + " " + work + " " + marks);
      assertTrue(problem.spanish().contains(work.reading().question()));
    });
    assertEquals(List.of(), complaints, "the browser's console");
  }

  /** The shortest of the three ways: on the line, one jump by the number that is added or taken away. */
  @Test
  void alsoWithAWayToWorkItOutAskedAProblemIsDoneInUnderFortyTaps() {
    Map<Kind, Integer> taps = new LinkedHashMap<>();
    try (Rig own = Rig.startForTablets();
        BrowserContext tablet = Chromium.tablet(new NewContextOptions().setViewportSize(1024, 600).setHasTouch(true))) {
      own.services.problems.sets(own.classroom.id(), own.services.today(own.classroom))
          .forEach(set -> own.services.problems.putAway(own.classroom.id(), set.id()));
      Set<Part> asks = new java.util.HashSet<>(ProblemSet.USUAL_PARTS);
      asks.add(Part.STRATEGY);
      List<AssignedProblem> asked = own.services.problems.addSet(own.classroom.id(), own.services.today(own.classroom),
          true, 3, false, asks, written, own.now()).problems();
      int before = own.services.problems.given(own.classroom.id(), own.services.today(own.classroom)).stream()
          .mapToInt(set -> set.problems().size()).sum() - asked.size();
      Page page = tablet.newPage();
      page.onPageError(complaints::add);
      page.navigate("http://tablet.test:" + own.app.port() + "/in/" + own.door());
      page.click("a[href='/come-in/" + own.children.get(0).id() + "']");
      page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Yes, it’s me")).click();
      page.waitForURL("**/mine");
      asked.forEach(problem -> taps.put(problem.kind(),
          new Finger(page, "en").does(problem, before + asked.indexOf(problem) + 1)));
    }
    taps.forEach((kind, count) -> System.out.println("taps with a way to work it out, " + kind.id() + ": " + count));
    taps.forEach((kind, count) -> assertTrue(count < MOST_TAPS, kind + ": " + count + " taps"));
    assertEquals(List.of(), complaints);
  }

  private static List<String> known(AssignedProblem problem) {
    return problem.story().given().stream().map(role -> Integer.toString(problem.story().value(role))).distinct()
        .sorted(java.util.Comparator.comparingInt(number -> problem.text().indexOf(number))).toList();
  }

  private static String question(AssignedProblem problem, String language) {
    return problem.sentences(language).stream().filter(sentence -> sentence.endsWith("?")).findFirst().orElseThrow();
  }

  /** Does a problem by touches alone, and counts them. */
  private static final class Finger {
    private final Page page;
    private final String language;
    private int taps;
    private String last = "";

    Finger(Page page, String language) {
      this.page = page;
      this.language = language;
    }

    private void tap(Locator what) {
      what.tap();
      taps++;
    }

    private void tap(String what) {
      if (what.equals(last)) {
        page.waitForTimeout(170);       // the same key again within 150 ms is a sticky finger
      }
      last = what;
      tap(page.locator(what).locator("visible=true").first());
    }

    int does(AssignedProblem problem, int number) {
      RightWork right = new RightWork(problem.story());
      page.waitForSelector("[data-open='" + number + "'][href='#" + number + "']");
      tap("[data-open='" + number + "']");
      tap(page.locator("[data-pick]").filter(new Locator.FilterOptions().setHasText(question(problem, language))));
      known(problem).forEach(known -> tap("[data-number-word='" + known + "']"));
      tap("[data-next-part]");
      int longer = page.locator("[data-build] .who").allTextContents().indexOf(right.nameOfLonger(language));
      tap("[data-longer='" + longer + "']");
      put(right.on(Role.LARGER), Integer.toString(longer));
      put(right.on(Role.SMALLER), Integer.toString(1 - longer));
      put(right.on(Role.DIFFERENCE), "gap");
      tap("[data-next-part]");
      write("equation", right.equation());
      tap("[data-next-part]");
      if (page.locator("[data-for=strategy]:visible").count() > 0) {
        onTheLine(problem);
      }
      write("answer", Integer.toString(problem.story().answer()));
      tap("[data-next-part]");
      label(right.label(language));
      tap("[data-hand-in]");
      page.waitForSelector("[data-for=fitted]:not([hidden])");
      int done = taps;
      page.click("[data-back]");
      return done;
    }

    private void onTheLine(AssignedProblem problem) {
      int first = problem.story().value(problem.story().given().get(0));
      int second = problem.story().value(problem.story().given().get(1));
      boolean adds = problem.story().kind().operation() == fewermore.story.Operation.ADD;
      tap("[data-choose] [data-kind=line]");
      tap("[data-start]");
      number(first);
      tap(adds ? "[data-jump=forward]" : "[data-jump=back]");
      number(second);
      number(adds ? first + second : first - second);
      tap("[data-to-my-work]");
      page.waitForSelector("[data-for=answer]:not([hidden])");
    }

    private void number(int number) {
      for (String key : Integer.toString(number).split("")) {
        tap("[data-pad] [data-key='" + key + "']");
      }
      tap("[data-pad] [data-key=ready]");
    }

    private void put(String chip, String place) {
      tap("[data-chip='" + chip + "']");
      tap("[data-place='" + place + "']");
    }

    private void write(String part, String text) {
      for (String key : text.split("")) {
        tap("[data-for=" + part + "] [data-key='" + key + "']");
      }
    }

    /** By the words of the story where they stand in it, else letter by letter. */
    private void label(String label) {
      String[] words = label.split(" ");
      boolean inStory = java.util.Arrays.stream(words)
          .allMatch(word -> page.locator("[data-word='" + word + "']").count() > 0);
      if (inStory) {
        java.util.Arrays.stream(words).forEach(word -> tap("[data-word='" + word + "']"));
      } else {
        write("label", label);
      }
    }
  }

  /** Does a problem with Tab, Enter and what is typed. */
  private static final class Keys {
    /** How many presses of Tab (or, below 0, of Shift and Tab) lead from where the focus is to a control. */
    private static final String PRESSES = """
        selector => {
          const all = [...document.querySelectorAll('a[href], button, input, [tabindex="0"]')]
            .filter(each => each.offsetParent !== null && !each.disabled && each.tabIndex >= 0
              && getComputedStyle(each).visibility === 'visible');
          const to = all.findIndex(each => each.matches(selector));
          const from = all.indexOf(document.activeElement);
          if (to < 0) return 999;
          if (from >= 0) return to - from;
          const before = all.filter(each =>
            document.activeElement.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_PRECEDING).length;
          return to >= before ? to - before + 1 : to - before;
        }""";

    private final Page page;

    Keys(Page page) {
      this.page = page;
    }

    private void reach(String selector) {
      for (int tries = 0; tries < 3; tries++) {
        int presses = ((Number) page.evaluate(PRESSES, selector)).intValue();
        for (int at = 0; at < Math.min(99, Math.abs(presses)); at++) {
          page.keyboard().press(presses < 0 ? "Shift+Tab" : "Tab");
        }
        if (Boolean.TRUE.equals(page.evaluate("selector => document.activeElement.matches(selector)", selector))) {
          return;
        }
      }
      throw new AssertionError("the keyboard does not reach " + selector);
    }

    private void press(String selector) {
      reach(selector);
      page.keyboard().press("Enter");
    }

    void does(AssignedProblem problem, int number) {
      RightWork right = new RightWork(problem.story());
      page.waitForSelector("[data-open='" + number + "'][href='#" + number + "']");
      press("[data-open='" + number + "']");
      page.waitForSelector("[data-for=reading]:not([hidden])");
      press("[data-sentence='" + problem.sentences().indexOf(question(problem, "en")) + "'] [data-pick]");
      known(problem).forEach(known -> press("[data-number-word='" + known + "']"));
      press("[data-next-part]");
      page.waitForSelector("[data-for=bars]:not([hidden])");
      int longer = page.locator("[data-build] .who").allTextContents().indexOf(right.nameOfLonger("en"));
      press("[data-longer='" + longer + "']");
      put(right.on(Role.LARGER), Integer.toString(longer));
      put(right.on(Role.SMALLER), Integer.toString(1 - longer));
      put(right.on(Role.DIFFERENCE), "gap");
      press("[data-next-part]");
      type("equation", right.equation().replace('−', '-').replace('□', '?'));
      type("answer", Integer.toString(problem.story().answer()));
      type("label", right.label("en"));
      page.waitForTimeout(850);
      press("[data-hand-in]");
      page.waitForSelector("[data-for=fitted]:not([hidden])");
      press("[data-back]");
    }

    private void put(String chip, String place) {
      press("[data-chip='" + chip + "']");
      press("[data-place='" + place + "']");
    }

    private void type(String part, String text) {
      page.waitForSelector("[data-for=" + part + "]:not([hidden])");
      reach("[data-for=" + part + "] [data-field]");
      page.keyboard().type(text);
      page.keyboard().press("Enter");
    }
  }

  private static void plainForm(Page page, AssignedProblem problem, int number) {
    RightWork right = new RightWork(problem.story());
    page.click("[data-open='" + number + "']");
    page.check("input[name=question][value=\"" + question(problem, "en") + "\"]");
    known(problem).forEach(known -> page.check("input[name=known][value='" + known + "']"));
    page.check("input[name=longer][value=\"" + right.nameOfLonger("en") + "\"]");
    page.fill("input[name=longerBar]", right.on(Role.LARGER));
    page.fill("input[name=shorterBar]", right.on(Role.SMALLER));
    page.fill("input[name=gap]", right.on(Role.DIFFERENCE));
    page.fill("input[name=equation]", right.equation().replaceAll("([+−=])", " $1 "));
    page.fill("input[name=answer]", Integer.toString(problem.story().answer()));
    page.fill("input[name=label]", right.label("en"));
    page.keyboard().press("Enter");
    page.waitForSelector(".delivery.theirs");
    page.click("a.of");
  }
}
