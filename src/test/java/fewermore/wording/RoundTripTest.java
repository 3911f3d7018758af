package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.text.SourceSpan;
import fewermore.wording.ReadText.Part;
import fewermore.wording.ReadText.Understood;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What the writer writes, the reader reads: the same story for every scenario, unknown, wording and shape. */
class RoundTripTest {

  @Test
  void everyWrittenTextIsReadBackToItsStory() {
    assertTrue(Lexicon.scenarios().size() >= 56, () -> "only " + Lexicon.scenarios().size() + " scenarios");
    int told = Telling.forEach(20, telling -> assertEquals(telling.story(), story(telling.english().text()),
        telling::toString));
    assertTrue(told >= 55_000, "told only " + told);
  }

  @Test
  void numbersAsWordsAreReadTheSame() {
    int told = Telling.forEach(2, telling -> assertEquals(telling.story(), story(telling.english().forSpeech()),
        telling::toString));
    assertTrue(told >= 5_500, "told only " + told);
  }

  /** Two holders who each have their own kind, which no scenario draws. */
  @Test
  void holdersWithTheirOwnKindsAreReadBack() {
    int told = 0;
    for (long seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      List<Holder> pair = ChildNames.pair(random, List.of(), Set.of()).orElseThrow();
      Scene scene = new Scene.EachItsKind(pair.get(0), pair.get(1), Nouns.noun("brown toad"), Nouns.noun("spotted toad"),
          Verb.HAVE, List.of());
      for (Telling.Asked asked : Telling.ALL_ASKED) {
        Comparison story = scene.story(new Relation(61, 35, 26), asked.unknown(), asked.wording());
        for (Shape shape : WordingWriter.shapes(story, scene)) {
          String text = WordingWriter.english(story, scene, shape).text();
          assertEquals(story, story(text), text);
          told++;
        }
      }
    }
    assertTrue(told >= 500, "told only " + told);
  }

  @Test
  void numbersThatDoNotBelongAreReadAsSuch() {
    int[] told = {0};
    Telling.forEach(1, telling -> {
      Comparison plain = telling.story();
      Comparison story = new Comparison(plain.persons(), plain.thing(), plain.otherThing(), plain.wider(),
          plain.amounts(), plain.unknown(), plain.wording(), List.of(6));
      String text = WordingWriter.english(story, telling.scene(), telling.shape()).text();
      assertEquals(story, story(text), text);
      told[0]++;
    });
    assertTrue(told[0] >= 2_700, "told only " + told[0]);
  }

  /** Each place is where the text says it: numbers in their digits, the question in its sentence. */
  @Test
  void thePlacesAreThoseOfTheText() {
    Telling.forEach(1, telling -> {
      String text = telling.english().text();
      Understood read = (Understood) WordingReader.read(text);
      for (Role role : telling.story().given()) {
        List<SourceSpan> at = read.places(Part.valueOf(role.name()));
        assertEquals(1, at.size(), telling::toString);
        assertEquals(String.valueOf(telling.story().value(role)), at.get(0).of(text), telling::toString);
      }
      List<SourceSpan> question = read.places(Part.QUESTION);
      assertEquals(1, question.size(), telling::toString);
      assertTrue(telling.english().sentences().stream().anyMatch(sentence ->
          sentence.text().endsWith("?") && sentence.text().startsWith(question.get(0).of(text))), telling::toString);
      String word = read.places(Part.COMPARING_WORD).get(0).of(text);
      boolean difference = word.equals("difference");
      assertTrue(difference || ComparingWords.of(word).orElseThrow().wording() == telling.story().wording(),
          telling::toString);
      for (SourceSpan thing : read.places(Part.THING)) {
        String said = thing.of(text);
        assertTrue(said.equals(telling.story().thing().one()) || said.equals(telling.story().thing().many()),
            telling::toString);
      }
      if (!(telling.scene() instanceof Scene.Kinds)) {
        assertNames(read, Part.LARGER_HOLDER, telling.story().persons().larger(), telling);
        assertNames(read, Part.SMALLER_HOLDER, telling.story().persons().smaller(), telling);
      }
    });
  }

  private static void assertNames(Understood read, Part part, String name, Telling telling) {
    List<String> said = new ArrayList<>();
    read.places(part).forEach(at -> said.add(at.of(read.text())));
    boolean whatDifference = said.isEmpty();
    assertTrue(!whatDifference, telling::toString);
    for (String words : said) {
      boolean pronoun = Set.of("he", "she", "it").contains(words.toLowerCase());
      assertTrue(pronoun || words.toLowerCase().startsWith(name.toLowerCase()), () -> words + "\n" + telling);
    }
  }

  private static Object story(String text) {
    return WordingReader.read(text) instanceof Understood understood
        ? understood.story() : WordingReader.read(text);
  }
}
