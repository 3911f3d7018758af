package fewermore.problem;

import static fewermore.story.Kind.DIFFERENCE_FEWER;
import static fewermore.story.Kind.DIFFERENCE_MORE;
import static fewermore.story.Kind.LARGER_FEWER;
import static fewermore.story.Kind.LARGER_MORE;
import static fewermore.story.Kind.SMALLER_FEWER;
import static fewermore.story.Kind.SMALLER_MORE;

import fewermore.story.Kind;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Which kinds to ask in a day's set. The order is ours: by what each next problem is expected to tell about the way of
 * reasoning (Shannon's information, in our own simulation), so that a child who does only the first few is understood
 * best; and every set has a problem that most children do well, agreeing and disagreeing wording from two problems on,
 * and never one kind twice running.
 */
public final class ProposedMix {
  private static final List<Kind> ORDER = List.of(LARGER_FEWER, SMALLER_MORE, SMALLER_FEWER, SMALLER_MORE, LARGER_MORE,
      DIFFERENCE_MORE, LARGER_FEWER, DIFFERENCE_FEWER);

  private ProposedMix() {}

  /**
   * The proposed kinds, in order.
   *
   * @param problems how many, 1 or more
   */
  public static List<Kind> of(int problems) {
    if (problems < 1) {
      throw new IllegalArgumentException("a set has at least one problem: " + problems);
    }
    if (problems == 1) {
      return List.of(SMALLER_FEWER);
    }
    if (problems == 2) {
      return List.of(LARGER_FEWER, SMALLER_FEWER);
    }
    List<Kind> kinds = new ArrayList<>();
    for (int i = 0; i < problems; i++) {
      kinds.add(ORDER.get(i % ORDER.size()));
    }
    return List.copyOf(kinds);
  }

  /** The proposed kinds as counts, in the order of {@link Kind}. */
  public static Map<Kind, Integer> counts(int problems) {
    Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
    of(problems).forEach(kind -> counts.merge(kind, 1, Integer::sum));
    return counts;
  }

  /**
   * Puts counts chosen by the teacher in order: no kind twice running wherever that can be, and otherwise by the
   * proposed order.
   *
   * @param counts kinds with 0 or more each
   */
  public static List<Kind> inOrder(Map<Kind, Integer> counts) {
    Map<Kind, Integer> left = new EnumMap<>(Kind.class);
    counts.forEach((kind, count) -> left.put(kind, Math.max(0, count)));
    int problems = left.values().stream().mapToInt(Integer::intValue).sum();
    List<Kind> kinds = new ArrayList<>();
    int place = 0;
    while (kinds.size() < problems) {
      Kind last = kinds.isEmpty() ? null : kinds.get(kinds.size() - 1);
      int remaining = problems - kinds.size();
      // A kind that is more than half of what is left goes now, or it will have to come twice running.
      Kind next = left.keySet().stream().filter(kind -> kind != last && left.get(kind) > remaining / 2)
          .findFirst().orElse(null);
      for (int step = 0; next == null && step < ORDER.size(); step++, place++) {
        Kind kind = ORDER.get(place % ORDER.size());
        next = kind != last && left.getOrDefault(kind, 0) > 0 ? kind : null;
      }
      kinds.add(next == null ? last : next);
      left.merge(kinds.get(kinds.size() - 1), -1, Integer::sum);
    }
    return List.copyOf(kinds);
  }
}
