package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.classroom.Child;
import fewermore.classroom.HandIn;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;

/** The room by protocol: what tablets send is what its tiles say. */
class RoomLiveTest {
  private static final Work LINE = new Work("52 - 14 = x", "", "", Bars.EMPTY, null);
  private static final Work ALL = new Work("52 - 14 = x", "38", "shells", new Bars("Tomas", "52", "x", "14"), null);
  private static final Work WRONG = new Work("14 + 52 = x", "66", "shells", new Bars("Ines", "52", "x", "14"), null);
  /** Far longer than any change takes; how long it does take is measured by {@link CentreRig}. */
  private static final int PATIENCE_SECONDS = 20;

  private static void until(String what, BooleanSupplier holds) throws InterruptedException {
    for (int tries = 0; tries < PATIENCE_SECONDS * 20 && !holds.getAsBoolean(); tries++) {
      Thread.sleep(50);
    }
    assertTrue(holds.getAsBoolean(), what);
  }

  @Test
  void theWholeComesFirstThenChangesWithTheirIds() throws Exception {
    try (Rig rig = Rig.start(); Listener room = new Listener(RouteTableTest.signedInTo(rig), "/live/room")) {
      Listener.Event whole = room.events.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      assertNotNull(whole);
      assertEquals("whole", whole.name());
      assertEquals(3, Json.read(whole.data()).path("seats").size());
      assertTrue(whole.id().matches("[a-z0-9]+-\\d+"), whole.id());
      assertEquals("2000", room.retry);
      Child noor = rig.children.get(0);
      assertEquals("waiting, not come in yet", room.status(noor.id()) + ", " + room.where(noor.id()));

      Tablet tablet = Tablet.comeIn(rig, noor);
      until("she is in", () -> room.where(noor.id()).equals("just came in"));
      tablet.sent(tablet.item(tablet.work(1), 1, "draft", LINE));
      until("she works", () -> room.where(noor.id()).equals("problem 1, equation"));
      tablet.sent(tablet.item(tablet.work(1), 2, "help", null));
      until("her hand is up", () -> room.status(noor.id()).equals("stuck"));
      Browser teacher = RouteTableTest.signedInTo(rig);
      teacher.get("/room");
      assertEquals(303, teacher.post("/room/child/" + noor.id() + "/been", Map.of()).statusCode());
      until("her hand is lowered", () -> room.status(noor.id()).equals("working"));
      for (int seq = 3; seq <= 5; seq++) {
        tablet.sent(tablet.item(tablet.work(1), seq, "handed-in", WRONG));
      }
      until("no tries are left", () -> room.where(noor.id()).equals("problem 1, no tries"));
      tablet.sent(tablet.item(tablet.work(2), 1, "handed-in", ALL));
      tablet.sent(tablet.item(tablet.work(2), 2, "leave", null));
      until("she is done", () -> room.where(noor.id()).equals("all 2 handed in"));
      assertTrue(room.tiles.get(noor.id()).path("tablet").asText().isEmpty());
    }
  }

