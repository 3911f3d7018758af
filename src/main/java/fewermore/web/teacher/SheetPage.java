package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.ProblemSet;
import java.util.ArrayList;
import java.util.List;

/**
 * A set on paper: {@code pages/teacher/sheet.html} for children, {@code pages/teacher/key.html} for the teacher.
 *
 * @param spanish whether the sheet is in Spanish; a problem without it stays English
 * @param texts the sentences of each problem, in the sheet's language
 */
public record SheetPage(
    String className, String day, boolean spanish, List<List<String>> texts, List<PlanPage.Planned> problems,
    boolean hasSpanish, long number) {
  public static SheetPage of(String className, ProblemSet set, boolean spanish) {
    List<List<String>> texts = new ArrayList<>();
    for (AssignedProblem problem : set.problems()) {
      texts.add(problem.sentences(spanish ? "es" : "en"));
    }
    return new SheetPage(className, AmericanDates.longDay(set.day()), spanish, texts, PlanPage.planned(set),
        set.problems().stream().anyMatch(problem -> !problem.spanish().isEmpty()), set.id());
  }
}
