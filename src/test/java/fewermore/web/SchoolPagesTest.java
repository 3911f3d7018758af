package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.Database;
import fewermore.store.Postgres;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a teacher reads whose classes lie in the school's database, beside another laptop's. */
class SchoolPagesTest {
  private static Rig rig() throws Exception {
    Path folder = Files.createTempDirectory("fewermore-school");
    return Rig.startOn(folder, Database.open(folder, Postgres.school(), (data, from) -> { }));
  }

  @Test
  void herPagesSayWhereHerClassesLieAndShowNobodyElses() throws Exception {
    try (Rig hers = rig(); Rig another = rig()) {
      another.services.classes.add(another.services.teachers.first().orElseThrow().id(), "Room of another laptop",
          another.classroom.zone(), false, Rig.children("Zebedee"), another.now());
      Browser teacher = RouteTableTest.signedInTo(hers);
      String setup = teacher.get("/setup").body();
      assertTrue(setup.contains("All data lie in the school’s database") && setup.contains("/postgres, fewermore_"), setup);
      assertFalse(setup.contains("Nothing leaves it"), setup);
      assertTrue(teacher.get("/setup/people").body().contains("--school"));
      for (String page : new String[] {"/setup", "/room", "/findings", "/plan", "/records", "/setup/people"}) {
        String body = teacher.get(page).body();
        assertFalse(body.contains("Zebedee") || body.contains("Room of another laptop"), page);
      }
      String door = another.door();
      assertEquals(303, new Browser(another.tabletAddress()).get("/in/" + door).statusCode());
      assertEquals(404, new Browser(hers.tabletAddress()).get("/in/" + door).statusCode(), "a door of another laptop");
      Browser outside = new Browser(another.teacherAddress());
      outside.cookies.putAll(teacher.cookies);
      assertEquals(303, outside.get("/findings").statusCode(), "who is signed in there is not signed in here");
    }
  }

  @Test
  void aTabletsWorkIsTakenByItsOwnLaptopOnly() throws Exception {
    try (Rig hers = rig(); Rig another = rig()) {
      Tablet tablet = Tablet.comeIn(hers, hers.children.get(0));
      String body = tablet.body(java.util.List.of(tablet.item(tablet.work(1), 1, "handed-in", new fewermore.marking.Work("52 - 14 = x", "38", "shells", null, null))));
      assertTrue(new Browser(another.tabletAddress()).postJson("/work", body).statusCode() >= 400);
      assertEquals(0, another.services.works.handIns());
      assertEquals(200, tablet.browser.postJson("/work", body).statusCode());
      assertEquals(1, hers.services.works.handIns());
    }
  }

  @Test
  void sheMakesBackupsAndReadsWhoseMatterGoingBackIs() throws Exception {
    try (Rig rig = rig()) {
      Tablet.comeIn(rig, rig.children.get(0));
      Browser teacher = RouteTableTest.signedInTo(rig);
      teacher.get("/setup/backups");
      assertEquals(303, teacher.post("/setup/backups", Map.of()).statusCode());
      for (int tries = 0; tries < 200 && rig.services.backups.backups().list().isEmpty(); tries++) {
        Thread.sleep(50);
      }
      String name = rig.services.backups.backups().list().get(0).path().getFileName().toString();
      String page = teacher.get("/setup/backups/" + name).body();
      assertTrue(page.contains("the matter of whoever looks after it"), page);
      assertFalse(page.contains("java -jar"), page);
      assertEquals(404, teacher.post("/setup/backups/" + name + "/restore", Map.of("newer", "0")).statusCode());
    }
  }
}
