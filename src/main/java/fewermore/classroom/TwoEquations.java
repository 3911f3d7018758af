package fewermore.classroom;

import fewermore.marking.EquationMark;
import fewermore.marking.EquationReason;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Lines the teacher can put side by side for a problem of which five children or more handed in work. A wrong line is
 * offered as written only where two children or more wrote it; for every reason only one child gave, an invented line
 * that the marker gives the same reason and that no child wrote. The order says nothing of right or wrong, and nothing
 * says which were written.
 */
public record TwoEquations(AssignedProblem problem, List<String> lines) {
  public TwoEquations {
    lines = List.copyOf(lines);
  }

  /** @param classList every child of the class: their names must not stand in a story on the Board */
  public static List<TwoEquations> of(Collection<Child> classList, Collection<PieceOfWork> work, LocalDate asOf) {
    Map<AssignedProblem, List<PieceOfWork>> byProblem = new LinkedHashMap<>();
    Wall.read(work, asOf).stream()
        .sorted(Comparator.comparing((PieceOfWork piece) -> piece.evidence().day()).reversed()
            .thenComparing(piece -> piece.problem().id()))
        .forEach(piece -> byProblem.computeIfAbsent(piece.problem(), none -> new ArrayList<>()).add(piece));
    List<TwoEquations> all = new ArrayList<>();
    byProblem.forEach((problem, pieces) -> {
      if (pieces.size() >= Wall.FEWEST_COUNTED && !Wall.names(classList, problem)) {
        List<String> lines = lines(problem, pieces);
        if (lines.size() > 1) {
          all.add(new TwoEquations(problem, lines));
        }
      }
    });
    return all;
  }

  private static List<String> lines(AssignedProblem problem, List<PieceOfWork> work) {
    Map<String, Integer> fitting = new TreeMap<>();
    Map<EquationReason, Map<String, Integer>> wrong = new EnumMap<>(EquationReason.class);
    Set<String> written = new HashSet<>();
    for (PieceOfWork piece : work) {
      String line = Wall.line(piece.evidence().parts().equation());
      EquationMark mark = piece.evidence().marks().equation();
      written.add(line);
      if (mark.fits() && !mark.notTrue() && !mark.equalsChain()) {
        fitting.merge(line, 1, Integer::sum);
      } else if (StandIn.canBeInvented(mark.reason())) {
        wrong.computeIfAbsent(mark.reason(), none -> new TreeMap<>()).merge(line, 1, Integer::sum);
      }
    }
    Set<String> lines = new LinkedHashSet<>();
    lines.add(StandIn.fitting(problem.story()));
    fitting.forEach((line, many) -> {
      if (many >= Wall.FEWEST_WRITERS) {
        lines.add(line);
      }
    });
    wrong.forEach((reason, each) -> {
      List<String> shared = each.entrySet().stream().filter(entry -> entry.getValue() >= Wall.FEWEST_WRITERS)
          .map(Map.Entry::getKey).toList();
      lines.addAll(shared);
      if (shared.isEmpty()) {
        StandIn.of(problem.story(), reason, written).ifPresent(lines::add);
      }
    });
    return lines.stream().sorted(Comparator.comparingInt(line -> Wall.drawn(problem, line))).toList();
  }
}
