package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.ClassSetup;
import fewermore.classroom.Classroom;
import fewermore.classroom.InventedPieces;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.ProblemSet;
import fewermore.records.Conference;
import fewermore.records.RosterReader;
import fewermore.store.RecordStore.Kept;
import fewermore.store.RecordStore.Note;
import fewermore.store.RecordStore.OwnSentence;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** People, Setup, Records and Help with the invented class in them. */
final class RecordsPagesForTests {
  private RecordsPagesForTests() {}

  static void addTo(Map<String, String> pages, Classroom room, InventedPieces made, LocalDate today) {
    Child child = made.children.get(0);
    List<PieceOfWork> work = made.pieces.stream().filter(piece -> piece.child().equals(child)).toList();
    ProblemSet set = new ProblemSet(7, 1, today, true, 3, false, ProblemSet.USUAL_PARTS,
        made.pieces.stream().map(PieceOfWork::problem).distinct().limit(6).toList());
    put(pages, "sign-in-several", "sign-in", new SignInPage(null, List.of(new SignInPage.Person("t1", "Ms. Adeyemi"),
        new SignInPage.Person("s1", "Substitute for Room 12")), null), null);
    put(pages, "classes", "classes", ClassesPage.of(room, List.of(room, new Classroom(2, 1, "Room 14", room.zone(), false,
        Instant.EPOCH)), Set.of(2L)), null);
    put(pages, "change-class", "change-class", new ClassesPage.Change("Room 12", 2, "Room 14", 23), null);
    put(pages, "people", "people", new PeoplePage("Ms. Adeyemi", List.of("Mr. Lind"), true, "Kofi sees the aide at ten.",
        "Room 12", "/home/teacher/fewermore-data", "teacher", "The two passphrases are not the same."), Place.SETUP);
    put(pages, "today", "today", TodayPage.of("Room 12", today, List.of(set), "http://192.168.1.23:8420",
        "Kofi sees the aide at ten.\nThe fire door sticks."), Place.TODAY);
    put(pages, "roster-in", "roster-in", RosterPage.refused("", "No names are there yet."), Place.SETUP);
    put(pages, "roster-classes", "roster-in", RosterPage.choose(List.of("x"), RosterReader.read(List.of(
        "sourcedId,givenName,familyName,role\n1,Noor,A,student\n",
        "sourcedId,classSourcedId,userSourcedId,role\n1,A,1,student\n2,B,1,student\n"), null, Set.of())), Place.SETUP);
    put(pages, "roster", "roster", RosterPage.read(RosterReader.read(List.of(
        "first name,last name,language\nNoor,Ames,en\nNoor,Brand,es\nBeto,Cruz,es\n,Dorn,en\nKai\n"), null, Set.of()),
        made.children), Place.SETUP);
    put(pages, "child-setup", "child-setup", ChildSetupPage.of(child, null, null, made.children, null), Place.SETUP);
    put(pages, "child-setup-left", "child-setup",
        ChildSetupPage.of(child, today, today, made.children, "Another is called that."), Place.SETUP);
    put(pages, "year", "year", YearPage.of(room, new ClassSetup(3, ProblemSet.USUAL_PARTS, false, today.minusDays(1),
        null), today, 24, null), Place.SETUP);
    put(pages, "erased", "erased", new YearPage.Erased("Elsie", List.of("A backup could not be changed.")), Place.SETUP);
    put(pages, "class-report", "class-report", RecordsPage.of(made.children, made.pieces, List.of()), Place.RECORDS);
    put(pages, "child-record", "child-record", ChildRecordPage.of(child, null, work, Set.of(work.get(0).problem().id()),
        List.of(new Note(1, today, "Said the label aloud.")), today, today), Place.RECORDS);
    put(pages, "child-record-empty", "child-record",
        ChildRecordPage.of(child, today, List.of(), Set.of(), List.of(), null, today), Place.RECORDS);
    put(pages, "family", "family", FamilyPage.of(child, "Room 12", List.of(new Kept("work", Instant.EPOCH, "problem 3",
        "28 + 15 = x")), today, today.plusDays(200), null, room.zone()), Place.RECORDS);
    put(pages, "conference", "conference", conference(child, work, today, "en", Map.of()), null);
    put(pages, "conference-es", "conference", conference(child, work, today, "es",
        Map.of("next", new OwnSentence("en", "We will trade tens with blocks."))), null);
    put(pages, "conference-none", "conference", conference(child, List.of(), today, "en", Map.of()), null);
    put(pages, "conference-all", "conference-all", made.children.stream().map(each -> conference(each,
        made.pieces.stream().filter(piece -> piece.child().equals(each)).toList(), today, "en", Map.of())).toList(), null);
    put(pages, "paper", "paper", PaperPage.of(made.children, List.of(set), Optional.of(child), Optional.of(set), work, 2),
        Place.RECORDS);
    put(pages, "paper-empty", "paper",
        PaperPage.of(made.children, List.of(), Optional.empty(), Optional.empty(), List.of(), 0), Place.RECORDS);
    for (String about : List.of("start", "plan", "board", "tablets", "room", "findings", "records", "paper", "setup",
        "week", "new-laptop")) {
      pages.put("help-" + about, TeacherTemplatesTest.render("teacher/help-page", new HelpPage("0.1.0", "fewermore-data",
          "http://192.168.1.23:8420", List.of()), Place.HELP, Map.of("about", about)));
    }
  }

  static ConferencePage conference(
      Child child, List<PieceOfWork> work, LocalDate today, String language, Map<String, OwnSentence> own) {
    return ConferencePage.of(Conference.of(child, work, List.of(), today, language), own, today, "Ms. Adeyemi", "Room 12");
  }

  private static void put(Map<String, String> pages, String name, String template, Object page, Place here) {
    pages.put(name, TeacherTemplatesTest.render("teacher/" + template, page, here));
  }
}
