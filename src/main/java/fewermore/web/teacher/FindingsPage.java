package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.ChildFinding;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.ClassGrid;
import fewermore.classroom.EvidenceTable;
import fewermore.classroom.Finding;
import fewermore.classroom.FindingWords;
import fewermore.classroom.Findings;
import fewermore.classroom.HandIn;
import fewermore.classroom.Phrase;
import fewermore.classroom.Quote;
import fewermore.classroom.Says;
import fewermore.classroom.TellsMore;
import fewermore.classroom.Topic;
import fewermore.reasoning.Strength;
import fewermore.marking.Part;
import fewermore.reasoning.ReasoningTable;
import fewermore.story.Kind;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the class's work says: statements, and one of them with its children and their own equations.
 * {@code pages/teacher/findings.html}; {@code GET /findings?about=<topic>}.
 *
 * @param read for example {@code Nov 23 to 25}; null before there is work
 * @param pieces how many pieces of work were read
 * @param statements every statement, what needs the teacher first
 * @param open the statement that is open, or null before there is work
 * @param more what would tell more about the class, in one or two sentences; empty before there is work
 */
public record FindingsPage(
    String read, String asOf, int pieces, List<Statement> statements, Detail open, List<KindWords> kinds,
    List<GridRow> grid, String more) {

  /** @param id goes into {@code ?about=} */
  public record Statement(String id, int count, Phrase phrase, boolean current) {}

  /**
   * @param can heading over the problems that can tell
   * @param cannot heading over those that can't
   * @param start the problem to begin with tomorrow, or null; {@code ask} the one question to put
   */
  public record Detail(
      String id, Phrase headline, Phrase lead, String can, String cannot, int telling, int apart,
      List<Column> columns, List<Row> rows, String start, String ask) {}

  /** @param firstApart whether the double rule stands before this column */
  public record Column(
      BarsPicture bars, KindWords kind, String story, String says, boolean tells, boolean firstApart) {}

  /**
   * @param tally for example {@code 4 of 5}
   * @param apart the work that can't tell, counted apart; empty when there is none
   * @param asOf the day of the last work behind it; empty without work
   * @param early whether it is too early to count this child
   */
  public record Row(ShownChild child, String strength, String strengthWord, String tally, String apart, String asOf,
      boolean early, List<Cell> cells) {}

  /**
   * @param line what the child wrote; null where there is no work
   * @param blank the child left it empty
   * @param against whether it speaks against the statement
   * @param href the piece of work
   */
  public record Cell(
      WrittenLine line, boolean blank, boolean against, String href, boolean tells, boolean firstApart, String part) {}

  public record GridRow(ShownChild child, List<GridCell> cells) {}

  /** @param seen {@code fit}, {@code cue}, {@code gap}, {@code other} or {@code none}; @param text what it says */
  public record GridCell(String seen, String text, boolean firstApart) {}

  /** @param about id of the statement to open; the first where there is no such one */
  public static FindingsPage of(Findings findings, String about) {
    Optional<Finding> open = findings.statements().stream()
        .filter(finding -> finding.topic().id().equals(about)).findFirst()
        .or(() -> findings.statements().stream().findFirst());
    boolean any = findings.pieces() > 0;
    List<Statement> statements = findings.statements().stream()
        .map(finding -> new Statement(finding.topic().id(), finding.children().size(),
            FindingWords.predicate(finding), open.filter(finding::equals).isPresent()))
        .toList();
    return new FindingsPage(any ? AmericanDates.span(findings.from(), findings.asOf()) : null,
        AmericanDates.day(findings.asOf()), findings.pieces(), statements,
        any ? open.map(FindingsPage::detail).orElse(null) : null,
        Findings.KINDS.stream().map(KindWords::of).toList(), grid(findings.grid()), any ? more(findings) : "");
  }

  private static String more(Findings findings) {
    List<ChildReasoning> children = findings.children();
    Kind next = TellsMore.next(children, null, ReasoningTable.standard());
    String whyNot = TellsMore.whyNot(children);
    return (whyNot.isEmpty() ? "" : whyNot + " ") + "What would tell more about the class: a problem with the "
        + ChildPage.words(next) + ".";
  }

  private static Detail detail(Finding finding) {
    EvidenceTable table = EvidenceTable.of(finding);
    int telling = (int) table.columns().stream().filter(EvidenceTable.Column::tells).count();
    List<Column> columns = new ArrayList<>();
    for (EvidenceTable.Column column : table.columns()) {
      AssignedProblem problem = column.problem();
      columns.add(new Column(BarsPicture.of(problem), KindWords.of(problem.story()), shortStory(problem),
          StoryEquation.expression(problem.story()), column.tells(), columns.size() == telling));
    }
    List<Row> rows = new ArrayList<>();
    for (EvidenceTable.Row row : table.rows()) {
      ChildFinding said = row.child();
      List<Cell> cells = new ArrayList<>();
      for (Optional<Quote> quote : row.cells()) {
        boolean tells = cells.size() < telling;
        cells.add(cell(quote, tells, cells.size() == telling, finding.topic() != Topic.TOO_EARLY && finding.topic() != Topic.PUT_ASIDE));
      }
      rows.add(new Row(ShownChild.of(said.child()), shape(said.strength()), said.strength().word(),
          tally(finding.topic(), said), apart(finding.topic(), said),
          said.asOf() == null ? "" : said.reasoning().since().map(day -> "since " + AmericanDates.day(day) + ", ").orElse("")
              + "as of " + AmericanDates.day(said.asOf()), finding.early().contains(said), cells));
    }
    Optional<AssignedProblem> start = table.columns().stream()
        .filter(EvidenceTable.Column::tells).map(EvidenceTable.Column::problem).findFirst();
    String ask = ask(finding.topic());
    return new Detail(finding.topic().id(), FindingWords.headline(finding), FindingWords.lead(finding),
        can(finding.topic()), cannot(finding.topic()), telling, columns.size() - telling, columns, rows,
        ask == null ? null : start.map(FindingsPage::shortStory).orElse(null), ask);
  }

  /** Before anything is said there is nothing to count for or against: only how much could tell. */
  private static String tally(Topic topic, ChildFinding said) {
    if (said.tally().of() == 0) {
      return "no work that tells";
    }
    return topic == Topic.TOO_EARLY || topic == Topic.PUT_ASIDE ? said.tally().of() + " that could tell" : said.tally().words();
  }

  /** Work whose word agrees is counted apart from work whose word points the other way. */
  static String apart(Topic topic, ChildFinding said) {
    boolean agreeing = topic.followsTheWord() || topic.pattern().isEmpty() || topic == Topic.FROM_THE_STORY;
    return said.apart().isEmpty() || !agreeing ? ""
        : "word agrees: " + said.apartFitting() + " of " + said.apart().size() + " fit";
  }

  private static Cell cell(Optional<Quote> found, boolean tells, boolean firstApart, boolean statement) {
    if (found.isEmpty()) {
      return new Cell(null, false, false, null, tells, firstApart, "");
    }
    Quote quote = found.get();
    return new Cell(WrittenLine.of(quote.text(), quote.telling()), quote.text().isBlank(),
        statement && quote.says() == Says.AGAINST, href(quote.work().evidence()), tells, firstApart,
        quote.part() == Part.ANSWER ? quote.part().id() : "");
  }

  /** The page of one hand-in. */
  static String href(HandIn handIn) {
    return "/work/" + handIn.work() + "/" + handIn.page() + "/" + handIn.seq();
  }

  /** Without its question where the picture of the bars already says what is asked. */
  static String shortStory(AssignedProblem problem) {
    List<String> told = problem.sentences().stream().filter(sentence -> !sentence.endsWith("?")).toList();
    boolean wordInQuestion = problem.kind().unknown() == Role.DIFFERENCE;
    return String.join(" ", wordInQuestion || told.isEmpty() ? problem.sentences() : told);
  }

  static String can(Topic topic) {
    return switch (topic) {
      case DIFFERENCE_AS_AMOUNT -> "An amount is asked, or the difference";
      case TURNED_ROUND -> "The story is taken away";
      case ADDED_ANYWAY, TOOK_AWAY_ANYWAY -> "Word and story agree";
      default -> "The word points the other way";
    };
  }

  static String cannot(Topic topic) {
    return switch (topic) {
      case TURNED_ROUND -> "The story is added: cannot tell";
      case ADDED_ANYWAY, TOOK_AWAY_ANYWAY -> "Other problems: cannot tell";
      case CHANGED, NO_ONE_WAY, PUT_ASIDE, TOO_EARLY -> "Word and story agree: they tell nothing about the word";
      default -> "Word and story agree: cannot tell";
    };
  }

  private static String ask(Topic topic) {
    return switch (topic) {
      case TOOK_AWAY_AT_FEWER, ADDED_AT_MORE, ADDED_ANYWAY, TOOK_AWAY_ANYWAY, NO_ONE_WAY -> "Who has more?";
      case DIFFERENCE_AS_AMOUNT -> "Whose number is that, or is it the gap?";
      case TURNED_ROUND -> "Which number is there before anything is taken away?";
      default -> null;
    };
  }

  private static List<GridRow> grid(ClassGrid grid) {
    List<GridRow> rows = new ArrayList<>();
    for (ClassGrid.Row row : grid.rows()) {
      List<GridCell> cells = new ArrayList<>();
      for (ClassGrid.Cell cell : row.cells()) {
        cells.add(new GridCell(seen(cell.seen()), text(cell), cells.size() == 3));
      }
      rows.add(new GridRow(ShownChild.of(row.child()), cells));
    }
    return rows;
  }

  private static String seen(ClassGrid.Seen seen) {
    return switch (seen) {
      case FITS -> "fit";
      case WORD -> "cue";
      case GAP -> "gap";
      case TURNED, OTHER -> "other";
      case NONE -> "none";
    };
  }

  private static String text(ClassGrid.Cell cell) {
    String word = switch (cell.seen()) {
      case FITS -> "fits";
      case WORD -> "word";
      case GAP -> "gap";
      case TURNED -> "turned round";
      case OTHER -> "other";
      case NONE -> "no work";
    };
    return cell.of() > 1 ? word + ", " + cell.times() + " of " + cell.of() : word;
  }

  /** Names the shape drawn beside the word. */
  static String shape(Strength strength) {
    return switch (strength) {
      case TOO_EARLY, MIXED -> "early";
      case LOOKS_AS_IF -> "looks";
      case CLEAR -> "clear";
      case CHANGED -> "changed";
    };
  }
}
