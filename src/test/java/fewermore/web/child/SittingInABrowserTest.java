package fewermore.web.child;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.BarsMarker;
import fewermore.marking.BarsVerdict;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a child does on Show your work, and what the laptop gets of it. */
class SittingInABrowserTest extends OnATablet {

  @Test
  void aTabletPageIsNotASecureContext() {
    open(Samples.shells(1, null, null));
    assertEquals(false, page.evaluate("isSecureContext"));
  }

  @Test
  void aChildDoesAProblemByTapsAndTheLaptopHoldsIt() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    doTheShells();
    stage.telling = item -> allFits();
    handIn();
    page.waitForSelector("[data-for=fitted]:not([hidden])");
    deliverySays("Your teacher has it.");
    JsonNode parts = lastParts("handed-in");
    assertEquals("52 − 14 = □", parts.path("equation").asText());
    assertEquals("38", parts.path("answer").asText());
    assertEquals("shells", parts.path("label").asText());
    assertEquals("Theo", parts.at("/bars/longer").asText());
    assertEquals("52", parts.at("/bars/longerBar").asText());
    assertEquals("x", parts.at("/bars/shorterBar").asText());
    assertEquals("14", parts.at("/bars/gap").asText());
    assertEquals(1, stage.kept("handed-in").size());
  }

  /** Moves, after the first: where each chip is put. What is left out stays empty. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(nullValues = "-", value = {
    "longer and shorter swapped,      1, 52, ?,  14, Mara, x,  52, 14, longer-shorter-swapped",
    "amounts exchanged,               0, ?,  52, 14, Theo, x,  52, 14, longer-shorter-swapped",
    "the difference on a bar,         0, 52, 14, ?,  Theo, 52, 14, x,  difference-as-amount",
    "the numbers one place on,        0, ?,  14, 52, Theo, x,  14, 52, difference-as-amount",
    "the unknown on the longer bar,   0, ?,  38, 14, Theo, x,  38, 14, unknown-misplaced",
    "the unknown in the gap,          0, 52, 38, ?,  Theo, 52, 38, x,  unknown-misplaced",
    "a place missing,                 0, 52, ?,  -,  Theo, 52, x,  '', incomplete",
    "one number twice,                0, 52, 52, 14, Theo, 52, 52, 14, incomplete",
    "one number three times,          0, 14, 14, 14, Theo, 14, 14, 14, difference-as-amount",
    "an amount on the wrong bar,      0, -,  52, 14, Theo, '', 52, 14, incomplete",
    "only who has more,               1, -,  -,  -,  Mara, '', '', '', longer-shorter-swapped",
    "the answer where the unknown is, 0, 52, 38, 14, Theo, 52, 38, 14, fits",
    "a number from nowhere,           0, 66, ?,  14, Theo, 66, x,  14, other-numbers"})
  void anyWrongBarCanBeDrawn(String name, String longer, String first, String second, String gap, String whose,
      String longerBar, String shorterBar, String onGap, String mark) {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.click("[data-longer='" + longer + "']");
    putOrMake(first, "0");
    putOrMake(second, "1");
    putOrMake(gap, "gap");
    JsonNode bars = draftOnTheTablet().path("bars");
    assertEquals(List.of(whose, longerBar, shorterBar, onGap), List.of(bars.path("longer").asText(),
        bars.path("longerBar").asText(), bars.path("shorterBar").asText(), bars.path("gap").asText()), name);
    assertEquals(mark, BarsMarker.mark(SHELLS, new Bars(whose, longerBar, shorterBar, onGap)).id(), name);
  }

  private static final Comparison SHELLS = new Comparison(new Persons("Theo", "Mara"), new Thing("shell", "shells"),
      null, List.of(), new Relation(52, 38, 14), Role.SMALLER, Wording.FEWER, List.of());

  @Test
  void everyMarkThatBarsCanGetIsAmongThoseThatWereDrawn() throws NoSuchMethodException {
    Class<?>[] texts = new Class<?>[10];
    java.util.Arrays.fill(texts, String.class);
    Set<String> drawn = new TreeSet<>();
    for (String row : getClass().getDeclaredMethod("anyWrongBarCanBeDrawn", texts).getAnnotation(CsvSource.class)
        .value()) {
      drawn.add(row.substring(row.lastIndexOf(',') + 1).strip());
    }
    Set<String> all = new TreeSet<>();
    Stream.of(BarsVerdict.values()).filter(mark -> mark != BarsVerdict.BLANK).forEach(mark -> all.add(mark.id()));
    assertEquals(all, drawn, "blank bars have a test of their own");
  }

  private JsonNode draftOnTheTablet() {
    return Json.read((String) page.evaluate("JSON.stringify(Object.keys(localStorage)"
        + ".filter(key => key.startsWith('fw.d.')).map(key => JSON.parse(localStorage[key]).parts)[0])"));
  }

  private void putOrMake(String number, String place) {
    if (number == null) {
      return;
    }
    if (page.locator("[data-chip='" + number + "']").count() == 0) {
      page.click("[data-other]");
      keys("bars", number);
      page.click("[data-key=ready]");
      page.click("[data-place='" + place + "']");
    } else {
      put(number, place);
    }
  }

  @Test
  void blankBarsAreSentAsBlank() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("answer");
    keys("answer", "9");
    assertEquals("", draftOnTheTablet().at("/bars/longer").asText("missing"));
    assertEquals("", draftOnTheTablet().at("/bars/gap").asText("missing"));
  }

  @Test
  void aNumberIsDraggedToItsPlaceToAnotherAndOff() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.click("[data-longer='0']");
    page.waitForTimeout(300);
    drag(page.locator("[data-chip='14']"), page.locator("[data-place='1']"));
    assertEquals("14", page.textContent("[data-place='1']"));
    drag(page.locator("[data-place='1']"), page.locator("[data-place=gap]"));
    assertEquals("", page.textContent("[data-place='1']"));
    assertEquals("14", page.textContent("[data-place=gap]"));
    drag(page.locator("[data-place=gap]"), page.locator("[data-undo]"));
    assertEquals("", page.textContent("[data-place=gap]"));
    page.click("[data-undo]");
    assertEquals("14", page.textContent("[data-place=gap]"));
  }

  @Test
  void aBarIsPulledLongerAndItsLeftEdgeStaysLevel() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    BoundingBox grip = page.locator("[data-longer='1']").boundingBox();
    page.mouse().move(grip.x + 20, grip.y + 20);
    page.mouse().down();
    page.mouse().move(grip.x + 90, grip.y + 24, new com.microsoft.playwright.Mouse.MoveOptions().setSteps(5));
    page.mouse().up();
    page.waitForTimeout(300);
    assertEquals("true", page.getAttribute("[data-longer='1']", "aria-pressed"));
    assertEquals(page.locator("[data-lane='0'] .bar").boundingBox().x,
        page.locator("[data-lane='1'] .bar").boundingBox().x, 0.1);
    grip = page.locator("[data-longer='1']").boundingBox();
    page.mouse().move(grip.x + 20, grip.y + 20);
    page.mouse().down();
    page.mouse().move(grip.x - 200, grip.y + 24, new com.microsoft.playwright.Mouse.MoveOptions().setSteps(5));
    page.mouse().up();
    assertEquals("true", page.getAttribute("[data-longer='0']", "aria-pressed"), "pulled shorter: the other is longer");
  }

  private void drag(Locator from, Locator to) {
    BoundingBox start = from.boundingBox();
    BoundingBox end = to.boundingBox();
    page.mouse().move(start.x + start.width / 2, start.y + start.height / 2);
    page.mouse().down();
    page.mouse().move(end.x + end.width / 2, end.y + end.height / 2,
        new com.microsoft.playwright.Mouse.MoveOptions().setSteps(6));
    page.mouse().up();
  }

  @Test
  void aSecondFingerIsIgnoredAndACancelledTouchPutsTheNumberBack() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.click("[data-longer='0']");
    page.waitForTimeout(300);
    CDPSession session = tablet.newCDPSession(page);
    BoundingBox chip = page.locator("[data-chip='14']").boundingBox();
    BoundingBox other = page.locator("[data-chip='52']").boundingBox();
    BoundingBox place = page.locator("[data-place='1']").boundingBox();
    touch(session, "touchStart", at(chip, 0));
    touch(session, "touchStart", at(chip, 0), at(other, 1));
    touch(session, "touchMove", at(place, 0), at(other, 1));
    assertEquals(1, page.locator(".chip.flying").count());
    assertEquals("14", page.textContent(".chip.flying"));
    touch(session, "touchCancel");
    assertEquals(0, page.locator(".chip.flying").count());
    assertEquals("", page.textContent("[data-place='1']"));
    BoundingBox elsewhere = page.locator("[data-for=bars] [data-ask]").boundingBox();
    touch(session, "touchStart", at(elsewhere, 0));
    touch(session, "touchStart", at(elsewhere, 0), at(chip, 1));
    touch(session, "touchMove", at(elsewhere, 0), at(place, 1));
    assertEquals(0, page.locator(".chip.flying").count(), "the first finger rests elsewhere: this one is the second");
    touch(session, "touchEnd");
    touch(session, "touchStart", at(chip, 0));
    touch(session, "touchMove", at(place, 0));
    touch(session, "touchEnd");
    assertEquals("14", page.textContent("[data-place='1']"));
  }

  private static double[] at(BoundingBox box, int id) {
    return new double[] {box.x + box.width / 2, box.y + box.height / 2, id};
  }

  private void touch(CDPSession session, String type, double[]... fingers) {
    JsonObject event = new JsonObject();
    event.addProperty("type", type);
    JsonArray points = new JsonArray();
    for (double[] finger : fingers) {
      JsonObject point = new JsonObject();
      point.addProperty("x", finger[0]);
      point.addProperty("y", finger[1]);
      point.addProperty("id", (int) finger[2]);
      points.add(point);
    }
    event.add("touchPoints", points);
    session.send("Input.dispatchTouchEvent", event);
    page.waitForTimeout(60);
  }

  @ParameterizedTest
  @CsvSource({"160, 44", "100, 4"})
  void theSameDigitCountsTwiceWhenItIsMeantTwice(int millis, String shown) {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("answer");
    page.evaluate("millis => { const key = document.querySelector('[data-for=answer] [data-key=\"4\"]');"
        + "const times = [0, millis].map(at => new PointerEvent('click', { bubbles: true }));"
        + "times.forEach((click, at) => Object.defineProperty(click, 'timeStamp', { value: 5000 + at * millis }));"
        + "times.forEach(click => key.dispatchEvent(click)); }", millis);
    assertEquals(shown, page.inputValue("[data-for=answer] [data-field]"));
  }

  @Test
  void theKeysWriteWhereTheCaretStandsAndTakeBackWholeSigns() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("equation");
    keys("equation", "52−1=□");
    page.evaluate("document.querySelector('[data-for=equation] [data-field]').setSelectionRange(6, 6)");
    keys("equation", "4");
    assertEquals("52 − 14 = □", page.inputValue("[data-for=equation] [data-field]"));
    Locator back = page.locator("[data-for=equation] [data-key=back]");
    back.click();
    back.click();
    back.click();
    assertEquals("52 = □", page.inputValue("[data-for=equation] [data-field]"));
  }

  @Test
  void aRealKeyboardWritesTheSameLine() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("equation");
    page.click("[data-for=equation] [data-field]");
    page.keyboard().type("52-14=?");
    assertEquals("52 − 14 = □", page.inputValue("[data-for=equation] [data-field]"));
    page.keyboard().press("Enter");
    page.waitForSelector("[data-for=answer]:not([hidden])");
  }

  @Test
  void aRealKeyboardWritesWhereTheCaretStandsWithoutATap() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("equation");
    page.keyboard().type("52-14=");
    assertEquals("52 − 14 =", page.inputValue("[data-for=equation] [data-field]").strip());
    tab("answer");
    page.keyboard().type("38");
    assertEquals("38", page.inputValue("[data-for=answer] [data-field]"));
    assertEquals("52 − 14 =", page.inputValue("[data-for=equation] [data-field]").strip(), "only the open part is written");
  }

  @Test
  void wordsOfTheStoryAreTappedInAndOutOfTheLabel() {
    open(Samples.stripedShells(1));
    openProblem(1);
    tab("label");
    page.locator("[data-word='plain']").first().click();
    page.locator("[data-word='shells']").last().click();
    assertEquals("plain shells", page.inputValue("[data-for=label] [data-field]"));
    page.locator("[data-word='plain']").first().click();
    assertEquals("shells", page.inputValue("[data-for=label] [data-field]"));
    page.locator("[data-for=label] [data-key=back]").click();
    assertEquals("shell", page.inputValue("[data-for=label] [data-field]"));
    // A key is drawn at once, the rest of the page after it.
    assertThat(page.locator("[data-word][aria-pressed=true]")).hasCount(0);
  }

  @Test
  void undoTakesBackStepByStepAndShowsThePartItWasIn() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.click("[data-longer='0']");
    put("52", "0");
    tab("answer");
    keys("answer", "7");
    page.click("[data-undo]");
    assertEquals("", page.inputValue("[data-for=answer] [data-field]"));
    page.click("[data-undo]");
    page.waitForSelector("[data-for=bars]:not([hidden])");
    assertEquals("", page.textContent("[data-place='0']"));
    page.click("[data-undo]");
    assertTrue(page.isDisabled("[data-undo]"));
    assertEquals(2, page.locator(".bar.same").count());
  }

  @Test
  void aBlankPartIsAskedAboutOnceAndMayStayBlank() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("answer");
    keys("answer", "38");
    handIn();
    assertEquals("There is nothing in “bars” yet.", page.textContent("[data-ask-title]"));
    page.click("[data-ask-box] [data-go]");
    page.waitForSelector("[data-for=bars]:not([hidden])");
    assertEquals(0, stage.kept("handed-in").size());
    page.waitForTimeout(800);
    handIn();
    until("handed in", () -> stage.kept("handed-in").size() == 1);
    assertEquals("", lastParts("handed-in").path("label").asText());
  }

  @Test
  void lookAgainOpensThePartWithItsPromptAndTheNextTryIsANewHandIn() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    doTheShells();
    stage.telling = item -> told(1, Map.of("bars", "fits", "equation", "look-again", "answer", "there", "label",
        "fits"), Map.of("equation", "Look at your equation again: what does 14 tell you?"));
    handIn();
    page.waitForSelector("[data-for=equation]:not([hidden])");
    page.waitForSelector("[data-for=equation] .ask.look");
    assertEquals("Look at your equation again: what does 14 tell you?",
        page.textContent("[data-for=equation] [data-ask-text]"));
    assertTrue(page.locator("[data-part=equation] .tick.again").isVisible());
    assertTrue(page.locator("[data-part=label] .tick.fits").isVisible());
    assertFalse(page.isVisible("[data-hand-in]"), "the same work is not handed in twice");
    page.locator("[data-for=equation] [data-key=back]").click();
    keys("equation", "3");
    assertTrue(page.locator("[data-part=equation] .tick.has").isVisible(), "changed: no eye on it any more");
    assertEquals("Hand in again", page.textContent("[data-hand-in] [data-word]"));
    deliverySays("Your teacher can see it. Not handed in yet.");
    stage.telling = item -> told(0, Map.of("bars", "fits", "equation", "look-again", "answer", "there", "label",
        "fits"), Map.of("equation", "Look at your equation again: what does 14 tell you?"));
    page.waitForTimeout(800);
    handIn();
    until("two tries", () -> stage.kept("handed-in").size() == 2);
    page.waitForSelector(".show.locked");
    assertTrue(page.isDisabled("[data-for=equation] [data-key='5']"));
    assertTrue(page.isVisible("[data-next-problem]"), "no dead end");
  }

  @Test
  void theEyeNeverComesWithARedCrossAScoreOrTheAnswer() {
    open(Samples.shells(1, new Draft(new fewermore.marking.Work("", "", "",
        new fewermore.marking.Bars("Theo", "52", "14", "x"), null), 1000, true),
        new Told(Map.of(fewermore.marking.Part.BARS, fewermore.marking.Sign.LOOK_AGAIN),
            Map.of(fewermore.marking.Part.BARS, "Look at your bars again."))));
    openProblem(1);
    assertFalse(page.innerText("body").contains("38"));
    assertEquals("14", page.textContent("[data-place='1']"));
  }

  @Test
  void iAmDoneAsksOnceAboutAFullProblemThatWasNotHandedIn() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    doTheShells();
    page.click("[data-back]");
    page.click("[data-leave] button");
    assertEquals("Problem 1 is not handed in yet.", page.textContent("[data-ask-title]"));
    page.click("[data-ask-box] [data-anyway]");
    page.waitForURL("**/come-in");
    until("good-bye", () -> stage.kept("leave").size() == 1);
    assertTrue(stage.kept("leave").get(0).path("last").path("w1").asInt() > 0);
  }

  @Test
  void theAnswerIsAskedForByTheQuestionWhereverItStands() {
    ShownProblem first = Samples.questionFirst(Samples.beads(1));
    String question = first.sentences().get(0);
    assertTrue(question.endsWith("?"), question);
    open(first);
    openProblem(1);
    tab("answer");
    assertEquals(question, page.textContent("[data-for=answer] [data-ask-text]"));
  }

  @Test
  void aSpanishSittingFromTheFirstTapToTheLast() {
    stage.language = "es";
    open(Samples.spanishShells(1));
    assertEquals("Mis problemas", page.textContent(".mine h1"));
    openProblem(1);
    assertEquals("¿Quién tiene más? Haz más larga esa barra.",
        page.textContent("[data-for=bars] [data-ask-text]"));
    page.click("[data-longer='0']");
    put("52", "0");
    put("14", "gap");
    put("?", "1");
    tab("equation");
    keys("equation", "52−14=□");
    tab("answer");
    assertEquals("¿Cuántas conchas encontró Mara?", page.textContent("[data-for=answer] [data-ask-text]"));
    keys("answer", "38");
    tab("label");
    page.locator("[data-word='conchas']").last().click();
    assertEquals(1, page.locator("[data-for=label] [data-key='ñ']").count());
    stage.telling = item -> allFits();
    handIn();
    page.waitForSelector("[data-for=fitted]:not([hidden])");
    assertEquals("Todo encaja con el cuento.", page.textContent("[data-for=fitted] h1").trim());
    assertEquals("conchas", lastParts("handed-in").path("label").asText());
    deliverySays("Ya lo tiene tu profe.");
  }

  @Test
  void aProblemIsDoneInUnderFortyTaps() {
    open(Samples.shells(1, null, null));
    page.evaluate("window.taps = 0; addEventListener('click', event => { if (event.isTrusted) window.taps += 1; }, true)");
    openProblem(1);
    doTheShells();
    handIn();
    until("handed in", () -> stage.kept("handed-in").size() == 1);
    int taps = ((Number) page.evaluate("window.taps")).intValue();
    assertTrue(taps < 40, taps + " taps");
  }

  @Test
  void theFirstPageIsAtMost150KilobytesWithAllItsFiles() {
    stage.children = 30;
    page.navigate(stage.address("/come-in"));
    page.waitForLoadState(com.microsoft.playwright.options.LoadState.NETWORKIDLE);
    int bytes = ((Number) page.evaluate("[...performance.getEntriesByType('navigation'),"
        + "...performance.getEntriesByType('resource')].reduce((sum, each) => sum + each.decodedBodySize, 0)"))
        .intValue();
    System.out.println("first page, all files, not compressed: " + bytes + " bytes");
    assertTrue(bytes > 60_000 && bytes <= 150 * 1024, bytes + " bytes");
  }
}
