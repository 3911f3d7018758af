package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Child;
import fewermore.classroom.Findings;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.ProblemSet;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** Absent, early, with help, on paper, and what a family may ask for. */
class WeekAsItIsTest {
  private static final Work RIGHT = new Work("15 + 19 = x", "34", "beads", new Bars("Theo", "x", "15", "19"), null);
  private static final Work CUE = new Work("19 - 15 = x", "4", "beads", new Bars("Theo", "x", "15", "19"), null);

  private static Browser teacher(Rig rig) {
    Browser browser = new Browser(rig.teacherAddress());
    browser.get("/sign-in");
    assertEquals(303, browser.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE)).statusCode());
    browser.get("/setup");
    return browser;
  }

  private static List<CSVRecord> csv(Browser browser, String path) throws Exception {
    HttpResponse<String> response = browser.get(path);
    assertEquals(200, response.statusCode(), path);
    try (CSVParser parser = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
        .parse(new StringReader(response.body()))) {
      return parser.getRecords();
    }
  }

  private static ProblemSet givenOn(Rig rig, LocalDate day) {
    return rig.services.problems.addSet(rig.classroom.id(), day, true, 3, false, ProblemSet.USUAL_PARTS,
        List.of(Stories.BEADS), rig.now());
  }

  @Test
  void problemsOfADaySheWasAwayWaitWithTheirDayAndAreNeverBlank() throws Exception {
    try (Rig rig = Rig.start()) {
      LocalDate today = rig.services.today(rig.classroom);
      LocalDate missed = today.minusDays(2);
      givenOn(rig, missed);
      givenOn(rig, today.minusDays(20));
      Child kofi = rig.children.get(2);
      Tablet tablet = Tablet.comeIn(rig, kofi);
      assertEquals(3, tablet.problems.size(), "today's two, and the one of the day she was away; nothing older than a week");
      String page = tablet.browser.get("/mine").body();
      String day = missed.getDayOfWeek().getDisplayName(java.time.format.TextStyle.FULL, java.util.Locale.US);
      assertEquals(2, page.split("from " + day, -1).length, "one problem says from which day it is");
      Browser teacher = teacher(rig);
      CSVRecord away = csv(teacher, "/records/days.csv").stream()
          .filter(row -> row.get("child").equals("Kofi") && row.get("day").equals(missed.toString())).findFirst().orElseThrow();
      assertEquals("away", away.get("state"));
      assertEquals("", away.get("first_answer_right"), "a day away is no zero");
      tablet.sent(tablet.item(tablet.work(3), 1, "handed-in", RIGHT));
      PieceOfWork piece = rig.services.works.pieces(rig.classroom.id()).get(0);
      assertEquals(today, piece.evidence().day(), "it counts for the day she did it");
      assertFalse(piece.evidence().late());
      assertEquals(2, rig.services.problems.given(rig.classroom.id(), today).get(0).problems().size());
    }
  }

  @Test
  void whoSatAtATabletOnThatDayHasNothingWaiting() {
    try (Rig rig = Rig.start()) {
      LocalDate yesterday = rig.services.today(rig.classroom).minusDays(1);
      givenOn(rig, yesterday);
      Child elsie = rig.children.get(1);
      rig.services.sittings.meetTablet("t", "otter", rig.now());
      rig.services.sittings.start("s", elsie.id(), "t", "c",
          yesterday.atTime(10, 0).atZone(rig.classroom.zone()).toInstant());
      assertEquals(2, Tablet.comeIn(rig, elsie).problems.size());
    }
  }

  @Test
  void aChildMarkedAbsentIsAbsentInRecordsUntilSheComesInOrHandsIn() throws Exception {
    try (Rig rig = Rig.start()) {
      LocalDate missed = rig.services.today(rig.classroom).minusDays(1);
      givenOn(rig, missed);
      Child elsie = rig.children.get(1);
      rig.services.sittings.meetTablet("t", "otter", rig.now());
      rig.services.sittings.start("s", elsie.id(), "t", "c", at(rig, missed, 10, 0));
      Browser teacher = teacher(rig);
      assertEquals("there", state(teacher, missed));
      rig.services.rooms.markAbsent(rig.classroom.id(), elsie.id(), missed, at(rig, missed, 10, 5));
      assertEquals("absent", state(teacher, missed), "the sitting before the mark was not hers");
      rig.services.sittings.meetTablet("u", "heron", rig.now());
      rig.services.sittings.start("late", elsie.id(), "u", "d", at(rig, missed, 11, 0));
      assertEquals("there", state(teacher, missed), "she came in later");
      assertEquals(2, Tablet.comeIn(rig, elsie).problems.size(), "so nothing of that day waits");
    }
  }

  private static java.time.Instant at(Rig rig, LocalDate day, int hour, int minute) {
    return day.atTime(hour, minute).atZone(rig.classroom.zone()).toInstant();
  }

  private static String state(Browser teacher, LocalDate day) throws Exception {
    return csv(teacher, "/records/days.csv").stream()
        .filter(row -> row.get("child").equals("Elsie") && row.get("day").equals(day.toString())).findFirst().orElseThrow()
        .get("state");
  }

  @Test
  void doneWithHelpIsOneWordInFindingsAndInRecords() throws Exception {
    try (Rig rig = Rig.start()) {
      Child noor = rig.children.get(0);
      Tablet tablet = Tablet.comeIn(rig, noor);
      tablet.sent(tablet.item(tablet.work(2), 1, "handed-in", CUE));
      long problem = rig.services.works.pieces(rig.classroom.id()).get(0).problem().id();
      Browser teacher = teacher(rig);
      Map<String, String> which = Map.of("child", Long.toString(noor.id()), "problem", Long.toString(problem),
          "why", "with-help", "whose", "child", "out", "0");
      assertEquals(303, teacher.post("/findings/take-out", which).statusCode());
      assertTrue(rig.services.works.pieces(rig.classroom.id()).get(0).withHelp(), "Records has it as done with help");
      assertEquals(0, findings(rig).pieces());
      assertTrue(teacher.get("/findings/child/" + noor.id()).body().contains("done with help"), "Findings shows it as taken out");
      assertEquals(303, teacher.post("/findings/put-back", which).statusCode());
      assertFalse(rig.services.works.pieces(rig.classroom.id()).get(0).withHelp());
      teacher.post("/records/child/" + noor.id() + "/help", Map.of("problem", Long.toString(problem), "help", "yes"));
      assertTrue(teacher.get("/findings/child/" + noor.id()).body().contains("done with help"), "and the other way round");
    }
  }

  @Test
  void anEarlyFinisherMayTakeUpToFourMoreAndNobodyElseSeesThem() {
    try (Rig rig = Rig.start()) {
      Child noor = rig.children.get(0);
      Tablet tablet = Tablet.comeIn(rig, noor);
      tablet.browser.post("/mine/more", Map.of());
      tablet.load();
      assertEquals(2, tablet.problems.size(), "not before all is handed in");
      for (int more = 0; more < 6; more++) {
        for (int at = 1; at <= tablet.problems.size(); at++) {
          tablet.sent(tablet.item(tablet.work(at), 100 * more + at, "handed-in", RIGHT));
        }
        tablet.browser.get("/mine");
        assertEquals(303, tablet.browser.post("/mine/more", Map.of()).statusCode());
        tablet.load();
      }
      assertEquals(6, tablet.problems.size(), "two of today and four more");
      assertFalse(tablet.browser.get("/mine").body().contains("data-more"), "then no more is offered");
      assertEquals(2, Tablet.comeIn(rig, rig.children.get(1)).problems.size());
      assertEquals(1, rig.services.problems.given(rig.classroom.id(), rig.services.today(rig.classroom)).size(),
          "the class's set is as it was");
      var kinds = rig.services.problems.more(rig.classroom.id(), noor.id(), rig.services.today(rig.classroom)).stream()
          .map(set -> set.problems().get(0).kind()).toList();
      assertEquals(4, kinds.size());
      for (int at = 1; at < kinds.size(); at++) {
        assertFalse(kinds.get(at) == kinds.get(at - 1), "never the kind she did last: " + kinds);
      }
    }
  }

  @Test
  void workWithHelpIsKeptAndMarkedAndIsNoEvidence() throws Exception {
    try (Rig rig = Rig.start()) {
      rig.give(List.of(Stories.BEADS, Stories.BEADS, Stories.BEADS));
      Child noor = rig.children.get(0);
      Tablet tablet = Tablet.comeIn(rig, noor);
      for (int at = 2; at <= 5; at++) {
        tablet.sent(tablet.item(tablet.work(at), at, "handed-in", CUE));
      }
      assertEquals(4, findings(rig).pieces());
      long problem = rig.services.works.pieces(rig.classroom.id()).get(0).problem().id();
      Browser teacher = teacher(rig);
      teacher.get("/records/child/" + noor.id());
      assertEquals(303, teacher.post("/records/child/" + noor.id() + "/help",
          Map.of("problem", Long.toString(problem), "help", "yes")).statusCode());
      assertEquals(3, findings(rig).pieces(), "not read by Findings");
      assertEquals(4, rig.services.works.pieces(rig.classroom.id()).size(), "but kept");
      assertEquals(1, csv(teacher, "/records/work.csv").stream().filter(row -> row.get("with_help").equals("yes")
          && row.get("first_equation_mark").equals("opposite-operation")).count(), "and marked");
      CSVRecord kind = csv(teacher, "/records/kinds.csv").stream().filter(row -> row.get("child").equals("Noor")
          && row.get("kind").equals("larger-fewer")).findFirst().orElseThrow();
      assertEquals(List.of("3", "1"), List.of(kind.get("problems"), kind.get("with_help")));
      assertEquals("CCSS.Math.Content.2.OA.A.1", kind.get("standard"));
      assertEquals(404, teacher.post("/records/child/" + rig.children.get(1).id() + "/help",
          Map.of("problem", Long.toString(problem), "help", "yes")).statusCode(), "only work that is hers");
      teacher.post("/records/child/" + noor.id() + "/help", Map.of("problem", Long.toString(problem), "help", "no"));
      assertEquals(4, findings(rig).pieces());
    }
  }

  private static Findings findings(Rig rig) {
    return Findings.of(rig.services.classes.children(rig.classroom.id()), rig.services.works.pieces(rig.classroom.id()),
        rig.services.today(rig.classroom));
  }

  @Test
  void workTypedInFromPaperIsMarkedTheSameAndCountsForTheDayItWasGiven() throws Exception {
    try (Rig rig = Rig.start()) {
      LocalDate monday = rig.services.today(rig.classroom).minusDays(3);
      ProblemSet set = givenOn(rig, monday);
      Child elsie = rig.children.get(1);
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      tablet.sent(tablet.item(tablet.work(2), 1, "handed-in", CUE));
      Browser teacher = teacher(rig);
      long problem = set.problems().get(0).id();
      assertEquals(200, teacher.get("/records/paper?child=" + elsie.id() + "&set=" + set.id()).statusCode());
      Map<String, String> typed = new HashMap<>(Map.of("child", Long.toString(elsie.id()), "set", Long.toString(set.id()),
          "equation-" + problem, "19 - 15 = ?", "answer-" + problem, "4", "label-" + problem, "beads",
          "longer-" + problem, "Theo", "longerBar-" + problem, "?", "shorterBar-" + problem, "15", "gap-" + problem, "19"));
      HttpResponse<String> kept = teacher.post("/records/paper", typed);
      assertEquals(303, kept.statusCode(), kept.body());
      List<CSVRecord> work = csv(teacher, "/records/work.csv");
      CSVRecord paper = work.stream().filter(row -> row.get("child").equals("Elsie")).findFirst().orElseThrow();
      CSVRecord same = work.stream().filter(row -> row.get("child").equals("Noor")).findFirst().orElseThrow();
      for (String mark : List.of("first_equation_mark", "first_follows_word", "first_answer_mark", "first_label_mark",
          "first_bars_mark")) {
        assertEquals(same.get(mark), paper.get(mark), mark);
      }
      assertEquals("paper", paper.get("tablet"));
      assertTrue(rig.pieces().stream().filter(piece -> piece.child().equals(elsie))
          .allMatch(piece -> piece.evidence().told() == null), "paper told her nothing");
      assertEquals(monday.toString(), paper.get("day"));
      assertEquals(0, rig.services.sittings.open(rig.classroom.id()).stream()
          .filter(each -> each.child().id() == elsie.id()).count(), "nobody sits at the paper");
      teacher.get("/setup");
      typed.keySet().removeIf(key -> key.endsWith("-" + problem));
      assertEquals(422, teacher.post("/records/paper", typed).statusCode(), "an empty sheet hands nothing in");
    }
  }

  @Test
  void aFamilyGetsAllOfOneChildAndNothingOfAnother() throws Exception {
    try (Rig rig = Rig.start()) {
      Child noor = rig.children.get(0);
      Tablet mine = Tablet.comeIn(rig, noor);
      mine.sent(mine.item(mine.work(2), 1, "handed-in", new Work("= 15 + 19", "34", "beadz", null, null)));
      Tablet other = Tablet.comeIn(rig, rig.children.get(1));
      other.sent(other.item(other.work(2), 1, "handed-in", new Work("19 - 15 = x", "4", "zorblax", null, null)));
      Browser teacher = teacher(rig);
      String record = "/records/child/" + noor.id();
      teacher.post(record + "/note", Map.of("content", "Said “beads” aloud."));
      rig.services.records.note(rig.children.get(1).id(), rig.services.today(rig.classroom), "About fluorspar.", rig.now());
      String page = teacher.get(record + "/family").body();
      List<CSVRecord> file = csv(teacher, record + "/everything.csv");
      String all = file.toString();
      for (String hers : List.of("beadz", "Said “beads” aloud.")) {
        assertTrue(page.contains(hers) && all.contains(hers), hers);
      }
      for (String notHers : List.of("zorblax", "fluorspar", "Elsie", "Kofi")) {
        assertFalse(page.contains(notHers) || all.contains(notHers), notHers);
      }
      assertTrue(file.stream().map(row -> row.get("what")).toList().containsAll(
          List.of("child", "sitting", "work", "problem", "mark", "note")));
    }
  }
}
