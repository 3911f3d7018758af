package fewermore.web.teacher;

import fewermore.calculation.Calculation;
import fewermore.calculation.SlipRule;
import fewermore.calculation.StepWords;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Way;
import fewermore.calculation.WorkedSolution;
import fewermore.calculation.WorkedSolutions;
import fewermore.classroom.AssignedProblem;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Two numbers worked out on the Board: the form, or the steps. {@code pages/board/strategy.html}, {@code GET
 * /board/strategy?first=52&op=minus&second=14&kind=pieces&check=line&step=3}. {@code kind} and {@code check} are a kind
 * of strategy or one way of it; {@code check} may be missing. No name is taken.
 *
 * @param worked null while the form is shown
 * @param problem what was expected, or null
 * @param today the calculations of today's problems
 */
public record StrategyPage(String first, String op, String second, String kind, String check, WorkedOut worked,
    String problem, List<Today> today) {
  public StrategyPage {
    today = List.copyOf(today);
  }

  /** @param href the same page with these numbers */
  public record Today(String text, String href) {}

  /** @param ways of this kind, each with its name */
  public record Kind(String id, String word, List<Choice> ways) {}

  public record Choice(String id, String word) {}

  /** @param asked the fields of the address; empty for the bare form */
  public static StrategyPage of(Map<String, String> asked, List<AssignedProblem> problems) {
    String first = asked.getOrDefault("first", "").strip();
    String second = asked.getOrDefault("second", "").strip();
    String op = asked.getOrDefault("op", "minus").equals("plus") ? "plus" : "minus";
    String kind = asked.getOrDefault("kind", StrategyKind.PIECES.id());
    String check = asked.getOrDefault("check", "");
    List<Today> today = problems.stream().flatMap(problem -> calculation(problem).stream()).distinct()
        .map(each -> new Today(each.text(), "/board/strategy?first=" + each.first() + "&op=" + (each.adds() ? "plus" : "minus")
            + "&second=" + each.second() + "&kind=pieces&check=line")).toList();
    if (first.isEmpty() && second.isEmpty()) {
      return new StrategyPage("", op, "", kind, asked.isEmpty() ? StrategyKind.LINE.id() : check, null, null, today);
    }
    Optional<Calculation> calculation = number(first).flatMap(one -> number(second).flatMap(other ->
        Calculation.of(one, op.equals("plus") ? Operation.ADD : Operation.SUBTRACT, other)));
    if (calculation.isEmpty()) {
      return new StrategyPage(first, op, second, kind, check, null,
          "Two whole numbers from 0 to " + SlipRule.LARGEST + " were expected, for example 52 and 14.", today);
    }
    List<WorkedSolution> solutions = new ArrayList<>();
    String problem = null;
    for (String choice : check.isEmpty() ? List.of(kind) : List.of(kind, check)) {
      Optional<WorkedSolution> solution = solution(calculation.get(), choice);
      if (solution.isEmpty()) {
        problem = "That way makes no sense for " + calculation.get().text() + ". These do: " + ways(calculation.get()) + ".";
      } else if (solutions.contains(solution.get())) {
        problem = "A way can’t check itself. Choose another one to check it, or none.";
      } else {
        solutions.add(solution.get());
      }
    }
    return new StrategyPage(first, op, second, kind, check, problem == null ? WorkedOut.of(solutions, 1) : null, problem,
        today);
  }

  private static Optional<Calculation> calculation(AssignedProblem problem) {
    return Calculation.of(problem.story().value(problem.story().given().get(0)), problem.story().kind().operation(),
        problem.story().value(problem.story().given().get(1)));
  }

  private static Optional<Integer> number(String text) {
    return text.matches("\\d{1,3}") ? Optional.of(Integer.parseInt(text)) : Optional.empty();
  }

  private static Optional<WorkedSolution> solution(Calculation calculation, String choice) {
    return StrategyKind.of(choice).map(kind -> WorkedOut.first(calculation, kind))
        .or(() -> Way.of(choice).flatMap(way -> WorkedSolutions.of(calculation, way)));
  }

  private static String ways(Calculation calculation) {
    StepWords words = StepWords.in(Locale.ENGLISH);
    return WorkedSolutions.of(calculation).stream().map(each -> words.name(each.way()).toLowerCase(Locale.ROOT))
        .collect(Collectors.joining("; "));
  }

  public List<Kind> kinds() {
    StepWords words = StepWords.in(Locale.ENGLISH);
    List<Kind> kinds = new ArrayList<>();
    for (StrategyKind each : StrategyKind.values()) {
      List<Choice> ways = new ArrayList<>();
      for (Way way : Way.values()) {
        if (way.kind() == each) {
          ways.add(new Choice(way.id(), words.name(way)));
        }
      }
      kinds.add(new Kind(each.id(), words.name(each), ways));
    }
    return kinds;
  }

  public int steps() {
    return worked == null ? 1 : worked.until() - 1;
  }

  /** Where this stands, without its step. */
  public String path() {
    return worked == null ? "/board/strategy" : "/board/strategy?first=" + first + "&op=" + op + "&second=" + second + "&kind="
        + kind + (check.isEmpty() ? "" : "&check=" + check);
  }
}
