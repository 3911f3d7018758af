package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.json.Json;
import fewermore.marking.Work;
import fewermore.store.Database;
import fewermore.store.Line;
import fewermore.store.OneLossIsALoss;
import fewermore.store.Postgres;
import fewermore.store.disk.StoreState.Kind;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A school's database that is lost is a lost disk: nothing is acknowledged, it is said, and it goes on by itself. */
@Timeout(180)
@OneLossIsALoss
class LostSchoolTest {
  private static Work work(String answer) {
    return new Work("52 - 14 = x", answer, "shells", null, null);
  }

  private static HttpResponse<String> handIn(Tablet tablet, int seq) {
    return tablet.send(tablet.item(tablet.work(1), seq, "handed-in", work("" + seq)));
  }

  private static Rig rigOn(int port) throws Exception {
    Path folder = Files.createTempDirectory("fewermore-school");
    return Rig.startOn(folder, Database.open(folder, Postgres.schoolOf(port), (data, from) -> { }));
  }

  private static void until(String what, BooleanSupplier holds) throws InterruptedException {
    for (int tries = 0; tries < 600 && !holds.getAsBoolean(); tries++) {
      Thread.sleep(50);
    }
    assertTrue(holds.getAsBoolean(), what);
  }

  /** Waits for an event of the room that says so. */
  private static void hears(Listener room, String what, Predicate<String> notSaved) throws InterruptedException {
    for (Listener.Event event = room.events.poll(30, TimeUnit.SECONDS); ; event = room.events.poll(30, TimeUnit.SECONDS)) {
      assertNotNull(event, what);
      if (event.data().startsWith("{") && notSaved.test(Json.read(event.data()).path("notSaved").asText(""))) {
        return;
      }
    }
  }

  @Test
  void aCutIsSaidEverywhereAndSavingGoesOnByItself() throws Exception {
    try (Line line = new Line(Postgres.port()); Rig rig = rigOn(line.port())) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      Browser teacher = RouteTableTest.signedInTo(rig);
      try (Listener room = new Listener(teacher, "/live/room")) {
        assertEquals(200, handIn(tablet, 1).statusCode());
        hears(room, "the room as it is", String::isEmpty);
        line.cut();
        HttpResponse<String> refused = handIn(tablet, 2);
        assertEquals(503, refused.statusCode());
        assertFalse(refused.body().contains("took"), refused.body());
        assertEquals(Kind.LOST, rig.services.database.state().kind());
        hears(room, "an open Room says it", said -> said.contains("the school's database") && said.contains("can't be reached"));
        String page = teacher.get("/room").body();
        assertTrue(page.contains("can&#39;t be reached") && page.contains("school&#39;s network"), page);
        assertEquals(503, teacher.get("/findings").statusCode());
        String child = new Browser(rig.tabletAddress()).get("/come-in").body();
        assertFalse(child.contains("database"), "why is for the teacher to read");
        long began = System.nanoTime();
        assertEquals(503, handIn(tablet, 3).statusCode());
        assertTrue(Duration.ofNanos(System.nanoTime() - began).toMillis() < 2_000, "nobody waits for what is lost");
        line.mend();
        until("saving goes on by itself", () -> handIn(tablet, 2).statusCode() == 200);
        hears(room, "an open Room says that too", String::isEmpty);
      }
      assertEquals(1, Json.read(handIn(tablet, 3).body()).path("took").size());
      assertFalse(teacher.get("/findings").body().contains("not-saved"));
      assertEquals(3, rig.services.works.handIns());
    }
  }

  @Test
  void aPulledCableIsNoticedAndItsLockIsTakenBack() throws Exception {
    try (Line line = new Line(Postgres.port()); Rig rig = rigOn(line.port())) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      assertEquals(200, handIn(tablet, 1).statusCode());
      line.goSilent();
      until("it is noticed without anybody's writing", () -> rig.services.database.state().kind() == Kind.LOST);
      assertEquals(503, handIn(tablet, 2).statusCode());
      line.mend();
      until("the server's own session of before is in nobody's way", () -> handIn(tablet, 2).statusCode() == 200);
      assertEquals(2, rig.services.works.handIns());
    }
  }

  @Test
  void aServerThatEndsAllSessionsStopsNobodyForLong() throws Exception {
    try (Rig rig = rigOn(Postgres.port())) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      for (int seq = 1; seq <= 3; seq++) {
        int now = seq;
        until("hand-in " + seq, () -> handIn(tablet, now).statusCode() == 200);
        try (Rig other = rigOn(Postgres.port())) {
          other.services.database.read(handle -> handle.createQuery(
              "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid() AND datname = 'postgres'")
              .mapTo(Boolean.class).list());
        }
      }
      until("it goes on", () -> handIn(tablet, 4).statusCode() == 200);
      assertEquals(4, rig.services.works.handIns());
    }
  }

  @Test
  void aServerThatTakesNothingIsReadOn() throws Exception {
    try (Rig rig = rigOn(Postgres.port()); Database admin = Database.open(Files.createTempDirectory("fewermore-admin"),
        Postgres.school(), (data, from) -> { })) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      Browser teacher = RouteTableTest.signedInTo(rig);
      assertEquals(200, handIn(tablet, 1).statusCode());
      readOnly(admin, "on");
      try {
        until("nothing is acknowledged", () -> handIn(tablet, 2).statusCode() == 503);
        HttpResponse<String> findings = teacher.get("/findings");
        assertEquals(200, findings.statusCode(), "reading goes on");
        assertTrue(findings.body().contains("takes nothing at present"), "the band is on every page");
      } finally {
        readOnly(admin, "off");
      }
      until("saving goes on by itself", () -> handIn(tablet, 2).statusCode() == 200);
      assertEquals(2, rig.services.works.handIns());
    }
  }

  private static void readOnly(Database admin, String yes) throws Exception {
    admin.<Void, Exception>readWhole(source -> {
      try (var connection = source.getConnection(); var statement = connection.createStatement()) {
        statement.execute("SET default_transaction_read_only = off");
        statement.execute("ALTER SYSTEM SET default_transaction_read_only = " + yes);
        statement.execute("SELECT pg_reload_conf()");
        return null;
      }
    });
  }

  @Test
  void aServerThatIsStoppedIsSaidAndNothingAcknowledgedIsMissingAfterwards() throws Exception {
    Path data = Files.createTempDirectory("fewermore-server");
    int port;
    try (EmbeddedPostgres server = Postgres.startIn(data, 0)) {
      port = server.getPort();
    }
    EmbeddedPostgres server = Postgres.startIn(data, port);
    try (Rig rig = rigOn(port)) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      int acknowledged = 0;
      for (int seq = 1; seq <= 20; seq++) {
        acknowledged += handIn(tablet, seq).statusCode() == 200 ? 1 : 0;
      }
      assertEquals(20, acknowledged);
      server.close();
      assertEquals(503, handIn(tablet, 21).statusCode());
      assertFalse(rig.services.database.state().running());
      server = Postgres.startIn(data, port);
      until("it goes on by itself", () -> handIn(tablet, 21).statusCode() == 200);
      assertEquals(21, rig.services.works.handIns());
    } finally {
      server.close();
    }
  }
}
