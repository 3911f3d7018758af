package fewermore.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import fewermore.classroom.Child;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/**
 * How long a touch on a key takes until the page is painted with it, at a sixth of this machine's speed: the event's own
 * time to the first task after the next frame, median of 20. Printed, never asserted: a busy machine says nothing.
 */
public final class PaintMeasure {
  private static final int SLOWER = 6;
  private static final int PRESSES = 20;

  private static final String WATCH = """
      window.painted = [];
      addEventListener('click', event => requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => window.painted.push(performance.now() - event.timeStamp);
        channel.port2.postMessage(0);
      }), true);
      """;

  private PaintMeasure() {}

  public static void main(String[] arguments) {
    int status = 1;
    try (Rig rig = Rig.startForTablets();
        BrowserContext tablet = Chromium.tablet(new NewContextOptions().setViewportSize(1024, 600).setHasTouch(true))) {
      Child child = rig.children.get(0);
      Page page = tablet.newPage();
      page.navigate("http://tablet.test:" + rig.app.port() + "/in/" + rig.door());
      page.click("a[href='/come-in/" + child.id() + "']");
      page.click("form[data-once] button");
      page.waitForURL("**/mine");
      page.click("[data-open='1'][href='#1']");
      CDPSession session = tablet.newCDPSession(page);
      JsonObject rate = new JsonObject();
      rate.addProperty("rate", SLOWER);
      session.send("Emulation.setCPUThrottlingRate", rate);
      page.evaluate(WATCH);
      measure(page, session, "a digit of the equation", "equation", List.of("5", "2"));
      measure(page, session, "a letter of the label", "label", List.of("s", "h"));
      status = 0;
    } finally {
      System.exit(status);
    }
  }

  /** The finger comes by the browser's own protocol: a driver's tap asks the page itself whether the key lies still. */
  private static void touch(Page page, CDPSession session, String key) {
    BoundingBox box = page.locator(key).boundingBox();
    JsonObject finger = new JsonObject();
    finger.addProperty("x", box.x + box.width / 2);
    finger.addProperty("y", box.y + box.height / 2);
    JsonArray fingers = new JsonArray();
    fingers.add(finger);
    session.send("Input.dispatchTouchEvent", touched("touchStart", fingers));
    session.send("Input.dispatchTouchEvent", touched("touchEnd", new JsonArray()));
  }

  private static JsonObject touched(String type, JsonArray fingers) {
    JsonObject event = new JsonObject();
    event.addProperty("type", type);
    event.add("touchPoints", fingers);
    return event;
  }

  private static void measure(Page page, CDPSession session, String what, String part, List<String> keys) {
    page.click("[data-part='" + part + "']");
    page.waitForTimeout(500);
    page.evaluate("window.painted.length = 0");
    for (int at = 0; at < PRESSES; at++) {
      touch(page, session, "[data-for=" + part + "] [data-key='" + keys.get(at % keys.size()) + "']");
      page.waitForTimeout(300);
    }
    List<Double> painted = new ArrayList<>();
    ((List<?>) page.evaluate("window.painted")).forEach(each -> painted.add(((Number) each).doubleValue()));
    Collections.sort(painted);
    System.out.printf(Locale.ROOT, "%s, at %d× throttling: median %.0f ms, worst %.0f ms, of %d%n", what, SLOWER,
        painted.get(painted.size() / 2), painted.get(painted.size() - 1), painted.size());
  }
}
