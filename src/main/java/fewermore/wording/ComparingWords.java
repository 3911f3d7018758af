package fewermore.wording;

import fewermore.story.Wording;
import fewermore.wording.UnitWords.Dimension;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** <i>More, fewer, longer, younger</i> … and the adjectives they belong to. */
final class ComparingWords {

  /**
   * A comparing word.
   *
   * @param qualities the adjectives it compares, empty when it compares any amount
   */
  record Word(Wording wording, Set<String> qualities) {}

  private static final Map<String, Word> BY_FORM = new HashMap<>();
  private static final Map<String, Set<Dimension>> MEASURED_IN = Map.ofEntries(
      Map.entry("long", Set.of(Dimension.LENGTH, Dimension.TIME)), Map.entry("tall", Set.of(Dimension.LENGTH)),
      Map.entry("high", Set.of(Dimension.LENGTH)), Map.entry("wide", Set.of(Dimension.LENGTH)),
      Map.entry("deep", Set.of(Dimension.LENGTH)), Map.entry("far", Set.of(Dimension.LENGTH)),
      Map.entry("thick", Set.of(Dimension.LENGTH)), Map.entry("old", Set.of(Dimension.TIME)),
      Map.entry("heavy", Set.of(Dimension.WEIGHT)), Map.entry("warm", Set.of(Dimension.TEMPERATURE)),
      Map.entry("expensive", Set.of(Dimension.MONEY)));

  static {
    any(Wording.MORE, "more");
    any(Wording.FEWER, "fewer", "less");
    pair("long", "longer", "shorter");
    pair("tall", "taller", "shorter");
    pair("high", "higher", "lower");
    pair("old", "older", "younger");
    pair("heavy", "heavier", "lighter");
    pair("wide", "wider", "narrower");
    pair("deep", "deeper", "shallower");
    pair("far", "farther", "closer");
    pair("far", "further", "nearer");
    pair("thick", "thicker", "thinner");
    pair("warm", "warmer", "colder");
    pair("warm", "hotter", "cooler");
    pair("expensive", "pricier", "cheaper");
    BY_FORM.put("shorter", new Word(Wording.FEWER, Set.of("long", "tall", "high")));
  }

  private ComparingWords() {}

  static Optional<Word> of(String form) {
    return Optional.ofNullable(BY_FORM.get(form));
  }

  static boolean isQuality(String word) {
    return MEASURED_IN.containsKey(word);
  }

  /** What a quality can be measured in. */
  static Set<Dimension> measuredIn(String quality) {
    return MEASURED_IN.get(quality);
  }

  /**
   * Whether one of the qualities can be told in this unit; cubes and paper clips, which are no units, do for a length.
   *
   * @param unit null for a counted thing
   */
  static boolean canBeIn(Set<String> qualities, UnitWords.Unit unit) {
    return qualities.stream().map(MEASURED_IN::get)
        .anyMatch(measured -> measured.contains(unit == null ? Dimension.LENGTH : unit.dimension()));
  }

  private static void any(Wording wording, String... forms) {
    for (String form : forms) {
      BY_FORM.put(form, new Word(wording, Set.of()));
    }
  }

  private static void pair(String quality, String more, String fewer) {
    BY_FORM.put(more, new Word(Wording.MORE, Set.of(quality)));
    BY_FORM.put(fewer, new Word(Wording.FEWER, Set.of(quality)));
  }
}
