package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Findings;
import fewermore.classroom.ProblemSet;
import fewermore.problem.ProposedMix;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;


/**
 * Today's set. {@code pages/teacher/plan.html}.
 *
 * <p>Forms: {@code POST /plan} makes a new set: {@code mix} ({@code proposed} or {@code mine}), a count for
 * each kind under its id, {@code within} (20, 50 or 100), {@code regroup} ({@code either}, {@code yes} or
 * {@code no}). {@code POST /plan/replace}: {@code problem}, its id. {@code POST /plan/give}: nothing.
 *
 * @param day for example {@code Wednesday, November 25}
 * @param kinds a count for each kind, in the order of pages
 * @param within largest number
 * @param regroup {@code either}, {@code yes} or {@code no}
 * @param problems the set as it stands; empty before one was made
 * @param given whether the children see it
 * @param withWork how many children have handed something in
 * @param problem a sentence about the last try, or null
 */
public record PlanPage(
    String day, List<KindCount> kinds, int within, String regroup, List<Planned> problems, boolean given,
    int withWork, String problem) {
  /** Most problems in a set: more would not fit a sitting. */
  public static final int MOST = 10;

  public PlanPage {
    kinds = List.copyOf(kinds);
    problems = List.copyOf(problems);
  }

  public record KindCount(KindWords kind, int count) {}

  /**
   * One problem of the set.
   *
   * @param equation the equation that finds the unknown
   * @param label what the answer counts
   */
  public record Planned(
      int number, long id, List<String> sentences, BarsPicture bars, KindWords kind, WrittenLine equation, int answer,
      String label) {
    static Planned of(int number, AssignedProblem problem) {
      return new Planned(number, problem.id(), problem.sentences(), BarsPicture.of(problem),
          KindWords.of(problem.story()), WrittenLine.of(StoryEquation.of(problem.story())), problem.story().answer(),
          problem.story().thing().many());
    }
  }

  /** @param set the day's set, or null before one was made */
  public static PlanPage of(
      LocalDate day, Map<Kind, Integer> counts, int within, String regroup, ProblemSet set, int withWork,
      String problem) {
    List<KindCount> kinds = Findings.KINDS.stream()
        .map(kind -> new KindCount(KindWords.of(kind), counts.getOrDefault(kind, 0))).toList();
    List<Planned> planned = new ArrayList<>();
    if (set != null) {
      set.problems().forEach(each -> planned.add(Planned.of(planned.size() + 1, each)));
    }
    return new PlanPage(AmericanDates.longDay(day), kinds, within, regroup, planned,
        set != null && set.given(), withWork, problem);
  }

  /** Problems in a proposed set: three together, four on their own. */
  public static final int PROPOSED = 7;

  public int proposed() {
    return PROPOSED;
  }

  /** How many of a proposed set have a word that points the other way. */
  public long proposedTelling() {
    return ProposedMix.of(PROPOSED).stream().filter(kind -> !kind.agrees()).count();
  }

  public int most() {
    return MOST;
  }

  public List<Integer> limits() {
    return List.of(20, 50, 100);
  }

  /** How many of the problems have a word that points the other way: only these tell. */
  public long telling() {
    return problems.stream().filter(each -> !each.kind().agrees()).count();
  }
}
