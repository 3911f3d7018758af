package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Child;
import fewermore.classroom.ClassGroups;
import fewermore.classroom.Classroom;
import fewermore.classroom.Findings;
import fewermore.classroom.InventedClass;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.Topic;
import fewermore.marking.Work;
import fewermore.reasoning.GroupPlace;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Strength;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the teacher says beside the evidence, through the pages of the running app, on an invented class. */
class EvidenceInTheTeachersHandTest {
  private static Rig rig;
  private static Classroom invented;
  private static Browser teacher;

  @BeforeAll
  static void start() {
    rig = Rig.start();
    teacher = new Browser(rig.teacherAddress());
    teacher.get("/sign-in");
    teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    long id = rig.services.teachers.first().orElseThrow().id();
    invented = rig.services.invented.make(id, InventedClass.USUAL, ZoneId.of("UTC"));
    look(invented);
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  private static void look(Classroom classroom) {
    teacher.get("/plan");
    teacher.post("/classes/" + classroom.id() + "/look", Map.of());
  }

  private static LocalDate today() {
    return rig.services.today(invented);
  }

  private static Findings found() {
    return FindingsHandlers.found(rig.services, invented, today());
  }

  @Test
  void theWeeksThatAreReadHoldAllTheirWork() {
    List<PieceOfWork> all = rig.services.works.pieces(invented.id());
    assertEquals(Findings.of(rig.services.classes.children(invented.id()), all, today()).pieces(), found().pieces());
  }

  @Test
  void workTakenOutCountsNoMoreAndPutBackCountsAgain() {
    look(invented);
    var said = found().statements().get(0).children().get(0);
    Child child = said.child();
    PieceOfWork piece = said.evidence().get(0).work();
    int counted = said.reasoning().counted().size();
    var before = said.reasoning().estimate().ways();
    teacher.get("/findings/child/" + child.id());
    assertEquals(303, teacher.post("/findings/take-out", Map.of("child", "" + child.id(), "problem",
        "" + piece.problem().id(), "why", "copied", "whose", "child")).statusCode());
    var without = found().about(child).orElseThrow();
    assertEquals(counted - 1, without.counted().size());
    assertNotEquals(before, without.estimate().ways());
    String page = teacher.get("/findings/child/" + child.id()).body();
    assertTrue(page.contains("Taken out: no evidence") && page.contains("copied"));
    long out = rig.services.reasoning.word(invented.id()).takenOut().get(0).id();
    assertEquals(303, teacher.post("/findings/put-back", Map.of("child", "" + child.id(), "out", "" + out)).statusCode());
    assertEquals(before, found().about(child).orElseThrow().estimate().ways());
  }

  @Test
  void workWalkedOnTheBoardIsTakenOutForTheWholeClass() {
    look(invented);
    PieceOfWork piece = found().children().get(0).counted().get(0);
    long others = found().children().stream().flatMap(each -> each.counted().stream())
        .filter(each -> each.problem().id() == piece.problem().id()).count();
    assertTrue(others > 1);
    teacher.get("/findings/child/" + piece.child().id());
    teacher.post("/findings/take-out", Map.of("child", "" + piece.child().id(), "problem", "" + piece.problem().id(),
        "why", "walked-on-the-board", "whose", "class"));
    assertEquals(0, found().children().stream().flatMap(each -> each.counted().stream())
        .filter(each -> each.problem().id() == piece.problem().id()).count());
    long out = rig.services.reasoning.word(invented.id()).takenOut().get(0).id();
    teacher.post("/findings/put-back", Map.of("child", "" + piece.child().id(), "out", "" + out));
  }

  @Test
  void aWayPutAsideStaysShownWithItsNoteAndIsNotSaid() {
    look(invented);
    var said = found().statements().get(0).children().get(0);
    Child child = said.child();
    teacher.get("/findings/child/" + child.id());
    assertEquals(422, teacher.post("/findings/child/" + child.id() + "/put-aside",
        Map.of("way", said.reasoning().says().way().id(), "note", " ")).statusCode());
    teacher.get("/findings/child/" + child.id());
    assertEquals(303, teacher.post("/findings/child/" + child.id() + "/put-aside",
        Map.of("way", said.reasoning().says().way().id(), "note", "I asked: it is read well.")).statusCode());
    Findings found = found();
    assertTrue(found.about(Topic.PUT_ASIDE).orElseThrow().children().stream().anyMatch(each -> each.child().equals(child)));
    // Kept, shown, and no evidence: the estimate is what it was.
    assertEquals(said.reasoning().estimate().ways(), found.about(child).orElseThrow().estimate().ways());
    String page = teacher.get("/findings/child/" + child.id()).body();
    assertTrue(page.contains("I asked: it is read well."));
    long aside = found.about(child).orElseThrow().putAside().get(0).id();
    teacher.post("/findings/child/" + child.id() + "/no-longer-aside", Map.of("aside", "" + aside));
    assertTrue(found().about(Topic.PUT_ASIDE).isEmpty());
  }

  @Test
  void movingAChildByHandMovesNobodyElseAndPairsAreKept() {
    look(invented);
    List<Child> children = rig.services.classes.children(invented.id());
    Child one = children.get(0);
    Child other = children.get(1);
    teacher.get("/groups");
    assertEquals(422, teacher.post("/groups/pairs",
        Map.of("one", "" + one.id(), "other", "" + one.id(), "together", "no")).statusCode());
    teacher.get("/groups");
    assertEquals(303, teacher.post("/groups/pairs",
        Map.of("one", "" + other.id(), "other", "" + one.id(), "together", "no")).statusCode());
    assertTrue(teacher.get("/groups").body().contains(one.name() + " and " + other.name() + ": apart"));
    assertEquals(303, teacher.post("/groups/move",
        Map.of("child", "" + one.id(), "place", "look-closer")).statusCode());
    var kept = rig.services.reasoning.kept(invented.id(), today());
    assertEquals(children.size(), kept.size());
    assertEquals("look-closer", kept.get(one.id()).place().id());
    assertTrue(kept.get(one.id()).byHand());
    Map<Long, GroupPlace> proposed = ClassGroups.propose(found().children(),
        rig.services.reasoning.pairs(invented.id()), ReasoningTable.standard());
    proposed.forEach((child, place) -> assertTrue(child == one.id() || kept.get(child).place().equals(place)));
    assertTrue(teacher.get("/groups").body().contains("You moved a child"));
    teacher.post("/groups/anew", Map.of());
    assertTrue(rig.services.reasoning.kept(invented.id(), today()).isEmpty());
    teacher.post("/groups/pairs/forget", Map.of("one", "" + one.id(), "other", "" + other.id()));
    assertTrue(rig.services.reasoning.pairs(invented.id()).isEmpty());
  }

  @Test
  void withOnlyAgreeingWorkNothingIsSaidOfStoryOrWordAboutAnyone() {
    look(rig.classroom);
    // Both stories of the set are agreeing ones or are made so: the smaller amount asked, told with fewer.
    rig.give(List.of(Stories.SHELLS, Stories.SHELLS, Stories.SHELLS));
    Child child = rig.children.get(0);
    Tablet tablet = Tablet.comeIn(rig, child);
    for (int problem = 3; problem <= 5; problem++) {
      tablet.sent(tablet.item(tablet.work(problem), 1, "handed-in", new Work("52 - 14 = x", "38", "shells", null, null)));
    }
    Findings found = FindingsHandlers.found(rig.services, rig.classroom, rig.services.today(rig.classroom));
    var reasoning = found.about(child).orElseThrow();
    assertEquals(3, reasoning.counted().size());
    assertTrue(reasoning.onlyAgreeing());
    assertEquals(Strength.TOO_EARLY, reasoning.says().strength());
    String page = teacher.get("/findings/child/" + child.id()).body();
    for (String words : List.of("reads the story", "reading the story", "goes by the word", "cue word")) {
      assertFalse(page.contains(words), words);
      assertFalse(teacher.get("/findings").body().contains(words), words);
      assertFalse(teacher.get("/groups").body().contains(words), words);
      assertFalse(teacher.get("/records").body().contains(words), words);
    }
    assertTrue(teacher.get("/findings").body().contains("the word agrees with what has to be done"));
    assertTrue(teacher.get("/plan").body().contains("In all the work so far the word agrees"), "and Plan says why");
    look(invented);
  }
}