  @Test
  void thirtyTabletsAtOnceEachHaveTheirOwnTile() throws Exception {
    try (Rig rig = Rig.start()) {
      List<String> names = new ArrayList<>();
      for (int at = 0; at < 27; at++) {
        names.add("Child" + (char) ('A' + at));
      }
      rig.services.classes.addChildren(rig.classroom.id(), Rig.children(names.toArray(String[]::new)), rig.now());
      List<Child> children = rig.services.classes.children(rig.classroom.id());
      assertEquals(30, children.size());
      try (Listener room = new Listener(RouteTableTest.signedInTo(rig), "/live/room")) {
        List<Tablet> tablets = new ArrayList<>();
        for (Child child : children) {
          tablets.add(Tablet.comeIn(rig, child));
        }
        children.stream().parallel().forEach(child -> {
          int at = children.indexOf(child);
          Tablet tablet = tablets.get(at);
          switch (at % 4) {
            case 0 -> tablet.sent(tablet.item(tablet.work(1), 1, "draft", LINE));
            case 1 -> tablet.sent(tablet.item(tablet.work(2), 1, "help", null));
            case 2 -> tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", ALL),
                tablet.item(tablet.work(2), 1, "handed-in", ALL), tablet.item(tablet.work(2), 2, "leave", null));
            default -> tablet.sent(tablet.item(tablet.work(1), 1, "leave", null));
          }
        });
        List<String> expected = List.of("working", "stuck", "done", "waiting");
        for (int at = 0; at < children.size(); at++) {
          long id = children.get(at).id();
          String status = expected.get(at % 4);
          until(children.get(at).name() + " is " + status, () -> room.status(id).equals(status));
        }
      }
    }
  }

  @Test
  void aStalledReaderHoldsNobodyUp() throws Exception {
    try (Rig rig = Rig.start()) {
      Browser teacher = RouteTableTest.signedInTo(rig);
      String topic = Stage.topic(rig.classroom.id());
      try (Socket stalled = new Socket("127.0.0.1", rig.app.teacherPort());
          Listener reader = new Listener(teacher, "/live/board")) {
        stalled.setReceiveBufferSize(4096);
        OutputStream out = stalled.getOutputStream();
        out.write(("GET /live/board HTTP/1.1\r\nHost: 127.0.0.1:" + rig.app.teacherPort() + "\r\nAccept: text/event-stream\r\n"
            + "Cookie: desk=" + teacher.cookies.get("desk") + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
        assertEquals("whole", reader.events.poll(PATIENCE_SECONDS, TimeUnit.SECONDS).name());
        Thread.sleep(500);
        String large = "x".repeat(64 * 1024);
        for (int many = 0; many < 200; many++) {
          rig.services.live.publish(topic, "stage", large);
          if (many % 20 == 19) {
            int wanted = many + 1;
            until("the reader keeps up", () -> reader.events.stream().filter(event -> event.name().equals("stage")).count() >= wanted);
          }
        }
        rig.services.live.publish(topic, "last", "now");
        // A write to the one that stalls hangs for 30 s; whoever waited for it would come after that.
        long start = System.nanoTime();
        until("the last event", () -> reader.events.stream().anyMatch(event -> event.name().equals("last")));
        assertTrue(TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start) < 15);
        assertFalse(reader.ended);
        assertEquals(200, teacher.get("/room").statusCode());
      }
    }
  }

  @Test
  void pauseAllReachesEveryTabletWithItsSentenceInTheChildsLanguage() {
    try (Rig rig = Rig.start()) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      assertFalse(Json.read(tablet.browser.get("/pulse").body()).path("paused").asBoolean(true));
      Browser teacher = RouteTableTest.signedInTo(rig);
      teacher.get("/room");
      teacher.post("/room/pause", Map.of());
      JsonNode pulse = Json.read(tablet.browser.get("/pulse").body());
      assertTrue(pulse.path("paused").asBoolean());
      assertTrue(pulse.path("pause").asText().startsWith("Look at your teacher"), pulse.toString());
      assertTrue(tablet.sent(tablet.item(tablet.work(1), 1, "draft", LINE)).path("paused").asBoolean(),
          "with an answer to work too, and the work is taken");
      assertTrue(teacher.get("/room").body().contains("1 of 1 tablet shows it."));
      teacher.post("/room/go-on", Map.of());
      assertFalse(Json.read(tablet.browser.get("/pulse").body()).path("paused").asBoolean(true));
      assertFalse(Json.read(new Browser(rig.tabletAddress()).get("/pulse").body()).has("paused"), "nobody sits there");
    }
  }

  @Test
  void aPauseOutlivesARestart() {
    Rig rig = Rig.start();
    try {
      rig.services.pauses.pause(rig.classroom.id(), rig.now());
      rig.stop();
      rig = Rig.startAgain(rig.folder, 0, 0, null);
      assertTrue(rig.services.pauses.paused(rig.classroom.id()));
    } finally {
      rig.close();
    }
  }

  @Test
  void workThatWasNotHandedInCanBeTakenAsHandedIn() {
    try (Rig rig = Rig.start()) {
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      Tablet elsie = Tablet.comeIn(rig, rig.children.get(1));
      noor.sent(noor.item(noor.work(1), 1, "draft", LINE), noor.item(noor.work(2), 1, "draft", Work.NOT_ASKED));
      elsie.sent(elsie.item(elsie.work(1), 1, "handed-in", ALL), elsie.item(elsie.work(1), 2, "draft", LINE));
      Browser teacher = RouteTableTest.signedInTo(rig);
      assertTrue(teacher.get("/room/take").body().contains("<h1>1 piece of work is not handed in</h1>"), "a list first");
      assertEquals(303, teacher.post("/room/take", Map.of()).statusCode());
      List<HandIn> handIns = rig.services.works.pieces(rig.classroom.id()).stream()
          .filter(piece -> piece.child().equals(rig.children.get(0))).flatMap(piece -> piece.handIns().stream()).toList();
      assertEquals(1, handIns.size(), "what is empty stays open");
      assertEquals(LINE.equation(), handIns.get(0).parts().equation());
      assertTrue(handIns.get(0).marks().equation().fits());
      assertNotNull(handIns.get(0).told(), "blank parts: the tablet is asked to look again from now on");
      assertEquals(1, rig.services.works.pieces(rig.classroom.id()).stream()
          .filter(piece -> piece.child().equals(rig.children.get(1))).findFirst().orElseThrow().tries(),
          "what was handed in is not handed in again");
      assertTrue(teacher.get("/room/child/" + rig.children.get(0).id()).body().contains("you took it as handed in"));
      noor.sent(noor.item(noor.work(1), 1, "draft", LINE));
      assertEquals(1, rig.services.works.piece(rig.classroom.id(), noor.work(1)).orElseThrow().tries(),
          "the tablet's draft again changes nothing");
    }
  }

  @Test
  void twoTabletsAreFlaggedAndOneCanBeClosed() throws Exception {
    try (Rig rig = Rig.start(); Listener room = new Listener(RouteTableTest.signedInTo(rig), "/live/room")) {
      Child noor = rig.children.get(0);
      Tablet one = Tablet.comeIn(rig, noor);
      Tablet.comeIn(rig, noor);
      until("the flag", () -> room.tiles.containsKey(noor.id())
          && room.tiles.get(noor.id()).path("note").asText().equals("2 tablets"));
      Browser teacher = RouteTableTest.signedInTo(rig);
      teacher.get("/room/child/" + noor.id());
      teacher.post("/room/child/" + noor.id() + "/end", Map.of("sitting", one.sitting));
      until("one is closed", () -> room.tiles.get(noor.id()).path("note").asText().isEmpty());
      assertEquals("ended", Json.read(one.browser.get("/pulse").body()).path("sitting").asText());
    }
  }

  @Test
  void anAbsentChildIsMarkedByATapAndLateWorkIsSaid() throws Exception {
    try (Rig rig = Rig.start(); Listener room = new Listener(RouteTableTest.signedInTo(rig), "/live/room")) {
      Child noor = rig.children.get(0);
      Browser teacher = RouteTableTest.signedInTo(rig);
      teacher.get("/room/child/" + noor.id());
      teacher.post("/room/child/" + noor.id() + "/absent", Map.of());
      until("away", () -> room.status(noor.id()).equals("away"));
      teacher.post("/room/child/" + noor.id() + "/here", Map.of());
      until("here", () -> room.status(noor.id()).equals("waiting"));
      Tablet tablet = Tablet.comeIn(rig, noor);
      tablet.sent(tablet.item(tablet.work(1), 1, "draft", LINE), tablet.item(tablet.work(1), 2, "leave", null));
      until("left", () -> room.where(noor.id()).equals("left, 0 of 2 done"));
      Thread.sleep(5);
      tablet.sent(tablet.item(tablet.work(1), 3, "handed-in", ALL));
      until("late", () -> room.tiles.get(noor.id()).path("note").asText().equals("late work"));
      assertTrue(teacher.get("/room/child/" + noor.id()).body().contains("Late work came at"));
    }
  }

  @Test
  void aTabletThatCantReadAloudSaysSo() throws Exception {
    try (Rig rig = Rig.start(); Listener room = new Listener(RouteTableTest.signedInTo(rig), "/live/room")) {
      Child noor = rig.children.get(0);
      Tablet tablet = Tablet.comeIn(rig, noor);
      tablet.browser.postJson("/voice", "{\"sitting\":\"" + tablet.sitting + "\",\"key\":\"" + tablet.key
          + "\",\"voice\":\"none\"}");
      until("no voice", () -> room.tiles.containsKey(noor.id())
          && room.tiles.get(noor.id()).path("note").asText().equals("no voice"));
    }
  }
}
