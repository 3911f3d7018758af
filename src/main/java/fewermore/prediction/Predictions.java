package fewermore.prediction;

import fewermore.story.Comparison;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
}
