package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.ClassGroups;
import fewermore.classroom.Classroom;
import fewermore.classroom.Door;
import fewermore.classroom.Findings;
import fewermore.classroom.HandIn;
import fewermore.classroom.InventedClass;
import fewermore.classroom.InventedPieces;
import fewermore.classroom.Overrule;
import fewermore.classroom.Moved;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.PlannedSet;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.Sitting;
import fewermore.classroom.PutAside;
import fewermore.classroom.SeatedPair;
import fewermore.classroom.TakenOut;
import fewermore.classroom.TeacherWord;
import fewermore.classroom.Topic;
import fewermore.classroom.Wall;
import fewermore.marking.Part;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberRange;
import fewermore.problem.ProblemWriter;
import fewermore.problem.ProposedMix;
import fewermore.problem.Regrouping;
import fewermore.reasoning.Focus;
import fewermore.reasoning.GroupPlace;
import fewermore.reasoning.ReasoningTable;
import fewermore.records.ProgressTable;
import fewermore.store.CardStore;
import fewermore.store.MovingStore;
import fewermore.web.Assets;
import fewermore.web.Pages;
import fewermore.wording.Correction;
import fewermore.wording.ReadText;
import fewermore.wording.WordingReader;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TeacherTemplatesTest {
  private static final Pages PAGES = new Pages(Assets.load());
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  private static final Classroom ROOM =
      new Classroom(1, 1, "Room 12", ZoneId.of("America/New_York"), true, Instant.EPOCH);
  private static final InventedPieces MADE = InventedPieces.of(
      InventedClass.USUAL, TODAY.minusDays(1), ROOM.zone(), 1);
  private static final String ADDRESS = "http://192.168.1.23:8420";

  private static CardsPage cards() {
    Child first = MADE.children.get(0);
    return CardsPage.of(MADE.children, List.of(new CardStore.Card(first, "http://10.9.9.9:8420", TODAY, Instant.EPOCH)),
        ADDRESS, TODAY.plusDays(120), TODAY.plusDays(400), TODAY, true,
        Map.of(first.id(), List.of("moon", "drum")), "Two different pictures were expected. Choose two.");
  }

  private static Moved moved() {
    return new Moved(1, "w", MADE.children.get(1), MADE.children.get(0), "They had changed places.", Instant.EPOCH,
        Moved.State.WAITING);
  }

  private static SittingsPage sittings() {
    Instant at = Instant.parse("2026-11-25T15:05:00Z");
    List<MovingStore.Seat> seats = List.of(
        seat("s1", 0, "Otter", at, null, 3), seat("s2", 0, "Heron", at.plusSeconds(200), null, 0),
        seat("s3", 1, "Badger", at, null, 5), seat("s4", 2, "Newt", at, "next child", 2));
    return SittingsPage.of(ROOM, seats, MADE.children, List.of(moved()), work -> "/work/w/p/1");
  }

  private static MovingStore.Seat seat(String id, int child, String tablet, Instant at, String why, int handedIn) {
    return new MovingStore.Seat(new Sitting(id, MADE.children.get(child), "t" + id, tablet, at,
        why == null ? null : at.plusSeconds(900)), why, List.of("w"), handedIn, handedIn == 3 ? 1 : 0, at);
  }

  static String render(String name, Object page, Place here) {
    return render(name, page, here, Map.of());
  }

  static String render(String name, Object page, Place here, Map<String, Object> more) {
    Map<String, Object> model = new HashMap<>(more);
    model.put("page", page);
    model.put("csrf", "a-token");
    model.put("frame", Frame.of(ROOM, here, Instant.parse("2026-11-25T18:05:00Z")));
    model.put("board", new BoardFrame(page instanceof WallPage ? "/wall" : "/door", 1,
        page instanceof WallPage wall ? wall.steps() : 1, null, null, 0, false, false, 70));
    return PAGES.render(name, model, Locale.US);
  }

  private static Findings findings() {
    return Findings.of(MADE.children, MADE.pieces, TODAY);
  }

  private static PlanPage plan(boolean given) {
    List<AssignedProblem> problems = MADE.pieces.stream().map(PieceOfWork::problem).distinct().limit(6).toList();
    ProblemSet set = new ProblemSet(1, 1, TODAY, given, 3, false, ProblemSet.USUAL_PARTS, problems);
    PlannedSet planned = new PlannedSet(set, "", false, Set.of());
    return PlanPage.of(TODAY, List.of(planned), planned, ProposedMix.counts(6), 100, "either", MADE.children,
        given ? 3 : 0, null);
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
        PlanPage.of(TODAY, List.of(), null, Map.of(), 100, "either", List.of(), 0, null), Place.PLAN));
    for (Map.Entry<String, String> typed : Map.of("type", "Mara found 28 shells. She found 15 fewer shells than Theo. "
        + "How many shells did Theo find?", "type-declined", "Noor has 3 times as many as Elsie. Elsie has 4. How many has "
        + "Noor?", "type-empty", "").entrySet()) {
      ReadText read = WordingReader.read(typed.getValue());
      pages.put(typed.getKey(), render("teacher/type", new TypePage("2026-11-26", "Thursday, November 26", 1, 2, 3, 3, read,
          Correction.of(read), "A sentence."), Place.PLAN));
    }
    SheetPage sheet = SheetPage.of("Room 12", new ProblemSet(1, 1, TODAY, false, 3, false, ProblemSet.USUAL_PARTS,
        MADE.pieces.stream().map(PieceOfWork::problem).distinct().limit(4).toList()), false);
    pages.put("sheet", render("teacher/sheet", sheet, Place.PLAN));
    pages.put("key", render("teacher/key", sheet, Place.PLAN));
    for (Topic topic : Topic.values()) {
      pages.put("findings-" + topic.id(),
          render("teacher/findings", FindingsPage.of(findings(), topic.id()), Place.FINDINGS));
    }
    pages.put("findings-none", render("teacher/findings",
        FindingsPage.of(Findings.of(MADE.children, List.of(), TODAY), null), Place.FINDINGS));
    Child child = findings().statements().get(0).children().get(0).child();
    pages.put("child", render("teacher/child", ChildPage.of(findings(), child).orElseThrow(), Place.FINDINGS));
    pages.put("child-whole", render("teacher/child", wholeChild(child), Place.FINDINGS));
    pages.put("numbers", render("teacher/numbers", NumbersPage.of(ReasoningTable.standard()), Place.FINDINGS));
    pages.put("groups", render("teacher/groups", groups(findings().children(), true), Place.GROUPS));
    pages.put("groups-none", render("teacher/groups",
        groups(Findings.of(MADE.children, List.of(), TODAY).children(), false), Place.GROUPS));
    pages.put("work", render("teacher/work",
        work(findings().statements().get(0).children().get(0).evidence().get(0).work()), Place.FINDINGS));
    pages.put("records", render("teacher/records", RecordsPage.of(MADE.children, MADE.pieces,
        List.of(ProgressTable.childByKind(ROOM, MADE.children, MADE.pieces),
            ProgressTable.pieces(ROOM, MADE.children, MADE.pieces))), Place.RECORDS));
    pages.put("setup", render("teacher/setup", setup(ADDRESS), Place.SETUP));
    pages.put("setup-alone", render("teacher/setup", setup(null), Place.SETUP));
    pages.put("reach", render("teacher/reach", ReachPage.of(ADDRESS + "/hello", List.of("http://10.0.0.4:8420"), false,
        false, null, List.of(new ReachPage.Reached("192.168.1.57", "Safari 17.4 on an iPad", "1:05 PM",
            "Script on. Storage on. A voice of its own for English, none for Spanish.")), 12), Place.SETUP));
    pages.put("reach-nothing", render("teacher/reach", ReachPage.of(ADDRESS + "/hello", List.of(), true, false,
        "This laptop’s address changed at 10:12 AM.", List.of(), 61), Place.SETUP));
    pages.put("reach-note", render("teacher/reach-note", new ReachNote(ADDRESS, 8420, "0a:1b:2c:3d:4e:5f"), Place.SETUP));
    pages.put("cards", render("teacher/cards", cards(), Place.SETUP));
    pages.put("card-sheet", render("teacher/card-sheet", CardSheet.of("Room 12", MADE.children.stream()
        .map(each -> CardSheet.Card.of(each, "HTTP://192.168.1.23:8420/C/ABCDEFGHIJKLMNOP")).toList(), TODAY), null));
    pages.put("sittings", render("teacher/sittings", sittings(), null));
    pages.put("work-moved", render("teacher/work", work(MADE.pieces.get(0)), Place.FINDINGS, Map.of("moving",
        MovingView.of("w", List.of(moved()), MADE.children, ROOM.zone()))));
    pages.put("help", render("teacher/help", new HelpPage("0.1.0", "fewermore-data", ADDRESS,
        List.of(new HelpPage.License("Andika", "SIL Open Font License"))), Place.HELP));
    RecordsPagesForTests.addTo(pages, ROOM, MADE, TODAY);
    pages.put("stopped", render("teacher/stopped", "There is nothing at this address.", null));
    pages.put("door", render("board/door", BoardPage.of("Room 12",
        new Door(1, TODAY, "abcdefgh", List.of("boat", "pear", "kite", "sun")), ADDRESS), Place.BOARD));
    pages.put("wall", render("board/class",
        WallPage.of("Room 12", Wall.of(MADE.children, MADE.pieces, TODAY)), Place.BOARD));
    pages.put("wall-none", render("board/class",
        WallPage.of("Room 12", Wall.of(MADE.children, List.of(), TODAY)), Place.BOARD));
    return pages;
  }

  /** With one piece taken out, a way put aside, and all the weeks. */
  private static ChildPage wholeChild(Child child) {
    List<PieceOfWork> all = MADE.pieces.stream().filter(piece -> piece.child().equals(child)).toList();
    TeacherWord word = new TeacherWord(
        List.of(new TakenOut(1, 0, all.get(0).problem().id(), TakenOut.Why.BOARD, TODAY)),
        List.of(new PutAside(2, child.id(), WayOfReasoning.ALWAYS_ADDS, "I asked: “she <reads> it”.", TODAY)));
    Findings findings = Findings.of(List.of(child), all, TODAY, word, ReasoningTable.standard());
    return ChildPage.of(findings, child, all, word).orElseThrow();
  }

  private static GroupsPage groups(List<ChildReasoning> children, boolean moved) {
    ReasoningTable table = ReasoningTable.standard();
    Map<Long, GroupPlace> places = ClassGroups.propose(children, List.of(), table);
    long first = children.get(0).child().id();
    Map<Long, GroupPlace> now = moved ? ClassGroups.moved(places, first, new GroupPlace(Focus.LOOK_CLOSER, 1)) : places;
    Map<Long, GroupPlace> before = moved ? ClassGroups.moved(places, first, new GroupPlace(Focus.WRITING_THE_SUBTRACTION, 1))
        : Map.of();
    List<SeatedPair> pairs = List.of(new SeatedPair(first, children.get(1).child().id(), false));
    return GroupsPage.of(TODAY, ClassGroups.of(children, now, moved, moved ? List.of(first) : List.of(), before, Map.of(), table),
        pairs, MADE.children, new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, Set.of()));
  }

  private static SetupPage setup(String address) {
    return SetupPage.of(ROOM, new fewermore.classroom.ClassSetup(3, ProblemSet.USUAL_PARTS, false, TODAY.minusDays(1), null),
        MADE.children, List.of(), "27 4", address, address == null, false, "/home/teacher/fewermore-data", TODAY, null);
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
