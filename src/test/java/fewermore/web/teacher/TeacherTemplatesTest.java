package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Door;
import fewermore.classroom.Findings;
import fewermore.classroom.HandIn;
import fewermore.classroom.InventedClass;
import fewermore.classroom.InventedPieces;
import fewermore.classroom.Overrule;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.Topic;
import fewermore.classroom.Wall;
import fewermore.marking.Part;
import fewermore.problem.ProposedMix;
import fewermore.records.ProgressTable;
import fewermore.web.Assets;
import fewermore.web.Pages;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TeacherTemplatesTest {
  private static final Pages PAGES = new Pages(Assets.load());
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  private static final Classroom ROOM =
      new Classroom(1, 1, "Room 12", ZoneId.of("America/New_York"), true, Instant.EPOCH);
  private static final InventedPieces MADE = InventedPieces.of(
      InventedClass.USUAL, TODAY.minusDays(1), ROOM.zone(), 1);
  private static final String ADDRESS = "http://192.168.1.23:8420";

  private static String render(String name, Object page, Place here) {
    Map<String, Object> model = new HashMap<>();
    model.put("page", page);
    model.put("csrf", "a-token");
    model.put("frame", Frame.of(ROOM, here, Instant.parse("2026-11-25T18:05:00Z")));
    return PAGES.render(name, model, Locale.US);
  }

  private static Findings findings() {
    return Findings.of(MADE.children, MADE.pieces, TODAY);
  }

  private static PlanPage plan(boolean given) {
    List<AssignedProblem> problems = MADE.pieces.stream().map(PieceOfWork::problem).distinct().limit(6).toList();
    ProblemSet set = new ProblemSet(1, 1, TODAY, given, 3, false, ProblemSet.USUAL_PARTS, problems);
    return PlanPage.of(TODAY, ProposedMix.counts(6), 100, "either", set, given ? 3 : 0, null);
  }

  private static WorkView work(PieceOfWork piece) {
    HandIn first = piece.evidence();
    return WorkView.of(piece, first.work(), first.page(), first.seq(),
        List.of(new Overrule(Part.LABEL, "blank", "names-it", "She said it aloud.", Instant.EPOCH)), ROOM.zone())
        .orElseThrow();
  }

  /** Every page with the invented class in it, by name. */
  static Map<String, String> allPages() {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("first", render("teacher/first", new FirstPage("The two passphrases are not the same."), null));
    pages.put("sign-in", render("teacher/sign-in", new SignInPage(null), null));
    pages.put("welcome", render("teacher/welcome", new WelcomePage("", "", null, 60), null));
    pages.put("plan", render("teacher/plan", plan(false), Place.PLAN));
    pages.put("plan-given", render("teacher/plan", plan(true), Place.PLAN));
    pages.put("plan-empty", render("teacher/plan",
        PlanPage.of(TODAY, Map.of(), 100, "either", null, 0, null), Place.PLAN));
    for (Topic topic : Topic.values()) {
      pages.put("findings-" + topic.id(),
          render("teacher/findings", FindingsPage.of(findings(), topic.id()), Place.FINDINGS));
    }
    pages.put("findings-none", render("teacher/findings",
        FindingsPage.of(Findings.of(MADE.children, List.of(), TODAY), null), Place.FINDINGS));
    Child child = findings().statements().get(0).children().get(0).child();
    pages.put("child", render("teacher/child", ChildPage.of(findings(), child).orElseThrow(), Place.FINDINGS));
    pages.put("work", render("teacher/work",
        work(findings().statements().get(0).children().get(0).evidence().get(0).work()), Place.FINDINGS));
    pages.put("records", render("teacher/records", RecordsPage.of(MADE.children, MADE.pieces,
        List.of(ProgressTable.childByKind(ROOM, MADE.children, MADE.pieces),
            ProgressTable.pieces(ROOM, MADE.children, MADE.pieces))), Place.RECORDS));
    pages.put("setup", render("teacher/setup", setup(ADDRESS), Place.SETUP));
    pages.put("setup-alone", render("teacher/setup", setup(null), Place.SETUP));
    pages.put("help", render("teacher/help", new HelpPage("0.1.0", "fewermore-data", ADDRESS,
        List.of(new HelpPage.License("Andika", "SIL Open Font License"))), Place.HELP));
    pages.put("stopped", render("teacher/stopped", "There is nothing at this address.", null));
    pages.put("door", render("board/door", BoardPage.of("Room 12",
        new Door(1, TODAY, "abcdefgh", List.of("boat", "pear", "kite", "sun")), ADDRESS), Place.BOARD));
    pages.put("wall", render("board/class",
        WallPage.of("Room 12", Wall.of(MADE.children, MADE.pieces, TODAY)), Place.BOARD));
    pages.put("wall-none", render("board/class",
        WallPage.of("Room 12", Wall.of(MADE.children, List.of(), TODAY)), Place.BOARD));
    return pages;
  }

  private static SetupPage setup(String address) {
    return SetupPage.of(ROOM, MADE.children, address, List.of("http://10.0.0.4:8420"), address == null, false,
        List.of(ROOM, new Classroom(2, 1, "Room 14", ROOM.zone(), false, Instant.EPOCH)), "/home/teacher/fewermore-data",
        null, "");
  }

  @Test
  void everyPageRendersWithNothingAStrictPolicyForbids() {
    Map<String, String> pages = allPages();
    for (Map.Entry<String, String> page : pages.entrySet()) {
      String html = page.getValue();
      assertAll(page.getKey(),
          () -> assertFalse(html.contains("??"), "missing text"),
          () -> assertFalse(html.matches("(?s).*<[^>]* th:.*"), "left-over template attribute"),
          () -> assertFalse(html.matches("(?s).* style=.*"), "inline style"),
          () -> assertFalse(html.matches("(?s).*<[a-z][^>]* on[a-z]+=.*"), "inline handler"),
          () -> assertFalse(html.matches("(?s).*<script(?![^>]*src=)[^>]*>.*"), "inline script"),
          () -> assertEquals(html.split("method=\"post\"", -1).length, html.split("name=\"csrf\"", -1).length,
              "a token in every form"),
          () -> assertTrue(html.contains("<h1"), "a heading"));
    }
  }

  @Test
  void noNameOfTheClassStandsOnTheBoard() {
    Map<String, String> pages = allPages();
    for (String board : List.of("door", "wall")) {
      for (Child child : MADE.children) {
        assertFalse(pages.get(board).matches("(?s).*\\b" + child.name() + "\\b.*"), child.name() + " on " + board);
      }
    }
  }

  @Test
  void whatAPersonTypedIsWrittenAsText() {
    Child odd = new Child(9, 1, "<b>Bo</b>", "leaf", "moss", "en");
    String html = render("teacher/records", RecordsPage.of(List.of(odd), List.of(), List.of()), Place.RECORDS);
    assertTrue(html.contains("&lt;b&gt;Bo"));
    assertFalse(html.contains("<b>Bo"));
  }
}
