package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What holds for every text the writer can write: all scenarios, kinds and shapes, several casts and numbers. */
class WrittenLawsTest {
  private static final Set<String> MORE = Set.of("more", "longer", "taller", "older");
  private static final Set<String> FEWER = Set.of("fewer", "less", "shorter", "younger");
  private static final Pattern NUMBER = Pattern.compile("\\d+");

  @Test
  void theNumbersAreTheGivenOnesAndNoOther() {
    int told = Telling.forEach(3, telling -> {
      List<Integer> given = telling.story().given().stream().map(telling.story()::value).sorted().toList();
      assertEquals(given, numbers(telling.english().text()), telling::toString);
      assertEquals(given, numbers(telling.spanish().text()), telling::toString);
    });
    assertTrue(told >= 8_000, "told only " + told);
  }

  @Test
  void theWordingIsSaidAndItsOppositeIsNot() {
    Telling.forEach(2, telling -> {
      Set<String> words = Set.copyOf(words(telling.english()));
      Wording wording = telling.story().wording();
      assertEquals(wording == Wording.MORE, words.stream().anyMatch(MORE::contains), telling::toString);
      assertEquals(wording == Wording.FEWER, words.stream().anyMatch(FEWER::contains), telling::toString);
      assertEquals(wording == Wording.DIFFERENCE, words.contains("difference"), telling::toString);
      String spanish = telling.spanish().text();
      assertEquals(wording == Wording.MORE, spanish.contains(" más "), telling::toString);
      assertEquals(wording == Wording.FEWER, spanish.contains(" menos "), telling::toString);
      assertEquals(wording == Wording.DIFFERENCE, spanish.contains("diferencia"), telling::toString);
    });
  }

  @Test
  void oneRelationASentenceAndTenWordsAtMost() {
    Telling.forEach(2, telling -> {
      int relations = 0;
      for (Sentence sentence : telling.english().sentences()) {
        List<String> words = List.of(sentence.text().toLowerCase().replaceAll("[.?]", "").split(" "));
        assertTrue(words.size() <= 10, () -> sentence.text() + "\n" + telling);
        assertTrue(numbers(sentence.text()).size() <= 1, telling::toString);
        relations += words.stream().filter(word -> MORE.contains(word) || FEWER.contains(word)).count();
      }
      assertEquals(telling.story().wording() == Wording.DIFFERENCE ? 0 : 1, relations, telling::toString);
    });
  }

  @Test
  void oneQuestionIsAskedAndItNamesTheAsked() {
    Telling.forEach(2, telling -> {
      List<Sentence> questions =
          telling.english().sentences().stream().filter(each -> each.text().endsWith("?")).toList();
      assertEquals(1, questions.size(), telling::toString);
      assertEquals(telling.shape().questionFirst() ? 0 : telling.english().sentences().size() - 1,
          telling.english().sentences().indexOf(questions.get(0)), telling::toString);
      if (telling.story().unknown() != Role.DIFFERENCE) {
        String asked = telling.story().unknown() == Role.LARGER
            ? telling.story().persons().larger() : telling.story().persons().smaller();
        assertTrue(questions.get(0).text().contains(asked), telling::toString);
      }
    });
  }

  @Test
  void theComparingSentenceNamesBothSidesInTheirOrder() {
    Telling.forEach(2, telling -> {
      Comparison story = telling.story();
      if (story.wording() != Wording.DIFFERENCE) {
        Sentence comparing = telling.english().sentences().stream()
            .filter(each -> each.text().matches(".*\\bthan\\b.*")).findFirst().orElseThrow();
        String after = comparing.text().substring(comparing.text().indexOf(" than "));
        String before = comparing.text().substring(0, comparing.text().indexOf(" than "));
        String second = story.wording() == Wording.MORE ? story.persons().smaller() : story.persons().larger();
        String first = story.wording() == Wording.MORE ? story.persons().larger() : story.persons().smaller();
        assertTrue(after.contains(second), telling::toString);
        assertFalse(before.toLowerCase().contains(second.toLowerCase() + " "), telling::toString);
        boolean named = before.toLowerCase().contains(first.toLowerCase()) || oneThing(before, telling)
            || before.matches("(She|He|It) .*");
        assertTrue(named, telling::toString);
      }
    });
  }

