package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.classroom.Child;
import fewermore.classroom.PieceOfWork;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who sits where, how a sitting ends, and work that goes to the right child. */
class TurnsTest {
  private static final Work WRONG =
      new Work("52 + 14 = x", "66", "shells", new Bars("Tomas", "52", "x", "14"), null);
  private static final Work RIGHT =
      new Work("52 - 14 = x", "38", "shells", new Bars("Tomas", "52", "x", "14"), null);

  /** Nine in the morning in Chicago, where the class is. */
  private final Hands clock = new Hands("2026-11-25T15:00:00Z");
  private Rig rig;
  private Browser teacher;
  private Child noor;
  private Child elsie;

  @BeforeEach
  void start() {
    rig = Rig.start(clock);
    noor = rig.children.get(0);
    elsie = rig.children.get(1);
    teacher = new Browser(rig.teacherAddress());
    teacher.get("/sign-in");
    teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    teacher.get("/sittings");
  }

  @AfterEach
  void stop() {
    rig.close();
  }

  private List<PieceOfWork> pieces() {
    return rig.services.works.pieces(rig.classroom.id());
  }

  private static JsonNode pulse(Tablet tablet, String query) {
    return Json.read(tablet.browser.get("/pulse" + query).body());
  }

  @Test
  void thePulseTellsAgainWhatAPageStillWaitsToHear() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    JsonNode told = tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", WRONG)).path("told");
    assertTrue(pulse(tablet, "").path("told").isMissingNode(), "nobody asked");
    assertEquals(told, pulse(tablet, "?untold=1").path("told"));
    tablet.sent(tablet.item(tablet.work(1), 2, "handed-in", RIGHT));
    JsonNode newest = pulse(tablet, "?untold=1").path("told");
    assertEquals(1, newest.size());
    assertEquals(2, newest.get(0).path("seq").asInt(), "the newest try of each problem");
    Tablet other = Tablet.comeIn(rig, elsie);
    assertEquals(0, pulse(other, "?untold=1").path("told").size(), "nothing of another child");
  }

  @Test
  void theTeacherCallsToATabletInTheChildsLanguageWithTheNextAnswer() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    assertTrue(pulse(tablet, "").path("say").isNull());
    assertEquals(303, teacher.post("/sittings/" + tablet.sitting + "/call", Map.of("text", "call.come")).statusCode());
    JsonNode say = pulse(tablet, "").path("say");
    assertEquals("Please come to your teacher.", say.path("text").asText());
    assertEquals(say, tablet.sent(tablet.item(tablet.work(1), 1, "draft", RIGHT)).path("say"));
    teacher.post("/sittings/" + tablet.sitting + "/call", Map.of("text", "call.board"));
    assertNotEquals(say.path("id"), pulse(tablet, "").path("say").path("id"), "a new call is another one");
    clock.now = clock.now.plusSeconds(601);
    assertTrue(pulse(tablet, "").path("say").isNull(), "after ten minutes it is over");
    assertEquals(422, teacher.post("/sittings/" + tablet.sitting + "/call", Map.of("text", "anything")).statusCode());
  }

  @Test
  void theTeacherEndsASittingAndItsWaitingWorkStillComesIn() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    assertEquals(303, teacher.post("/sittings/" + tablet.sitting + "/end", Map.of()).statusCode());
    assertEquals("ended", pulse(tablet, "").path("sitting").asText());
    assertEquals(303, tablet.browser.get("/mine").statusCode());
    clock.now = clock.now.plusSeconds(5);
    assertEquals(1, tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", RIGHT)).path("took").size());
    assertTrue(pieces().get(0).evidence().late(), "came in late");
    assertTrue(teacher.get("/sittings").body().contains("you ended it"));
  }

  @Test
  void aSittingEndsAtNightWhereTheClassIs() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    clock.now = Instant.parse("2026-11-26T05:59:00Z");
    rig.services.endTheDays();
    assertEquals("open", pulse(tablet, "").path("sitting").asText(), "11:59 PM in Chicago");
    clock.now = Instant.parse("2026-11-26T06:00:30Z");
    assertEquals("ended", pulse(tablet, "").path("sitting").asText(), "whoever asks first");
    assertEquals(Instant.parse("2026-11-26T06:00:00Z"),
        rig.services.sittings.find(tablet.sitting).orElseThrow().endedAt());
    Tablet next = new Tablet(rig);
    next.in(rig, elsie);
    clock.now = Instant.parse("2026-11-27T12:00:00Z");
    rig.services.endTheDays();
    assertEquals(List.of(), rig.services.sittings.open(rig.classroom.id()), "and without anybody asking");
    assertEquals(1, tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", RIGHT)).path("took").size(),
        "what waited on the tablet over night still comes in");
  }

  @Test
  void workMovedToTheRightChildIsNoEvidenceUntilTheTeacherSaysSo() {
    Tablet prank = Tablet.comeIn(rig, elsie);
    prank.sent(prank.item(prank.work(1), 1, "handed-in", WRONG));
    assertEquals("Elsie", pieces().get(0).child().name());
    assertEquals(303, teacher.post("/work/" + prank.work(1) + "/move",
        Map.of("child", Long.toString(noor.id()), "note", "Noor sat here")).statusCode());
    assertEquals(List.of(), pieces(), "nobody's evidence while it waits");
    assertTrue(teacher.get("/sittings").body().contains("Noor sat here"));
    PieceOfWork shown = rig.services.works.piece(rig.classroom.id(), prank.work(1)).orElseThrow();
    assertEquals("Noor", shown.child().name(), "the teacher can look at it meanwhile");
    assertEquals(303, teacher.post("/work/" + prank.work(1) + "/confirm", Map.of()).statusCode());
    assertEquals("Noor", pieces().get(0).child().name());
    assertEquals(WRONG, pieces().get(0).evidence().parts());
    assertTrue(teacher.get("/work/" + prank.work(1) + "/" + prank.page + "/1").body()
        .contains("Moved from Elsie to Noor"), "the note stays in the record");
  }

  @Test
  void aWholeSittingIsMovedAndEndsAndWhatStillComesFromItGoesToTheRightChild() {
    Tablet prank = Tablet.comeIn(rig, elsie);
    prank.sent(prank.item(prank.work(1), 1, "handed-in", WRONG));
    assertEquals(303, teacher.post("/sittings/" + prank.sitting + "/move",
        Map.of("child", Long.toString(noor.id()))).statusCode());
    assertEquals("ended", prank.sent(prank.item(prank.work(2), 2, "handed-in", RIGHT)).path("sitting").asText());
    for (int problem = 1; problem <= 2; problem++) {
      assertEquals(303, teacher.post("/work/" + prank.work(problem) + "/confirm", Map.of()).statusCode());
    }
    assertEquals(List.of("Noor", "Noor"), pieces().stream().map(piece -> piece.child().name()).toList());
    Tablet real = Tablet.comeIn(rig, elsie);
    assertTrue(real.problems.get(0).path("draft").isMissingNode(), "Elsie's page holds none of it");
    Tablet hers = Tablet.comeIn(rig, noor);
    assertEquals("66", hers.problems.get(0).at("/draft/parts/answer").asText(), "Noor finds her own work");
  }

  @Test
  void movedBackItIsWhatItWas() {
    Tablet tablet = Tablet.comeIn(rig, elsie);
    tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", RIGHT));
    String path = "/work/" + tablet.work(1);
    teacher.post(path + "/move", Map.of("child", Long.toString(noor.id())));
    teacher.post(path + "/move", Map.of("child", Long.toString(elsie.id())));
    assertEquals("Elsie", pieces().get(0).child().name());
    assertEquals(404, teacher.post(path + "/confirm", Map.of()).statusCode(), "nothing waits");
    assertEquals(404, teacher.post(path + "/move", Map.of("child", Long.toString(elsie.id()))).statusCode(),
        "it is hers already");
    assertEquals(422, teacher.post(path + "/move", Map.of("child", "999999")).statusCode());
    assertEquals(2, rig.services.moving.of(tablet.work(1)).size(), "both moves stand in the record");
  }

  @Test
  void aChildOnTwoTabletsIsFlaggedAndBothVersionsAreKeptWhole() {
    Tablet one = Tablet.comeIn(rig, noor);
    Tablet two = Tablet.comeIn(rig, noor);
    String page = teacher.get("/sittings").body();
    assertEquals(2, page.split("Also on ", -1).length - 1, "both say so");
    one.sent(one.item(one.work(1), 1, "handed-in", WRONG));
    clock.now = clock.now.plusSeconds(9);
    two.sent(two.item(two.work(1), 1, "handed-in", RIGHT));
    PieceOfWork piece = pieces().get(0);
    assertEquals(List.of(WRONG, RIGHT), piece.handIns().stream().map(each -> each.parts()).toList());
    assertEquals(WRONG, piece.evidence().parts(), "the first handed in");
    assertNotEquals(piece.handIns().get(0).tablet(), piece.handIns().get(1).tablet());
    String view = teacher.get("/work/" + one.work(1) + "/" + one.page + "/1").body();
    assertTrue(view.contains("also from " + piece.last().tablet()), "shown beside it");
  }

  @Test
  void onlyWorkOfAnErasedSittingIsToldToBeForgotten() {
    var invented = rig.services.classes.add(rig.services.teachers.first().orElseThrow().id(), "Made up",
        java.time.ZoneId.of("America/Chicago"), true, Rig.children("Ada"), rig.now());
    rig.services.problems.addSet(invented.id(), rig.services.today(invented), true, 3, false,
        fewermore.classroom.ProblemSet.USUAL_PARTS, List.of(Stories.SHELLS), rig.now());
    Child ada = rig.services.classes.children(invented.id()).get(0);
    Tablet tablet = new Tablet(rig);
    tablet.browser.get("/in/" + rig.services.door(invented).token());
    tablet.browser.get("/come-in/" + ada.id());
    tablet.browser.post("/come-in/" + ada.id(), Map.of());
    tablet.load();
    rig.services.classes.throwAway(invented.teacher(), invented.id());
    JsonNode reply = tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", RIGHT));
    assertEquals("erased", reply.path("refused").get(0).get(3).asText());
    assertEquals(0, reply.path("took").size());
    String unknown = "d".repeat(32);
    tablet.key = rig.services.tokens.keyOf(unknown);
    tablet.sitting = unknown;
    assertEquals(403, tablet.send(tablet.item("w", 1, "handed-in", RIGHT)).statusCode(),
        "a sitting that is only unknown, after an older copy of the data was put back, keeps its work");
  }

  @Test
  void manyWhoAskForTheDaysDoorAtOnceAllGetTheSameOne() {
    clock.now = clock.now.plus(java.time.Duration.ofDays(1));
    List<String> doors = java.util.stream.IntStream.range(0, 24).parallel()
        .mapToObj(each -> rig.services.door(rig.classroom).token()).distinct().toList();
    assertEquals(1, doors.size());
    assertEquals(303, new Browser(rig.tabletAddress()).get("/in/" + doors.get(0)).statusCode());
  }

  @Test
  void beforeAnybodyIsInThePagesSpeakTheLanguageThatWasTapped() {
    Browser tablet = new Browser(rig.tabletAddress());
    assertTrue(tablet.get("/come-in").body().contains("Tap the four pictures on the board."));
    assertTrue(tablet.get("/come-in?language=es").body().contains("lang=\"es\""));
    String page = tablet.get("/come-in").body();
    assertFalse(page.contains("Tap the four pictures"), "it stays so");
    tablet.get("/in/" + rig.door());
    assertTrue(tablet.get("/come-in").body().contains("¿Quién eres?"));
    assertTrue(tablet.get("/come-in?language=xx").body().contains("¿Quién eres?"), "an unknown one changes nothing");
    assertTrue(tablet.get("/come-in?language=en").body().contains("Who are you?"));
  }
}
