package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.WaitForSelectorState;
import fewermore.web.Chromium;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Small tablets and large ones, keys instead of fingers, ears instead of eyes, no script, no styles. */
class ForEveryChildTest extends OnATablet {
  private static final Map<String, String> PROMPT = Map.of("equation",
      "Read the line that compares again, slowly. Does it tell about the longer bar or the shorter one?");
  private static final Map<String, String> SIGNS =
      Map.of("bars", "fits", "equation", "look-again", "answer", "there", "label", "fits");

  /** What is looked at in each state of the pages. */
  private interface Look {
    void at(String state);
  }

  private void throughAllStates(Look look) {
    stage.children = 30;
    for (String path : List.of("/come-in", "/door", "/come-in/15", "/secret", "/hello")) {
      page.navigate(stage.address(path));
      look.at(path);
    }
    stage.sitting = Samples.today();
    page.navigate(stage.address("/mine"));
    page.waitForSelector("[data-open='1'][href='#1']");
    look.at("my problems");
    openProblem(3);
    look.at("bars, both equal");
    page.click("[data-longer='1']");
    page.waitForTimeout(200);
    look.at("bars");
    page.click("[data-chip='45']");
    look.at("bars, a number picked up");
    page.click("[data-place='0']");
    page.click("[data-other]");
    keys("bars", "27");
    look.at("bars, another number");
    page.click("[data-key=ready]");
    page.click("[data-place='1']");
    put("?", "gap");
    look.at("bars, full");
    page.click("[data-next-part]");
    keys("equation", "45+18=□");
    look.at("equation");
    tab("answer");
    keys("answer", "63");
    look.at("answer");
    tab("label");
    page.locator("[data-word='striped']").first().click();
    look.at("label");
    stage.telling = item -> told(1, SIGNS, PROMPT);
    handIn();
    page.waitForSelector("[data-for=equation] .ask.look");
    look.at("equation, look again");
    keys("equation", "1");
    stage.telling = item -> allFits();
    page.waitForTimeout(800);
    handIn();
    page.waitForSelector("[data-for=fitted]:not([hidden])");
    look.at("it all fits");
    page.click("[data-next-problem]");
    page.waitForTimeout(850);
    handIn();
    look.at("asked about a blank part");
    page.click("[data-ask-box] [data-go]");
    page.locator(".show [data-still-you]").click();
    look.at("still you?");
    stage.line = TabletStage.Line.CLOSED;
    page.click("[data-not-me]");
    page.waitForSelector(".closed");
    look.at("closed");
  }

  @Test
  void axeFindsNothingInAnyState() {
    List<String> found = new ArrayList<>();
    throughAllStates(state -> new AxeBuilder(page).analyze().getViolations().forEach(violation ->
        found.add(state + ": " + violation.getId() + " " + violation.getNodes().get(0).getHtml())));
    page.navigate(stage.address("/mine/w2"));
    new AxeBuilder(page).analyze().getViolations().forEach(violation ->
        found.add("plain form: " + violation.getId() + " " + violation.getNodes().get(0).getHtml()));
    assertEquals(List.of(), found);
  }

  /** Target sizes: 56 px and 8 px between, the smallest that fits a finger of seven or eight years. */
  static final String TARGETS = """
      () => {
        const open = [...document.querySelectorAll('dialog[open]')].pop() ?? document;
        const whole = each => {
          const frame = each.closest('.story, .panel')?.getBoundingClientRect();
          const box = each.getBoundingClientRect();
          return !frame || (box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1);
        };
        const all = [...open.querySelectorAll('a, button')]
          .filter(each => each.offsetParent !== null && getComputedStyle(each).visibility === 'visible' && whole(each))
          .map(each => ({ each, box: each.getBoundingClientRect(),
            name: `${each.className} ${each.textContent.trim().slice(0, 14)}` }));
        const said = [];
        if (document.documentElement.scrollWidth > innerWidth) said.push(`sideways ${document.documentElement.scrollWidth}`);
        all.forEach(({ box, name }) => {
          if (box.width < 55.9 || box.height < 55.9) said.push(`small ${name} ${box.width} x ${box.height}`);
        });
        all.forEach((a, at) => all.slice(at + 1).forEach(b => {
          const apart = Math.max(b.box.left - a.box.right, a.box.left - b.box.right,
            b.box.top - a.box.bottom, a.box.top - b.box.bottom);
          const tabs = a.each.matches('.parts a') && b.each.matches('.parts a');
          const word = [a, b].some(({ each }) => each.matches('.word[aria-pressed=true]'));
          if (apart < 7.9 && !tabs && !word) said.push(`close ${a.name} / ${b.name} ${apart.toFixed(1)}`);
        }));
        const field = document.activeElement;
        if (field?.matches('input')) {
          const pad = field.closest('.part').querySelector('[data-keys]').getBoundingClientRect();
          if (field.getBoundingClientRect().bottom > pad.top + 1) said.push('the field is under the keys');
        }
        return said;
      }""";

