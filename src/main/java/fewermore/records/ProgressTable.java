package fewermore.records;

import fewermore.calculation.SlipRule;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.HandIn;
import fewermore.classroom.OverruledMark;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.EquationMark;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.marking.StrategyMark;
import fewermore.marking.StrategyWork;
import fewermore.records.Table.Column;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Progress for a family conference, as tables. First tries and last tries stand in columns of their own: the
 * first is the evidence, the last shows what a prompt to look again led to. The problems are within
 * CCSS.Math.Content.2.OA.A.1 (Common Core State Standards for Mathematics, 2010).
 */
public final class ProgressTable {
  /** The standard these problems are within, in the dot notation of its own identifiers. */
  public static final String STANDARD = "CCSS.Math.Content.2.OA.A.1";

  private static final Column STANDARD_COLUMN = new Column("standard", "the standard these problems are part of");
  private static final Column HELP_COUNT =
      new Column("with_help", "further problems done with an adult's help, in none of the other counts");

  private ProgressTable() {}

  /**
   * One row for each child and day on which the class was given problems or she handed some in. A day on which she sat
   * at no tablet is {@code away}, one on which the teacher marked her absent is {@code absent}: never blank work.
   *
   * @param given how many problems the class was given on each day
   * @param there the days each child, by her id, sat at a tablet or had work typed in
   * @param absent the days the teacher marked each child absent, by her id
   */
  public static Table childByDay(Classroom room, Collection<Child> classList, Collection<PieceOfWork> work,
      Map<LocalDate, Integer> given, Map<Long, Set<LocalDate>> there, Map<Long, Set<LocalDate>> absent) {
    List<List<Object>> rows = new ArrayList<>();
    byName(classList).forEach(child -> {
      List<PieceOfWork> own = work.stream().filter(piece -> piece.child().equals(child)).toList();
      Set<LocalDate> days = new TreeSet<>(given.keySet());
      own.forEach(piece -> days.add(piece.evidence().day()));
      for (LocalDate day : days) {
        rows.add(dayRow(room, child, day, given.getOrDefault(day, 0),
            there.getOrDefault(child.id(), Set.of()).contains(day) ? "there"
                : absent.getOrDefault(child.id(), Set.of()).contains(day) ? "absent" : "away",
            own.stream().filter(piece -> piece.evidence().day().equals(day)).toList()));
      }
    });
    return new Table("progress by child and day", DAY_COLUMNS, rows);
  }

  private static final List<Column> DAY_COLUMNS = List.of(
      new Column("class", "the class's name"),
      new Column("child", "the child's first name as the class uses it"),
      new Column("day", "year-month-day, by the class's clock"),
      new Column("state", "worked, there (at a tablet, nothing handed in), absent (as the teacher marked it) or away"),
      new Column("given", "problems the class was given on this day"),
      new Column("problems", "problems the child handed in first on this day, without help"),
      HELP_COUNT,
      new Column("first_equation_fits", "of these, first tries whose equation says what the story says"),
      new Column("first_answer_right", "first tries whose answer is right"),
      new Column("first_label_names_it", "first tries whose label names the thing counted"),
      new Column("first_bars_fit", "first tries whose bars fit the story"),
      new Column("last_equation_fits", "the same for the last try, the first where there was only one"),
      new Column("last_answer_right", "last tries whose answer is right"),
      new Column("last_label_names_it", "last tries whose label names the thing counted"),
      new Column("last_bars_fit", "last tries whose bars fit the story"),
      STANDARD_COLUMN);

  private static List<Object> dayRow(
      Classroom room, Child child, LocalDate day, int given, String withoutWork, List<PieceOfWork> all) {
    List<PieceOfWork> pieces = all.stream().filter(piece -> !piece.withHelp()).toList();
    List<Object> row = new ArrayList<>(Arrays.asList(room.name(), child.name(), day,
        !all.isEmpty() ? "worked" : withoutWork, given, pieces.size(), all.size() - pieces.size()));
    if (all.isEmpty()) {
      row.addAll(Arrays.asList(null, null, null, null, null, null, null, null));
    } else {
      addCounts(row, pieces);
    }
    row.add(STANDARD);
    return row;
  }

