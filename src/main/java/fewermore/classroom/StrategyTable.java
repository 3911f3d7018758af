package fewermore.classroom;

import fewermore.calculation.SlipRule;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Way;
import fewermore.calculation.Working.Verdict;
import fewermore.marking.StrategyMark;
import fewermore.marking.StrategyWork;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Which strategies were chosen, and what their steps show. Counts first hand-ins on which a strategy was asked; a later
 * try, after a prompt, is no evidence. Slips are those seen in the steps, not guessed from answers.
 *
 * @param rows one a kind, in the order of {@link StrategyKind}, also where none was chosen
 * @param asked pieces of work on which a strategy was asked
 * @param blank those on which none was begun
 */
public record StrategyTable(List<Row> rows, int asked, int blank) {
  public StrategyTable {
    rows = List.copyOf(rows);
  }

  /**
   * @param chosen how often this kind was the first strategy
   * @param verdicts how often each came of it; none is missing
   * @param ways good ways seen, with how often
   * @param slips slips the steps show, with how often
   * @param checked how often a second strategy checked it
   * @param agreed how often that came to the same number
   */
  public record Row(StrategyKind kind, int chosen, Map<Verdict, Integer> verdicts, Map<Way, Integer> ways,
      Map<SlipRule, Integer> slips, int checked, int agreed) {
    public int count(Verdict verdict) {
      return verdicts.getOrDefault(verdict, 0);
    }
  }

  public static StrategyTable of(Collection<PieceOfWork> pieces) {
    int asked = 0;
    int blank = 0;
    Map<StrategyKind, List<StrategyMark>> byKind = new EnumMap<>(StrategyKind.class);
    for (PieceOfWork piece : pieces) {
      HandIn evidence = piece.evidence();
      StrategyWork work = evidence.parts().strategy();
      StrategyMark mark = evidence.marks().strategy();
      if (work == null || mark == null) {
        continue;
      }
      asked++;
      if (work.blank()) {
        blank++;
      } else {
        byKind.computeIfAbsent(work.kind(), kind -> new ArrayList<>()).add(mark);
      }
    }
    List<Row> rows = new ArrayList<>();
    for (StrategyKind kind : StrategyKind.values()) {
      rows.add(row(kind, byKind.getOrDefault(kind, List.of())));
    }
    return new StrategyTable(rows, asked, blank);
  }

  private static Row row(StrategyKind kind, List<StrategyMark> marks) {
    Map<Verdict, Integer> verdicts = new EnumMap<>(Verdict.class);
    Map<Way, Integer> ways = new EnumMap<>(Way.class);
    Map<SlipRule, Integer> slips = new EnumMap<>(SlipRule.class);
    int checked = 0;
    int agreed = 0;
    for (StrategyMark mark : marks) {
      verdicts.merge(mark.verdict(), 1, Integer::sum);
      if (mark.way() != null) {
        ways.merge(mark.way(), 1, Integer::sum);
      }
      mark.slips().forEach(slip -> slips.merge(slip, 1, Integer::sum));
      checked += mark.agrees() == null ? 0 : 1;
      agreed += Boolean.TRUE.equals(mark.agrees()) ? 1 : 0;
    }
    return new Row(kind, marks.size(), verdicts, ways, slips, checked, agreed);
  }
}
