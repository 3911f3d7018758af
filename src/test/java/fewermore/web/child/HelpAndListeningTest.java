package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pointing at the story, the hand, touch and listen, the teacher's voice, the tablet's own keyboard. */
class HelpAndListeningTest extends OnATablet {
  /** A voice of the tablet that says at once what it is given, and remembers it. */
  private static final String VOICES = """
      window.spoken = [];
      const voices = [{ name: 'Samantha', lang: 'en-US', localService: true },
        { name: 'Paulina', lang: 'es-MX', localService: true }];
      window.SpeechSynthesisUtterance = function (text) { this.text = text; };
      Object.defineProperty(window, 'speechSynthesis', { value: { getVoices: () => voices, speaking: false,
        pending: false, cancel() {}, addEventListener() {},
        speak(utterance) { window.spoken.push(utterance.text); setTimeout(() => { utterance.onstart?.();
          utterance.onend?.(); }, 20); } } });
      """;

  private void openWithVoice(ShownProblem problem) {
    tablet.addInitScript(VOICES);
    open(problem);
    openProblem(1);
    page.waitForSelector("[data-listen]:not([hidden])");
  }

  private String heard(String selector) {
    page.evaluate("window.spoken.length = 0");
    page.click(selector);
    return String.join(" ", ((List<?>) page.evaluate("window.spoken")).stream().map(String::valueOf).toList());
  }

  // ---- pointing at the story ----

  @Test
  void aChildPointsAtTheQuestionAndAtWhatIsKnownAndTheLaptopHoldsIt() {
    open(Samples.asking(Samples.WITH_READING, Samples.stripedShells(1)));
    openProblem(1);
    assertEquals("Tap the question.", page.textContent("[data-for=reading] [data-ask-text]"));
    page.click("[data-pick='How many plain shells are there?']");
    assertEquals("Tap the numbers you know.", page.textContent("[data-for=reading] [data-ask-text]"));
    page.click("[data-number-word='45']");
    page.click("[data-number-word='6']");
    page.click("[data-number-word='6']");
    page.click("[data-number-word='18']");
    page.click("[data-next-part]");
    page.waitForSelector("[data-for=bars]:not([hidden])");
    page.click("[data-longer='0']");
    handIn();
    page.click("[data-ask-box] [data-anyway]");
    until("handed in", () -> stage.kept("handed-in").size() == 1);
    assertEquals("{\"question\":\"How many plain shells are there?\",\"known\":[\"45\",\"18\"]}",
        lastParts("handed-in").path("reading").toString());
  }

  @Test
  void anySentenceCanBeTakenForTheQuestionAndItIsChangedByACard() {
    open(Samples.asking(Samples.WITH_READING, Samples.shells(1, null, null)));
    openProblem(1);
    page.click("[data-pick='Theo found 52 shells.']");
    assertEquals("Theo found 52 shells.", page.textContent("[data-found=question]"));
    page.click("[data-find=question]");
    page.click("[data-pick='How many shells did Mara find?']");
    assertEquals("How many shells did Mara find?", page.textContent("[data-found=question]"));
    page.click("[data-undo]");
    assertEquals("Theo found 52 shells.", page.textContent("[data-found=question]"));
  }

  @Test
  void withoutAnyPointingWorkIsHandedInAllTheSameAndNothingAsksForIt() {
    open(Samples.asking(Samples.WITH_READING, Samples.shells(1, null, null)));
    openProblem(1);
    tab("bars");
    doTheShells();
    stage.telling = item -> allFits();
    handIn();
    page.waitForSelector("[data-for=fitted]:not([hidden])");
    assertEquals("{\"question\":\"\",\"known\":[]}", lastParts("handed-in").path("reading").toString());
    assertEquals(0, page.locator("[data-open='1'] [data-pm=reading]").count(), "it is no part of how far the work is");
  }

