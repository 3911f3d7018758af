package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Child;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What people type is text on every page, never markup. */
class EscapingTest {
  private static final String NAME = "<b>Zed</b>";

  @Test
  void aNameAndAChildsWorkStayTextOnEveryPage() {
    try (Rig rig = Rig.start()) {
      rig.services.classes.addChildren(rig.classroom.id(), Rig.children(NAME), rig.now());
      Child zed = rig.services.classes.children(rig.classroom.id()).stream()
          .filter(child -> child.name().equals(NAME)).findFirst().orElseThrow();
      Tablet tablet = Tablet.comeIn(rig, zed);
      tablet.sent(tablet.item(tablet.work(2), 1, "handed-in", new Work("<i>19</i> - 15", "<i>4</i>", "<i>beads</i>",
          new Bars("<i>Theo</i>", "<i>x</i>", "15", "<i>19</i>"), null)));
      Browser teacher = new Browser(rig.teacherAddress());
      teacher.get("/sign-in");
      assertEquals(303, teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE)).statusCode());
      String work = "/work/" + tablet.work(2) + "/" + tablet.page + "/1";
      for (String page : List.of("/findings", "/records", "/setup", work, "/findings/child/" + zed.id())) {
        isText(teacher.get(page).body(), page);
      }
      assertTrue(teacher.get(work).body().contains("&lt;i&gt;beads"), "the label is shown as typed");
      assertEquals(303, teacher.post(work + "/overrule",
          Map.of("part", "label", "verdict", "too-general", "note", "<i>said so</i>")).statusCode());
      isText(teacher.get(work).body(), work);
      assertTrue(teacher.get(work).body().contains("&lt;i&gt;said so"), "the note is shown as typed");
      assertTrue(teacher.get("/records").body().contains("marks overruled by you"), "Records counts what was overruled");
      isText(tablet.browser.get("/come-in").body(), "/come-in");
      isText(tablet.browser.get("/come-in/" + zed.id()).body(), "/come-in/{child}");
      isText(tablet.browser.get("/mine").body(), "/mine");
      assertFalse(tablet.browser.get("/mine/" + tablet.work(2)).body().contains("<i>"), "/mine/{work}");
    }
  }

  private static void isText(String html, String page) {
    assertFalse(html.contains("<b>Zed") || html.contains("<i>19") || html.contains("<i>said"), page);
    assertTrue(html.contains("&lt;b&gt;Zed"), page + " names the child");
  }
}
