package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.web.Chromium;
import fewermore.web.Rig;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The laptop's address changes under an open page: what waits there still comes in. */
class NewAddressTest {

  @Test
  void workOfAPageFromTheOldAddressIsSentToTheNewOneOnceItIsTyped() {
    try (Rig rig = Rig.startForTablets(); BrowserContext tablet = Chromium.tablet(1024, 600)) {
      Page page = tablet.newPage();
      String old = "http://tablet.test:" + rig.app.port();
      page.navigate(old + "/in/" + rig.door());
      page.click(".tile >> text=Noor");
      page.click("form[data-once] button");
      page.waitForSelector("[data-open='1'][href='#1']");
      tablet.route(url -> url.startsWith(old), route -> route.abort());
      page.click("[data-open='1'][href='#1']");
      page.click("[data-part=answer]");
      page.click("[data-for=answer] [data-key='7']");
      page.click("[data-hand-in]");
      page.click("[data-ask-box] [data-anyway]");
      page.click("[data-back]");
      assertFalse(page.isVisible("[data-new-address]"), "not at the first failure");
      for (int tries = 0; tries < 60 && !page.isVisible("[data-new-address]"); tries++) {
        page.evaluate("dispatchEvent(new Event('online'))");
        page.waitForTimeout(200);
      }
      assertTrue(page.isVisible("main [data-new-address]"));
      String folder = System.getProperty("fewermore.pictures");
      if (folder != null) {
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(folder, "new-address.png")));
      }
      assertEquals(List.of(), new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().stream()
          .map(each -> each.getId()).toList());
      page.fill("main [data-new-address] input", "127.0.0.9");
      page.click("main [data-new-address] button");
      page.waitForTimeout(1_500);
      assertEquals(List.of(), rig.pieces(), "nobody is there");
      page.fill("main [data-new-address] input", "127.0.0.1");
      page.click("main [data-new-address] button");
      page.waitForSelector("main [data-go-there]:not([hidden])");
      assertEquals("http://127.0.0.1:" + rig.app.port() + "/come-in", page.getAttribute("main [data-go-there]", "href"));
      var pieces = rig.pieces();
      assertEquals(1, pieces.size());
      assertEquals("Noor", pieces.get(0).child().name());
      assertEquals("7", pieces.get(0).evidence().parts().answer());
      assertEquals(0, ((Number) page.evaluate("Object.keys(localStorage).filter(key => key.startsWith('fw.h.')).length"))
          .intValue());
    }
  }
}
