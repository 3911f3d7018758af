package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.wording.Scenario.Measured;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/** What Fewermore can talk about: its scenarios, their nouns and holders, in both languages and both directions. */
public final class Lexicon {
  private static final Map<String, Scenario> BY_ID = new LinkedHashMap<>();
  private static final Map<String, Holder> HOLDERS = new LinkedHashMap<>();

  static {
    for (Scenario scenario : Scenarios.ALL) {
      if (BY_ID.put(scenario.id(), scenario) != null) {
        throw new IllegalStateException("two scenarios are called " + scenario.id());
      }
      if (scenario instanceof Measured measured) {
        measured.pairs().forEach(pair -> pair.forEach(holder -> HOLDERS.put(key(holder.english()), holder)));
      }
    }
  }

  private Lexicon() {}

  /** All scenarios, in a fixed order that later versions only add to. */
  public static List<Scenario> scenarios() {
    return Scenarios.ALL;
  }

  public static Optional<Scenario> scenario(String id) {
    return Optional.ofNullable(BY_ID.get(id));
  }

  /** The noun with this form, one or many, alone or behind one adjective, however it is capitalized. */
  public static Optional<Noun> noun(String form) {
    return Nouns.of(form);
  }

  /** Whether a word is a Spanish noun of the lexicon, one or many, written without accents in lower case. */
  public static boolean isSpanishNoun(String plain) {
    return Nouns.isSpanish(plain);
  }

  /**
   * What a holder or a kind of thing is called in Spanish: "the barn" is "el granero", "plain shells" is "conchas
   * lisas".
   *
   * @return empty for a child's name and for what the lexicon has no Spanish for
   */
  public static Optional<String> inSpanish(String english) {
    Optional<String> holder = holder(english).map(Holder::spanish);
    return holder.isPresent() ? holder : Casting.spanishOf(english);
  }

  /**
   * Fills a scenario with persons.
   *
   * @param avoid names of children that must not be used
   * @param used names to leave alone while others are there
   * @return empty when the scenario needs children and all names are to be avoided
   */
  public static Optional<Scene> scene(Scenario scenario, Random random, Collection<String> avoid, Set<String> used) {
    return Casting.cast(scenario, random, avoid, used);
  }

  /**
   * The scene of a story that came from outside: with a scenario's verb where the thing is one of ours, else with
   * <i>have</i>.
   *
   * @return empty when the story does not say who or what has more and who or what has fewer
   */
  public static Optional<Scene> sceneOf(Comparison story, Random random) {
    return sceneOf(story, random, TeachersSpanish.NONE);
  }

  /** The same, with Spanish for words that are not ours. */
  public static Optional<Scene> sceneOf(Comparison story, Random random, TeachersSpanish spanish) {
    return Casting.recognize(story, random, spanish);
  }

  /** The same for a story read from a text, with the text's own verb where it is one of ours. */
  public static Optional<Scene> sceneOf(Comparison story, Random random, TeachersSpanish spanish, String text) {
    return sceneOf(story, random, spanish).map(scene -> Casting.toldAs(scene, text));
  }

  static Optional<Holder> holder(String english) {
    return Optional.ofNullable(HOLDERS.get(key(english)));
  }

  private static String key(String words) {
    return words.strip().toLowerCase(Locale.ROOT);
  }
}
