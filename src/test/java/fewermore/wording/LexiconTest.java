package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.wording.Scenario.Topic;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LexiconTest {
  /** The counts only grow: a problem on file names its scenario by id. */
  @Test
  void everyTopicKeepsItsScenarios() {
    Map<Topic, Integer> counts = new EnumMap<>(Topic.class);
    Lexicon.scenarios().forEach(scenario -> counts.merge(scenario.topic(), 1, Integer::sum));
    Map<Topic, Integer> least = Map.of(Topic.COUNTED, 26, Topic.TWO_KINDS, 11, Topic.LENGTH, 7, Topic.WEIGHT, 2,
        Topic.TIME, 2, Topic.MONEY, 3, Topic.POINTS, 1, Topic.AGE, 3, Topic.DISTANCE, 1);
    least.forEach((topic, count) ->
        assertTrue(counts.getOrDefault(topic, 0) >= count, topic + " has " + counts.get(topic)));
    assertTrue(Lexicon.scenarios().size() >= 56, "only " + Lexicon.scenarios().size());
    assertEquals(Lexicon.scenarios().size(),
        Lexicon.scenarios().stream().map(Scenario::id).collect(Collectors.toSet()).size());
  }

  @Test
  void everyNounHasAllItsForms() {
    for (Noun noun : Nouns.all()) {
      for (String form : new String[] {noun.one(), noun.many(), noun.spanishOne(), noun.spanishMany()}) {
        assertTrue(form.matches("[a-záéíóúüñ-]+( [a-záéíóúüñ-]+)*"), noun::toString);
      }
      assertEquals(noun, Lexicon.noun(noun.one()).orElseThrow());
      if (!Set.of("fish", "sheep").contains(noun.one())) {
        assertNotEquals(noun.one(), noun.many(), noun::toString);
      }
    }
    assertTrue(Nouns.all().size() >= 280, "only " + Nouns.all().size());
  }

  @Test
  void theSpanishPluralIsFormedByTheRules() {
    // -s after a vowel, -es after a consonant, -ces for -z; a stressed last syllable may lose its accent. School
    // grammar, from memory. Exceptions are the nouns that end in an unstressed -s.
    for (Noun noun : Nouns.all()) {
      String one = noun.spanishOne().split(" ")[0];
      String many = noun.spanishMany().split(" ")[0];
      String expected = one.matches(".*(mont|agu|beza)es?s|.*as|.*es") && one.equals(many) ? one
          : one.endsWith("z") ? one.substring(0, one.length() - 1) + "ces"
          : one.matches(".*[aeiouéáó]") ? one + "s" : one + "es";
      assertEquals(plain(expected), plain(many), noun::toString);
    }
  }

  private static String plain(String word) {
    return word.replace('á', 'a').replace('é', 'e').replace('í', 'i').replace('ó', 'o').replace('ú', 'u');
  }

  @ParameterizedTest
  @CsvSource({
    "blue marbles, canica azul, canicas azules, FEMININE",
    "Red Fish, pez rojo, peces rojos, MASCULINE",
    "striped shell, concha rayada, conchas rayadas, FEMININE",
    "leaf, hoja, hojas, FEMININE",
  })
  void anAdjectiveBeforeANounIsUnderstood(String form, String one, String many, Gender gender) {
    Noun noun = Lexicon.noun(form).orElseThrow();
    assertEquals(one, noun.spanishOne());
    assertEquals(many, noun.spanishMany());
    assertEquals(gender, noun.gender());
  }

  @Test
  void anUnknownWordIsNoNoun() {
    assertTrue(Lexicon.noun("gizmo").isEmpty());
    assertTrue(Lexicon.noun("blue gizmos").isEmpty());
    assertTrue(Lexicon.noun("quick marble").isEmpty());
    assertTrue(Lexicon.noun("").isEmpty());
  }
}
