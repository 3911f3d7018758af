package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import org.junit.jupiter.api.Test;

/** A sentence of the family's page is changed by keyboard, kept with the print, and stays in its language. */
class ConferenceInABrowserTest {
  @Test
  void whatIsPrintedIsWhatIsKept() {
    try (Rig rig = Rig.start(); BrowserContext laptop = Chromium.tablet(1366, 768)) {
      long noor = rig.children.get(0).id();
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      tablet.sent(tablet.item(tablet.work(2), 1, "handed-in",
          new Work("15 + 19 = x", "34", "beads", new Bars("Theo", "x", "15", "19"), null)));
      Page page = laptop.newPage();
      page.setDefaultTimeout(60_000);
      page.addInitScript("window.print = () => { window.printed = (window.printed || 0) + 1; };");
      page.navigate("http://localhost:" + rig.app.teacherPort() + "/sign-in");
      page.fill("#passphrase", Rig.PASSPHRASE);
      page.press("#passphrase", "Enter");
      page.waitForURL("**/plan");
      page.navigate("http://localhost:" + rig.app.teacherPort() + "/records/child/" + noor + "/conference");
      assertTrue(page.textContent(".own-eq").contains("15"), "her own equation");
      page.focus("#edit-next");
      page.keyboard().press("ControlOrMeta+a");
      page.keyboard().type("We will draw bars together.");
      assertEquals("We will draw bars together.", page.textContent("[data-line=next]"), "shown as it is typed");
      assertEquals(0, rig.services.records.sentences(noor).size());
      page.focus("[data-print-kept]");
      page.keyboard().press("Enter");
      page.waitForCondition(() -> Boolean.TRUE.equals(page.evaluate("window.printed === 1")));
      assertEquals("We will draw bars together.", rig.services.records.sentences(noor).get("next").content());
      page.navigate("http://localhost:" + rig.app.teacherPort() + "/records/child/" + noor + "/conference?in=es");
      assertEquals("We will draw bars together.", page.textContent("[data-line=next]"), "her own text is not translated");
      assertEquals("en", page.getAttribute("[data-line=next]", "lang"));
      assertTrue(page.textContent("[data-line=shows]").startsWith("En este problema"));
      page.fill("#edit-next", "");
      page.focus("[data-print-kept]");
      page.keyboard().press("Enter");
      page.waitForCondition(() -> Boolean.TRUE.equals(page.evaluate("window.printed === 1")));
      assertTrue(rig.services.records.sentences(noor).isEmpty(), "an empty field gives the app's sentence back");
      assertFalse(page.textContent("[data-line=next]").isBlank());
    }
  }
}
