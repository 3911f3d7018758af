package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.PlannedSet;
import java.time.LocalDate;
import java.util.List;

/**
 * The sets she keeps, and the ones given before. {@code pages/teacher/shelf.html}.
 *
 * @param today ISO, where a copy goes if she says nothing else
 */
public record ShelfPage(String today, List<Line> lines) {
  /** @param first the first problem's question, to know a set by */
  public record Line(
      long id, String name, String day, int problems, long telling, boolean kept, boolean given, String first) {}

  public static ShelfPage of(LocalDate today, List<PlannedSet> sets) {
    return new ShelfPage(today.toString(), sets.stream().map(ShelfPage::line).toList());
  }

  private static Line line(PlannedSet set) {
    List<AssignedProblem> problems = set.set().problems();
    return new Line(set.set().id(), set.name(), AmericanDates.longDay(set.set().day()), problems.size(),
        problems.stream().filter(problem -> !problem.kind().agrees()).count(), set.kept(), set.given(),
        problems.isEmpty() ? "" : problems.get(0).text());
  }
}
