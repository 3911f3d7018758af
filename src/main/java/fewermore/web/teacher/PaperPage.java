package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.ProblemSet;
import fewermore.marking.BarsMarker;
import fewermore.marking.Part;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * For typing in what a child wrote on paper. {@code pages/teacher/paper.html}; posts to the same address
 * {@code child}, {@code set} and for each problem {@code <part>-<problem>} and {@code help-<problem>}.
 *
 * @param given the sets that may be typed in, newest first
 * @param openSet the set that is open, or 0
 * @param child the child that is open, or 0
 * @param kept how many pieces were kept just now
 */
public record PaperPage(
    List<ChildChoice> children, List<SetChoice> given, long child, String name, long openSet, String day, List<Sheet> sheets,
    int kept) {
  public record ChildChoice(long id, String name) {}

  public record SetChoice(long id, String words) {}

  /** @param there how often she handed it in already; @param href her latest, or null */
  public record Sheet(
      int number, long problem, List<String> sentences, List<String> lanes, boolean bars, boolean equation,
      boolean answer, boolean label, boolean estimate, int there, String href) {}

  public static PaperPage of(
      Collection<Child> children, Collection<ProblemSet> sets, Optional<Child> child, Optional<ProblemSet> set,
      Collection<PieceOfWork> work, int kept) {
    List<Sheet> sheets = new ArrayList<>();
    set.ifPresent(open -> open.problems().forEach(problem ->
        sheets.add(sheet(sheets.size() + 1, open, problem, work))));
    return new PaperPage(children.stream().map(each -> new ChildChoice(each.id(), each.name())).toList(),
        sets.stream().map(each -> new SetChoice(each.id(), AmericanDates.day(each.day()) + ", "
            + each.problems().size() + (each.problems().size() == 1 ? " problem" : " problems"))).toList(),
        child.map(Child::id).orElse(0L), child.map(Child::name).orElse(""), set.map(ProblemSet::id).orElse(0L),
        set.map(open -> AmericanDates.longDay(open.day())).orElse(""), sheets, kept);
  }

  private static Sheet sheet(int number, ProblemSet set, AssignedProblem problem, Collection<PieceOfWork> work) {
    Optional<PieceOfWork> there = work.stream().filter(piece -> piece.problem().id() == problem.id()).findFirst();
    return new Sheet(number, problem.id(), problem.sentences(),
        List.of(BarsMarker.name(problem.story(), Role.LARGER), BarsMarker.name(problem.story(), Role.SMALLER)).stream()
            .sorted().toList(),
        set.asks().contains(Part.BARS), set.asks().contains(Part.EQUATION), set.asks().contains(Part.ANSWER),
        set.asks().contains(Part.LABEL), set.asks().contains(Part.ESTIMATE),
        there.map(PieceOfWork::tries).orElse(0), there.map(piece -> FindingsPage.href(piece.last())).orElse(null));
  }
}
