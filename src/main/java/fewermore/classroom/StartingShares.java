package fewermore.classroom;

import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.ReasoningTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;

/** How many of an invented class reason each way at the start: the shares the estimate starts from. */
final class StartingShares {
  private static final Map<WayOfReasoning, Double> SHARES = new EnumMap<>(WayOfReasoning.class);

  static {
    for (WayOfReasoning way : WayOfReasoning.values()) {
      SHARES.put(way, ReasoningTable.standard().share(way));
    }
  }

  private StartingShares() {}

  /** One way for each of so many children, by largest remainder: in a class of 24 every way occurs. */
  static List<WayOfReasoning> of(int children) {
    Map<WayOfReasoning, Integer> counts = new EnumMap<>(WayOfReasoning.class);
    SHARES.forEach((way, share) -> counts.put(way, (int) (share * children)));
    int given = counts.values().stream().mapToInt(Integer::intValue).sum();
    SHARES.keySet().stream()
        .sorted(Comparator.comparing((WayOfReasoning way) -> -(SHARES.get(way) * children - counts.get(way)))
            .thenComparing(Comparator.naturalOrder()))
        .limit(children - given)
        .toList()
        .forEach(way -> counts.merge(way, 1, Integer::sum));
    List<WayOfReasoning> ways = new ArrayList<>();
    counts.forEach((way, count) -> {
      for (int i = 0; i < count; i++) {
        ways.add(way);
      }
    });
    return ways;
  }

  static WayOfReasoning draw(RandomGenerator random) {
    double at = random.nextDouble();
    for (Map.Entry<WayOfReasoning, Double> each : SHARES.entrySet()) {
      at -= each.getValue();
      if (at < 0) {
        return each.getKey();
      }
    }
    return WayOfReasoning.FROM_THE_STORY;
  }
}