  /** Every mark the teacher set aside, with the app's own beside it. */
  public static Table overruled(Classroom room, Collection<OverruledMark> marks) {
    return new Table("overruled marks", OVERRULED_COLUMNS, marks.stream().map(mark -> Arrays.<Object>asList(
        room.name(), mark.childName(), mark.day(), mark.problem(), mark.part().id(), mark.was(), mark.verdict(),
        mark.note(), mark.at(), STANDARD)).toList());
  }

  private static final List<Column> OVERRULED_COLUMNS = List.of(
      new Column("class", "the class's name"),
      new Column("child", "the child's first name as the class uses it"),
      new Column("day", "day the work was written, year-month-day"),
      new Column("problem", "the problem's number in this class"),
      new Column("part", "bars, equation, answer, label, estimate or strategy"),
      new Column("app_mark", "the app's own mark, which is kept"),
      new Column("teacher_mark", "the mark that counts instead"),
      new Column("why", "the teacher's note"),
      new Column("overruled_at", "when, in UTC"),
      STANDARD_COLUMN);

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
      new Column("last_day", "day of the last problem of this kind, year-month-day"),
      HELP_COUNT,
      STANDARD_COLUMN);

  private static List<Object> kindRow(Classroom room, Child child, Kind kind, List<PieceOfWork> all) {
    List<PieceOfWork> pieces = all.stream().filter(piece -> !piece.withHelp()).toList();
    List<Object> row = new ArrayList<>(Arrays.asList(room.name(), child.name(), kind.id(), kind.unknown().id(),
        kind.wording().id(), kind.agrees() ? "yes" : "no", pieces.size()));
    addCounts(row, pieces);
    row.add(pieces.stream().map(piece -> piece.evidence().day()).min(LocalDate::compareTo).orElse(null));
    row.add(pieces.stream().map(piece -> piece.evidence().day()).max(LocalDate::compareTo).orElse(null));
    row.add(all.size() - pieces.size());
    row.add(STANDARD);
    return row;
  }

  private static void addCounts(List<Object> row, Collection<PieceOfWork> pieces) {
    for (Function<PieceOfWork, HandIn> attempt : List.<Function<PieceOfWork, HandIn>>of(
        PieceOfWork::evidence, PieceOfWork::last)) {
      for (Predicate<Marks> good : GOOD) {
        row.add((int) pieces.stream().filter(piece -> good.test(attempt.apply(piece).marks())).count());
      }
    }
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
    for (String attempt : List.of("first", "last")) {
      columns.addAll(List.of(
          new Column(attempt + "_strategy", "pieces, line or expanded: what the " + attempt + " try was worked out with"),
          new Column(attempt + "_strategy_mark", "fits, slip, other-calculation, unfinished or blank"),
          new Column(attempt + "_strategy_way", "the good way its steps go, where it can be seen"),
          new Column(attempt + "_strategy_slips", "slips its steps show, separated by blanks"),
          new Column(attempt + "_check", "what a second strategy checked it with"),
          new Column(attempt + "_check_agrees", "yes when both came to the same number")));
    }
    columns.addAll(List.of(
        new Column("with_help", "yes when an adult worked with the child: no evidence of how she reasons"),
        new Column("tablet", "the tablet's name, or paper where the teacher typed it in"),
        STANDARD_COLUMN));
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
    for (HandIn attempt : List.of(first, piece.last())) {
      addStrategy(row, attempt.parts().strategy(), attempt.marks().strategy());
    }
    row.addAll(Arrays.asList(piece.withHelp() ? "yes" : "no", first.tablet(), STANDARD));
    return row;
  }

  /** Nothing where none was asked; only a mark where it was left blank. */
  private static void addStrategy(List<Object> row, StrategyWork work, StrategyMark mark) {
    StrategyWork check = work == null ? null : work.check();
    row.addAll(Arrays.asList(
        work == null || work.kind() == null ? null : work.kind().id(),
        mark == null ? null : mark.verdict().id(),
        mark == null || mark.way() == null ? null : mark.way().id(),
        mark == null ? null : mark.slips().stream().map(SlipRule::id).collect(Collectors.joining(" ")),
        check == null || check.kind() == null ? null : check.kind().id(),
        mark == null || mark.agrees() == null ? null : mark.agrees() ? "yes" : "no"));
  }
}
