package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.HandIn;
import fewermore.marking.EquationReason;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Part;
import fewermore.marking.Work;
import fewermore.store.WorkStore;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MarkAgainTest {
  @TempDir Path folder;

  @Test
  void workMarkedByOlderRulesIsMarkedAgainAtTheNextStartAndOverruledMarksStay() {
    try (Rig rig = Rig.startAgain(folder, 0, 0, null)) {
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      for (int seq = 1; seq <= 3; seq++) {
        noor.sent(noor.item(noor.work(1), seq, "handed-in", new Work("52 - 14 = x", "38", "shells", null, null)));
      }
      assertTrue(rig.services.works.overrule(rig.classroom.id(), rig.classroom.teacher(), noor.work(1), noor.page, 2,
          Part.LABEL, "too-general", "she said any shells", rig.now()));
      rig.services.database.change(handle -> handle.execute(
          "UPDATE mark SET rules = 0, verdict = 'other-numbers' WHERE part = 'equation'"));
      rig.services.database.change(handle -> handle.execute("UPDATE mark SET rules = 0"));
      rig.services.database.change(handle -> handle.execute("DELETE FROM mark WHERE seq = 3"));
    }
    try (Rig rig = Rig.startAgain(folder, 0, 0, null)) {
      List<HandIn> tries = rig.services.works.pieces(rig.classroom.id()).get(0).handIns();
      assertEquals(3, tries.size());
      tries.forEach(each -> assertEquals(EquationReason.FITS, each.marks().equation().reason()));
      assertEquals(LabelVerdict.NAMES_IT, tries.get(0).marks().label());
      assertEquals(LabelVerdict.TOO_GENERAL, tries.get(1).marks().label());
      assertEquals("2 of 9 marks", rig.services.teachers.setting(App.MARKED_AGAIN).orElse(""));
      Browser teacher = new Browser(rig.teacherAddress());
      teacher.get("/sign-in");
      teacher.post("/sign-in", java.util.Map.of("passphrase", Rig.PASSPHRASE));
      assertTrue(teacher.get("/findings").body().contains("2 of 9 marks"), "the teacher is told");
      List<Long> progress = new ArrayList<>();
      assertEquals(new WorkStore.MarkedAgain(0, 0), rig.services.works.markAgain(progress::add));
      assertEquals(List.of(), progress);
    }
  }
}
