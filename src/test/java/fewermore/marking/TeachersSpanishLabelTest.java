package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fewermore.story.Comparison;
import fewermore.wording.Gender;
import fewermore.wording.Noun;
import fewermore.wording.ReadText.Understood;
import fewermore.wording.TeachersSpanish;
import fewermore.wording.WordingReader;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Labels of a problem whose noun the lexicon has no Spanish for. */
class TeachersSpanishLabelTest {
  private static final Comparison STORY = ((Understood) WordingReader.read(
      "Ana has 21 zorbles. Ben has 5 fewer zorbles than Ana. How many zorbles does Ben have?")).story();
  private static final TeachersSpanish GIVEN = new TeachersSpanish(
      List.of(new Noun("zorble", "zorbles", "rueda", "ruedas", Gender.FEMININE)), List.of());

  @ParameterizedTest
  @CsvSource({"ruedas, names-it", "16 ruedas, names-it", "Ben tiene ruedas, names-it", "zorbles, names-it",
      "conchas, not-recognised", "cosas, too-general"})
  void isReadByTheTeachersWords(String written, String mark) {
    assertEquals(mark, LabelMarker.mark(STORY, written, GIVEN).id());
  }

  @Test
  void beforeSheGaveThemItIsNotRecognised() {
    assertEquals(LabelVerdict.NOT_RECOGNISED, LabelMarker.mark(STORY, "ruedas"));
  }
}
