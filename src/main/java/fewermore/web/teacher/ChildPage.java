package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.ChildFinding;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.ClassGrid;
import fewermore.classroom.Finding;
import fewermore.classroom.FindingWords;
import fewermore.classroom.Findings;
import fewermore.classroom.Phrase;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.PutAside;
import fewermore.classroom.Quote;
import fewermore.classroom.Says;
import fewermore.classroom.TakenOut;
import fewermore.classroom.TeacherWord;
import fewermore.classroom.TellsMore;
import fewermore.classroom.Topic;
import fewermore.marking.Part;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.ReasoningTable;
import fewermore.story.Kind;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * All that one child's first tries show. {@code pages/teacher/child.html}, {@code GET /findings/child/{child}}.
 *
 * @param sentence what the work shows; the word {@code strength} says how sure, {@code asOf} as of when
 * @param apartTally the work that can't tell, counted apart; empty when there is none
 * @param tells every problem that could tell, the latest first, what speaks against included
 * @param apart every problem that could not
 * @param out what the teacher took out of the evidence
 * @param asides what she put aside, with her notes
 * @param aside the way she could put aside now, or null
 * @param next what would tell more; empty before there is work
 * @param over how it changed over the days, or null
 */
public record ChildPage(
    ShownChild child, String read, Phrase sentence, String strength, String strengthWord, String tally, String apartTally,
    String asOf, String can, String cannot, List<Line> tells, List<Line> apart, List<Out> out, List<Aside> asides,
    Way aside, String next, WaysOverDays over) {

  /**
   * One problem with the child's first equation.
   *
   * @param between "tells between … and …", or "tells nothing between …"
   * @param problem its id, for taking it out
   */
  public record Line(
      String day, String story, KindWords kind, WrittenLine wrote, boolean blank, String part, String seen,
      boolean against, boolean so, int tries, String href, String between, long problem) {}

  /** A piece of work that is no evidence. */
  public record Out(long id, long problem, String day, String story, WrittenLine wrote, String why, String href) {}

  public record Aside(long id, String way, String note, String day) {}

  /** @param id of the way */
  public record Way(String id, String words) {}

  /** A reason to take work out. */
  public record Why(String id, String word) {}

  /** @return empty when the class has no such child */
  public static Optional<ChildPage> of(Findings findings, Child child) {
    return of(findings, child, List.of(), TeacherWord.NONE);
  }

  /** @param all the child's work of all weeks, for what changed */
  public static Optional<ChildPage> of(Findings findings, Child child, List<PieceOfWork> all, TeacherWord word) {
    for (Finding finding : findings.statements()) {
      for (ChildFinding said : finding.children()) {
        if (said.child().equals(child)) {
          return Optional.of(of(findings, finding, said, all, word));
        }
      }
    }
    return Optional.empty();
  }

  private static ChildPage of(
      Findings findings, Finding finding, ChildFinding said, List<PieceOfWork> all, TeacherWord word) {
    ChildReasoning reasoning = said.reasoning();
    Topic topic = finding.topic();
    boolean silent = topic == Topic.TOO_EARLY || topic == Topic.PUT_ASIDE;
    String tally = silent ? said.tally().of() + " that could tell" : said.tally().words();
    WayOfReasoning way = reasoning.says().way();
    return new ChildPage(ShownChild.of(said.child()), AmericanDates.span(findings.from(), findings.asOf()),
        FindingWords.ofChild(said), topic == Topic.PUT_ASIDE ? "early" : FindingsPage.shape(said.strength()),
        topic == Topic.PUT_ASIDE ? "put aside" : said.strength().word(), tally, FindingsPage.apart(topic, said),
        said.asOf() == null ? "" : AmericanDates.day(said.asOf()), FindingsPage.can(topic), FindingsPage.cannot(topic),
        lines(reasoning, said.evidence(), !silent), lines(reasoning, said.apart(), false), out(reasoning),
        reasoning.putAside().stream().map(ChildPage::aside).toList(),
        way == null || topic == Topic.PUT_ASIDE ? null : new Way(way.id(), FindingWords.way(way).toString()),
        next(reasoning), all.isEmpty() ? null : WaysOverDays.of(reasoning, all, word, ReasoningTable.standard()));
  }

  private static Aside aside(PutAside aside) {
    return new Aside(aside.id(), FindingWords.way(aside.way()).toString(), aside.note(), AmericanDates.day(aside.day()));
  }

  private static String next(ChildReasoning reasoning) {
    ReasoningTable table = reasoning.estimate().table();
    Kind next = TellsMore.next(List.of(reasoning), reasoning.lastKind(), table);
    Kind well = TellsMore.doneWell(List.of(reasoning), table);
    return "A problem with the " + words(next) + " would tell most. One that is likely to go well: the " + words(well) + ".";
  }

  /** "larger amount asked, told with fewer" */
  static String words(Kind kind) {
    return kind.unknown().id() + (kind.unknown() == Role.DIFFERENCE ? "" : " amount") + " asked and the word "
        + kind.wording().id();
  }

  private static List<Out> out(ChildReasoning reasoning) {
    List<Out> out = new ArrayList<>();
    for (PieceOfWork piece : reasoning.work()) {
      Optional<TakenOut> taken = reasoning.takenOut(piece);
      if (taken.isPresent()) {
        String equation = piece.evidence().parts().equation();
        out.add(new Out(taken.get().id(), piece.problem().id(), AmericanDates.day(piece.evidence().day()), FindingsPage.shortStory(piece.problem()),
            WrittenLine.of(equation == null ? "" : equation), taken.get().why().word()
                + (taken.get().child() == 0 ? ", the whole class" : ""), FindingsPage.href(piece.evidence())));
      }
    }
    return out;
  }

  private static List<Line> lines(ChildReasoning reasoning, List<Quote> quotes, boolean tell) {
    List<Line> lines = new ArrayList<>();
    for (Quote quote : quotes) {
      PieceOfWork piece = quote.work();
      lines.add(new Line(AmericanDates.day(quote.day()), FindingsPage.shortStory(piece.problem()),
          KindWords.of(piece.problem().story()), WrittenLine.of(quote.text(), quote.telling()), quote.text().isBlank(),
          quote.part() == Part.EQUATION ? "" : quote.part().id(), seen(piece),
          tell && quote.says() == Says.AGAINST, tell && quote.says() == Says.SO, piece.tries(),
          FindingsPage.href(piece.evidence()), FindingWords.tells(reasoning, piece.problem().kind()),
          piece.problem().id()));
    }
    return lines;
  }

  private static String seen(PieceOfWork piece) {
    return switch (ClassGrid.seen(piece)) {
      case FITS -> "fits the story";
      case WORD -> "the sign the word points to";
      case GAP -> piece.problem().kind().unknown() == Role.DIFFERENCE ? "an amount as the difference" : "the difference as an amount";
      case TURNED -> "turned round";
      case OTHER, NONE -> WorkView.word(piece.evidence().marks().equation() == null ? "not asked"
          : piece.evidence().marks().equation().reason().id());
    };
  }

  /** Both tables, for a page without work. */
  public boolean empty() {
    return Stream.of(tells, apart).allMatch(List::isEmpty);
  }

  public List<Why> whys() {
    return Stream.of(TakenOut.Why.values()).map(why -> new Why(why.id(), why.word())).toList();
  }

  public int longestNote() {
    return PutAside.LONGEST_NOTE;
  }
}