  @ParameterizedTest
  @CsvSource({"320, 568", "507, 700", "768, 1024", "1024, 600", "1024, 768", "1280, 800"})
  void onEverySizeNothingScrollsSidewaysAndEveryTargetFitsAFinger(int width, int height) {
    page.setViewportSize(width, height);
    Map<String, Object> found = new LinkedHashMap<>();
    throughAllStates(state -> {
      List<?> said = (List<?>) page.evaluate(TARGETS);
      if (!said.isEmpty()) {
        found.put(state, said);
      }
    });
    assertEquals(Map.of(), found);
  }

  @Test
  void atTwiceTheSizeNothingScrollsSideways() {
    page.setViewportSize(512, 300);
    List<String> found = new ArrayList<>();
    throughAllStates(state -> {
      int over = ((Number) page.evaluate("document.documentElement.scrollWidth - innerWidth")).intValue();
      if (over > 0) {
        found.add(state + " " + over);
      }
    });
    assertEquals(List.of(), found);
  }

  @ParameterizedTest
  @CsvSource({"1024, 600", "768, 1024", "1280, 800"})
  void aTabletOfTheUsualSizeShowsEachPartWholeWithoutScrolling(int width, int height) {
    page.setViewportSize(width, height);
    List<String> found = new ArrayList<>();
    throughAllStates(state -> {
      String cut = (String) page.evaluate("""
          () => [...document.querySelectorAll('.panel, .show'), ...(document.querySelector('.show')
            ? [document.documentElement] : [])].filter(each => each.scrollHeight > each.clientHeight + 1)
            .map(each => `${each.className} ${each.scrollHeight} > ${each.clientHeight}`).join()""");
      if (!cut.isEmpty()) {
        found.add(state + ": " + cut);
      }
    });
    assertEquals(List.of(), found);
  }

  @ParameterizedTest
  @CsvSource({"1024, 600", "768, 1024", "1280, 800"})
  void spanishWithItsLongerWordsAndMoreLettersFitsToo(int width, int height) {
    page.setViewportSize(width, height);
    stage.language = "es";
    open(Samples.spanishShells(1));
    openProblem(1);
    for (String part : List.of("bars", "equation", "answer", "label")) {
      tab(part);
      assertEquals("", page.evaluate("""
          () => [...document.querySelectorAll('.panel, .parts a, .hand-in')]
            .concat(document.documentElement)
            .filter(each => each.scrollHeight > each.clientHeight + 1 || each.scrollWidth > each.clientWidth + 1)
            .map(each => `${each.className} ${each.textContent.trim()}`).join()"""), part);
    }
  }

  @ParameterizedTest
  @CsvSource({"1024, 600, 30", "768, 1024, 30", "1280, 800, 30", "512, 300, 30", "320, 568, 30"})
  void aClassOfThirtyIsThereWholeWithNoTileUnder96Pixels(int width, int height, int children) {
    page.setViewportSize(width, height);
    stage.children = children;
    page.navigate(stage.address("/come-in"));
    assertEquals(children, page.locator(".tile").count());
    @SuppressWarnings("unchecked")
    List<Number> smallest = (List<Number>) page.evaluate("[...document.querySelectorAll('.tile')]"
        + ".map(each => each.getBoundingClientRect()).reduce(([w, h], box) => [Math.min(w, box.width),"
        + " Math.min(h, box.height)], [9999, 9999])");
    assertTrue(smallest.get(1).doubleValue() >= 96, "height " + smallest);
    assertTrue(smallest.get(0).doubleValue() >= (width < 400 ? 88 : 96), "width " + smallest);
    assertEquals("", page.evaluate("[...document.querySelectorAll('.tile')].filter(each => each.scrollWidth"
        + " > each.clientWidth + 1).map(each => each.textContent.trim()).join()"), "no name is cut");
    if (width >= 1024) {
      assertEquals(true, page.evaluate("document.documentElement.scrollHeight <= innerHeight"), "no scrolling");
    }
  }

