package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Findings;
import fewermore.classroom.Phrase;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.records.Weeks;
import fewermore.records.Weeks.Week;
import fewermore.store.RecordStore.Note;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * A child over weeks: what the work said at each week's end, parts, kinds, every piece, the teacher's notes.
 * {@code pages/teacher/child-record.html}. Forms: {@code …/note}: {@code content}; {@code …/note/remove}: {@code note};
 * {@code …/choose}: {@code problem}, {@code chosen}; {@code …/help}: {@code problem}, {@code help};
 * {@code …/request}: {@code open}.
 *
 * @param left when she left the class, or null
 * @param request since when a family's request is open, or null
 */
public record ChildRecordPage(
    ShownChild child, String left, String span, int pieces, List<WeekLine> weeks, List<KindLine> kinds,
    List<WorkLine> work, List<NoteLine> notes, String request, String today) {

  /**
   * @param says what first tries of the four weeks up to then said, with its {@code strength}
   * @param first by part: bars, equation, answer, label, for example {@code 3 of 4}; @param last the same
   */
  public record WeekLine(
      String span, int problems, int withHelp, List<String> first, List<String> last, Phrase says, String strength,
      String strengthWord) {}

  public record KindLine(KindWords kind, int problems, String first, String last) {}

  /** @param parts what was as it should be in the first try, in words; @param last the same for the last try */
  public record WorkLine(
      long problem, String day, KindWords kind, String story, WrittenLine wrote, boolean blank, String parts, int tries,
      String lastParts, boolean withHelp, boolean paper, boolean chosen, String href) {}

  public record NoteLine(long id, String day, String content) {}

  public static ChildRecordPage of(
      Child child, LocalDate left, Collection<PieceOfWork> work, Set<Long> chosen, Collection<Note> notes,
      LocalDate request, LocalDate today) {
    List<PieceOfWork> latest = work.stream()
        .sorted(Comparator.comparing((PieceOfWork piece) -> piece.evidence().at()).reversed()).toList();
    List<LocalDate> days = latest.stream().map(piece -> piece.evidence().day()).toList();
    String span = days.isEmpty() ? null : AmericanDates.span(days.get(days.size() - 1), days.get(0));
    List<WeekLine> weeks = new ArrayList<>();
    for (Week week : Weeks.of(work).weeks()) {
      weeks.add(0, weekLine(child, work, week));
    }
    return new ChildRecordPage(ShownChild.of(child), left == null ? null : AmericanDates.longDay(left), span,
        latest.size(), weeks, kinds(latest), latest.stream().map(piece -> workLine(piece, chosen)).toList(),
        notes.stream().map(note -> new NoteLine(note.id(), AmericanDates.day(note.day()), note.content())).toList(),
        request == null ? null : AmericanDates.longDay(request), AmericanDates.longDay(today));
  }

  private static WeekLine weekLine(Child child, Collection<PieceOfWork> work, Week week) {
    ChildPage said = ChildPage.of(Findings.of(List.of(child), work, week.lastDay()), child).orElseThrow();
    return new WeekLine(AmericanDates.span(week.monday(), week.lastDay()), week.problems(), week.withHelp(),
        words(week.first()), words(week.last()), said.sentence(), said.strength(), said.strengthWord());
  }

  private static List<String> words(Weeks.Parts parts) {
    return List.of(parts.bars().words(), parts.equation().words(), parts.answer().words(), parts.label().words());
  }

  private static List<KindLine> kinds(Collection<PieceOfWork> work) {
    return Findings.KINDS.stream().map(kind -> {
      List<PieceOfWork> own = work.stream().filter(piece -> piece.problem().kind() == kind && !piece.withHelp()).toList();
      return new KindLine(KindWords.of(kind), own.size(),
          own.isEmpty() ? "" : fits(own.stream().map(PieceOfWork::evidence).toList()),
          own.isEmpty() ? "" : fits(own.stream().map(PieceOfWork::last).toList()));
    }).toList();
  }

  private static String fits(Collection<fewermore.classroom.HandIn> tries) {
    long asked = tries.stream().filter(each -> each.marks().equation() != null).count();
    long fits = tries.stream().filter(each -> each.marks().equation() != null && each.marks().equation().fits()).count();
    return asked == 0 ? "" : fits + " of " + asked;
  }

  private static WorkLine workLine(PieceOfWork piece, Set<Long> chosen) {
    String equation = piece.evidence().parts().equation();
    return new WorkLine(piece.problem().id(), AmericanDates.day(piece.evidence().day()),
        KindWords.of(piece.problem().story()), FindingsPage.shortStory(piece.problem()),
        equation == null ? null : WrittenLine.of(equation), equation == null || equation.isBlank(),
        parts(piece.evidence().marks()), piece.tries(), piece.tries() > 1 ? parts(piece.last().marks()) : "",
        piece.withHelp(), piece.evidence().tablet().equals(PAPER), chosen.contains(piece.problem().id()),
        FindingsPage.href(piece.evidence()));
  }

  /** The name of the tablet that stands for paper. */
  public static final String PAPER = "paper";

  /** What is as it should be, part by part; "nothing yet" when no part is. */
  private static String parts(fewermore.marking.Marks marks) {
    List<String> good = new ArrayList<>();
    if (marks.bars() == BarsVerdict.FITS) {
      good.add("bars");
    }
    if (marks.equation() != null && marks.equation().fits()) {
      good.add("equation");
    }
    if (marks.answer() != null && marks.answer().verdict() == AnswerVerdict.RIGHT) {
      good.add("answer");
    }
    if (marks.label() == LabelVerdict.NAMES_IT) {
      good.add("label");
    }
    return good.isEmpty() ? "no part yet" : String.join(", ", good);
  }
}
