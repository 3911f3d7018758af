package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.ElementHandle;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import fewermore.calculation.Calculation;
import fewermore.calculation.SlipRule;
import fewermore.calculation.StepWords;
import fewermore.calculation.Way;
import fewermore.calculation.Working;
import fewermore.calculation.Working.Verdict;
import fewermore.json.Json;
import fewermore.json.WorkJson;
import fewermore.marking.StrategyWork;
import fewermore.story.Operation;
import fewermore.web.Chromium;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A child works it out with pieces, on the line, in tens and ones: by touch, by keys, without script. */
class StrategyInABrowserTest extends OnATablet {
  private static final Calculation SHELLS = new Calculation(52, Operation.SUBTRACT, 14);
  private static final Calculation BEADS = new Calculation(61, Operation.ADD, 25);

  private void openStrategy(ShownProblem problem, String equation) {
    open(Samples.asksStrategy(problem));
    openProblem(1);
    tab("equation");
    keys("equation", equation);
    tab("strategy");
  }

  private void way(String kind) {
    page.locator("[data-for=strategy] [data-kind=" + kind + "]:visible").first().tap();
    page.waitForSelector("[data-way=" + kind + "]:not([hidden])");
  }

  private void tap(String selector) {
    page.locator("[data-for=strategy] " + selector).tap();
  }

  private void tap(String selector, int times) {
    for (int at = 0; at < times; at++) {
      tap(selector);
    }
  }

  private void number(int number) {
    page.waitForSelector("[data-pad]:not([hidden])");
    String before = "";
    for (String digit : Integer.toString(number).split("")) {
      page.waitForTimeout(digit.equals(before) ? 160 : 0);
      tap("[data-pad] [data-key='" + digit + "']");
      before = digit;
    }
    tap("[data-pad] [data-key=ready]");
  }

  private String says() {
    return page.textContent("[data-strategy-live]").trim();
  }

  private StrategyWork onTheTablet() {
    JsonNode parts = Json.read((String) page.evaluate("JSON.stringify(Object.keys(localStorage)"
        + ".filter(key => key.startsWith('fw.d.')).map(key => JSON.parse(localStorage[key]).parts)[0])"));
    return WorkJson.read(parts).strategy();
  }

  private Working working(Calculation calculation) {
    StrategyWork work = onTheTablet();
    return new Working(work.kind(), calculation, work.steps());
  }

  private static String english(Working working) {
    return StepWords.in(Locale.ENGLISH).say(working.state());
  }

  /** 52 − 14 with pieces, as a child does it who trades. */
  private void takeAwayWithATrade() {
    tap("[data-put=ten]", 5);
    tap("[data-put=one]", 2);
    tap("[data-pile='1'][data-column=ten]");
    tap("[data-do=trade]");
    tap("[data-do=away]");
    tap("[data-pile='1'][data-column=one]");
    tap("[data-do=away]", 4);
    tap("[data-count]");
    number(38);
  }

