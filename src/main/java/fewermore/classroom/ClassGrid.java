package fewermore.classroom;

import fewermore.marking.EquationReason;
import fewermore.story.Kind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Children × kinds: for each, what most of the first equations were. */
public record ClassGrid(List<Row> rows) {
  public ClassGrid {
    rows = List.copyOf(rows);
  }

  /** What an equation was, as far as the grid tells; the order is that of a tie. */
  public enum Seen { FITS, WORD, GAP, TURNED, OTHER, NONE }

  /** @param times how many of the {@code of} first hand-ins on this kind were as {@code seen} */
  public record Cell(Kind kind, Seen seen, int times, int of) {}

  public record Row(Child child, List<Cell> cells) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  static ClassGrid of(Map<Child, List<PieceOfWork>> byChild) {
    List<Row> rows = new ArrayList<>();
    byChild.forEach((child, work) -> rows.add(new Row(child,
        Findings.KINDS.stream().map(kind -> cell(kind, work)).toList())));
    return new ClassGrid(rows);
  }

  private static Cell cell(Kind kind, List<PieceOfWork> work) {
    Map<Seen, Integer> times = new EnumMap<>(Seen.class);
    work.stream().filter(piece -> piece.problem().kind() == kind)
        .forEach(piece -> times.merge(seen(piece), 1, Integer::sum));
    int of = times.values().stream().mapToInt(Integer::intValue).sum();
    return times.entrySet().stream()
        .min(Comparator.comparing((Map.Entry<Seen, Integer> entry) -> -entry.getValue())
            .thenComparing(Map.Entry::getKey))
        .map(entry -> new Cell(kind, entry.getKey(), entry.getValue(), of))
        .orElse(new Cell(kind, Seen.NONE, 0, 0));
  }

  /** What this first hand-in's equation was; a written sign tells before a bar does. */
  public static Seen seen(PieceOfWork piece) {
    if (piece.evidence().marks().equation() != null && piece.evidence().marks().equation().cueLed()) {
      return Seen.WORD;
    }
    if (Pattern.DIFFERENCE_AS_AMOUNT.quote(piece).says() == Says.SO) {
      return Seen.GAP;
    }
    if (Findings.fits(piece)) {
      return Seen.FITS;
    }
    return Pattern.structure(piece) == EquationReason.TURNED_ROUND ? Seen.TURNED : Seen.OTHER;
  }
}
