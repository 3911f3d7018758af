package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.Findings;
import fewermore.classroom.PlannedSet;
import fewermore.classroom.ProblemSet;
import fewermore.marking.Part;
import fewermore.store.PlanStore;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The sets of a day and the one she works on. {@code pages/teacher/plan.html}.
 *
 * <p>Forms, all with {@code day} (ISO) and {@code set} (its id, 0 for one to be made): {@code POST /plan} adds problems:
 * {@code mix} ({@code proposed} or {@code mine}), a count for each kind under its id, {@code within} (20, 50 or 100),
 * {@code regroup} ({@code either}, {@code yes} or {@code no}). {@code POST /plan/replace} and {@code /plan/remove}:
 * {@code problem}; {@code /plan/move}: {@code problem} and {@code by}. {@code POST /plan/settle}: {@code new-day},
 * {@code child} for each one chosen, {@code tries}, {@code tell-later}, {@code part} for each one asked.
 * {@code POST /plan/keep}: {@code name}, or {@code kept} {@code no}. {@code POST /plan/copy}: {@code new-day}.
 * {@code POST /plan/give} and {@code /plan/put-away}: nothing more.
 *
 * @param iso the day, ISO
 * @param day for example {@code Wednesday, November 25}
 * @param tabs the day's sets, to choose from
 * @param kinds a count for each kind, in the order of pages
 * @param within largest number
 * @param regroup {@code either}, {@code yes} or {@code no}
 * @param chosen the set she works on, or null before one was made
 * @param problems its problems
 * @param children the class, to choose from for whom a set is
 * @param withWork how many children have handed something in
 * @param problem a sentence about the last try, or null
 */
public record PlanPage(
    String iso, String day, List<SetTab> tabs, List<KindCount> kinds, int within, String regroup, PlannedSet chosen,
    List<Planned> problems, List<Chosen> children, int withWork, String problem) {
  /** Most problems in a set: more would not fit a sitting. */
  public static final int MOST = PlanStore.MOST;
  /** Most hand-ins a problem a teacher can allow, the first included. */
  public static final int MOST_TRIES = 5;

  public PlanPage {
    tabs = List.copyOf(tabs);
    kinds = List.copyOf(kinds);
    problems = List.copyOf(problems);
    children = List.copyOf(children);
  }

  public record KindCount(KindWords kind, int count) {}

  /** @param words for example {@code Set 2, for 4 children, given} */
  public record SetTab(long id, String words, boolean here) {}

  /** A child or part that can be chosen. */
  public record Chosen(String id, String word, boolean chosen) {}

  /**
   * One problem of the set.
   *
   * @param equation the equation that finds the unknown
   * @param label what the answer counts
   * @param typed whether it is the teacher's own
   */
  public record Planned(
      int number, long id, List<String> sentences, BarsPicture bars, KindWords kind, WrittenLine equation, int answer,
      String label, boolean typed, boolean english) {
    static Planned of(int number, AssignedProblem problem) {
      return new Planned(number, problem.id(), problem.sentences(), BarsPicture.of(problem),
          KindWords.of(problem.story()), WrittenLine.of(StoryEquation.of(problem.story())), problem.story().answer(),
          problem.story().thing().many(), problem.scenario().isEmpty(), problem.spanish().isEmpty());
    }
  }

  /** The problems of a set as a page shows them. */
  public static List<Planned> planned(ProblemSet set) {
    List<Planned> planned = new ArrayList<>();
    set.problems().forEach(each -> planned.add(Planned.of(planned.size() + 1, each)));
    return planned;
  }

  /** @param set the one she works on, or null before one was made */
  public static PlanPage of(
      LocalDate day, List<PlannedSet> sets, PlannedSet set, Map<Kind, Integer> counts, int within, String regroup,
      List<Child> children, int withWork, String problem) {
    List<KindCount> kinds = Findings.KINDS.stream()
        .map(kind -> new KindCount(KindWords.of(kind), counts.getOrDefault(kind, 0))).toList();
    List<SetTab> tabs = new ArrayList<>();
    for (PlannedSet each : sets) {
      tabs.add(new SetTab(each.set().id(), words(each, tabs.size() + 1),
          set != null && set.set().id() == each.set().id()));
    }
    return new PlanPage(day.toString(), AmericanDates.longDay(day), tabs, kinds, within, regroup, set,
        set == null ? List.of() : planned(set.set()),
        children.stream().map(each -> new Chosen(Long.toString(each.id()), each.name(),
            set != null && set.children().contains(each.id()))).toList(),
        withWork, problem);
  }

  private static String words(PlannedSet set, int number) {
    String whom = set.children().isEmpty() ? ""
        : ", for " + set.children().size() + (set.children().size() == 1 ? " child" : " children");
    return (set.name().isEmpty() ? "Set " + number : set.name()) + whom + (set.given() ? ", given" : "");
  }

  public long chosenSet() {
    return chosen == null ? 0 : chosen.set().id();
  }

  public boolean given() {
    return chosen != null && chosen.given();
  }

  /** "the whole class" / "4 children". */
  public String whom() {
    return chosen == null || chosen.children().isEmpty() ? "the whole class"
        : chosen.children().size() + (chosen.children().size() == 1 ? " child" : " children");
  }

  public List<Chosen> parts() {
    return List.of(Part.values()).stream()
        .map(part -> new Chosen(part.id(), PartWords.of(part), chosen != null && chosen.set().asks().contains(part))).toList();
  }

  public int tries() {
    return chosen.set().tries();
  }

  public boolean tellLater() {
    return chosen.set().tellLater();
  }

  public List<Integer> triesChoices() {
    return List.of(1, 2, 3, 4, MOST_TRIES);
  }

  /** "bars, equation, answer, label; 3 tries". */
  public String asked() {
    return String.join(", ", parts().stream().filter(Chosen::chosen).map(Chosen::word).toList()) + "; "
        + chosen.set().tries() + (chosen.set().tries() == 1 ? " try" : " tries") + (chosen.set().tellLater() ? ", told later" : "");
  }

  /** Problems in a proposed set: three together, four on their own. */
  public static final int PROPOSED = 7;

  public int proposed() {
    return PROPOSED;
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

  /** Problems that have no Spanish: children who read Spanish see them in English. */
  public long withoutSpanish() {
    return problems.stream().filter(Planned::english).count();
  }
}
