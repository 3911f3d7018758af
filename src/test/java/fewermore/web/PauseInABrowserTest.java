package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A pause on a tablet: covered with one sentence, work kept, and on again. */
class PauseInABrowserTest {
  @Test
  void aPausedTabletIsCoveredAndGoesOnWithItsWork() {
    try (Rig rig = Rig.startForTablets(); BrowserContext tablet = Chromium.tablet(1024, 600)) {
      Page page = tablet.newPage();
      String at = "http://tablet.test:" + rig.app.port();
      page.navigate(at + "/in/" + rig.door());
      page.navigate(at + "/come-in/" + rig.children.get(0).id());
      page.click("form[action='/come-in/" + rig.children.get(0).id() + "'] button");
      page.waitForURL("**/mine");
      page.waitForSelector("[data-open='1'][href='#1']");
      page.click("[data-open='1'][href='#1']");
      page.waitForSelector(".show");
      page.click("[data-part=equation]");
      page.click("[data-for=equation] [data-key='5']");
      rig.services.pauses.pause(rig.classroom.id(), rig.now());
      page.click("[data-for=equation] [data-key='2']");
      page.waitForSelector("dialog[data-pause][open]", new Page.WaitForSelectorOptions().setTimeout(30_000));
      assertEquals("Look at your teacher. Your work stays as it is.", page.textContent("[data-pause-say]"));
      page.keyboard().press("Escape");
      assertTrue(page.isVisible("dialog[data-pause]"), "Escape leaves it where it is");
      String folder = System.getProperty("fewermore.pictures");
      if (folder != null) {
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(folder, "pause.png")));
      }
      assertEquals(List.of(), new AxeBuilder(page).setLegacyMode(true).include("dialog[data-pause]").analyze()
          .getViolations().stream().map(rule -> rule.getId()).toList());
      rig.services.pauses.goOn(rig.classroom.id(), rig.now());
      page.waitForSelector("dialog[data-pause]:not([open])", new Page.WaitForSelectorOptions().setTimeout(30_000)
          .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED));
      assertEquals("52", page.inputValue("[data-for=equation] [data-field]"));
      rig.services.pauses.pause(rig.classroom.id(), rig.now());
      rig.services.calls.call(rig.services.sittings.open(rig.classroom.id()).get(0).id(), "call.come", rig.now());
      page.navigate(at + "/mine");
      page.waitForSelector("dialog[data-pause][open]");
      assertFalse(page.isVisible("dialog[data-cover]"));
      page.waitForTimeout(1_000);
      assertFalse(page.isVisible("dialog[data-call]"), "a call waits until the pause is over");
      rig.services.pauses.goOn(rig.classroom.id(), rig.now());
      page.waitForSelector("dialog[data-call][open]", new Page.WaitForSelectorOptions().setTimeout(30_000));
      assertFalse(page.isVisible("dialog[data-pause]"));
    }
  }
}
