package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.ProblemSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * Today's set with its answers and what to do, for a substitute: on the screen and on one printed page.
 * {@code pages/teacher/today.html}. Holds nothing about any child.
 *
 * @param address how tablets reach this laptop, or null
 * @param note the teacher's own words, a line an element
 */
public record TodayPage(String className, String day, List<Problem> problems, String address, List<String> note) {
  public record Problem(int number, List<String> sentences, WrittenLine equation, int answer, String label) {}

  public TodayPage {
    problems = List.copyOf(problems);
    note = List.copyOf(note);
  }

  public static TodayPage of(
      String className, LocalDate day, Collection<ProblemSet> sets, String address, String note) {
    List<Problem> problems = new ArrayList<>();
    for (ProblemSet set : sets) {
      for (AssignedProblem each : set.problems()) {
        problems.add(new Problem(problems.size() + 1, each.sentences(),
            WrittenLine.of(StoryEquation.of(each.story()), null), each.story().answer(), each.story().thing().many()));
      }
    }
    return new TodayPage(className, AmericanDates.longDay(day), problems, address,
        note.isBlank() ? List.of() : note.strip().lines().toList());
  }
}