  @Test
  void whatWasPointedAtIsThereAgainWhenThePageIsLoadedAgain() {
    stage.line = TabletStage.Line.CLOSED;
    open(Samples.asking(Samples.WITH_READING, Samples.shells(1, null, null)));
    openProblem(1);
    page.click("[data-pick='How many shells did Mara find?']");
    page.click("[data-number-word='52']");
    page.reload();
    page.waitForSelector(".show");
    tab("reading");
    assertEquals("How many shells did Mara find?", page.textContent("[data-found=question]"));
    assertEquals("52", page.textContent("[data-found=known]"));
  }

  // ---- the hand ----

  @Test
  void aHandGoesUpOnceGoesDownAgainAndDownByItselfWhenTheTeacherHasBeen() {
    page.clock().install();
    open(Samples.shells(1, null, null), Samples.beads(2));
    openProblem(1);
    page.click("[data-hand]");
    assertEquals("Your hand is up", page.textContent("[data-hand-word]"));
    assertEquals("true", page.getAttribute("[data-hand]", "aria-pressed"));
    page.clock().runFor(200);
    until("asked", () -> stage.kept("help").size() == 1);
    page.click("[data-back]");
    openProblem(2);
    assertEquals("Ask my teacher", page.textContent("[data-hand-word]"), "each problem has its own");
    page.click("[data-back]");
    openProblem(1);
    page.clock().runFor(1000);
    page.click("[data-hand]");
    assertEquals("Ask my teacher", page.textContent("[data-hand-word]"));
    until("the laptop knows", () -> stage.handsUp.isEmpty());
    page.clock().runFor(1000);
    page.click("[data-hand]");
    page.clock().runFor(300);
    until("asked again", () -> stage.kept("help").size() == 2);
    page.clock().runFor(20_000);
    assertEquals("Your hand is up", page.textContent("[data-hand-word]"));
    stage.handsUp.clear();
    page.clock().runFor(20_000);
    until("it goes down", () -> page.textContent("[data-hand-word]").equals("Ask my teacher"));
  }

