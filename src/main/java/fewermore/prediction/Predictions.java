package fewermore.prediction;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What every way of reasoning would write for one story, in the order of {@link WayOfReasoning}. */
public record Predictions(List<Prediction> all) {
  public Predictions {
    all = List.copyOf(all);
  }

  public static Predictions of(Comparison story) {
    List<Prediction> all = new ArrayList<>();
    for (WayOfReasoning way : WayOfReasoning.values()) {
      way.predict(story).ifPresent(all::add);
    }
    return new Predictions(all);
  }

  /**
   * The ways by the equation they write. A group of two or more is one that this problem can't tell apart by the
   * equation.
   */
  public List<List<Prediction>> byEquation() {
    Map<String, List<Prediction>> groups = new LinkedHashMap<>();
    all.forEach(each -> groups.computeIfAbsent(each.equation(), equation -> new ArrayList<>()).add(each));
    return groups.values().stream().map(List::copyOf).toList();
  }

  /**
   * The kind of problem that best tells these ways apart, with the same numbers: where they write the most different
   * equations. Among equals the one that comes first in {@link Kind}'s order of difficulty, hardest first (Riley, Greeno
   * and Heller 1983, from memory).
   *
   * @return empty when no kind tells any two of them apart, or there is only one
   */
  public static Optional<Kind> toTellApart(List<WayOfReasoning> ways, Comparison story) {
    Kind best = null;
    long most = 1;
    for (Kind kind : HARDEST_FIRST) {
      Comparison other = new Comparison(story.persons(), story.thing(), story.otherThing(), story.wider(),
          story.amounts(), kind.unknown(), kind.wording(), List.of());
      long different = ways.stream().flatMap(way -> way.predict(other).stream()).map(Prediction::equation).distinct()
          .count();
      if (different > most) {
        best = kind;
        most = different;
      }
    }
    return Optional.ofNullable(best);
  }

  private static final List<Kind> HARDEST_FIRST = List.of(Kind.LARGER_FEWER, Kind.SMALLER_MORE, Kind.DIFFERENCE_MORE,
      Kind.SMALLER_FEWER, Kind.LARGER_MORE, Kind.DIFFERENCE_FEWER);
}