  private static boolean oneThing(String before, Telling telling) {
    return telling.scene() instanceof Scene.Kinds kinds
        && (before.contains(kinds.larger().one()) || before.contains(kinds.smaller().one()));
  }

  @Test
  void aPronounIsTheNamedOnesOwn() {
    int[] met = {0};
    Telling.forEach(3, telling -> {
      for (int i = 0; i < telling.english().sentences().size(); i++) {
        Matcher pronoun = Pattern.compile("^(She|He|It) ").matcher(telling.english().sentences().get(i).text());
        if (pronoun.find()) {
          met[0]++;
          String before = telling.english().sentences().get(i - 1).text();
          Holder meant = telling.scene().holders().stream().filter(each -> before.toLowerCase()
              .startsWith(each.english().toLowerCase())).findFirst().orElseThrow(() -> new AssertionError(telling));
          boolean thing = telling.scene() instanceof Scene.Measured measured
              && (measured.owned() != null || meant.pronoun() == Pronoun.IT);
          assertEquals(thing ? "It" : meant.pronoun() == Pronoun.SHE ? "She" : "He", pronoun.group(1),
              telling::toString);
        }
      }
    });
    assertTrue(met[0] >= 1_400, "met only " + met[0]);
  }

  @Test
  void everySpanishSentenceIsClosedAsItIsOpened() {
    Telling.forEach(2, telling -> {
      assertEquals(telling.english().sentences().size(), telling.spanish().sentences().size(), telling::toString);
      for (int i = 0; i < telling.spanish().sentences().size(); i++) {
        String sentence = telling.spanish().sentences().get(i).text();
        boolean question = telling.english().sentences().get(i).text().endsWith("?");
        assertTrue(sentence.matches(question ? "¿[A-ZÁÉÍÓÚ][^¿?.]*\\?" : "[A-ZÁÉÍÓÚ][^¿?.]*\\."), telling::toString);
        assertFalse(sentence.matches(".*\\b(más|menos) de\\b.*"), telling::toString);
        assertFalse(sentence.contains("  ") || sentence.contains(" de el "), telling::toString);
        if (sentence.matches(".* (más|menos) .*")) {
          assertTrue(sentence.contains(" que "), telling::toString);
        }
      }
    });
  }

  @Test
  void whatIsReadAloudHasNoDigitAndOtherwiseTheSameWords() {
    Telling.forEach(2, telling -> {
      for (WrittenText text : List.of(telling.english(), telling.spanish())) {
        for (Sentence sentence : text.sentences()) {
          assertTrue(numbers(sentence.forSpeech()).isEmpty(), telling::toString);
          String[] around = sentence.text().split("\\d+", -1);
          assertTrue(sentence.forSpeech().startsWith(around[0]), telling::toString);
          assertTrue(sentence.forSpeech().endsWith(around[around.length - 1]), telling::toString);
        }
      }
    });
  }

  @Test
  void everyKindHasAtLeastFourShapes() {
    for (Scenario scenario : Lexicon.scenarios()) {
      for (Telling telling : Telling.oneOfEachKind(scenario, new java.util.Random(3), 3)) {
        int shapes = WordingWriter.shapes(telling.story(), telling.scene()).size();
        assertTrue(shapes >= 4, () -> shapes + " " + telling);
      }
    }
  }

  private static List<Integer> numbers(String text) {
    List<Integer> numbers = new ArrayList<>();
    Matcher matcher = NUMBER.matcher(text);
    while (matcher.find()) {
      numbers.add(Integer.parseInt(matcher.group()));
    }
    return numbers.stream().sorted().toList();
  }

  private static List<String> words(WrittenText text) {
    return List.of(text.text().toLowerCase().replaceAll("[.?]", "").split(" "));
  }
}