  @Test
  void twoSecretPicturesAreTappedAndSentAndAThirdTakesThePlaceOfTheFirst() {
    page.navigate(stage.address("/secret"));
    page.waitForTimeout(300);
    page.click("label:has(input[value=moon])");
    page.click("label:has(input[value=drum])");
    page.waitForURL("**/mine");
    assertEquals(List.of("drum", "moon"), stage.forms.get(0).get("secret").stream().sorted().toList());
    page.navigate(stage.address("/secret"));
    page.waitForTimeout(300);
    page.evaluate("for (const id of ['kite', 'sun', 'key']) document.querySelector(`input[value=${id}]`).click()");
    page.waitForURL("**/mine");
    assertEquals(List.of("key", "sun"), stage.forms.get(1).get("secret").stream().sorted().toList());
  }

  @Test
  void aTabletThatTriesTheAddressTellsWhatItCanDo() {
    withVoices("[{name: 'Samantha', lang: 'en-US', localService: true}, {name: 'Red', lang: 'es-MX', localService: false}]",
        true);
    page.navigate(stage.address("/hello"));
    until("told", () -> !stage.forms.isEmpty());
    Map<String, List<String>> told = stage.forms.get(0);
    assertEquals(List.of("yes"), told.get("storage"));
    assertEquals(List.of("yes"), told.get("english"));
    assertEquals(List.of("no"), told.get("spanish"), "a voice of the network is none");
    assertEquals(List.of("a-token"), told.get("csrf"));
  }

  @Test
  void whatTheTeacherCallsIsShownOnceAndPutAway() {
    page.clock().install();
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.call = "Please come to your teacher.";
    page.clock().runFor(20_000);
    page.waitForSelector("[data-call][open]");
    assertEquals("Please come to your teacher.", page.textContent("[data-call-text]"));
    assertEquals(List.of(), new AxeBuilder(page).analyze().getViolations().stream().map(each -> each.getId()).toList());
    page.keyboard().press("Enter");
    assertFalse(page.isVisible("[data-call]"));
    page.clock().runFor(40_000);
    page.waitForTimeout(200);
    assertFalse(page.isVisible("[data-call]"), "the same call is not shown twice");
    stage.call = "Please look at the board.";
    page.clock().runFor(20_000);
    page.waitForSelector("[data-call][open]");
  }

  // ---- by keyboard alone ----

  private void tabTo(String selector) {
    for (int presses = 0; presses < 80; presses++) {
      if (Boolean.TRUE.equals(page.evaluate("selector => document.activeElement.matches(selector)", selector))) {
        assertTrue((Boolean) page.evaluate("() => { const style = getComputedStyle(document.activeElement);"
            + " return document.activeElement.matches('input') || (style.outlineStyle !== 'none'"
            + " && parseFloat(style.outlineWidth) >= 3); }"), "the focus can be seen on " + selector);
        return;
      }
      page.keyboard().press("Tab");
    }
    throw new AssertionError("80 presses of Tab do not reach " + selector);
  }

  private void press(String selector) {
    tabTo(selector);
    page.keyboard().press("Enter");
    page.waitForTimeout(30);
  }

  @Test
  void aProblemIsDoneByKeyboardAlone() {
    page.navigate(stage.address("/come-in"));
    press(".tile[href='/come-in/15']");
    page.waitForURL("**/come-in/15");
    stage.sitting = Samples.sitting("en", Samples.shells(1, null, null));
    press(".button.first");
    page.waitForSelector("[data-open='1'][href='#1']");
    press("[data-open='1']");
    page.waitForSelector(".show");
    press("[data-longer='0']");
    press("[data-chip='52']");
    page.keyboard().press("Shift+Tab");
    tabTo("[data-place='gap']");
    page.keyboard().press("Shift+Tab");
    putByKeys("0");
    press("[data-chip='?']");
    putByKeys("1");
    press("[data-chip='14']");
    putByKeys("gap");
    press("[data-next-part]");
    page.waitForSelector("[data-for=equation]:not([hidden])");
    tabTo("[data-for=equation] [data-field]");
    page.keyboard().type("52-14=?");
    page.keyboard().press("Enter");
    page.waitForSelector("[data-for=answer]:not([hidden])");
    tabTo("[data-for=answer] [data-field]");
    page.keyboard().type("38");
    page.keyboard().press("Enter");
    page.waitForSelector("[data-for=label]:not([hidden])");
    tabTo("[data-for=label] [data-field]");
    page.keyboard().type("shells");
    press("[data-hand-in]");
    until("handed in", () -> stage.kept("handed-in").size() == 1);
    JsonNode parts = lastParts("handed-in");
    assertEquals("52 − 14 = □", parts.path("equation").asText());
    assertEquals("{\"longer\":\"Theo\",\"longerBar\":\"52\",\"shorterBar\":\"x\",\"gap\":\"14\"}",
        parts.path("bars").toString());
    assertEquals("shells", parts.path("label").asText());
  }

