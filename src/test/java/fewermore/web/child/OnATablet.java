package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.WaitForSelectorState;
import fewermore.json.Json;
import fewermore.web.Chromium;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** A tablet in a child's hands: a real browser on the stage, and the moves of a child. */
abstract class OnATablet {
  final TabletStage stage = new TabletStage();
  final List<String> complaints = new ArrayList<>();
  BrowserContext tablet;
  Page page;

  @BeforeEach
  void takeATablet() {
    tablet = newTablet();
    page = newPage();
  }

  BrowserContext newTablet() {
    return Chromium.tablet(new Browser.NewContextOptions().setViewportSize(1024, 600).setHasTouch(true));
  }

  /** A page whose complaints fail the test, but for those about a line that was cut on purpose. */
  Page newPage() {
    Page made = tablet.newPage();
    made.onPageError(complaints::add);
    made.onConsoleMessage(message -> {
      if (message.type().equals("error") && !message.text().startsWith("Failed to load resource")) {
        complaints.add(message.text());
      }
    });
    return made;
  }

  @AfterEach
  void putItBack() {
    if (tablet != null) {
      tablet.close();
    }
    stage.close();
    assertEquals(List.of(), complaints, "the browser's console");
    assertEquals(List.of(), stage.twoContents, "one number, two contents");
  }

  void open(ShownProblem... problems) {
    stage.sitting = Samples.sitting(stage.language, problems);
    page.navigate(stage.address("/mine"));
    page.waitForSelector("[data-open='1'][href='#1']");
  }

  void openProblem(int number) {
    page.click("[data-open='" + number + "']");
    page.waitForSelector(".show");
  }

  void keys(String part, String text) {
    String before = "";
    for (String key : text.split("")) {
      page.waitForTimeout(key.equals(before) ? 160 : 0);
      page.click("[data-for=" + part + "] [data-key='" + key + "']");
      before = key;
    }
  }

  void put(String chip, String place) {
    page.click("[data-chip='" + chip + "']");
    page.click("[data-place='" + place + "']");
  }

  void tab(String part) {
    page.click("[data-part='" + part + "']");
    page.waitForSelector("[data-for='" + part + "']:not([hidden])");
  }

  void handIn() {
    page.click("[data-hand-in]");
  }

  /** All of the shells problem, as a child does it who reads "14 fewer" from the story. */
  void doTheShells() {
    page.click("[data-longer='0']");
    put("52", "0");
    put("?", "1");
    put("14", "gap");
    tab("equation");
    keys("equation", "52−14=□");
    tab("answer");
    keys("answer", "38");
    tab("label");
    page.locator("[data-word='shells']").first().click();
  }

  String delivery() {
    return page.textContent("[data-delivery-line]").trim();
  }

  void deliverySays(String sentence) {
    until(sentence, () -> delivery().startsWith(sentence));
  }

  /** Waits at most ten seconds, by the wall clock. */
  void until(String what, BooleanSupplier holds) {
    until(what, 10, holds);
  }

  void until(String what, int seconds, BooleanSupplier holds) {
    for (int tries = 0; tries < seconds * 20 && !holds.getAsBoolean(); tries++) {
      page.waitForTimeout(50);
    }
    if (!holds.getAsBoolean()) {
      throw new AssertionError("after " + seconds + " s it still does not hold: " + what + "; the page says \""
          + (page.locator("[data-delivery-line]").count() == 0 ? page.title() : delivery()) + "\"");
    }
  }

  void gone(String selector) {
    page.waitForSelector(selector, new Page.WaitForSelectorOptions().setState(WaitForSelectorState.HIDDEN));
  }

  JsonNode lastParts(String kind) {
    List<JsonNode> kept = stage.kept(kind);
    return kept.get(kept.size() - 1).path("parts");
  }

  static ObjectNode told(int triesLeft, Map<String, String> signs, Map<String, String> prompts) {
    ObjectNode told = Json.object().put("triesLeft", triesLeft);
    ObjectNode someSigns = told.putObject("signs");
    signs.forEach(someSigns::put);
    ObjectNode somePrompts = told.putObject("prompts");
    prompts.forEach(somePrompts::put);
    return told;
  }

  static ObjectNode allFits() {
    return told(2, Map.of("bars", "fits", "equation", "fits", "answer", "fits", "label", "fits"), Map.of());
  }
}
