package fewermore.wording;

import java.util.ArrayList;
import java.util.List;

/** Every noun of the lexicon: those of the scenarios, and more that teachers' own problems bring. */
final class Nouns {
  static final List<Noun> ALL = all();

  private Nouns() {}

  private static List<Noun> all() {
    List<Noun> nouns = new ArrayList<>();
    for (Scenario scenario : Scenarios.ALL) {
      nouns.addAll(scenario.nouns());
    }
    return List.copyOf(nouns);
  }
}
