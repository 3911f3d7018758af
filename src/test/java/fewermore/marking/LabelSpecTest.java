package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.marking.SpecFile.Example;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LabelSpecTest {
  private static final List<Example> LABELS = SpecFile.read("labels.md");
  private static final List<Example> NEAR_WORDS = SpecFile.read("near-words.md");

  static Stream<Example> examples() {
    return Stream.concat(LABELS.stream(), NEAR_WORDS.stream());
  }

  @ParameterizedTest
  @MethodSource("examples")
  void everyLabelOfTheSpecIsMarkedAsItSays(Example example) {
    assertEquals(example.cell("mark"), LabelMarker.mark(example.story(), example.cell("written")).id(),
        example::toString);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void capitalsAndSpacesAroundALabelChangeNothing(Example example) {
    String loud = "  " + example.cell("written").toUpperCase(java.util.Locale.ROOT) + " ";
    assertEquals(example.cell("mark"), LabelMarker.mark(example.story(), loud).id(), example::toString);
  }

  @Test
  void atMostTwoInAHundredNearWordsAreReadAsTheThing() {
    long read = NEAR_WORDS.stream().filter(example ->
        LabelMarker.mark(example.story(), example.cell("written")) == LabelVerdict.NAMES_IT).count();
    assertTrue(100 * read <= 2 * NEAR_WORDS.size(), read + " of " + NEAR_WORDS.size());
  }

  @Test
  void everyMarkOfALabelHasAnExampleAndTheFilesHaveNotShrunk() {
    Set<String> shown = examples().map(example -> example.cell("mark")).collect(Collectors.toSet());
    assertEquals(Stream.of(LabelVerdict.values()).map(LabelVerdict::id).collect(Collectors.toSet()), shown);
    assertTrue(LABELS.size() >= 120, LABELS.size() + " labels");
    assertTrue(NEAR_WORDS.size() >= 150, NEAR_WORDS.size() + " near words");
  }
}
