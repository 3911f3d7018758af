package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.Work;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;

/** Plan as the teacher uses it, in a real browser. With {@code PICTURES} in the environment each state is kept as one. */
class PlanInABrowserTest {
  private static final String TANK =
      "Ana counted 34 snails in the tank. There are 18 fewer snails than shrimps. How many shrimps are in the tank?";
  private static final String GOOD =
      "Mara found 28 shells. She found 15 fewer shells than Theo. How many shells did Theo find?";

  /** What a test has that changes the set that was given. */
  private static final String OWN_DATA = "own-data";

  private static Rig shared;

  private final List<String> complaints = new ArrayList<>();
  private Rig rig;
  private BrowserContext laptop;
  private Page page;

  @BeforeAll
  static void start() {
    shared = Rig.start();
  }

  @AfterAll
  static void stop() {
    shared.close();
  }

  @BeforeEach
  void open(TestInfo test) {
    rig = test.getTags().contains(OWN_DATA) ? Rig.start() : shared;
    laptop = Chromium.tablet(1366, 768);
    page = laptop.newPage();
    page.onConsoleMessage(message -> {
      if (message.type().equals("error") && !message.text().contains("422")) {
        complaints.add(message.text());
      }
    });
    page.navigate(here("/sign-in"));
    page.fill("[name=passphrase]", Rig.PASSPHRASE);
    page.press("[name=passphrase]", "Enter");
    page.waitForURL("**/plan");
  }

  @AfterEach
  void close() {
    laptop.close();
    if (rig != shared) {
      rig.close();
    }
    assertEquals(List.of(), complaints);
  }

  private String here(String path) {
    return "http://localhost:" + rig.app.teacherPort() + path;
  }

