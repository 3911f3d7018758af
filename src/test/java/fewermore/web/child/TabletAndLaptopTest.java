package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.web.Chromium;
import fewermore.web.Rig;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A real browser and the real laptop: what a child hands in is there, whatever the tablet forgets. */
class TabletAndLaptopTest {

  @Test
  void aChildComesInByTheDoorAnswersWronglyThenRightlyAndFindsTheWorkAgainOnAnEmptyTablet() {
    List<String> complaints = new ArrayList<>();
    try (Rig rig = Rig.startForTablets(); BrowserContext tablet = Chromium.tablet(1024, 600)) {
      Page page = tablet.newPage();
      page.onPageError(complaints::add);
      page.onConsoleMessage(message -> {
        if (message.type().equals("error")) {
          complaints.add(message.text());
        }
      });
      String origin = "http://tablet.test:" + rig.app.port();
      page.navigate(origin + "/in/" + rig.door());
      page.click(".tile >> text=Noor");
      page.click("form[data-once] button");
      page.waitForSelector("[data-open='1'][href='#1']");
      page.click("[data-open='1'][href='#1']");
      page.click("[data-longer='0']");
      for (String[] move : new String[][] {{"52", "0"}, {"?", "1"}, {"14", "gap"}}) {
        page.click("[data-chip='" + move[0] + "']");
        page.click("[data-place='" + move[1] + "']");
      }
      page.click("[data-next-part]");
      for (String key : "52+14=□".split("")) {
        page.click("[data-for=equation] [data-key='" + key + "']");
      }
      page.click("[data-next-part]");
      page.click("[data-for=answer] [data-key='3']");
      page.click("[data-for=answer] [data-key='8']");
      page.click("[data-next-part]");
      page.locator("[data-word='shells']").first().click();
      page.click("[data-hand-in]");
      page.waitForSelector("[data-part=equation] .tick.again");
      String prompt = page.textContent("[data-for=equation] .ask.look").trim();
      assertFalse(prompt.isEmpty() || prompt.contains("38") || prompt.contains("−"), prompt);
      for (int times = 0; times < 5; times++) {
        page.click("[data-for=equation] [data-key=back]");
      }
      for (String key : "−14=□".split("")) {
        page.click("[data-for=equation] [data-key='" + key + "']");
      }
      assertEquals("52 − 14 = □", page.inputValue("[data-for=equation] [data-field]"));
      page.waitForTimeout(850);
      page.click("[data-hand-in]");
      page.waitForSelector("[data-for=fitted]:not([hidden])");
      page.waitForSelector(".delivery.theirs >> text=Your teacher has it.");

      page.evaluate("localStorage.clear()");
      page.navigate(origin + "/mine");
      page.waitForSelector("[data-open='1'][href='#1']");
      page.click("[data-open='1'][href='#1']");
      page.click("[data-part=equation]");
      assertEquals("52 − 14 = □", page.inputValue("[data-for=equation] [data-field]"));
      page.click("[data-part=bars]");
      assertEquals("14", page.textContent("[data-place=gap]"));
      page.waitForSelector(".delivery.theirs >> text=Your teacher has it.");

      page.click("[data-back]");
      page.click("[data-leave] button");
      page.waitForURL("**/come-in");
      page.navigate(origin + "/mine");
      page.waitForURL("**/come-in");
      assertFalse(page.content().contains("Tomas has 52"));
    }
    assertEquals(List.of(), complaints);
  }
}
