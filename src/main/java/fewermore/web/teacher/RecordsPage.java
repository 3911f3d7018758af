package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.records.Table;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/**
 * What is kept of each child, and the files to take away. {@code pages/teacher/records.html}. Files:
 * {@code /records/kinds.csv} and {@code /records/work.csv}, each with {@code ?mark=yes} for a byte-order mark.
 *
 * @param tables what stands in the files, column by column
 */
public record RecordsPage(String span, int pieces, List<Row> rows, List<TableWords> tables) {

  /** Counts of one child's work: how many of {@code problems} first tries, and last tries, were as they should be. */
  public record Row(
      ShownChild child, int problems, int firstEquation, int firstAnswer, int firstLabel, int lastEquation,
      int lastAnswer, int lastLabel, String lastDay) {}

  public record TableWords(String name, List<Table.Column> columns) {}

  /** @param tables the very tables the files are made of */
  public static RecordsPage of(Collection<Child> classList, Collection<PieceOfWork> work, List<Table> tables) {
    List<Row> rows = new ArrayList<>();
    classList.stream().sorted(Comparator.comparing(Child::name).thenComparing(Child::id)).forEach(child ->
        rows.add(row(child, work.stream().filter(piece -> piece.child().equals(child)).toList())));
    List<LocalDate> days = work.stream().map(piece -> piece.evidence().day()).sorted().toList();
    String span = days.isEmpty() ? null : AmericanDates.span(days.get(0), days.get(days.size() - 1));
    return new RecordsPage(span, work.size(), rows,
        tables.stream().map(table -> new TableWords(table.name(), table.columns())).toList());
  }

  private static Row row(Child child, List<PieceOfWork> pieces) {
    String lastDay = pieces.stream().map(piece -> piece.last().day()).max(Comparator.naturalOrder())
        .map(AmericanDates::shortDay).orElse("");
    return new Row(ShownChild.of(child), pieces.size(),
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
