package fewermore.prediction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WayOfReasoningTest {

  /** Worked out by hand for 62 = 34 + 28, one line a kind, in the order of the ways. */
  @ParameterizedTest
  @CsvSource(quoteCharacter = '"', value = {
    "SMALLER_FEWER, 62 − 28 = □, 62 − 28 = □, 62 + 28 = □, 62 − 28 = □, □ = 28, 28 − 62 = □",
    "LARGER_MORE, 34 + 28 = □, 34 + 28 = □, 34 + 28 = □, 34 − 28 = □, □ = 28, 34 + 28 = □",
    "DIFFERENCE_FEWER, 62 − 34 = □, 62 − 34 = □, 62 + 34 = □, 62 − 34 = □, □ = 34, 34 − 62 = □",
    "SMALLER_MORE, 62 − 28 = □, 62 + 28 = □, 62 + 28 = □, 62 − 28 = □, □ = 28, 28 − 62 = □",
    "LARGER_FEWER, 34 + 28 = □, 34 − 28 = □, 34 + 28 = □, 34 − 28 = □, □ = 28, 34 + 28 = □",
    "DIFFERENCE_MORE, 62 − 34 = □, 62 + 34 = □, 62 + 34 = □, 62 − 34 = □, □ = 62, 34 − 62 = □",
  })
  void eachWayWritesItsEquation(Kind kind, String story, String cue, String adds, String takes, String amount,
      String turns) {
    assertEquals(List.of(story, cue, adds, takes, amount, turns),
        Predictions.of(story(kind, 34, 28)).all().stream().map(Prediction::equation).toList());
  }

  @ParameterizedTest
  @CsvSource({
    "SMALLER_FEWER, 34, 34, 90, 34, 28, 34",
    "LARGER_MORE, 62, 62, 62, 6, 28, 62",
    "DIFFERENCE_FEWER, 28, 28, 96, 28, 34, 28",
    "SMALLER_MORE, 34, 90, 90, 34, 28, 34",
    "LARGER_FEWER, 62, 6, 62, 6, 28, 62",
    "DIFFERENCE_MORE, 28, 96, 96, 28, 62, 28",
  })
  void eachWayHasItsAnswer(Kind kind, int story, int cue, int adds, int takes, int amount, int turns) {
    assertEquals(List.of(story, cue, adds, takes, amount, turns),
        Predictions.of(story(kind, 34, 28)).all().stream().map(Prediction::answer).toList());
  }

  /** CCSS-M (2010), Table 1, Compare, with 5, 2 and 3 (second-hand): 5−2=?, 2+3=?, 5−3=?. */
  @Test
  void fromTheStoryWritesTheSolutionEquationsOfTheStandards() {
    assertEquals("5 − 2 = □", equation(WayOfReasoning.FROM_THE_STORY, Kind.DIFFERENCE_MORE));
    assertEquals("2 + 3 = □", equation(WayOfReasoning.FROM_THE_STORY, Kind.LARGER_MORE));
    assertEquals("5 − 3 = □", equation(WayOfReasoning.FROM_THE_STORY, Kind.SMALLER_FEWER));
  }

  @Test
  void whenTheDifferenceIsTheLargerGivenNumberItComesFirstInATakeAway() {
    assertEquals("37 − 17 = □", WayOfReasoning.BY_THE_CUE_WORD.predict(story(Kind.LARGER_FEWER, 17, 37)).orElseThrow()
        .equation());
  }

  @Test
  void theCueWordIsTheStoryExactlyWhereTheWordingAgrees() {
    for (Kind kind : Kind.values()) {
      Comparison story = story(kind, 34, 28);
      assertEquals(kind.agrees(), WayOfReasoning.BY_THE_CUE_WORD.predict(story).orElseThrow().equation()
          .equals(WayOfReasoning.FROM_THE_STORY.predict(story).orElseThrow().equation()), kind::id);
    }
  }

  @Test
  void whatIsTheDifferenceIsReadAsFewer() {
    Comparison story = story(Kind.DIFFERENCE_FEWER, 34, 28);
    Comparison other = new Comparison(story.persons(), story.thing(), null, List.of(), story.amounts(), story.unknown(),
        Wording.DIFFERENCE, List.of());
    assertEquals("62 − 34 = □", WayOfReasoning.BY_THE_CUE_WORD.predict(other).orElseThrow().equation());
  }

  @Test
  void noSteadyWayPredictsNothing() {
    for (Kind kind : Kind.values()) {
      assertEquals(Optional.empty(), WayOfReasoning.NO_STEADY_WAY.predict(story(kind, 34, 28)));
    }
  }

  @Test
  void waysThatWriteTheSameStandTogether() {
    List<List<WayOfReasoning>> groups = Predictions.of(story(Kind.LARGER_FEWER, 34, 28)).byEquation().stream()
        .map(group -> group.stream().map(Prediction::way).toList()).toList();
    assertEquals(List.of(
        List.of(WayOfReasoning.FROM_THE_STORY, WayOfReasoning.ALWAYS_ADDS, WayOfReasoning.TURNS_SUBTRACTION_ROUND),
        List.of(WayOfReasoning.BY_THE_CUE_WORD, WayOfReasoning.ALWAYS_TAKES_AWAY),
        List.of(WayOfReasoning.TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT)), groups);
  }

  @Test
  void everyWayIsFoundByItsId() {
    for (WayOfReasoning way : WayOfReasoning.values()) {
      assertEquals(Optional.of(way), WayOfReasoning.of(way.id()));
    }
    assertTrue(WayOfReasoning.of("guesses").isEmpty());
  }

  private static String equation(WayOfReasoning way, Kind kind) {
    return way.predict(story(kind, 2, 3)).orElseThrow().equation();
  }

  private static Comparison story(Kind kind, int smaller, int difference) {
    return new Comparison(new Persons("Anna", "Ben"), new Thing("shell", "shells"), null, List.of(),
        new Relation(smaller + difference, smaller, difference), kind.unknown(), kind.wording(), List.of());
  }
}