  private void putByKeys(String place) {
    for (int presses = 0; presses < 80; presses++) {
      if (Boolean.TRUE.equals(page.evaluate("place => document.activeElement.dataset.place === place", place))) {
        page.keyboard().press("Enter");
        return;
      }
      page.keyboard().press("Shift+Tab");
    }
    throw new AssertionError("no way back to " + place);
  }

  // ---- without script, without styles ----

  @ParameterizedTest
  @CsvSource({"false", "true"})
  void withoutScriptAChildComesInAnswersAndHandsInByKeysAlone(boolean alsoWithoutStyles) {
    tablet.close();
    tablet = Chromium.tablet(new Browser.NewContextOptions().setJavaScriptEnabled(false).setViewportSize(768, 1024));
    page = tablet.newPage();
    if (alsoWithoutStyles) {
      page.route("**/*.css", route -> route.abort());
    }
    stage.sitting = Samples.sitting("en", Samples.shells(1, null, null), Samples.beads(2));
    page.navigate(stage.address("/door"));
    for (String picture : List.of("kite", "sun", "bell")) {
      page.click("button[value=" + picture + "]");
      page.waitForSelector("input[name=taps][value*=" + picture + "]",
          new Page.WaitForSelectorOptions().setState(WaitForSelectorState.ATTACHED));
    }
    page.click("button[value=lantern]");
    page.waitForURL("**/come-in");
    page.click(".tile[href='/come-in/15']");
    page.waitForURL("**/come-in/15");
    page.click("button[type=submit]");
    page.waitForURL("**/mine");
    page.click(".problem[href^='/mine/w1']");
    page.check("input[value=Theo]");
    page.fill("input[name=longerBar]", "52");
    page.fill("input[name=shorterBar]", "?");
    page.fill("input[name=gap]", "14");
    page.fill("input[name=equation]", "52 - 14 = ?");
    page.fill("input[name=answer]", "38");
    page.fill("input[name=label]", "shells");
    page.keyboard().press("Enter");
    until("handed in", () -> stage.forms.size() == 1);
    Map<String, List<String>> form = stage.forms.get(0);
    assertEquals(List.of("Theo"), form.get("longer"));
    assertEquals(List.of("52"), form.get("longerBar"));
    assertEquals(List.of("?"), form.get("shorterBar"));
    assertEquals(List.of("14"), form.get("gap"));
    assertEquals(List.of("52 - 14 = ?"), form.get("equation"));
    assertEquals(List.of("38"), form.get("answer"));
    assertEquals(List.of("shells"), form.get("label"));
    assertEquals(List.of("a-token"), form.get("csrf"));
    assertFalse(form.containsKey("estimate"), "a part that is not asked sends no field");
  }

  @Test
  void theFourPicturesAreTappedInOrderAndSentOnce() {
    page.navigate(stage.address("/door"));
    page.waitForFunction("document.querySelector('form[data-door]') !== null");
    page.waitForTimeout(300);
    for (String picture : List.of("kite", "sun", "kite", "lantern")) {
      page.click("button[value=" + picture + "]");
    }
    page.waitForSelector(".problem-line");
    page.waitForTimeout(300);
    page.click("button[value=sun]");
    assertEquals(3, page.locator(".door-taps .empty").count());
    page.click("[data-again]");
    assertEquals(4, page.locator(".door-taps .empty").count());
    for (String picture : List.of("kite", "sun", "bell", "lantern")) {
      page.click("button[value=" + picture + "]");
    }
    page.waitForURL("**/come-in");
  }

  // ---- read aloud ----

  /** Stands in for the tablet's speech: headless Chromium has no voice at all. */
  private static final String SPEECH = """
      window.spoken = [];
      const voices = VOICES;
      window.SpeechSynthesisUtterance = function (text) { this.text = text; };
      Object.defineProperty(window, 'speechSynthesis', { value: {
        getVoices: () => voices, speaking: false, pending: false, cancel() { window.cancelled = true; },
        addEventListener() {},
        speak(utterance) {
          window.spoken.push([utterance.text, utterance.voice.name, utterance.lang]);
          if (!STARTS) return;
          const at = window.spoken.length;
          setTimeout(() => utterance.onstart?.(), 400 * at);
          setTimeout(() => utterance.onend?.(), 400 * at + 350);
        } } });
      """;

