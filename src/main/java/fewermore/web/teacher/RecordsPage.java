package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Findings;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.records.Table;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/**
 * What is kept of each child, and the files to take away. {@code pages/teacher/records.html}, and on paper
 * {@code pages/teacher/class-report.html}. Files: {@code /records/kinds.csv}, {@code days.csv}, {@code work.csv} and
 * {@code overruled.csv}, each with {@code ?mark=yes} for a byte-order mark.
 *
 * @param tables what stands in the files, column by column
 */
public record RecordsPage(
    String span, int pieces, List<Row> rows, List<KindRow> kinds, List<TableWords> tables) {

  /** Counts of one child's work: how many of {@code problems} first tries, and last tries, were as they should be. */
  public record Row(
      ShownChild child, int problems, int withHelp, int firstEquation, int firstAnswer, int firstLabel, int lastEquation,
      int lastAnswer, int lastLabel, String lastDay) {}

  /** Equations of the whole class on one kind that say what the story says: {@code 12 of 40}. */
  public record KindRow(KindWords kind, int problems, String first, String last) {}

  public record TableWords(String name, List<Table.Column> columns) {}

  /** @param tables the very tables the files are made of */
  public static RecordsPage of(Collection<Child> classList, Collection<PieceOfWork> work, List<Table> tables) {
    List<Row> rows = new ArrayList<>();
    classList.stream().sorted(Comparator.comparing(Child::name).thenComparing(Child::id)).forEach(child ->
        rows.add(row(child, work.stream().filter(piece -> piece.child().equals(child)).toList())));
    List<LocalDate> days = work.stream().map(piece -> piece.evidence().day()).sorted().toList();
    String span = days.isEmpty() ? null : AmericanDates.span(days.get(0), days.get(days.size() - 1));
    return new RecordsPage(span, work.size(), rows, Findings.KINDS.stream().map(kind -> kindRow(kind, work)).toList(),
        tables.stream().map(table -> new TableWords(table.name(), table.columns())).toList());
  }

  private static KindRow kindRow(Kind kind, Collection<PieceOfWork> work) {
    List<PieceOfWork> own = work.stream().filter(piece -> piece.problem().kind() == kind && !piece.withHelp()).toList();
    return new KindRow(KindWords.of(kind), own.size(),
        own.isEmpty() ? "" : count(own, piece -> equation(piece.evidence().marks())) + " of " + own.size(),
        own.isEmpty() ? "" : count(own, piece -> equation(piece.last().marks())) + " of " + own.size());
  }

  private static Row row(Child child, List<PieceOfWork> all) {
    List<PieceOfWork> pieces = all.stream().filter(piece -> !piece.withHelp()).toList();
    String lastDay = all.stream().map(piece -> piece.last().day()).max(Comparator.naturalOrder())
        .map(AmericanDates::shortDay).orElse("");
    return new Row(ShownChild.of(child), pieces.size(), all.size() - pieces.size(),
        count(pieces, piece -> equation(piece.evidence().marks())), count(pieces, piece -> answer(piece.evidence().marks())),
        count(pieces, piece -> piece.evidence().marks().label() == LabelVerdict.NAMES_IT),
        count(pieces, piece -> equation(piece.last().marks())), count(pieces, piece -> answer(piece.last().marks())),
        count(pieces, piece -> piece.last().marks().label() == LabelVerdict.NAMES_IT), lastDay);
  }

  private static boolean equation(Marks marks) {
    return marks.equation() != null && marks.equation().fits();
  }

  private static boolean answer(Marks marks) {
    return marks.answer() != null && marks.answer().verdict() == AnswerVerdict.RIGHT;
  }

  private static int count(List<PieceOfWork> pieces, Predicate<PieceOfWork> good) {
    return (int) pieces.stream().filter(good).count();
  }
}
