package fewermore.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fewermore.wording.ReadText;
import fewermore.wording.TeachersSpanish;
import fewermore.wording.WordingReader;
import fewermore.wording.WrittenText;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TypedProblemTest {
  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      Tomas has 52 shells. Ines has 14 fewer shells than Tomas. How many shells does Ines have? | Tomas tiene 52 conchas.
      Mara found 28 shells. She found 15 fewer shells than Theo. How many shells did Theo find? | Mara encontró 28 conchas.
      Theo has found 28 shells. Mara has found 15 more than Theo. How many shells has Mara found? | Theo encontró 28 conchas.
      """)
  void theSpanishTellsWhatTheTextSaysThatTheyDo(String english, String firstSpanish) {
    ReadText.Understood read = (ReadText.Understood) WordingReader.read(english);
    WrittenText spanish = (WrittenText) new TypedProblem(read).spanish(TeachersSpanish.NONE);
    assertEquals(firstSpanish, spanish.sentences().get(0).text());
  }
}
