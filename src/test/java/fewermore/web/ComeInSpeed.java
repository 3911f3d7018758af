package fewermore.web;

import com.google.gson.JsonObject;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import fewermore.classroom.Picture;
import fewermore.store.ClassStore.NewChild;
import java.util.ArrayList;
import java.util.List;

/**
 * How long it takes until a tablet that was never here can be used, on a poor Wi-Fi: 400 ms there and back, 50 KB/s
 * down, 20 KB/s up, through Chromium's own network emulation, a class of thirty. "Usable" is when the class's tiles are
 * drawn, styled and can be tapped. A measuring command, not a test: {@code mvn -q test-compile exec:exec
 * -Dexec.classpathScope=test -Dmain.class=fewermore.web.ComeInSpeed -Dargs=5}.
 */
public final class ComeInSpeed {
  private static final int LATENCY_MILLIS = 400;
  private static final int DOWN_BYTES = 50 * 1024;
  private static final int UP_BYTES = 20 * 1024;

  private ComeInSpeed() {}

  public static void main(String[] arguments) {
    int rounds = arguments.length == 0 ? 5 : Integer.parseInt(arguments[0]);
    List<Long> comeIn = new ArrayList<>();
    List<Long> sitting = new ArrayList<>();
    try (Rig rig = Rig.startForTablets()) {
      List<NewChild> more = new ArrayList<>();
      for (int child = 3; child < 30; child++) {
        Picture picture = Picture.ALL.get(child);
        more.add(new NewChild("Child" + (char) ('A' + child % 26) + child, picture.id(), picture.ground(), "en"));
      }
      rig.services.classes.addChildren(rig.classroom.id(), more, rig.now());
      String origin = "http://tablet.test:" + rig.app.port();
      for (int round = 0; round < rounds; round++) {
        try (BrowserContext tablet = Chromium.tablet(1024, 600)) {
          tablet.setDefaultTimeout(60_000);
          Page page = tablet.newPage();
          slow(tablet.newCDPSession(page));
          long start = System.nanoTime();
          page.navigate(origin + "/in/" + rig.door(),
              new Page.NavigateOptions().setWaitUntil(com.microsoft.playwright.options.WaitUntilState.COMMIT));
          while (!Boolean.TRUE.equals(page.evaluate("document.querySelectorAll('.tile').length === 30"
              + " && getComputedStyle(document.querySelector('.tiles')).display === 'grid'"
              + " && performance.getEntriesByType('paint').length > 0"))) {
            page.waitForTimeout(20);
          }
          comeIn.add((System.nanoTime() - start) / 1_000_000);
          page.click(".tile >> text=Noor");
          page.waitForSelector("form[data-once] button");
          start = System.nanoTime();
          page.click("form[data-once] button");
          page.waitForSelector("[data-open='1'][href='#1']");
          sitting.add((System.nanoTime() - start) / 1_000_000);
        }
      }
    }
    System.out.println("Come in usable, from the scan, nothing cached, ms: " + comeIn + ", median " + median(comeIn));
    System.out.println("from \"Yes, it's me\" to the problems, ms: " + sitting + ", median " + median(sitting));
    System.exit(median(comeIn) < 5_000 ? 0 : 1);
  }

  private static long median(List<Long> all) {
    return all.stream().sorted().toList().get(all.size() / 2);
  }

  private static void slow(CDPSession session) {
    session.send("Network.enable");
    JsonObject line = new JsonObject();
    line.addProperty("offline", false);
    line.addProperty("latency", LATENCY_MILLIS);
    line.addProperty("downloadThroughput", DOWN_BYTES);
    line.addProperty("uploadThroughput", UP_BYTES);
    session.send("Network.emulateNetworkConditions", line);
  }
}
