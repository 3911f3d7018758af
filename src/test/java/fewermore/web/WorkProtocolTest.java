package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.classroom.PieceOfWork;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class WorkProtocolTest {
  private static final Work WRONG =
      new Work("52 + 14 = x", "66", "shells", new Bars("Tomas", "52", "x", "14"), null);
  private static final Work RIGHT =
      new Work("52 - 14 = x", "38", "shells", new Bars("Tomas", "52", "x", "14"), null);

  private Rig rig;

  @BeforeEach
  void start() {
    rig = Rig.start();
  }

  @AfterEach
  void stop() {
    rig.close();
  }

  private List<PieceOfWork> pieces() {
    return rig.services.works.pieces(rig.classroom.id());
  }

  @Test
  void aHandInIsTakenToldAndKept() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    JsonNode reply = noor.sent(noor.item(noor.work(1), 1, "handed-in", WRONG));
    assertEquals(1, reply.path("fewermore").asInt());
    assertEquals("[[\"" + noor.work(1) + "\",\"" + noor.page + "\",1]]", reply.path("took").toString());
    assertEquals("open", reply.path("sitting").asText());
    JsonNode told = reply.path("told").get(0);
    assertEquals(2, told.path("triesLeft").asInt());
    assertEquals("look-again", told.path("signs").path("equation").asText());
    assertEquals("fits", told.path("signs").path("bars").asText());
    assertEquals("there", told.path("signs").path("answer").asText());
    assertFalse(told.path("prompts").path("equation").asText().isBlank());
    assertEquals(WRONG, pieces().get(0).evidence().parts());
  }

  @Test
  void theSameItemAgainIsAcknowledgedAgainAndKeptOnce() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    JsonNode first = noor.sent(noor.item(noor.work(1), 1, "handed-in", RIGHT));
    JsonNode again = noor.sent(noor.item(noor.work(1), 1, "handed-in", RIGHT));
    assertEquals(first.path("took"), again.path("took"));
    assertEquals(first.path("told"), again.path("told"));
    assertEquals(1, pieces().get(0).tries());
  }

  @Test
  void ofTwoCopiesUnderOneNumberTheFirstIsKept() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    noor.sent(noor.item(noor.work(1), 1, "handed-in", WRONG));
    JsonNode other = noor.sent(noor.item(noor.work(1), 1, "handed-in", RIGHT));
    assertEquals(1, other.path("took").size());
    assertEquals("look-again", other.path("told").get(0).path("signs").path("equation").asText());
    assertEquals(WRONG, pieces().get(0).last().parts());
  }

  @Test
  void numberThreeBeforeNumberTwoLosesNothing() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    noor.sent(noor.item(noor.work(1), 3, "draft", RIGHT));
    JsonNode late = noor.sent(noor.item(noor.work(1), 2, "draft", WRONG));
    assertEquals(1, late.path("took").size());
    assertEquals(RIGHT, rig.services.works.state(rig.children.get(0).id(), rig.set.problems().get(0).id()).newest());
    assertTrue(pieces().isEmpty(), "a draft is no evidence");
  }

  @Test
  void triesAfterAPromptAreKeptAndAreNotTheEvidence() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    noor.sent(noor.item(noor.work(1), 1, "handed-in", WRONG));
    JsonNode second = noor.sent(noor.item(noor.work(1), 2, "handed-in", RIGHT));
    assertEquals(1, second.path("told").get(0).path("triesLeft").asInt());
    PieceOfWork piece = pieces().get(0);
    assertEquals(WRONG, piece.evidence().parts());
    assertEquals(RIGHT, piece.last().parts());
    assertEquals(2, piece.tries());
  }

  @Test
  void workCarriesTheKeyOfItsOwnSitting() {
    Tablet shared = Tablet.comeIn(rig, rig.children.get(0));
    String waiting = shared.body(List.of(shared.item(shared.work(1), 1, "handed-in", RIGHT)));
    shared.in(rig, rig.children.get(1));
    HttpResponse<String> response = shared.browser.postJson("/work", waiting);
    JsonNode reply = Json.read(response.body());
    assertEquals(1, reply.path("took").size());
    assertEquals("ended", reply.path("sitting").asText());
    assertEquals("Noor", pieces().get(0).child().name());
    assertTrue(pieces().get(0).evidence().late(), "it came after the sitting had ended");
  }

  @Test
  void anotherSittingsWorkIsRefusedAsUnknown() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    Tablet elsie = Tablet.comeIn(rig, rig.children.get(1));
    JsonNode reply = elsie.sent(elsie.item(noor.work(1), 1, "handed-in", RIGHT));
    assertEquals(0, reply.path("took").size());
    assertEquals("unknown", reply.path("refused").get(0).get(3).asText());
    assertTrue(pieces().isEmpty());
  }

  @Test
  void aWrongKeyAddsNothing() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    noor.key = "0".repeat(32);
    assertEquals(403, noor.send(noor.item(noor.work(1), 1, "handed-in", RIGHT)).statusCode());
    noor.sitting = "f".repeat(32);
    assertEquals(403, noor.send(noor.item(noor.work(1), 1, "handed-in", RIGHT)).statusCode());
    assertTrue(pieces().isEmpty());
  }

  @Test
  void whatIsNotReadableIsRefusedWithASentence() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    for (String body : List.of("", "{", "[]", "{\"sitting\":5}", "null", "\u0000", "{\"sitting\":\"" + noor.sitting
        + "\",\"key\":\"" + noor.key + "\",\"items\":7}")) {
      HttpResponse<String> response = noor.browser.postJson("/work", body);
      assertTrue(List.of(400, 403).contains(response.statusCode()), body + " -> " + response.statusCode());
      assertFalse(Json.read(response.body()).path("problem").asText().isBlank());
    }
    assertEquals(413, noor.browser.postJson("/work", "x".repeat(61 * 1024)).statusCode());
  }

  @Test
  void aTooBigPieceIsRefusedAndTheRestIsTaken() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    Work big = new Work("1".repeat(9_000), "", "", Bars.EMPTY, null);
    JsonNode reply = noor.sent(noor.item(noor.work(1), 1, "draft", big), noor.item(noor.work(2), 1, "draft", RIGHT));
    assertEquals("too-big", reply.path("refused").get(0).get(3).asText());
    assertEquals(noor.work(2), reply.path("took").get(0).get(0).asText());
  }

  @Test
  void ageIsBelievedOnlyBackToTheStartOfTheSitting() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    var item = noor.item(noor.work(1), 1, "handed-in", RIGHT);
    item.put("age", 3L * 24 * 3600 * 1000);
    noor.sent(item);
    var sitting = rig.services.sittings.find(noor.sitting).orElseThrow();
    assertEquals(sitting.startedAt(), pieces().get(0).evidence().at());
  }

  @Test
  void leaveEndsTheSittingAndLaterWorkStillComesIn() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    assertEquals("ended", noor.sent(noor.item(noor.work(1), 1, "leave", null)).path("sitting").asText());
    assertEquals(1, noor.sent(noor.item(noor.work(1), 2, "handed-in", RIGHT)).path("took").size());
    assertEquals(303, noor.browser.get("/mine").statusCode());
  }

  @Test
  void plainTextFromABeaconIsTakenToo() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    HttpResponse<String> response = noor.browser.send(noor.browser.request("/work")
        .header("Content-Type", "text/plain")
        .header("Origin", "http://192.168.9.9:8420")
        .POST(HttpRequest.BodyPublishers.ofString(
            noor.body(List.of(noor.item(noor.work(1), 1, "handed-in", RIGHT))))));
    assertEquals(200, response.statusCode());
    assertEquals("*", response.headers().firstValue("Access-Control-Allow-Origin").orElse(""));
  }

  @Test
  void aTabletWithoutScriptHandsInByAForm() {
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    assertEquals(200, noor.browser.get("/mine/" + noor.work(1)).statusCode());
    assertEquals(303, noor.browser.post("/mine/" + noor.work(1), Map.of("equation", "52 + 14 = x", "answer", "66",
        "label", "shells", "longer", "Tomas", "longerBar", "52", "shorterBar", "?", "gap", "14")).statusCode());
    assertEquals(WRONG, pieces().get(0).evidence().parts());
    assertEquals(404, noor.browser.get("/mine/" + "0".repeat(32)).statusCode());
  }

  @Test
  void aTabletThatComesBeforeTheBoardIsOpenedSeesTodaysPictures() {
    Tablet early = new Tablet(rig);
    String page = early.browser.get("/come-in").body();
    List<String> pictures = rig.services.door(rig.classroom).pictures();
    pictures.forEach(picture -> assertTrue(page.contains("value=\"" + picture + "\""), picture));
    assertEquals(303, early.browser.post("/door", Map.of("taps", String.join(",", pictures))).statusCode());
    assertTrue(early.browser.get("/come-in").body().contains("Noor"));
  }

  @Test
  void wrongPicturesLetNobodyInAndAfterFiveTriesWait() {
    Tablet stranger = new Tablet(rig);
    stranger.browser.get("/come-in");
    List<String> wrong = new java.util.ArrayList<>(rig.services.door(rig.classroom).pictures());
    java.util.Collections.reverse(wrong);
    for (int tries = 0; tries < TabletHandlers.DOOR_TRIES; tries++) {
      assertEquals(200, stranger.browser.post("/door", Map.of("taps", String.join(",", wrong))).statusCode());
    }
    assertEquals(429, stranger.browser.post("/door", Map.of("taps", String.join(",", wrong))).statusCode());
    assertFalse(stranger.browser.get("/come-in").body().contains("Noor"), "no name without the door");
  }

  @Test
  void tabletsHaveDifferentNames() {
    Tablet.comeIn(rig, rig.children.get(0));
    Tablet.comeIn(rig, rig.children.get(1));
    var open = rig.services.sittings.open(rig.classroom.id());
    assertEquals(2, open.size());
    assertNotEquals(open.get(0).tabletName(), open.get(1).tabletName());
  }
}