  private void clean(String picture) {
    var found = new AxeBuilder(page).setLegacyMode(true).analyze().getViolations();
    String folder = System.getenv("PICTURES");
    if (folder != null) {
      page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(folder, picture + ".png")).setFullPage(true));
    }
    assertEquals(List.of(), found.stream().map(each -> each.getId() + " " + each.getNodes().get(0).getHtml()).toList());
  }

  private void type(String text) {
    page.fill("#typed", text);
    page.waitForCondition(() -> page.evaluate("document.querySelector(\"[name='roles-of']\").value").equals(text));
  }

  @Test
  void theStoryIsSeenAsSheTypesAndTheProblemGoesIntoTheSet() {
    page.navigate(here("/plan/type"));
    clean("type-empty");
    page.locator("#typed").pressSequentially(GOOD);
    page.waitForSelector(".ways-table");
    page.waitForCondition(() -> page.locator(".story-seen .role").count() >= 6);
    assertEquals("28 + 15 = □", page.evaluate("[...document.querySelectorAll('.answer-key .eq > *')].map(e => "
        + "e.matches('.box') ? '□' : e.textContent).join(' ')"));
    assertTrue(page.textContent(".understood").contains("The word points the other way."));
    clean("type-good");
    page.keyboard().press("Tab");
    page.click("text=Add to the set");
    page.waitForURL("**/plan?day=*");
    assertEquals(1, page.locator(".made-one").count());
    assertTrue(page.textContent(".made-one").contains("She found 15 fewer shells than Theo."));
    clean("plan-typed");
  }

  @Test
  void aDeclinedTextSaysWhereAndWhyAndCanBeSetRightByHand() {
    page.navigate(here("/plan/type"));
    type("Noor has 40 stickers. Elsie is 3 times as rich. How many?");
    page.waitForSelector(".declined");
    clean("type-declined");
    page.click("text=Add to the set");
    page.waitForSelector(".problem");
    assertTrue(page.textContent(".problem").contains("not understood yet"));
    type("Today 40 birds came. Yesterday there were 12 more birds. How many birds came yesterday?");
    page.waitForSelector(".declined");
    page.selectOption("#use-0", "smaller");
    page.selectOption("#use-1", "difference");
    page.selectOption("#unknown", "larger");
    page.selectOption("#wording", "more");
    page.fill("#larger", "yesterday");
    page.fill("#smaller", "today");
    page.fill("#one", "bird");
    page.fill("#many", "birds");
    page.press("#many", "Tab");
    page.waitForSelector(".ways-table");
    clean("type-repaired");
    page.click("text=Add to the set");
    page.waitForURL("**/plan?day=*");
    assertTrue(page.textContent(".made-one .key-line").contains("52"), page.textContent(".made-one .key-line"));
  }

  @Test
  void whatSheSetsWhileAnAnswerIsOnItsWayIsKept() {
    page.navigate(here("/plan/type"));
    type("Today 40 birds came. Yesterday there were 12 more birds. How many birds came yesterday?");
    page.waitForSelector(".declined");
    List<com.microsoft.playwright.Route> held = new ArrayList<>();
    page.route("**/plan/look", route -> {
      if (held.isEmpty()) {
        held.add(route);
      } else {
        route.resume();
      }
    });
    page.selectOption("#use-0", "smaller");
    page.waitForCondition(() -> held.size() == 1);
    page.fill("#larger", "yesterday");
    page.waitForResponse("**/plan/look", held.get(0)::resume);
    page.selectOption("#use-1", "difference");
    page.waitForCondition(() -> page.locator("#use-1").inputValue().equals("difference"));
    assertEquals("yesterday", page.inputValue("#larger"));
    assertEquals("smaller", page.inputValue("#use-0"));
  }

  @Test
  void aTappedNumberTakesItsNextRoleAndTheBarsFollow() {
    page.navigate(here("/plan/type"));
    type(GOOD);
    page.waitForSelector(".ways-table");
    page.click(".story-seen button.role.unknown");
    page.waitForSelector(".declined");
    page.click(".story-seen button.role.gap");
    page.waitForCondition(() -> page.locator("#use-1").inputValue().equals("extra"));
    page.locator(".story-seen button[value=number-1]").press("Enter");
    page.waitForCondition(() -> page.locator("#use-1").inputValue().equals("larger"));
  }

  @Test
  void numbersThatTellTooLittleApartAreReplacedByOneClick() {
    page.navigate(here("/plan/type"));
    type("Mara found 28 shells. She found 14 fewer shells than Theo. How many shells did Theo find?");
    page.waitForSelector(".better button");
    clean("type-better");
    String offered = page.getAttribute(".better button", "value");
    page.click(".better button");
    page.waitForCondition(() -> page.inputValue("#typed").equals(offered));
    page.waitForCondition(() -> page.locator(".better").count() == 0);
  }

  @Test
  void aSetIsOrderedSettledKeptCopiedAndPrinted() {
    page.click("text=A new set");
    page.click("text=Take the proposed mix");
    page.waitForSelector("form[action='/plan/give']");
    String second = page.locator(".made-one .tale").nth(1).textContent();
    page.locator(".made-one").nth(1).locator("button[value=up]").click();
    page.waitForCondition(() -> page.locator(".made-one .tale").first().textContent().equals(second));
    page.locator(".made-one").last().locator("form[action='/plan/remove'] button").click();
    page.waitForCondition(() -> page.locator(".made-one").count() == 6);
    page.click(".settle summary");
    page.selectOption("[name=tries]", "2");
    page.check("[name=child] >> nth=0");
    clean("plan-settle");
    page.click("text=Keep these choices");
    page.waitForSelector("text=For 1 child");
    assertTrue(page.textContent(".settle summary").contains("2 tries"));
    page.fill("#set-name", "Shells and pebbles");
    page.click("text=Keep to use again");
    page.waitForSelector("text=Change the name");
    clean("plan-set");
    page.navigate(here("/plan/sets"));
    clean("shelf");
    page.locator("li:has-text('Shells and pebbles') input[type=date]").fill("2026-12-01");
    page.locator("li:has-text('Shells and pebbles') >> text=Copy >> nth=-1").click();
    page.waitForURL("**/plan?day=2026-12-01*");
    assertEquals(6, page.locator(".made-one").count());
    page.click("text=Answer key");
    page.waitForSelector(".key-list");
    clean("key");
    page.goBack();
    page.click("text=Problem sheet");
    page.waitForSelector(".paper-list");
    clean("sheet");
    page.click("text=In Spanish");
    page.waitForSelector("text=Nombre");
    clean("sheet-es");
  }

  @Test
  @Tag(OWN_DATA)
  void aSetForSomeChildrenIsSeenByThemAlone() {
    long set = rig.services.plans.copy(rig.classroom.id(), rig.set.id(), rig.services.today(rig.classroom), rig.now())
        .orElseThrow();
    rig.services.plans.settle(rig.classroom.id(), set, rig.services.today(rig.classroom),
        List.of(rig.children.get(1).id()), 3, false, rig.set.asks());
    rig.services.problems.give(rig.classroom.id(), set);
    assertEquals(2, Tablet.comeIn(rig, rig.children.get(0)).problems.size());
    assertEquals(4, Tablet.comeIn(rig, rig.children.get(1)).problems.size());
  }

  @Test
  void severalAreReadAtOnceGoodAndBadApart() {
    page.navigate(here("/plan/several"));
    page.fill("#text", GOOD + "\n\nNoor has twice as many as Elsie. Elsie has 4 pens. How many has Noor?\n\n" + GOOD);
    page.click("text=Look at them");
    page.waitForSelector(".several");
    assertEquals("2 understood, 1 not", page.textContent("#sev-h").strip());
    clean("several");
    page.click("text=Add the 2 understood");
    page.waitForURL("**/plan?day=*");
    assertEquals(2, page.locator(".made-one").count());
  }

  @Test
  @Tag(OWN_DATA)
  void rolesOfAnsweredWorkAreSetRightAfterOneQuestionAndATextBecomesANewVersion() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    noor.sent(noor.item(noor.work(1), 1, "handed-in", new Work("52 + 14 = x", "66", "shells", null, null)));
    long problem = rig.set.problems().get(0).id();
    String address = "/plan/type?set=" + rig.set.id() + "&problem=" + problem;
    page.navigate(here(address));
    page.waitForSelector("text=1 child has handed in work");
    page.click("summary:has-text('Say yourself')");
    page.selectOption("#unknown", "larger");
    page.waitForSelector(".declined");
    page.selectOption("#use-0", page.locator("#use-0").inputValue().equals("larger") ? "smaller" : "difference");
    page.waitForTimeout(400);
    page.selectOption("#use-1", page.locator("#use-0").inputValue().equals("smaller") ? "difference" : "smaller");
    page.waitForSelector(".ways-table");
    page.click("text=Keep the change");
    page.waitForSelector("text=1 child’s marks will change.");
    clean("type-question");
    assertEquals("opposite-operation", equationOf(problem));
    page.click("text=Set the roles right");
    page.waitForURL("**/plan?day=*");
    assertEquals("fits", equationOf(problem));

    page.navigate(here(address));
    page.fill("#typed", page.inputValue("#typed").replace("52", "53"));
    page.waitForSelector(".ways-table");
    page.click("text=Keep the change");
    page.waitForURL("**/plan?day=*");
    long now = rig.services.plans.set(rig.classroom.id(), rig.set.id()).orElseThrow().set().problems().get(0).id();
    assertFalse(now == problem, "a new version has its own name");
    assertEquals(List.of(problem), rig.services.plans.earlier(rig.classroom.id(), now).stream().map(each -> each.id())
        .toList());
    assertEquals(1, rig.services.works.pieces(rig.classroom.id()).stream()
        .filter(piece -> piece.problem().id() == problem).count(), "work stays with the version the child saw");
    Tablet again = Tablet.comeIn(rig, rig.children.get(0));
    assertEquals(2, again.problems.size());
    Tablet elsie = Tablet.comeIn(rig, rig.children.get(1));
    assertEquals(2, elsie.problems.size());
    assertTrue(elsie.browser.get("/mine").body().contains("53"), "who has not worked on it sees the new version");
    assertFalse(again.browser.get("/mine").body().contains("53 shells"), "who has goes on with hers");
  }

  private String equationOf(long problem) {
    PieceOfWork piece = rig.services.works.pieces(rig.classroom.id()).stream()
        .filter(each -> each.problem().id() == problem).findFirst().orElseThrow();
    var mark = piece.evidence().marks().equation();
    return mark.reason().id();
  }

  @Test
  void everythingIsReachedByKeyboardAlone() {
    page.navigate(here("/plan/type"));
    page.focus("#typed");
    page.keyboard().type(TANK.replace("Ana counted", "There are").replace(" in the tank. There", ". There"));
    page.waitForSelector(".ways-table");
    for (int i = 0; i < 40 && !page.evaluate("document.activeElement.className").toString().contains("role"); i++) {
      page.keyboard().press("Tab");
    }
    assertTrue(page.evaluate("document.activeElement.className").toString().contains("role"), "marked words are reached");
    page.keyboard().press("Enter");
    page.waitForTimeout(500);
    assertTrue(page.evaluate("document.activeElement.className").toString().contains("role"), "and keep the focus");
  }

  @Test
  void itCanBeUsedAtTwoHundredPerCent() {
    laptop.close();
    laptop = Chromium.tablet(683, 384);
    page = laptop.newPage();
    page.navigate(here("/sign-in"));
    page.fill("[name=passphrase]", Rig.PASSPHRASE);
    page.press("[name=passphrase]", "Enter");
    page.waitForURL("**/plan");
    page.navigate(here("/plan/type"));
    type(GOOD);
    page.waitForSelector(".ways-table");
    clean("type-200");
    assertTrue((Boolean) page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "no sideways scroll");
  }
}