  private void withVoices(String voices, boolean starts) {
    tablet.addInitScript(SPEECH.replace("VOICES", voices).replace("STARTS", String.valueOf(starts)));
  }

  @Test
  void eachSentenceIsMarkedWhileAVoiceOfTheTabletReadsIt() {
    withVoices("[{name: 'Net', lang: 'en-US', localService: false}, {name: 'Samantha', lang: 'en_US', localService: true}]",
        true);
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.evaluate("window.marked = []; new MutationObserver(changes => changes.forEach(({ target }) => {"
        + "if (target.matches('.sentence.read')) window.marked.push(target.dataset.sentence); }))"
        + ".observe(document.querySelector('[data-story]'), { subtree: true, attributeFilter: ['class'] })");
    page.click("[data-read]");
    until("it rests", () -> page.textContent("[data-read-word]").equals("Read to me"));
    assertEquals(List.of("0", "1", "2"), page.evaluate("window.marked"));
    assertEquals(0, page.locator(".sentence.read").count());
    @SuppressWarnings("unchecked")
    List<List<String>> spoken = (List<List<String>>) page.evaluate("window.spoken");
    assertEquals(List.of("Theo found 52 shells.", "Samantha", "en-US"), spoken.get(0));
    assertEquals("Who has more? Make that bar longer.", spoken.get(3).get(0));
    assertTrue(spoken.stream().noneMatch(each -> each.get(1).equals("Net")), "never a voice of the network");
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "es | [{name: 'Samantha', lang: 'en-US', localService: true}]",
    "en | [{name: 'Net', lang: 'en-US', localService: false}]",
    "en | [{name: 'eSpeak English', lang: 'en-US', localService: true}]",
    "en | []"})
  void withoutAFittingVoiceThereIsNoSpeaker(String language, String voices) {
    withVoices(voices, true);
    stage.language = language;
    open("es".equals(language) ? Samples.spanishShells(1) : Samples.shells(1, null, null));
    openProblem(1);
    page.waitForTimeout(1200);
    assertFalse(page.isVisible("[data-read]"));
  }

  @Test
  void aVoiceThatNeverStartsIsGivenUpAfterThreeSeconds() {
    withVoices("[{name: 'Samantha', lang: 'en-US', localService: true}]", false);
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.click("[data-read]");
    page.waitForTimeout(2500);
    assertEquals("Stop", page.textContent("[data-read-word]"));
    until("it says so", () -> page.textContent("[data-read-word]").equals("I can’t talk right now."));
    assertEquals(true, page.evaluate("window.cancelled"));
  }

  // ---- who is here ----

  @Test
  void afterTenMinutesWithoutATouchThePageCoversItselfAndTheWorkIsStillThere() {
    page.clock().install();
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("answer");
    keys("answer", "38");
    page.clock().fastForward("09:30");
    assertFalse(page.isVisible("[data-cover]"));
    page.clock().fastForward("00:40");
    assertTrue(page.isVisible("[data-cover]"));
    page.keyboard().press("Escape");
    assertTrue(page.isVisible("[data-cover]"), "Escape is no answer");
    assertEquals("Noor", page.textContent(".cover-name"));
    page.click("[data-still-me]");
    assertEquals("38", page.inputValue("[data-for=answer] [data-field]"));
  }

  @Test
  void theWholeSittingWorksWithoutTheNetworkOnceItIsThere() {
    open(Samples.shells(1, null, null), Samples.beads(2));
    page.waitForLoadState(com.microsoft.playwright.options.LoadState.NETWORKIDLE);
    tablet.setOffline(true);
    List<String> asked = new ArrayList<>();
    page.onRequest(request -> asked.add(request.url().replaceAll(".*:\\d+", "")));
    openProblem(2);
    page.click("[data-back]");
    openProblem(1);
    doTheShells();
    assertEquals("Theo found 52 shells.", page.innerText("[data-sentence='0']").replaceAll("\\s+", " ").trim());
    asked.removeIf(each -> List.of("/work", "/pulse", "/voice", "/hand", "/static/img/mark.svg").contains(each));
    assertEquals(List.of(), asked, "nothing but the work is asked for (and by the browser itself the icon of the tab)");
  }
}
