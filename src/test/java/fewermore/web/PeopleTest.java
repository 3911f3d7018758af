package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.Database;
import fewermore.store.Stores;
import java.net.http.HttpResponse;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Several people at one laptop. */
class PeopleTest {
  private static Browser in(Rig rig, String who, String passphrase) {
    Browser browser = new Browser(rig.teacherAddress());
    browser.get("/sign-in");
    assertEquals(303, browser.post("/sign-in", Map.of("who", who, "passphrase", passphrase)).statusCode(), who);
    browser.get(who.startsWith("s") ? "/today" : "/setup/people");
    return browser;
  }

  @Test
  void twoTeachersHaveClassesOfTheirOwnAndEachDoorIsOneClasss() {
    try (Rig rig = Rig.start()) {
      Browser first = in(rig, "t" + rig.classroom.teacher(), Rig.PASSPHRASE);
      assertEquals(422, first.post("/setup/people/teacher", Map.of("name", "Teacher", "passphrase", "a loud sea wind",
          "again", "a loud sea wind")).statusCode(), "two teachers must be told apart");
      assertEquals(303, first.post("/setup/people/teacher", Map.of("name", "Mr. Lind", "passphrase", "a loud sea wind",
          "again", "a loud sea wind")).statusCode());
      assertTrue(new Browser(rig.teacherAddress()).get("/sign-in").body().contains("Mr. Lind"));
      long lind = rig.services.teachers.all().get(1).id();
      Browser wrong = new Browser(rig.teacherAddress());
      wrong.get("/sign-in");
      assertEquals(422, wrong.post("/sign-in", Map.of("who", "t" + lind, "passphrase", Rig.PASSPHRASE)).statusCode(),
          "one teacher's passphrase does not open another's");
      Browser second = in(rig, "t" + lind, "a loud sea wind");
      second.get("/welcome");
      assertEquals(303, second.post("/classes", Map.of("name", "Room 14", "names", "Juno\nIbo")).statusCode());
      String setup = second.get("/setup").body();
      assertTrue(setup.contains("Juno") && !setup.contains("Elsie"), "only her own class");
      assertTrue(second.get("/plan").body().contains("Room 14"), "the class's name on the page");
      assertFalse(first.get("/setup").body().contains("Juno"));

      long room14 = rig.services.classes.of(lind).get(0).id();
      var other = rig.services.classes.find(room14).orElseThrow();
      Browser tablet = new Browser(rig.tabletAddress());
      tablet.get("/in/" + rig.services.door(other).token());
      String list = tablet.get("/come-in").body();
      assertTrue(list.contains("Juno") && !list.contains("Elsie"), "a door belongs to one class");
      assertEquals(404, tablet.get("/come-in/" + rig.children.get(0).id()).statusCode());
    }
  }

  @Test
  void changingClassAsksFirst() {
    try (Rig rig = Rig.start()) {
      var other = rig.services.classes.add(rig.classroom.teacher(), "Room 14", rig.classroom.zone(), false,
          Rig.children("Juno"), rig.now());
      Browser teacher = in(rig, "t" + rig.classroom.teacher(), Rig.PASSPHRASE);
      teacher.post("/classes/" + rig.classroom.id() + "/look", Map.of());
      assertTrue(teacher.get("/classes").body().contains("Room 14"));
      String asks = teacher.get("/classes/" + other.id()).body();
      assertTrue(asks.contains("From Room 12 to Room 14?"), "it asks");
      assertTrue(teacher.get("/setup").body().contains("Elsie"), "asking changes nothing");
      assertEquals(303, teacher.post("/classes/" + other.id() + "/look", Map.of()).statusCode());
      assertTrue(teacher.get("/setup").body().contains("Juno"));
    }
  }

  @Test
  void aSubstituteIsInOnlyAsLongAsTheTeacherLets() {
    try (Rig rig = Rig.start()) {
      Browser teacher = in(rig, "t" + rig.classroom.teacher(), Rig.PASSPHRASE);
      assertEquals(303, teacher.post("/setup/people/substitute",
          Map.of("passphrase", "only for today", "again", "only for today")).statusCode());
      assertEquals(303, teacher.post("/setup/people/substitute/note",
          Map.of("note", "The fire door sticks.")).statusCode());
      Browser substitute = in(rig, "s" + rig.classroom.id(), "only for today");
      String today = substitute.get("/today").body();
      assertTrue(today.contains("The fire door sticks."));
      assertTrue(today.contains("How many shells does Ines have?") && today.contains("38 shells"));
      assertFalse(today.contains("href=\"/findings\"") || today.contains("href=\"/records\""), "no way to a record");
      assertEquals(200, substitute.get("/board").statusCode());
      assertEquals(403, substitute.get("/findings").statusCode());
      assertEquals(403, substitute.get("/records/child/" + rig.children.get(0).id()).statusCode());
      assertEquals(303, teacher.post("/setup/people/substitute/end", Map.of()).statusCode());
      HttpResponse<String> out = substitute.get("/today");
      assertEquals("/sign-in", out.headers().firstValue("Location").orElse(""), "signed out at once");
    }
  }

  @Test
  void aPassphraseIsChangedByWhoKnowsItAndEndsHerOtherSessions() {
    try (Rig rig = Rig.start()) {
      String who = "t" + rig.classroom.teacher();
      Browser here = in(rig, who, Rig.PASSPHRASE);
      Browser elsewhere = in(rig, who, Rig.PASSPHRASE);
      Map<String, String> change = Map.of("old", "not this one", "passphrase", "a new tide pool", "again", "a new tide pool");
      assertEquals(422, here.post("/setup/people/passphrase", change).statusCode());
      assertEquals(303, here.post("/setup/people/passphrase", Map.of("old", Rig.PASSPHRASE, "passphrase",
          "a new tide pool", "again", "a new tide pool")).statusCode());
      assertEquals(200, here.get("/setup/people").statusCode());
      assertEquals(303, elsewhere.get("/setup/people").statusCode(), "the other session ended");
      in(rig, who, "a new tide pool");
    }
  }

  @Test
  void aForgottenPassphraseIsSetOnTheLaptopWhileTheAppIsStopped() {
    Rig rig = Rig.start();
    long teacher = rig.classroom.teacher();
    rig.services.teachers.add("Mr. Lind", Passphrases.hash("a loud sea wind"), false, rig.now());
    rig.stop();
    try (Database database = Stores.open(rig.folder)) {
      assertTrue(ForgottenPassphrase.set(database, null, "a newer tide pool").contains("\"Mr. Lind\""), "which one?");
      assertTrue(ForgottenPassphrase.set(database, "Teacher", "short").contains("Nothing was changed"));
      assertTrue(ForgottenPassphrase.set(database, "teacher", "a newer tide pool").startsWith("Set."));
    }
    try (Rig again = Rig.startAgain(rig.folder, 0, 0, null)) {
      in(again, "t" + teacher, "a newer tide pool");
    }
  }
}