  @Test
  void aSubtractionWithATradeIsWorkedWithPiecesByTouch() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("pieces");
    takeAwayWithATrade();
    assertEquals(Verdict.FITS, working(SHELLS).judge().verdict());
    assertEquals("On the mat: 3 tens and 8 ones. Crossed out: 1 ten and 4 ones. Written: 38.", says());
    assertEquals(says(), english(working(SHELLS)));
    tap("[data-to-my-work]");
    page.waitForSelector("[data-for=answer]:not([hidden])");
  }

  @Test
  void aTenIsTradedInTwoTaps() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("pieces");
    tap("[data-put=ten]", 5);
    tap("[data-put=one]", 2);
    int before = onTheTablet().steps().size();
    tap("[data-pile='1'][data-column=ten]");
    tap("[data-do=trade]");
    assertEquals(before + 1, onTheTablet().steps().size());
    assertEquals("On the mat: 4 tens and 12 ones.", says());
  }

  @Test
  void aTenIsTradedAndTakenAwayByDragging() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("pieces");
    drag("[data-put=ten]", "[data-pile='1'][data-column=ten]");
    drag("[data-put=ten]", "[data-pile='1'][data-column=one]");
    assertEquals("On the mat: 2 tens.", says());
    drag("[data-pile='1'][data-column=ten]", "[data-pile='1'][data-column=one]");
    assertEquals("On the mat: 1 ten and 10 ones.", says());
    drag("[data-pile='1'][data-column=one]", "[data-do=away]");
    assertEquals("On the mat: 1 ten and 9 ones. Crossed out: 1 one.", says());
  }

  private void drag(String from, String to) {
    BoundingBox a = page.locator("[data-for=strategy] " + from).boundingBox();
    BoundingBox b = page.locator("[data-for=strategy] " + to).boundingBox();
    page.mouse().move(a.x + a.width / 2, a.y + a.height / 2);
    page.mouse().down();
    page.mouse().move(a.x + a.width / 2 + 30, a.y + a.height / 2);
    page.mouse().move(b.x + b.width / 2, b.y + b.height / 2);
    page.mouse().up();
  }

  @Test
  void anAdditionWithATradeIsWorkedWithPiecesByTouch() {
    openStrategy(Samples.beads(1), "38+25=□");
    way("pieces");
    tap("[data-put=ten]", 3);
    tap("[data-put=one]", 8);
    tap("[data-second-pile]");
    tap("[data-put=ten]", 2);
    tap("[data-put=one]", 5);
    tap("[data-do=join]");
    tap("[data-pile='1'][data-column=one]");
    tap("[data-do=trade]");
    tap("[data-count]");
    number(63);
    assertEquals(Verdict.FITS, working(new Calculation(38, Operation.ADD, 25)).judge().verdict());
    assertEquals("On the mat: 6 tens and 3 ones. Written: 63.", says());
    assertEquals(Verdict.OTHER_CALCULATION, working(BEADS).judge().verdict(), "another equation is not served");
  }

  @Test
  void anAddUpToIsWorkedOnTheLineByTouch() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("line");
    assertTrue(page.locator("[data-jump]").first().isDisabled(), "no jump before a start");
    tap("[data-start]");
    number(14);
    tap("[data-jump=forward]");
    number(6);
    number(20);
    for (int to = 30; to <= 50; to += 10) {
      tap("[data-jump='10']");
      number(to);
    }
    tap("[data-jump=forward]");
    number(2);
    number(52);
    assertFalse(page.textContent("[data-sum]").contains("38"), "the page totals nothing");
    tap("[data-write]");
    number(38);
    Working working = working(SHELLS);
    assertEquals(Verdict.FITS, working.judge().verdict());
    assertEquals(english(working), says());
  }

  @Test
  void aRegroupingInTensAndOnesByKeysAlone() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    press("[data-for=strategy] .choose-way [data-kind=expanded]");
    cell("first-tens", "50");
    cell("first-ones", "2");
    cell("second-tens", "10");
    cell("second-ones", "4");
    press("[data-regroup=first]");
    cell("first-again-tens", "40");
    cell("first-again-ones", "12");
    cell("result-tens", "30");
    cell("result-ones", "8");
    cell("written", "38");
    Working working = working(SHELLS);
    assertEquals(Verdict.FITS, working.judge().verdict(), working::toString);
    assertEquals(english(working), says());
    press("[data-undo]");
    assertEquals(working.undone().steps(), onTheTablet().steps());
  }

  @Test
  void aRowThatIsHalfTypedIsThereAgainAfterAnotherProblem() {
    open(Samples.asksStrategy(Samples.shells(1, null, null)), Samples.asksStrategy(Samples.beads(2)));
    openProblem(1);
    tab("strategy");
    way("expanded");
    cell("first-tens", "50");
    page.click("[data-back]");
    openProblem(2);
    tab("strategy");
    way("expanded");
    assertEquals("", page.textContent("[data-cell='first-tens']"), "the other problem has its own");
    page.click("[data-back]");
    openProblem(1);
    tab("strategy");
    assertEquals("50", page.textContent("[data-cell='first-tens']"));
    cell("first-ones", "2");
    assertEquals(1, onTheTablet().steps().size());
  }

  private void press(String selector) {
    page.locator(selector).first().focus();
    page.keyboard().press("Enter");
  }

  private void cell(String name, String digits) {
    press("[data-cell='" + name + "']");
    page.waitForSelector("[data-pad]:not([hidden])");
    for (String digit : digits.split("")) {
      page.keyboard().press(digit);
    }
    page.locator("[data-pad] [data-key=ready]").focus();
    page.keyboard().press("Enter");
  }

  @Test
  void everyStepIsTakenBackExactlyAndComesAgainAfterAReload() {
    stage.line = TabletStage.Line.CLOSED;
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("pieces");
    List<StrategyWork> seen = new ArrayList<>();
    Runnable look = () -> seen.add(onTheTablet());
    tap("[data-put=ten]", 2);
    look.run();
    tap("[data-pile='1'][data-column=ten]");
    tap("[data-do=trade]");
    look.run();
    tap("[data-do=back]");
    look.run();
    page.click("[data-undo]");
    assertEquals(seen.get(1), onTheTablet());
    page.click("[data-undo]");
    assertEquals(seen.get(0), onTheTablet());
    page.reload();
    page.waitForSelector("[data-for=strategy]:not([hidden])");
    assertEquals("2", page.getAttribute("[data-pile='1'][data-column=ten]", "aria-label").replaceAll("[^0-9]", ""));
  }

  @Test
  void aSecondStrategyChecksTheFirstAndAThirdIsNotTaken() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("line");
    tap("[data-start]");
    number(52);
    tap("[data-jump=back]");
    number(14);
    number(38);
    way("pieces");
    takeAwayWithATrade();
    StrategyWork work = onTheTablet();
    assertEquals("line", work.kind().id());
    assertEquals("pieces", work.check().kind().id());
    assertTrue(Working.agree(new Working(work.kind(), SHELLS, work.steps()),
        new Working(work.check().kind(), SHELLS, work.check().steps())));
    assertTrue(page.locator(".ways [data-kind=expanded]").isDisabled());
  }

  @Test
  void wrongStepsCanBeMadeAndAreRecognized() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("line");
    tap("[data-start]");
    number(52);
    tap("[data-jump='-10']");
    number(42);
    tap("[data-jump=back]");
    number(4);
    number(39);
    assertEquals(List.of(SlipRule.COUNTED_THE_START_BACK), working(SHELLS).judge().slips());
  }

  /** The page knows neither where to start nor which way to go, and never says what is left. */
  @Test
  void theLineGivesNothingAway() {
    openStrategy(Samples.shells(1, null, null), "14+□=52");
    way("line");
    String shown = page.innerText("[data-for=strategy]");
    assertFalse(shown.contains("38"));
    assertFalse(page.innerText("[data-for=strategy] [data-ask]").matches(".*\\d.*"));
    assertEquals(0, page.locator("svg.line text").count());
    way("pieces");
    assertEquals(0, page.locator("[data-mat] .keep").count());
    way("expanded");
    assertEquals("±", page.innerText("[data-sign]"));
  }

  @Test
  void whatIsHandedInIsWhatWasDone() {
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    way("pieces");
    takeAwayWithATrade();
    StrategyWork done = onTheTablet();
    tap("[data-to-my-work]");
    handIn();
    page.click("[data-anyway]");
    until("handed in", () -> !stage.kept("handed-in").isEmpty());
    assertEquals(done, WorkJson.read(lastParts("handed-in")).strategy());
  }

  /** Any steps at all: the tablet's picture in words is the laptop's. */
  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void theTabletAndTheLaptopSeeTheSamePictures(String language) {
    stage.language = language;
    open(Samples.asksStrategy(Samples.shells(1, null, null)));
    String module = (String) page.evaluate("performance.getEntriesByType('resource').map(each => each.name)"
        + ".find(name => name.includes('strategy-steps'))");
    List<Working> all = fewermore.calculation.StepSamples.anyWorkings(300);
    for (Way way : Way.values()) {
      fewermore.calculation.WorkedSolutions.of(way.name().matches("JOIN.*|PUT_ON") ? BEADS : SHELLS, way)
          .ifPresent(solution -> all.add(solution.working()));
    }
    StringBuilder works = new StringBuilder();
    all.forEach(each -> works.append(works.isEmpty() ? "" : ",").append(Json.write(
        fewermore.json.StrategyJson.write(new StrategyWork(each.kind(), each.steps(), null)))));
    @SuppressWarnings("unchecked")
    List<String> said = (List<String>) page.evaluate("([module, works]) => import(module).then(steps => "
        + "JSON.parse(works).map(({ kind, steps: list }) => steps.describe(kind, steps.fold(kind, list))))",
        List.of(module, "[" + works + "]"));
    StepWords words = StepWords.in(Locale.forLanguageTag(language));
    for (int at = 0; at < all.size(); at++) {
      assertEquals(words.say(all.get(at).state()), said.get(at), all.get(at).toString());
    }
  }

  @Test
  void withoutScriptNumbersInFieldsAreSent() {
    stage.sitting = Samples.sitting("en", Samples.asksStrategy(Samples.shells(1, null, null)));
    page.navigate(stage.address("/mine/w1"));
    axe("form");
    tablet.close();
    tablet = Chromium.tablet(new Browser.NewContextOptions().setViewportSize(1024, 600).setJavaScriptEnabled(false));
    page = newPage();
    page.navigate(stage.address("/mine/w1"));
    page.check("[name=way][value=line]");
    page.locator(".strategy-form summary").nth(1).click();
    page.fill("[name=start]", "14");
    page.fill("[name=by1]", "38");
    page.fill("[name=to1]", "52");
    page.fill("[name=lineWritten]", "38");
    picture("form", true);
    page.click(".hand-in [type=submit]");
    until("handed in", () -> stage.forms.size() == 1);
    StrategyWork sent = StrategyForm.read(field -> stage.forms.get(0).getOrDefault(field, List.of("")).get(0));
    assertEquals(Verdict.FITS, new Working(sent.kind(), SHELLS, sent.steps()).judge().verdict());
    assertEquals("52", StrategyForm.fields(sent).get("to1"));
  }

  private void axe(String where) {
    List<Rule> found = new AxeBuilder(page).setLegacyMode(true).analyze().getViolations();
    assertEquals(List.of(), found.stream().map(rule -> where + ": " + rule.getId() + " "
        + rule.getNodes().get(0).getHtml()).toList());
  }

  /** Pictures to look at, where a folder is named in the system property "pictures". */
  private void picture(String name, boolean full) {
    String folder = System.getProperty("pictures");
    if (folder != null) {
      page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(folder, name + ".png")).setFullPage(full));
    }
  }

  private void throughAllStates(Consumer<String> look) {
    look.accept("choose");
    way("pieces");
    look.accept("pieces-empty");
    tap("[data-put=ten]", 5);
    tap("[data-put=one]", 2);
    tap("[data-pile='1'][data-column=ten]");
    look.accept("pieces-picked");
    tap("[data-do=trade]");
    tap("[data-do=away]");
    tap("[data-pile='1'][data-column=one]");
    tap("[data-do=away]", 4);
    look.accept("pieces-taken");
    tap("[data-count]");
    look.accept("pieces-count");
    number(38);
    way("line");
    look.accept("line-empty");
    tap("[data-start]");
    number(14);
    tap("[data-jump=forward]");
    number(6);
    look.accept("line-landing");
    number(20);
    tap("[data-jump='10']");
    number(30);
    tap("[data-jump=forward]");
    number(20);
    number(50);
    tap("[data-jump=forward]");
    number(2);
    number(52);
    look.accept("line-check");
    for (int at = 0; at < 5; at++) {
      page.click("[data-undo]");
    }
    way("expanded");
    look.accept("expanded-empty");
    String[][] cells = {{"first-tens", "50"}, {"first-ones", "2"}, {"second-tens", "10"}, {"second-ones", "4"}};
    for (String[] each : cells) {
      tap("[data-cell='" + each[0] + "']");
      number(Integer.parseInt(each[1]));
    }
    tap("[data-regroup=first]");
    tap("[data-cell='first-again-tens']");
    look.accept("expanded-asking");
    number(40);
    tap("[data-cell='first-again-ones']");
    number(12);
    tap("[data-cell='result-tens']");
    number(30);
    look.accept("expanded");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1024x600", "768x1024", "1280x800"})
  void everyStateFitsTheTabletsAndItsKeysAreLargeEnough(String size) {
    String[] sides = size.split("x");
    page.setViewportSize(Integer.parseInt(sides[0]), Integer.parseInt(sides[1]));
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    throughAllStates(state -> {
      page.waitForTimeout(200);
      picture(state + "-" + size, false);
      assertEquals(false, page.evaluate("document.documentElement.scrollWidth > innerWidth"), state + " sideways");
      for (ElementHandle key : page.querySelectorAll("[data-for=strategy] button:visible")) {
        BoundingBox box = key.boundingBox();
        String what = state + " " + size + " " + key.innerText() + " " + key.getAttribute("data-cell") + " " + box.width
            + "x" + box.height;
        assertTrue(box.width >= 56 && box.height >= 56, what);
        assertTrue(box.x >= 0 && box.x + box.width <= Integer.parseInt(sides[0]) + 0.5, what);
        if (page.querySelector(".asking") == null) {
          assertTrue(size.equals("768x1024") || box.y + box.height <= Integer.parseInt(sides[1]) + 0.5, what);
        }
      }
      axe(state);
    });
  }

  @Test
  void inSpanishEveryStateFitsToo() {
    stage.language = "es";
    openStrategy(Samples.spanishShells(1), "52−14=□");
    way("pieces");
    takeAwayWithATrade();
    picture("spanish-pieces", false);
    assertEquals(StepWords.in(Locale.forLanguageTag("es")).say(working(SHELLS).state()), says());
    for (ElementHandle key : page.querySelectorAll("[data-for=strategy] button:visible")) {
      BoundingBox box = key.boundingBox();
      assertTrue(box.x + box.width <= 1024.5 && box.y + box.height <= 600.5, key.innerText());
    }
    axe("es");
  }

  @Test
  void withoutMotionWhereTheSystemAsksForLess() {
    tablet.close();
    tablet = Chromium.tablet(new Browser.NewContextOptions().setViewportSize(1024, 600).setHasTouch(true)
        .setReducedMotion(com.microsoft.playwright.options.ReducedMotion.REDUCE));
    page = newPage();
    openStrategy(Samples.shells(1, null, null), "52−14=□");
    assertEquals("0s", page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--move').trim()"));
  }
}
