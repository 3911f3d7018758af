package fewermore.reasoning;

import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The estimate written down the obvious way: every path of ways over the days, with its chance, and the sum of all
 * paths. 7 to the power of the days, so for a few days only.
 */
final class SlowEstimate {
  private final ReasoningTable table;
  private final List<List<Evidence>> days;

  SlowEstimate(Collection<Evidence> evidence, ReasoningTable table) {
    this.table = table;
    Map<LocalDate, List<Evidence>> byDay = new TreeMap<>();
    evidence.forEach(each -> byDay.computeIfAbsent(each.day(), none -> new ArrayList<>()).add(each));
    this.days = List.copyOf(byDay.values());
  }

  /** The chance of each way on that day (from 0), all of the work being known. */
  Map<WayOfReasoning, Double> on(int day) {
    Map<WayOfReasoning, Double> sums = new LinkedHashMap<>();
    for (WayOfReasoning way : WayOfReasoning.values()) {
      sums.put(way, 0.0);
    }
    walk(new ArrayList<>(), 1, day, sums);
    double all = sums.values().stream().mapToDouble(Double::doubleValue).sum();
    sums.replaceAll((way, sum) -> sum / all);
    return sums;
  }

  private void walk(List<WayOfReasoning> path, double chance, int asked, Map<WayOfReasoning, Double> sums) {
    if (path.size() == days.size()) {
      sums.merge(path.get(asked), chance, Double::sum);
      return;
    }
    for (WayOfReasoning way : WayOfReasoning.values()) {
      double step = path.isEmpty() ? table.share(way)
          : table.drawnAfresh() * table.share(way)
              + (path.get(path.size() - 1) == way ? 1 - table.drawnAfresh() : 0);
      for (Evidence each : days.get(path.size())) {
        step *= likelihood(each, way);
      }
      List<WayOfReasoning> longer = new ArrayList<>(path);
      longer.add(way);
      walk(longer, chance * step, asked, sums);
    }
  }

  private double likelihood(Evidence evidence, WayOfReasoning way) {
    double sum = 0;
    for (Plan plan : Plan.values()) {
      sum += table.chance(way, evidence.kind(), plan) * evidence.weights().of(plan);
    }
    return Math.max(sum, table.value("work/floor"));
  }
}
