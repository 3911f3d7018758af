package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.OfTheFile;
import fewermore.classroom.Child;
import fewermore.marking.Work;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The class list, the year, and erasing for good. */
class SetupTest {
  private static Browser teacher(Rig rig) {
    Browser browser = new Browser(rig.teacherAddress());
    browser.get("/sign-in");
    assertEquals(303, browser.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE)).statusCode());
    browser.get("/setup/list");
    return browser;
  }

  /** A form with several fields of one name. */
  private static HttpResponse<String> save(Browser browser, String... names) {
    String csrf = browser.get("/setup/list").body().replaceFirst("(?s).*name=\"csrf\" value=\"([^\"]*)\".*", "$1");
    StringBuilder body = new StringBuilder("csrf=" + csrf);
    for (String name : names) {
      body.append("&name=").append(java.net.URLEncoder.encode(name, StandardCharsets.UTF_8)).append("&language=es&roster=");
    }
    return browser.send(browser.request("/setup/list/save").header("Content-Type", "application/x-www-form-urlencoded")
        .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
  }

  @Test
  void twoChildrenOfOneNameAreToldApartBeforeAnythingIsSaved() {
    try (Rig rig = Rig.start()) {
      Browser teacher = teacher(rig);
      String read = teacher.post("/setup/list", Map.of("names", "first name,last name\nAnna,Ames\nAnna,Brand\nNoor,Cole"))
          .body();
      assertTrue(read.contains("two of this name") && read.contains("value=\"Anna A.\"") && read.contains("Anna B."));
      assertTrue(read.contains("in the class already"), "Noor is there already");
      assertEquals(422, save(teacher, "Anna", "anna", "Kai").statusCode());
      assertEquals(422, save(teacher, "Noor").statusCode());
      assertEquals(3, rig.services.classes.children(rig.classroom.id()).size(), "nothing was saved");
      assertEquals(303, save(teacher, "Anna A.", "Anna B.", "Kai", "").statusCode());
      List<Child> children = rig.services.classes.children(rig.classroom.id());
      assertEquals(List.of("Noor", "Elsie", "Kofi", "Anna A.", "Anna B.", "Kai"), children.stream().map(Child::name).toList());
      assertEquals("es", children.get(3).language());
      assertEquals(6, children.stream().map(Child::picture).distinct().count(), "each has a picture of her own");
    }
  }

  @Test
  void aChildLeavesAndComesBackWithHerRecord() {
    try (Rig rig = Rig.start()) {
      Tablet kofi = Tablet.comeIn(rig, rig.children.get(2));
      kofi.sent(kofi.item(kofi.work(1), 1, "handed-in", new Work("52 - 14 = x", "38", "shells", null, null)));
      Browser teacher = teacher(rig);
      String child = "/setup/child/" + rig.children.get(2).id();
      assertEquals(303, teacher.post(child + "/leave", Map.of()).statusCode());
      assertEquals(303, kofi.browser.get("/mine").statusCode(), "her sitting is over");
      assertFalse(kofi.browser.get("/come-in").body().contains("Kofi"));
      assertTrue(teacher.get("/records/child/" + rig.children.get(2).id()).body().contains("Left the class"));
      assertEquals(303, save(teacher, "Kofi").statusCode());
      assertEquals(422, teacher.post(child + "/come-back", Map.of()).statusCode(), "two would be called Kofi");
      assertEquals(303, teacher.post(child, Map.of("name", "Kofi B.", "picture", "moon", "language", "es")).statusCode());
      assertEquals(303, teacher.post(child + "/come-back", Map.of()).statusCode());
      assertTrue(rig.services.works.pieces(rig.classroom.id()).stream()
          .anyMatch(piece -> piece.child().name().equals("Kofi B.")));
    }
  }

  @Test
  void howASetIsGivenHoldsForTheNextSet() {
    try (Rig rig = Rig.start()) {
      Browser teacher = teacher(rig);
      Map<String, String> setup = Map.of("name", "Room 12", "zone", "America/Denver", "tries", "2", "tell", "later",
          "part-equation", "yes", "part-answer", "yes");
      assertEquals(303, teacher.post("/setup", setup).statusCode());
      assertEquals(422, teacher.post("/setup", Map.of("name", "Room 12", "zone", "Mars/Olympus", "tries", "2",
          "part-answer", "yes")).statusCode());
      assertEquals(422, teacher.post("/setup", Map.of("name", "Room 12", "zone", "America/Denver", "tries", "9",
          "part-answer", "yes")).statusCode());
      assertTrue(teacher.get("/setup").body().contains("a back row <b>27</b> away"), "and the Board's size is said");
      assertEquals(303, teacher.post("/plan", Map.of("mix", "mine", "larger-fewer", "1")).statusCode());
      var sets = rig.services.problems.sets(rig.classroom.id(), rig.services.today(
          rig.services.classes.find(rig.classroom.id()).orElseThrow()));
      var made = sets.get(sets.size() - 1);
      assertEquals(2, made.tries());
      assertTrue(made.tellLater());
      assertEquals(2, made.asks().size());
    }
  }

  @Test
  void lastYearsClassCanBeReadAndNothingInItIsChanged() {
    try (Rig rig = Rig.start()) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      Browser teacher = teacher(rig);
      assertEquals(422, teacher.post("/setup/year/close", Map.of()).statusCode(), "kept until comes first");
      assertEquals(303, teacher.post("/setup/year/until", Map.of("until", "2030-06-30")).statusCode());
      assertEquals(303, teacher.post("/setup/year/close", Map.of()).statusCode());
      assertEquals(200, teacher.get("/records").statusCode());
      assertEquals(200, teacher.get("/records/child/" + rig.children.get(0).id()).statusCode());
      assertEquals(422, teacher.post("/plan", Map.of("mix", "proposed")).statusCode());
      assertEquals(422, teacher.post("/records/child/" + rig.children.get(0).id() + "/note",
          Map.of("content", "x")).statusCode());
      assertEquals(403, tablet.browser.get("/come-in/" + rig.children.get(0).id()).statusCode(), "its door is shut");
      assertEquals(303, tablet.browser.get("/mine").statusCode());
      assertEquals(303, teacher.post("/setup/year/open", Map.of()).statusCode());
      assertEquals(303, teacher.post("/plan", Map.of("mix", "proposed")).statusCode());
    }
  }

  /** Everything the app has written under its data folder. */
  private static boolean inAnyFile(Path folder, String text) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
        byte[] content = Files.readAllBytes(file);
        for (var charset : List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16BE, StandardCharsets.UTF_16LE)) {
          String sought = new String(text.getBytes(charset), StandardCharsets.ISO_8859_1);
          if (new String(content, StandardCharsets.ISO_8859_1).contains(sought)) {
            return true;
          }
        }
      }
    }
    return false;
  }

  @OfTheFile("what it holds after erasing")
  @Test
  void anErasedChildIsInNoRawFileAndAnotherChildIsUntouched() throws IOException {
    try (Rig rig = Rig.start()) {
      String name = "Quetzalina";
      Child odd = new Child(rig.children.get(1).id(), rig.classroom.id(), name, "moon", "fog", "en");
      rig.services.setups.change(odd);
      Tablet tablet = Tablet.comeIn(rig, odd);
      tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", new Work("52 - 14 = x", "38", "zorblaxes", null, null)));
      Tablet other = Tablet.comeIn(rig, rig.children.get(0));
      other.sent(other.item(other.work(1), 1, "handed-in", new Work("52 - 14 = x", "38", "shells", null, null)));
      Browser teacher = teacher(rig);
      String record = "/records/child/" + odd.id();
      teacher.post(record + "/note", Map.of("content", "Spoke of fluorspar."));
      long problem = rig.set.problems().get(0).id();
      teacher.post(record + "/choose", Map.of("problem", Long.toString(problem), "chosen", "yes"));
      teacher.post(record + "/conference?in=en", Map.of("next", "We will trade tens with tourmaline."));
      for (String trace : List.of(name, "zorblaxes", "fluorspar", "tourmaline")) {
        assertTrue(inAnyFile(rig.folder, trace), "before erasing, " + trace + " must be found by this very search");
      }
      assertEquals(303, teacher.post(record + "/request", Map.of("open", "yes")).statusCode());
      assertEquals(422, teacher.post("/setup/child/" + odd.id() + "/erase", Map.of("typed", name)).statusCode(),
          "held while a family's request is open");
      teacher.get(record);
      assertEquals(303, teacher.post(record + "/request", Map.of("open", "no")).statusCode());
      assertEquals(422, teacher.post("/setup/child/" + odd.id() + "/erase", Map.of("typed", "Elsie")).statusCode());
      HttpResponse<String> erased = teacher.post("/setup/child/" + odd.id() + "/erase", Map.of("typed", name));
      assertEquals(200, erased.statusCode());
      assertTrue(erased.body().contains("What the app can’t reach"));
      for (String trace : List.of(name, "zorblaxes", "fluorspar", "tourmaline")) {
        assertFalse(inAnyFile(rig.folder, trace), trace + " is still in a file");
      }
      assertEquals(1, rig.services.works.pieces(rig.classroom.id()).size(), "the other child's work is there");
      assertEquals(200, other.browser.get("/mine").statusCode(), "the app goes on");
      other.sent(other.item(other.work(2), 2, "handed-in", new Work("15 + 19 = x", "34", "beads", null, null)));
      assertEquals(404, teacher.get(record).statusCode());
      var refused = tablet.send(tablet.item(tablet.work(2), 2, "handed-in", new Work("1", "1", "x", null, null)));
      assertTrue(refused.statusCode() < 500, "work that still waited on her tablet is refused in good order");
      assertFalse(inAnyFile(rig.folder, name));
    }
  }

  @OfTheFile("what it holds after erasing")
  @Test
  void anErasedClassIsInNoRawFile() throws IOException {
    try (Rig rig = Rig.start()) {
      rig.services.setups.change(new Child(rig.children.get(1).id(), rig.classroom.id(), "Quetzalina", "moon", "fog", "en"));
      Browser teacher = teacher(rig);
      assertTrue(inAnyFile(rig.folder, "Quetzalina"));
      assertEquals(422, teacher.post("/setup/year/erase", Map.of("typed", "Room 1")).statusCode());
      assertEquals(200, teacher.post("/setup/year/erase", Map.of("typed", "room 12")).statusCode());
      assertFalse(inAnyFile(rig.folder, "Quetzalina"));
      assertFalse(inAnyFile(rig.folder, "Room 12"));
      assertEquals("/welcome", teacher.get("/plan").headers().firstValue("Location").orElse(""));
    }
  }

  @Test
  void aTableMadeLaterIsErasedWithTheChildItHangsOn() {
    try (Rig rig = Rig.start()) {
      long child = rig.children.get(0).id();
      rig.services.database.change(handle -> {
        handle.execute("CREATE TABLE later (child_id BIGINT NOT NULL REFERENCES child (id), other BIGINT PRIMARY KEY)");
        handle.execute("CREATE TABLE deeper (later_id BIGINT NOT NULL REFERENCES later (other))");
        rig.children.forEach(each -> handle.execute("INSERT INTO later VALUES (?, ?)", each.id(), each.id()));
        rig.children.forEach(each -> handle.execute("INSERT INTO deeper VALUES (?)", each.id()));
      });
      assertEquals(fewermore.store.Erasing.Fate.GONE, rig.services.erasing.child(rig.classroom.id(), child).fate());
      assertEquals(List.of(2L, 2L), rig.services.database.read(handle -> List.of(
          handle.createQuery("SELECT COUNT(*) FROM later").mapTo(Long.class).one(),
          handle.createQuery("SELECT COUNT(*) FROM deeper").mapTo(Long.class).one())), "only hers are gone");
      rig.services.erasing.classroom(rig.classroom.teacher(), rig.classroom.id());
      assertEquals(0L, rig.services.database.<Long>read(handle ->
          handle.createQuery("SELECT COUNT(*) FROM deeper").mapTo(Long.class).one()));
    }
  }
}
