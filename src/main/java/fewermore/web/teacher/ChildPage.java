package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.ChildFinding;
import fewermore.classroom.ClassGrid;
import fewermore.classroom.Finding;
import fewermore.classroom.FindingWords;
import fewermore.classroom.Findings;
import fewermore.classroom.Phrase;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.Quote;
import fewermore.classroom.Says;
import fewermore.classroom.Topic;
import fewermore.marking.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * All that one child's first tries show. {@code pages/teacher/child.html}, {@code GET /findings/child/{child}}.
 *
 * @param sentence what the work shows, past tense; the word {@code strength} says how sure
 * @param tells every problem that could tell, the latest first, what speaks against included
 * @param apart every problem that could not
 */
public record ChildPage(
    ShownChild child, String read, Phrase sentence, String strength, String strengthWord, String tally, String can,
    String cannot, List<Line> tells, List<Line> apart) {

  /** One problem with the child's first equation. */
  public record Line(
      String day, String story, KindWords kind, WrittenLine wrote, boolean blank, String part, String seen,
      boolean against, boolean so, int tries, String href) {}

  /** @return empty when the class has no such child */
  public static Optional<ChildPage> of(Findings findings, Child child) {
    for (Finding finding : findings.statements()) {
      for (ChildFinding said : finding.children()) {
        if (said.child().equals(child)) {
          return Optional.of(of(findings, finding, said));
        }
      }
    }
    return Optional.empty();
  }

  private static ChildPage of(Findings findings, Finding finding, ChildFinding said) {
    Finding alone = new Finding(finding.topic(), List.of(said), List.of());
    boolean early = finding.topic() == Topic.TOO_EARLY;
    String tally = early ? said.tally().of() + " that could tell" : said.tally().words();
    return new ChildPage(ShownChild.of(said.child()), AmericanDates.span(findings.from(), findings.asOf()),
        early ? Phrase.of("Too early to tell.") : Phrase.of("In this work, " + said.child().name() + " ")
            .and(FindingWords.predicate(alone)),
        said.strength().id(), said.strength().word(), tally, FindingsPage.can(finding.topic()),
        FindingsPage.cannot(finding.topic()), lines(said.evidence(), !early), lines(said.apart(), false));
  }

  private static List<Line> lines(List<Quote> quotes, boolean tell) {
    List<Line> lines = new ArrayList<>();
    for (Quote quote : quotes) {
      PieceOfWork piece = quote.work();
      lines.add(new Line(AmericanDates.day(quote.day()), FindingsPage.shortStory(piece.problem()),
          KindWords.of(piece.problem().story()), WrittenLine.of(quote.text(), quote.telling()), quote.text().isBlank(),
          quote.part() == Part.EQUATION ? "" : quote.part().id(), seen(piece),
          tell && quote.says() == Says.AGAINST, tell && quote.says() == Says.SO, piece.tries(),
          FindingsPage.href(piece.evidence())));
    }
    return lines;
  }

  private static String seen(PieceOfWork piece) {
    return switch (ClassGrid.seen(piece)) {
      case FITS -> "fits the story";
      case WORD -> "the sign the word points to";
      case GAP -> "the difference as an amount";
      case TURNED -> "turned round";
      case OTHER, NONE -> WorkView.word(piece.evidence().marks().equation() == null ? "not asked"
          : piece.evidence().marks().equation().reason().id());
    };
  }

  /** Both tables, for a page without work. */
  public boolean empty() {
    return Stream.of(tells, apart).allMatch(List::isEmpty);
  }
}