  @Test
  void aHandRaisedWithoutTheWiFiStaysUpAndArrivesLater() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tablet.setOffline(true);
    page.click("[data-hand]");
    page.waitForTimeout(500);
    assertEquals("Your hand is up", page.textContent("[data-hand-word]"));
    tablet.setOffline(false);
    until("asked", () -> stage.kept("help").size() == 1);
    assertEquals("Your hand is up", page.textContent("[data-hand-word]"));
  }

  @Test
  void aHandPutDownWithoutTheWiFiStaysDownThroughAReloadAndIsDownOnTheLaptopLater() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.click("[data-hand]");
    until("asked", () -> stage.handsUp.contains("w1"));
    page.waitForTimeout(850);
    stage.line = TabletStage.Line.CLOSED;
    page.click("[data-hand]");
    assertEquals("Ask my teacher", page.textContent("[data-hand-word]"));
    page.waitForTimeout(300);
    assertTrue(stage.handsUp.contains("w1"), "the laptop has not heard of it");
    stage.sitting = Samples.sitting("en", Samples.handUp(Samples.shells(1, null, null)));
    page.reload();
    page.waitForSelector(".show");
    assertEquals("Ask my teacher", page.textContent("[data-hand-word]"), "what waits here is newer than what it says");
    stage.line = TabletStage.Line.OPEN;
    until("the laptop knows", 40, () -> stage.handsUp.isEmpty());
    assertEquals(1, stage.kept("hand-down").size());
    assertEquals(List.of(), page.evaluate("Object.keys(localStorage).filter(key => key.startsWith('fw.h.'))"));
  }

  @Test
  void twoTouchesOfAStickyFingerAreOneHand() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.evaluate("() => { const hand = document.querySelector('[data-hand]'); hand.click(); hand.click(); }");
    assertEquals("Your hand is up", page.textContent("[data-hand-word]"));
  }

  // ---- touch and listen ----

  @Test
  void whileTheEarIsPressedATouchSaysTheNameAndDoesNothing() {
    openWithVoice(Samples.shells(1, null, null));
    tab("equation");
    page.click("[data-listen]");
    assertEquals("minus", heard("[data-for=equation] [data-key='−']"));
    assertEquals("what we don’t know", heard("[data-for=equation] [data-key='□']"));
    assertEquals("take back", heard("[data-for=equation] [data-key=back]"));
    assertEquals("5", heard("[data-for=equation] [data-key='5']"));
    assertTrue(heard("[data-part=label]").startsWith("label"));
    assertEquals("Ask my teacher", heard("[data-hand]"));
    assertEquals("Hand in", heard("[data-hand-in]"));
    assertEquals("Theo found 52 shells.", heard("[data-sentence='0']"));
    assertEquals("", page.inputValue("[data-for=equation] [data-field]"));
    assertTrue(page.isVisible("[data-for=equation]"), "no part was opened");
    assertEquals(0, stage.kept("handed-in").size());
    page.click("[data-listen]");
    page.click("[data-for=equation] [data-key='5']");
    assertEquals("5", page.inputValue("[data-for=equation] [data-field]"));
  }

  /** Every key and control of every part has something to say. */
  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void everyKeyAndControlHasANameToHear(String language) {
    stage.language = language;
    tablet.addInitScript(VOICES);
    open(Samples.asking(Samples.EVERY_PART, "es".equals(language) ? Samples.spanishShells(1)
        : Samples.shells(1, null, null)));
    openProblem(1);
    page.waitForSelector("[data-listen]:not([hidden])");
    for (String part : List.of("reading", "bars", "equation", "answer", "label", "estimate")) {
      tab(part);
      page.click("[data-listen]");
      List<?> silent = (List<?>) page.evaluate("""
          () => [...document.querySelectorAll('.show button, .show a, .show input')]
            .filter(each => each.offsetParent !== null && !each.disabled && !each.matches('[data-listen]'))
            .filter(each => { window.spoken.length = 0; each.click(); return !window.spoken.join('').trim(); })
            .map(each => each.outerHTML.slice(0, 80))""");
      assertEquals(List.of(), silent, part);
      page.click("[data-listen]");
    }
  }

  @Test
  void readToMeAlsoSpeaksWhatTheOpenPartAsksAndItsPrompt() {
    openWithVoice(Samples.shells(1, null, null));
    doTheShells();
    stage.telling = item -> told(1, Map.of("bars", "look-again", "equation", "there", "answer", "there", "label",
        "fits"), Map.of("bars", "Look at your bars again: who has more?"));
    handIn();
    page.waitForSelector("[data-for=bars] .ask.look");
    page.evaluate("window.spoken.length = 0");
    page.click("[data-read]");
    assertEquals(List.of("Theo found 52 shells.", "Mara found 14 fewer shells than Theo.",
        "How many shells did Mara find?", "Look at your bars again: who has more?"), page.evaluate("window.spoken"));
  }

  // ---- the teacher's voice, and none ----

  private static byte[] twoSeconds() {
    java.nio.ByteBuffer wav = java.nio.ByteBuffer.allocate(44 + 64_000).order(java.nio.ByteOrder.LITTLE_ENDIAN);
    wav.put("RIFF".getBytes()).putInt(36 + 64_000).put("WAVEfmt ".getBytes()).putInt(16).putShort((short) 1)
        .putShort((short) 1).putInt(16_000).putInt(32_000).putShort((short) 2).putShort((short) 16)
        .put("data".getBytes()).putInt(64_000);
    return wav.array();
  }

  @Test
  void withoutAVoiceTheTeachersRecordingReadsItEvenWithoutTheWiFi() {
    stage.recordings.put("w1", twoSeconds());
    open(Samples.recorded(Samples.shells(1, null, null)));
    openProblem(1);
    page.waitForSelector("[data-read]:not([hidden])");
    assertFalse(page.isVisible("[data-listen]"), "keys can't be heard without a voice");
    tablet.setOffline(true);
    page.click("[data-read]");
    page.waitForTimeout(300);
    assertEquals("Stop", page.textContent("[data-read-word]"));
    until("it has been read", () -> page.textContent("[data-read-word]").equals("Read to me"));
    page.click("[data-read]");
    page.waitForTimeout(200);
    page.click("[data-read]");
    assertEquals("Read to me", page.textContent("[data-read-word]"), "it can be stopped");
  }

  @Test
  void theLaptopIsToldWhereNothingReadsAloud() {
    open(Samples.shells(1, null, null));
    until("told", () -> stage.voices.equals(List.of("none")));
    assertEquals(0, page.locator("[data-read]:not([hidden])").count());
  }

  @Test
  void theLaptopIsToldThatATabletHasAVoice() {
    tablet.addInitScript(VOICES);
    open(Samples.shells(1, null, null));
    until("told", () -> stage.voices.equals(List.of("local")));
  }

  // ---- the tablet's own keyboard ----

  @Test
  void inTheMenuTheTabletsOwnKeyboardTakesThePlaceOfTheKeys() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tab("label");
    assertEquals("none", page.getAttribute("[data-for=label] [data-field]", "inputmode"));
    page.click("[data-menu]");
    page.click("[data-own-keys]");
    page.click("[data-menu-close]");
    assertFalse(page.isVisible("[data-for=label] [data-keys]"));
    assertEquals("text", page.getAttribute("[data-for=label] [data-field]", "inputmode"));
    page.click("[data-for=label] [data-field]");
    page.keyboard().type("shells");
    page.click("[data-menu]");
    page.click("[data-own-keys]");
    page.keyboard().press("Escape");
    assertTrue(page.isVisible("[data-for=label] [data-keys]"));
    assertEquals("shells", page.inputValue("[data-for=label] [data-field]"));
  }

  // ---- about how many, telling later, tries ----

  @Test
  void aboutHowManyIsWrittenWithTheKeysAndHandedIn() {
    open(Samples.asking(Samples.EVERY_PART, Samples.shells(1, null, null)));
    openProblem(1);
    tab("estimate");
    assertEquals("About how many? Make it end in 0.", page.textContent("[data-for=estimate] [data-ask-text]"));
    keys("estimate", "40");
    handIn();
    page.click("[data-ask-box] [data-anyway]");
    until("handed in", () -> stage.kept("handed-in").size() == 1);
    assertEquals("40", lastParts("handed-in").path("estimate").asText());
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void insteadOfANumberASideCanBeChosenAndEachTakesThePlaceOfTheOther(String language) {
    stage.language = language;
    stage.line = TabletStage.Line.CLOSED;
    open(Samples.asking(Samples.EVERY_PART, "es".equals(language) ? Samples.spanishShells(1)
        : Samples.shells(1, null, null)));
    openProblem(1);
    tab("estimate");
    String said = page.textContent("[data-side=smaller]");
    assertEquals("es".equals(language) ? "menor que 52" : "smaller than 52", said);
    keys("estimate", "40");
    page.click("[data-side=smaller]");
    assertEquals("", page.inputValue("[data-for=estimate] [data-field]"));
    assertEquals("true", page.getAttribute("[data-side=smaller]", "aria-pressed"));
    page.click("[data-undo]");
    assertEquals("40", page.inputValue("[data-for=estimate] [data-field]"));
    assertEquals("false", page.getAttribute("[data-side=smaller]", "aria-pressed"));
    page.click("[data-side=bigger]");
    page.click("[data-side=smaller]");
    page.reload();
    page.waitForSelector("[data-for=estimate]:not([hidden])");
    assertEquals("true", page.getAttribute("[data-side=smaller]", "aria-pressed"), "it is there again");
    stage.line = TabletStage.Line.OPEN;
    handIn();
    page.click("[data-ask-box] [data-anyway]");
    until("handed in", () -> stage.kept("handed-in").size() == 1);
    assertEquals("smaller than 52", lastParts("handed-in").path("estimate").asText(), "the same in both languages");
    keys("estimate", "3");
    until("the side is no longer chosen", () -> "false".equals(page.getAttribute("[data-side=smaller]", "aria-pressed")));
  }

  @Test
  void whereTheTeacherTellsLaterNothingIsSaidAndTheWorkMayBeChangedWhileTriesAreLeft() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    doTheShells();
    Map<String, String> there = Map.of("bars", "there", "equation", "there", "answer", "there", "label", "there");
    stage.telling = item -> told(1, there, Map.of());
    handIn();
    until("told", () -> stage.kept("handed-in").size() == 1);
    page.waitForTimeout(850);
    assertEquals(0, page.locator(".parts .tick.again:visible, .parts .tick.fits:visible").count());
    tab("answer");
    keys("answer", "9");
    stage.telling = item -> told(0, there, Map.of());
    handIn();
    page.waitForSelector(".show.locked");
    assertEquals(0, page.locator(".ask.look").count());
    assertTrue(page.isVisible("[data-next-problem]"), "no dead end");
  }

  @Test
  void onTheLastTryThePromptGivesWayToWhatHappensNext() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    doTheShells();
    stage.telling = item -> told(0, Map.of("bars", "fits", "equation", "look-again", "answer", "there", "label",
        "fits"), Map.of("equation", "Look at your equation again."));
    handIn();
    page.waitForSelector(".show.locked");
    assertEquals("That was the last try. Your teacher will look at it with you.",
        page.textContent("[data-for=equation] [data-ask-text]"));
  }

  // ---- for every child ----

  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void axeFindsNothingInTheNewStates(String language) {
    stage.language = language;
    tablet.addInitScript(VOICES);
    List<String> found = new ArrayList<>();
    open(Samples.asking(Samples.EVERY_PART, "es".equals(language) ? Samples.spanishShells(1)
        : Samples.shells(1, null, null)));
    openProblem(1);
    page.waitForSelector("[data-listen]:not([hidden])");
    look(found, "reading");
    page.locator("[data-pick]").last().click();
    page.click("[data-number-word='52']");
    look(found, "reading, numbers");
    page.click("[data-hand]");
    page.click("[data-listen]");
    page.click("[data-part=label]");
    look(found, "hand up, listening");
    page.click("[data-listen]");
    page.click("[data-menu]");
    look(found, "menu");
    page.click("[data-own-keys]");
    page.click("[data-menu-close]");
    for (String part : List.of("bars", "equation", "answer", "label", "estimate")) {
      tab(part);
      look(found, part + ", own keyboard");
    }
    assertEquals(List.of(), found);
  }

  private void look(List<String> found, String state) {
    page.waitForTimeout(200);
    new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().forEach(violation ->
        found.add(state + ": " + violation.getId() + " " + violation.getNodes().get(0).getHtml()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"320x568", "507x700", "768x1024", "1024x600", "1280x800"})
  void sixPartsFitAFingerOnEverySize(String size) {
    page.setViewportSize(Integer.parseInt(size.split("x")[0]), Integer.parseInt(size.split("x")[1]));
    tablet.addInitScript(VOICES);
    open(Samples.asking(Samples.EVERY_PART, Samples.stripedShells(1)));
    openProblem(1);
    page.waitForSelector("[data-listen]:not([hidden])");
    List<String> found = new ArrayList<>();
    for (String part : List.of("reading", "bars", "equation", "answer", "label", "estimate")) {
      tab(part);
      ((List<?>) page.evaluate(ForEveryChildTest.TARGETS)).forEach(said -> found.add(part + ": " + said));
      if (part.equals("reading")) {
        page.locator("[data-pick]").last().click();
        ((List<?>) page.evaluate(ForEveryChildTest.TARGETS)).forEach(said -> found.add("numbers: " + said));
      }
    }
    assertEquals(List.of(), found);
  }
}
