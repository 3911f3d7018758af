package fewermore.web.teacher;

import fewermore.calculation.StepWords;
import fewermore.calculation.Working.Verdict;
import fewermore.classroom.StrategyTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Which strategies were chosen and where the steps slip, as a table for a child's page and for Findings.
 * {@code pages/teacher/strategy.html}, fragment {@code chosen}.
 *
 * @param asked how often a strategy was asked; the fragment shows nothing at 0
 */
public record StrategyView(int asked, int blank, List<Line> lines) {
  public StrategyView {
    lines = List.copyOf(lines);
  }

  /**
   * @param ways for example {@code count up, 2 times}; empty when none was seen
   * @param slips what the steps show that the child did, each with how often; empty when none did
   * @param check for example {@code 2 of 3 checks agree}; empty without a check
   */
  public record Line(String kind, int chosen, int fits, int slip, int other, int unfinished, String ways,
      List<String> slips, String check) {}

  public static StrategyView of(StrategyTable table) {
    StepWords words = StepWords.in(Locale.ENGLISH);
    List<Line> lines = new ArrayList<>();
    for (StrategyTable.Row row : table.rows()) {
      if (row.chosen() == 0) {
        continue;
      }
      List<String> ways = row.ways().entrySet().stream()
          .map(way -> words.name(way.getKey()).toLowerCase(Locale.ROOT) + times(way)).toList();
      List<String> slips = row.slips().entrySet().stream().map(slip -> slip.getKey().says() + times(slip)).toList();
      lines.add(new Line(words.name(row.kind()), row.chosen(), row.count(Verdict.FITS), row.count(Verdict.SLIP),
          row.count(Verdict.OTHER_CALCULATION), row.count(Verdict.UNFINISHED), String.join("; ", ways), slips,
          row.checked() == 0 ? "" : row.agreed() + " of " + row.checked() + " checks agree"));
    }
    return new StrategyView(table.asked(), table.blank(), lines);
  }

  private static String times(Map.Entry<?, Integer> counted) {
    return counted.getValue() == 1 ? ", once" : ", " + counted.getValue() + " times";
  }
}
