package fewermore.web;

import com.google.gson.JsonObject;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/**
 * Typing a problem in Plan at a sixth of this machine's speed: for 20 keys, how long from the press to the painted
 * letter, and to the painted understanding of the text with it. Printed, never asserted: a busy machine says nothing.
 */
public final class TypingLag {
  private static final int SLOWER = 6;
  private static final int KEYS = 20;
  private static final String BEFORE = "Mara found 28 shells. She found 15 fewer shells than Theo. How many shells did Th";
  private static final String TYPED = "eo find? The sun was out.";

  /** Where each key's press, its paint and the paint of what is understood of it are put. */
  private static final String WATCH = """
      window.lag = { painted: [], seen: [] };
      let pressed = 0;
      const afterPaint = then => requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = then;
        channel.port2.postMessage(0);
      });
      const text = document.getElementById('typed');
      text.addEventListener('keydown', event => { pressed = event.timeStamp; }, true);
      text.addEventListener('input', () => { const from = pressed; afterPaint(() => window.lag.painted.push(performance.now() - from)); }, true);
      new MutationObserver(changes => {
        if (changes.some(change => [...change.addedNodes].some(node => node.id === 'seen'))) {
          const from = pressed;
          afterPaint(() => window.lag.seen.push(performance.now() - from));
        }
      }).observe(document.querySelector('form[data-type]'), { childList: true, subtree: true });
      """;

  private TypingLag() {}

  public static void main(String[] arguments) {
    int status = 1;
    try (Rig rig = Rig.start(); BrowserContext laptop = Chromium.tablet(1366, 768)) {
      Page page = laptop.newPage();
      page.navigate("http://localhost:" + rig.app.teacherPort() + "/sign-in");
      page.fill("[name=passphrase]", Rig.PASSPHRASE);
      page.press("[name=passphrase]", "Enter");
      page.waitForURL("**/plan");
      page.navigate("http://localhost:" + rig.app.teacherPort() + "/plan/type");
      page.locator("#typed").pressSequentially(BEFORE);
      page.waitForTimeout(2000);
      CDPSession session = laptop.newCDPSession(page);
      JsonObject rate = new JsonObject();
      rate.addProperty("rate", SLOWER);
      session.send("Emulation.setCPUThrottlingRate", rate);
      page.evaluate(WATCH);
      for (int key = 0; key < KEYS; key++) {
        int before = count(page);
        page.keyboard().type(TYPED.substring(key, key + 1));
        page.waitForCondition(() -> count(page) > before, new Page.WaitForConditionOptions().setTimeout(20_000));
      }
      print(page, "painted", "the key itself");
      print(page, "seen", "what is understood (200 ms of pause included)");
      status = 0;
    } finally {
      System.exit(status);
    }
  }

  private static int count(Page page) {
    return ((Number) page.evaluate("window.lag.seen.length")).intValue();
  }

  private static void print(Page page, String what, String words) {
    List<Double> times = new ArrayList<>();
    ((List<?>) page.evaluate("window.lag." + what)).forEach(each -> times.add(((Number) each).doubleValue()));
    Collections.sort(times);
    System.out.printf(Locale.ROOT, "%s, at %d× throttling: median %.0f ms, worst %.0f ms, of %d%n", words, SLOWER,
        times.get(times.size() / 2), times.get(times.size() - 1), times.size());
  }
}
