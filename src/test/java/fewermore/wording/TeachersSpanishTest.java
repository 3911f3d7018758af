package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import fewermore.story.Comparison;
import fewermore.wording.ReadText.Understood;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A typed problem in Spanish: with our words, with the teacher's, or not at all. */
class TeachersSpanishTest {
  private static final Noun GIZMO = new Noun("gizmo", "gizmos", "chisme", "chismes", Gender.MASCULINE);
  private static final Noun SCOOP = new Noun("scoop", "scoops", "bola", "bolas", Gender.FEMININE);

  @Test
  void anUnknownNounHasNoSpanishUntilTheTeacherGivesIt() {
    Comparison story = story("Ana has 21 gizmos. Ben has 5 fewer gizmos than Ana. How many gizmos does Ben have?");
    Writing.Declined declined = assertInstanceOf(Writing.Declined.class,
        WordingWriter.write(story, Language.SPANISH, new Random(1)));
    assertEquals(Writing.Reason.NO_SPANISH, declined.reason());
    assertEquals("Ana tiene 21 chismes. Ben tiene 5 chismes menos que Ana. ¿Cuántos chismes tiene Ben?",
        spanish(story, new TeachersSpanish(List.of(GIZMO), List.of())).text());
  }

  @Test
  void theTeachersGenderIsFollowedAloudToo() {
    Comparison story = story("Ana has 21 scoops. Ben has 1 more scoop than Ana. How many scoops does Ben have?");
    WrittenText text = spanish(story, new TeachersSpanish(List.of(SCOOP), List.of()));
    assertEquals("Ana tiene 21 bolas. Ben tiene 1 bola más que Ana. ¿Cuántas bolas tiene Ben?", text.text());
    assertEquals("Ana tiene veintiuna bolas. Ben tiene una bola más que Ana. ¿Cuántas bolas tiene Ben?",
        text.forSpeech());
    assertEquals("bolas", text.label());
  }

  @Test
  void aHolderThatIsNoNameNeedsSpanishToo() {
    Comparison story =
        story("Leah has 34 buttons. Her sister has 12 fewer buttons than Leah. How many buttons does her sister have?");
    Writing.Declined declined = assertInstanceOf(Writing.Declined.class,
        WordingWriter.write(story, Language.SPANISH, new Random(1)));
    assertEquals("no Spanish is known for \"Leah's sister\"; give the Spanish word, one and many, and its gender",
        declined.says());
    TeachersSpanish given = new TeachersSpanish(List.of(),
        List.of(new Holder("Leah's sister", "la hermana de Leah", Pronoun.NONE)));
    assertEquals("Leah tiene 34 botones. La hermana de Leah tiene 12 botones menos que Leah. "
        + "¿Cuántos botones tiene la hermana de Leah?", spanish(story, given).text());
  }

  @Test
  void theTeachersWordsGoBeforeTheLexicons() {
    Comparison story = story("Ana has 21 cars. Ben has 5 fewer cars than Ana. How many cars does Ben have?");
    Noun car = new Noun("car", "cars", "coche", "coches", Gender.MASCULINE);
    assertEquals("Ana tiene 21 coches. Ben tiene 5 coches menos que Ana. ¿Cuántos coches tiene Ben?",
        spanish(story, new TeachersSpanish(List.of(car), List.of())).text());
  }

  private static WrittenText spanish(Comparison story, TeachersSpanish given) {
    Scene scene = Lexicon.sceneOf(story, new Random(1), given).orElseThrow();
    return assertInstanceOf(WrittenText.class, WordingWriter.write(story, scene, Language.SPANISH, Shape.PLAIN));
  }

  private static Comparison story(String text) {
    return assertInstanceOf(Understood.class, WordingReader.read(text), () -> WordingReader.read(text).toString())
        .story();
  }
}
