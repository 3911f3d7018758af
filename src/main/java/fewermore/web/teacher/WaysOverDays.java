package fewermore.web.teacher;

import fewermore.classroom.ChildReasoning;
import fewermore.classroom.FindingWords;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.TeacherWord;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.Estimate;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Ways;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * How a child's work changed over the days: one small line a way, one a part of the work, and the same as a table.
 *
 * @param days as table headings, oldest first
 */
public record WaysOverDays(List<String> days, List<Line> ways, List<Line> parts) {
  private static final int WIDTH = 320;
  private static final int HEIGHT = 36;
  /** A way never likelier than this is not drawn; it stands in the table. */
  private static final double DRAWN = .30;

  /**
   * One line: a share from 0 to 1 for each day.
   *
   * @param points of the drawn line, for an SVG of 320 × 36; empty where there is nothing to draw
   * @param cells for the table, for example {@code .92} or {@code 3 of 4}
   */
  public record Line(String name, String points, List<String> cells) {}

  /** @return null when there are fewer than two days: then there is no change to see */
  static WaysOverDays of(ChildReasoning recent, List<PieceOfWork> all, TeacherWord word, ReasoningTable table) {
    Estimate estimate = ChildReasoning.of(recent.child(), all, word, table).estimate();
    if (estimate.days().size() < 2) {
      return null;
    }
    // Past days are read in the light of what came later.
    List<Ways> smoothed = estimate.smoothed();
    List<LocalDate> days = estimate.days().stream().map(Estimate.Day::day).toList();
    List<Line> ways = new ArrayList<>();
    for (WayOfReasoning way : WayOfReasoning.values()) {
      List<Double> shares = smoothed.stream().map(each -> each.of(way)).toList();
      boolean drawn = shares.stream().anyMatch(share -> share >= DRAWN);
      ways.add(new Line(FindingWords.doing(way), drawn ? points(shares) : "",
          shares.stream().map(share -> String.format(Locale.US, "%.2f", share)).toList()));
    }
    boolean silent = recent.onlyAgreeing();
    if (silent) {
      ways.clear();
    }
    List<Line> parts = List.of(
        part("structure", days, all, marks -> marks.equation() != null, marks -> marks.equation().fits()),
        part("calculation", days, all, marks -> marks.answer() != null, marks ->
            marks.answer().verdict() == AnswerVerdict.RIGHT || marks.answer().verdict() == AnswerVerdict.OWN_EQUATION),
        part("label", days, all, marks -> marks.label() != null, marks -> marks.label() == LabelVerdict.NAMES_IT),
        part("bars", days, all, marks -> marks.bars() != null, marks -> marks.bars() == BarsVerdict.FITS));
    return new WaysOverDays(days.stream().map(AmericanDates::day).toList(), ways, parts);
  }

  private static Line part(String name, List<LocalDate> days, List<PieceOfWork> all, Predicate<Marks> asked,
      Predicate<Marks> fits) {
    Map<LocalDate, int[]> counts = new TreeMap<>();
    for (PieceOfWork piece : all) {
      Marks marks = piece.evidence().marks();
      if (asked.test(marks)) {
        int[] count = counts.computeIfAbsent(piece.evidence().day(), none -> new int[2]);
        count[1]++;
        count[0] += fits.test(marks) ? 1 : 0;
      }
    }
    List<Double> shares = new ArrayList<>();
    List<String> cells = new ArrayList<>();
    for (LocalDate day : days) {
      int[] count = counts.getOrDefault(day, new int[2]);
      shares.add(count[1] == 0 ? null : (double) count[0] / count[1]);
      cells.add(count[1] == 0 ? "–" : count[0] + " of " + count[1]);
    }
    return new Line(name, points(shares), cells);
  }

  private static String points(List<Double> shares) {
    StringBuilder points = new StringBuilder();
    for (int at = 0; at < shares.size(); at++) {
      if (shares.get(at) != null) {
        double x = 4 + (WIDTH - 8.0) * at / Math.max(1, shares.size() - 1);
        double y = 4 + (HEIGHT - 8.0) * (1 - shares.get(at));
        points.append(String.format(Locale.US, "%.1f,%.1f ", x, y));
      }
    }
    return points.toString().strip();
  }
}
