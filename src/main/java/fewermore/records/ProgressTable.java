package fewermore.records;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.HandIn;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.EquationMark;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.records.Table.Column;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Progress for a family conference, as tables. First tries and last tries stand in columns of their own: the
 * first is the evidence, the last shows what a prompt to look again led to. The problems are within
 * CCSS.Math.Content.2.OA.A.1 (Common Core State Standards for Mathematics, 2010).
 */
public final class ProgressTable {
  private ProgressTable() {}

  /** One row for each child and kind, in the order of names and kinds; also where there is no work yet. */
  public static Table childByKind(Classroom room, Collection<Child> classList, Collection<PieceOfWork> work) {
    List<List<Object>> rows = new ArrayList<>();
    byName(classList).forEach(child -> {
      for (Kind kind : Kind.values()) {
        rows.add(kindRow(room, child, kind, work.stream()
            .filter(piece -> piece.child().equals(child) && piece.problem().kind() == kind).toList()));
      }
    });
    return new Table("progress by child and kind", KIND_COLUMNS, rows);
  }

  /** One row for each piece of work, by name, then by the time of the first try. */
  public static Table pieces(Classroom room, Collection<Child> classList, Collection<PieceOfWork> work) {
    List<List<Object>> rows = new ArrayList<>();
    byName(classList).forEach(child -> work.stream()
        .filter(piece -> piece.child().equals(child))
        .sorted(Comparator.comparing((PieceOfWork piece) -> piece.evidence().at())
            .thenComparing(piece -> piece.problem().id()))
        .forEach(piece -> rows.add(pieceRow(room, piece))));
    return new Table("every piece of work", WORK_COLUMNS, rows);
  }

  private static List<Child> byName(Collection<Child> children) {
    return children.stream().sorted(Comparator.comparing(Child::name).thenComparing(Child::id)).toList();
  }

  private static final List<Column> KIND_COLUMNS = List.of(
      new Column("class", "the class's name"),
      new Column("child", "the child's first name as the class uses it"),
      new Column("kind", "the unknown and the wording: larger-fewer is \"the larger is asked, the word is fewer\""),
      new Column("unknown", "what is asked: larger, smaller or difference"),
      new Column("wording", "more or fewer; \"what is the difference\" is counted with fewer"),
      new Column("word_agrees", "yes when the word points to the operation that finds the answer"),
      new Column("problems", "problems the child handed in"),
      new Column("first_equation_fits", "of these, first tries whose equation says what the story says"),
      new Column("first_answer_right", "first tries whose answer is right"),
      new Column("first_label_names_it", "first tries whose label names the thing counted"),
      new Column("first_bars_fit", "first tries whose bars fit the story"),
      new Column("last_equation_fits", "the same for the last try, the first where there was only one"),
      new Column("last_answer_right", "last tries whose answer is right"),
      new Column("last_label_names_it", "last tries whose label names the thing counted"),
      new Column("last_bars_fit", "last tries whose bars fit the story"),
      new Column("first_day", "day of the first problem of this kind, year-month-day"),
      new Column("last_day", "day of the last problem of this kind, year-month-day"));

  private static List<Object> kindRow(Classroom room, Child child, Kind kind, List<PieceOfWork> pieces) {
    List<Object> row = new ArrayList<>(Arrays.asList(room.name(), child.name(), kind.id(), kind.unknown().id(),
        kind.wording().id(), kind.agrees() ? "yes" : "no", pieces.size()));
    for (Function<PieceOfWork, HandIn> attempt : List.<Function<PieceOfWork, HandIn>>of(
        PieceOfWork::evidence, PieceOfWork::last)) {
      for (Predicate<Marks> good : GOOD) {
        row.add((int) pieces.stream().filter(piece -> good.test(attempt.apply(piece).marks())).count());
      }
    }
    row.add(pieces.stream().map(piece -> piece.evidence().day()).min(LocalDate::compareTo).orElse(null));
    row.add(pieces.stream().map(piece -> piece.evidence().day()).max(LocalDate::compareTo).orElse(null));
    return row;
  }

  private static final List<Predicate<Marks>> GOOD = List.of(
      marks -> marks.equation() != null && marks.equation().fits(),
      marks -> marks.answer() != null && marks.answer().verdict() == AnswerVerdict.RIGHT,
      marks -> marks.label() == LabelVerdict.NAMES_IT,
      marks -> marks.bars() == BarsVerdict.FITS);

  private static final List<Column> WORK_COLUMNS = workColumns();

  private static List<Column> workColumns() {
    List<Column> columns = new ArrayList<>(List.of(
        new Column("class", "the class's name"),
        new Column("child", "the child's first name as the class uses it"),
        new Column("day", "day of the first try in the class's time zone, year-month-day"),
        new Column("handed_in_at", "when the first try was written, in UTC"),
        new Column("problem", "the problem's number in this class"),
        new Column("kind", "the unknown and the wording: larger-fewer is \"the larger is asked, the word is fewer\""),
        new Column("word_agrees", "yes when the word points to the operation that finds the answer"),
        new Column("text", "the problem as the child read it"),
        new Column("right_answer", "the answer to the problem"),
        new Column("tries", "how often the child handed it in")));
    for (String attempt : List.of("first", "last")) {
      columns.addAll(List.of(
          new Column(attempt + "_equation", "the equation of the " + attempt + " try, as the child wrote it"),
          new Column(attempt + "_equation_mark", "fits, or what it is instead"),
          new Column(attempt + "_follows_word", "yes when the wrong operation is the one the word points to"),
          new Column(attempt + "_answer", "the answer of the " + attempt + " try, as the child wrote it"),
          new Column(attempt + "_answer_mark", "right, or what it is instead"),
          new Column(attempt + "_label", "the label of the " + attempt + " try, as the child wrote it"),
          new Column(attempt + "_label_mark", "names-it, or what it is instead"),
          new Column(attempt + "_bars_mark", "fits, or what the bars are instead")));
    }
    return List.copyOf(columns);
  }

  private static List<Object> pieceRow(Classroom room, PieceOfWork piece) {
    HandIn first = piece.evidence();
    List<Object> row = new ArrayList<>(Arrays.asList(room.name(), piece.child().name(), first.day(), first.at(),
        piece.problem().id(), piece.problem().kind().id(), piece.problem().kind().agrees() ? "yes" : "no",
        piece.problem().text(), piece.problem().story().answer(), piece.tries()));
    for (HandIn attempt : List.of(first, piece.last())) {
      Marks marks = attempt.marks();
      EquationMark equation = marks.equation();
      row.addAll(Arrays.asList(
          attempt.parts().equation(),
          equation == null ? null : equation.reason().id(),
          equation == null ? null : equation.cueLed() ? "yes" : "no",
          attempt.parts().answer(),
          marks.answer() == null ? null : marks.answer().verdict().id(),
          attempt.parts().label(),
          marks.label() == null ? null : marks.label().id(),
          marks.bars() == null ? null : marks.bars().id()));
    }
    return row;
  }
}
