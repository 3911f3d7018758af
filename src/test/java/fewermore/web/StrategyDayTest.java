package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.calculation.Piece;
import fewermore.calculation.Step.CrossOut;
import fewermore.calculation.Step.Jump;
import fewermore.calculation.Step.Put;
import fewermore.calculation.Step.Start;
import fewermore.calculation.Step.Write;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Working.Verdict;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.StrategyTable;
import fewermore.marking.Bars;
import fewermore.marking.Part;
import fewermore.marking.StrategyWork;
import fewermore.marking.Work;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A strategy from the child's tablet to the teacher's pages, by the same protocol as all other work. */
class StrategyDayTest {
  /** 52 − 14 with the ten left where it was: ten ones more, and no ten fewer. */
  private static final StrategyWork TENS_LEFT = new StrategyWork(StrategyKind.PIECES, List.of(
      new Put(1, Piece.TEN, 5), new Put(1, Piece.ONE, 2), new Put(1, Piece.ONE, 10), new CrossOut(Piece.ONE, 4),
      new CrossOut(Piece.TEN, 1), new Write(48)),
      new StrategyWork(StrategyKind.LINE, List.of(new Start(14), new Jump(38, 52)), null));

  private static Work work() {
    return new Work("52 − 14 = x", "48", "shells", Bars.EMPTY, null, TENS_LEFT);
  }

  private static ProblemSet asking(Rig rig) {
    Set<Part> asks = new HashSet<>(ProblemSet.USUAL_PARTS);
    asks.add(Part.STRATEGY);
    rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, 3, false, asks,
        List.of(Stories.SHELLS), rig.services.now());
    return rig.services.problems.given(rig.classroom.id(), rig.services.today(rig.classroom)).get(1);
  }

  private static String address(Rig rig, Tablet noor, int seq) {
    return "/work/" + noor.work(3) + "/" + noor.page + "/" + seq;
  }

  @Test
  void aSlipInTheStepsIsNamedAtOnceAndReplayedAsItWasDone() {
    try (Rig rig = Rig.start()) {
      asking(rig);
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      assertTrue(noor.problems.get(2).path("asked").toString().contains("strategy"));
      JsonNode reply = noor.sent(noor.item(noor.work(3), 1, "handed-in", work()));
      assertEquals(1, reply.path("took").size());
      assertFalse(reply.toString().contains("borrow"), "a tablet hears no slip's name");

      assertEquals(TENS_LEFT, rig.services.works.pieces(rig.classroom.id()).get(0).evidence().parts().strategy());
      StrategyTable table = StrategyTable.of(rig.services.works.pieces(rig.classroom.id()));
      StrategyTable.Row pieces = table.rows().get(0);
      assertEquals(1, table.asked());
      assertEquals(1, pieces.chosen());
      assertEquals(1, pieces.count(Verdict.SLIP));
      assertEquals(1, pieces.checked());
      assertEquals(0, pieces.agreed());

      Browser teacher = signedIn(rig);
      String page = teacher.get(address(rig, noor, 1)).body();
      assertTrue(page.contains("borrowed a ten but left the tens as they were"), page);
      assertTrue(page.contains("Lays out 10 ones."), page);
      assertTrue(page.contains("Not true."), page);
      String child = teacher.get("/findings/child/" + rig.children.get(0).id()).body();
      assertTrue(child.contains("How the numbers were worked out"), child);
      assertFalse(teacher.get("/findings/child/" + rig.children.get(1).id()).body()
          .contains("How the numbers were worked out"));
    }
  }

  @Test
  void theTeacherSetsTheMarkOfAStrategyAside() {
    try (Rig rig = Rig.start()) {
      asking(rig);
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      noor.sent(noor.item(noor.work(3), 1, "handed-in", work()));
      Browser teacher = signedIn(rig);
      teacher.get(address(rig, noor, 1));
      assertEquals(303, teacher.post(address(rig, noor, 1) + "/overrule",
          Map.of("part", "strategy", "verdict", "fits", "note", "told me")).statusCode());
      assertTrue(teacher.get(address(rig, noor, 1)).body().contains("The app said slip. You said fits"));
    }
  }

  @Test
  void theFormWithoutScriptHandsInAStrategy() {
    try (Rig rig = Rig.start()) {
      asking(rig);
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      String form = noor.browser.get("/mine/" + noor.work(3)).body();
      assertTrue(form.contains("name=\"laidTens\""), form);
      noor.browser.post("/mine/" + noor.work(3), Map.of("equation", "52 - 14 = ?", "answer", "38", "label", "shells",
          "way", "pieces", "laidTens", "5", "laidOnes", "2", "trades", "1", "outTens", "1", "outOnes", "4",
          "piecesWritten", "38"));
      assertEquals(1, StrategyTable.of(rig.services.works.pieces(rig.classroom.id())).rows().get(0)
          .count(Verdict.FITS));
      assertTrue(noor.browser.get("/mine/" + noor.work(3)).body().contains("value=\"38\""));
    }
  }

  @Test
  void theReplayGoesStepByStepByKeyAndIsAWholeListWithoutScript() {
    try (Rig rig = Rig.start(); BrowserContext desk = Chromium.tablet(1366, 768)) {
      asking(rig);
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      noor.sent(noor.item(noor.work(3), 1, "handed-in", work()));
      Page page = desk.newPage();
      page.navigate(rig.teacherAddress() + "/sign-in");
      page.fill("[name=passphrase]", Rig.PASSPHRASE);
      page.click("main button[type=submit]");
      page.navigate(rig.teacherAddress() + address(rig, noor, 1));
      page.waitForSelector("[data-replay-keys]:not([hidden])");
      assertEquals("6 / 6", page.locator("[data-at]").first().innerText());
      page.locator("[data-replay]").first().focus();
      page.keyboard().press("ArrowLeft");
      page.keyboard().press("ArrowLeft");
      page.keyboard().press("ArrowLeft");
      assertEquals("3 / 6", page.locator("[data-at]").first().innerText());
      assertTrue(page.locator("[data-replay]").first().innerText().contains("Lays out 10 ones. Not true."));
      page.locator("[data-on]").first().click();
      assertEquals("4 / 6", page.locator("[data-at]").first().innerText());
      picture(page, "replay");
      assertEquals(List.of(), new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().stream()
          .map(rule -> rule.getId() + " " + rule.getNodes().get(0).getHtml()).toList());
      page.navigate(rig.teacherAddress() + "/findings/child/" + rig.children.get(0).id());
      picture(page, "child");
      assertEquals(List.of(), new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().stream()
          .map(rule -> rule.getId() + " " + rule.getNodes().get(0).getHtml()).toList());
      page.navigate(rig.teacherAddress() + "/paper/mats");
      picture(page, "mats");
      assertEquals(5, page.locator(".mats svg").count());
      assertEquals(List.of(), new AxeBuilder(page).setLegacyMode(true).analyze().getViolations().stream()
          .map(rule -> rule.getId() + " " + rule.getNodes().get(0).getHtml()).toList());
    }
  }

  private static void picture(Page page, String name) {
    String folder = System.getProperty("pictures");
    if (folder != null) {
      page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(folder, name + ".png")).setFullPage(true));
    }
  }

  private static Browser signedIn(Rig rig) {
    Browser teacher = new Browser(rig.teacherAddress());
    teacher.get("/sign-in");
    assertEquals(303, teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE)).statusCode());
    return teacher;
  }
}
