package fewermore.classroom;

import fewermore.prediction.WayOfReasoning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;

/**
 * How many of an invented class reason each way at the start. The shares are ours and no norms. That a fifth of those
 * who do not reason from the story follow no steady way leans on column subtraction, where a third of the erring pupils
 * fitted no bug (VanLehn 1982, 925 pupils, abstract).
 */
final class StartingShares {
  private static final Map<WayOfReasoning, Double> SHARES = new EnumMap<>(Map.of(
      WayOfReasoning.FROM_THE_STORY, .40,
      WayOfReasoning.BY_THE_CUE_WORD, .20,
      WayOfReasoning.ALWAYS_ADDS, .08,
      WayOfReasoning.ALWAYS_TAKES_AWAY, .06,
      WayOfReasoning.TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT, .08,
      WayOfReasoning.TURNS_SUBTRACTION_ROUND, .06,
      WayOfReasoning.NO_STEADY_WAY, .12));

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
