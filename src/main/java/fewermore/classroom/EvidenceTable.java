package fewermore.classroom;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A finding as a table small enough for one screen: a row a child, a column a problem, first the problems
 * that can tell, then those that cannot. Work that speaks against is never left out for want of room: if it
 * exists, a column shows some.
 */
public record EvidenceTable(List<Column> columns, List<Row> rows) {
  /** Columns of problems that can tell, and of problems that cannot. */
  public static final int TELLING = 3;
  public static final int APART = 2;

  public EvidenceTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /** @param tells whether work on the problem can be evidence for this finding */
  public record Column(AssignedProblem problem, boolean tells) {}

  /** @param cells one for each column; empty where the child has no work on the problem */
  public record Row(ChildFinding child, List<Optional<Quote>> cells) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  public static EvidenceTable of(Finding finding) {
    List<Quote> telling = finding.shown().stream().flatMap(child -> child.evidence().stream()).toList();
    List<Quote> apart = finding.shown().stream().flatMap(child -> child.apart().stream()).toList();
    List<Column> columns = new ArrayList<>();
    chosen(telling, TELLING).forEach(problem -> columns.add(new Column(problem, true)));
    chosen(apart, APART).forEach(problem -> columns.add(new Column(problem, false)));
    List<Row> rows = finding.shown().stream()
        .map(child -> new Row(child, columns.stream().map(column -> cell(child, column)).toList()))
        .toList();
    return new EvidenceTable(columns, rows);
  }

  private static Optional<Quote> cell(ChildFinding child, Column column) {
    return (column.tells() ? child.evidence() : child.apart()).stream()
        .filter(quote -> quote.problem().equals(column.problem()))
        .findFirst();
  }

  /** The problems most of these children worked on, the latest first; one that speaks against is kept in. */
  private static List<AssignedProblem> chosen(List<Quote> quotes, int room) {
    Map<AssignedProblem, List<Quote>> byProblem = new LinkedHashMap<>();
    quotes.stream()
        .sorted(Comparator.comparing(Quote::day).reversed().thenComparing(quote -> quote.problem().id()))
        .forEach(quote -> byProblem.computeIfAbsent(quote.problem(), none -> new ArrayList<>()).add(quote));
    List<AssignedProblem> order = byProblem.entrySet().stream()
        .sorted(Comparator.comparing(
            (Map.Entry<AssignedProblem, List<Quote>> entry) -> -count(entry.getValue(), Says.SO))
            .thenComparing(entry -> -entry.getValue().size()))
        .map(Map.Entry::getKey)
        .toList();
    Set<AssignedProblem> chosen = new LinkedHashSet<>(order.subList(0, Math.min(room, order.size())));
    boolean silent = chosen.stream().allMatch(problem -> count(byProblem.get(problem), Says.AGAINST) == 0);
    Optional<AssignedProblem> against = order.stream()
        .filter(problem -> count(byProblem.get(problem), Says.AGAINST) > 0)
        .findFirst();
    if (silent && against.isPresent()) {
      chosen.remove(order.get(room - 1));
      chosen.add(against.get());
    }
    return byProblem.keySet().stream().filter(chosen::contains).toList();
  }

  private static int count(List<Quote> quotes, Says says) {
    return (int) quotes.stream().filter(quote -> quote.says() == says).count();
  }
}
