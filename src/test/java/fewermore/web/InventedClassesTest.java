package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Findings;
import fewermore.classroom.HandIn;
import fewermore.classroom.InventedClass;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.Topic;
import fewermore.marking.Bars;
import fewermore.marking.Marker;
import fewermore.marking.Work;
import java.net.http.HttpResponse;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The invented class beside a real one, in the real app. */
class InventedClassesTest {
  private static Rig rig;
  private static Map<String, List<String>> before;
  private static long tabletsBefore;
  private static Classroom invented;
  private static long forces;

  @BeforeAll
  static void aRealClassHasWorkAndAnInventedOneIsMade() {
    rig = Rig.start();
    Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
    noor.sent(noor.item(noor.work(1), 1, "handed-in", new Work("52 + 14 = x", "66", "shells", Bars.EMPTY, null)));
    before = everyRow(rig);
    tabletsBefore = rig.services.sittings.tablets();
    long forcesBefore = rig.app.forces();
    Browser teacher = signedIn();
    teacher.get("/welcome");
    HttpResponse<String> made = teacher.post("/classes/invented", Map.of());
    assertEquals("/findings", made.headers().firstValue("Location").orElse(""), made.body());
    forces = rig.app.forces() - forcesBefore;
    invented = rig.services.classes.of(rig.classroom.teacher()).stream().filter(Classroom::invented).findFirst()
        .orElseThrow();
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  private static Browser signedIn() {
    Browser browser = new Browser(rig.teacherAddress());
    browser.get("/sign-in");
    browser.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    return browser;
  }

  /** All there is in the database, by table, but what Flyway keeps for itself. */
  private static Map<String, List<String>> everyRow(Rig rig) {
    return rig.services.database.read(handle -> {
      Map<String, List<String>> rows = new TreeMap<>();
      handle.createQuery("""
              SELECT table_name
                FROM information_schema.tables
               WHERE table_schema = CURRENT_SCHEMA
                 AND table_name NOT LIKE 'flyway%'""")
          .mapTo(String.class)
          .list()
          .forEach(table -> rows.put(table, handle.createQuery("SELECT * FROM \"" + table + "\"").mapToMap().list().stream()
              // Written by the app itself some time after its start: where tablets reach it.
              .filter(row -> !"address".equals(row.get("name"))).toList()
              .stream().map(Object::toString).sorted().toList()));
      return rows;
    });
  }

  private static List<PieceOfWork> pieces() {
    return rig.services.works.pieces(invented.id());
  }

  @Test
  void findingsHasMostOfTheStatementsItCanMakeAndSaysTooEarlyOfWhoJustJoined() {
    Findings found = Findings.of(
        rig.services.classes.children(invented.id()), pieces(), rig.services.today(invented));
    Set<Topic> said = EnumSet.noneOf(Topic.class);
    found.statements().forEach(finding -> said.add(finding.topic()));
    assertTrue(said.containsAll(EnumSet.of(Topic.FROM_THE_STORY, Topic.TOO_EARLY, Topic.DIFFERENCE_AS_AMOUNT)), "said: " + said);
    assertTrue(said.size() >= 6, "said: " + said);
    long little = found.about(Topic.TOO_EARLY).orElseThrow().children().stream()
        .filter(each -> each.reasoning().counted().size() < 3).count();
    assertEquals(2, little, "those who just joined");
    assertEquals(InventedClass.USUAL, found.statements().stream().mapToInt(each -> each.children().size()).sum());
  }

  @Test
  void theFindingsPageShowsTheStatements() {
    Browser teacher = signedIn();
    teacher.get("/plan");
    teacher.post("/classes/" + invented.id() + "/look", Map.of());
    String page = teacher.get("/findings").body();
    for (Topic topic : EnumSet.of(Topic.FROM_THE_STORY, Topic.TOO_EARLY)) {
      assertTrue(page.contains("/findings?about=" + topic.id()), topic + " is not on the page");
    }
    Child child = rig.services.classes.children(invented.id()).get(0);
    assertTrue(page.contains(child.name()), "the children stand in the grid");
  }

  @Test
  void theWorkWasMarkedByTheAppAsItCameIn() {
    List<PieceOfWork> pieces = pieces();
    assertTrue(pieces.size() > 1_000, "pieces: " + pieces.size());
    Set<Child> children = new HashSet<>();
    for (PieceOfWork piece : pieces) {
      children.add(piece.child());
      for (HandIn handIn : piece.handIns()) {
        assertEquals(Marker.mark(piece.problem().story(), handIn.parts()).equation().reason(),
            handIn.marks().equation().reason());
        assertFalse(handIn.late(), "on the day of its set, before the sitting's end");
      }
      List<HandIn> tries = piece.handIns();
      tries.subList(0, tries.size() - 1).forEach(handIn ->
          assertNotEquals(null, handIn.told(), "another try follows a prompt"));
    }
    assertEquals(InventedClass.USUAL, children.size());
  }

  @Test
  void aDayCostsAFewTripsToTheDiskNotOneForEachChild() {
    assertTrue(forces <= 5L * (InventedClass.DAYS_BEFORE + 1), "forces: " + forces);
  }

  @Test
  void someChildrenOfTodayAreStillIn() {
    assertFalse(rig.services.sittings.open(invented.id()).isEmpty());
  }

  @Test
  void theClassListIsOneATeacherCouldHavePasted() {
    String pasted = rig.services.classes.children(invented.id()).stream().map(Child::name)
        .collect(Collectors.joining("\n"));
    assertEquals(InventedClass.USUAL, ClassList.read(pasted, List.of()).children().size());
  }

  @Test
  void noTwoInventedTabletsHaveOneNameAndRealOnesBeginAtTheOtherEnd() {
    Set<String> names = new HashSet<>();
    for (int tablet = 0; tablet < InventedClass.MOST; tablet++) {
      names.add(Animals.fromTheEnd(tablet));
    }
    assertEquals(InventedClass.MOST, names.size());
    assertNotEquals(Animals.name(0), Animals.fromTheEnd(0));
  }

  @Test
  void aRealTabletIsNumberedAsIfThereWereNoInventedOnes() {
    assertEquals(tabletsBefore, rig.services.sittings.tablets());
  }

  @Test
  void noRowOfTheRealClassIsTouchedAndThrownAwayNothingIsLeft() {
    try (Rig own = Rig.start()) {
      Tablet elsie = Tablet.comeIn(own, own.children.get(1));
      elsie.sent(elsie.item(elsie.work(1), 1, "handed-in", new Work("52 - 14 = x", "38", "shells", Bars.EMPTY, null)));
      Map<String, List<String>> real = everyRow(own);
      assertTrue(real.size() >= 12, "tables: " + real.keySet());
      Classroom made = own.services.invented.make(own.classroom.teacher(), 7, own.classroom.zone());
      Classroom second = own.services.invented.make(own.classroom.teacher(), 5, own.classroom.zone());
      Map<String, List<String>> both = everyRow(own);
      real.forEach((table, rows) ->
          assertTrue(both.get(table).containsAll(rows), table + ": a row of the real class was changed"));
      assertTrue(own.services.classes.throwAway(own.classroom.teacher(), made.id()));
      assertEquals(5, own.services.classes.children(second.id()).size(), "another invented class stays");
      assertFalse(own.services.works.pieces(second.id()).isEmpty());
      assertTrue(own.services.classes.throwAway(own.classroom.teacher(), second.id()));
      assertEquals(real, everyRow(own));
    }
  }

  @Test
  void theRealClassHasItsRowsAsBefore() {
    Map<String, List<String>> now = everyRow(rig);
    before.forEach((table, rows) -> assertTrue(now.get(table).containsAll(rows), table));
    assertEquals(1, rig.services.works.pieces(rig.classroom.id()).size());
  }
}
