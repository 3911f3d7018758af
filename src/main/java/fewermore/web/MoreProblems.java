package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.Findings;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.TeacherWord;
import fewermore.classroom.TellsMore;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.reasoning.ReasoningTable;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Chooses the next problem for a child who has handed in all of today's and wants one more. */
interface MoreProblems {
  /**
   * @param work all work of the child
   * @param today the sets she has today, at least one
   * @param word what the teacher took out of the evidence
   * @param names names that stand in no new story
   */
  Problem next(Child child, Collection<PieceOfWork> work, List<ProblemSet> today, TeacherWord word, Set<String> names,
      long seed);

  /**
   * The kind that would tell most about this child's way, never the one she did last; numbers within the range of
   * today's problems.
   */
  MoreProblems WHAT_TELLS_MOST = (child, work, today, word, names, seed) -> {
    ReasoningTable table = ReasoningTable.standard();
    Findings findings = Findings.of(List.of(child), work, lastDay(today), word, table);
    ChildReasoning reasoning = findings.children().get(0);
    Kind kind = TellsMore.next(List.of(reasoning), reasoning.lastKind(), table);
    int largest = today.stream().flatMap(set -> set.problems().stream())
        .mapToInt(problem -> problem.story().amounts().total()).max().orElse(100);
    NumberRange range = largest <= 20 ? NumberRange.WITHIN_20 : largest <= 50 ? NumberRange.WITHIN_50
        : NumberRange.WITHIN_100;
    Set<String> taken = new HashSet<>(names);
    today.stream().flatMap(set -> set.problems().stream()).forEach(problem -> {
      taken.add(String.valueOf(problem.story().persons().larger()));
      taken.add(String.valueOf(problem.story().persons().smaller()));
    });
    return new ProblemWriter(range, Regrouping.EITHER, taken).write(kind, seed);
  };

  private static LocalDate lastDay(List<ProblemSet> today) {
    return today.stream().map(ProblemSet::day).max(LocalDate::compareTo).orElseThrow();
  }
}
