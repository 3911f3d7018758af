package fewermore.story;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KindTest {
  /** The table of kinds: CCSS-M Table 1, rows Compare (second-hand); agreement after Lewis and Mayer (1987). */
  @ParameterizedTest
  @CsvSource({
    "DIFFERENCE, MORE,       SUBTRACT, ADD,      false",
    "DIFFERENCE, FEWER,      SUBTRACT, SUBTRACT, true",
    "DIFFERENCE, DIFFERENCE, SUBTRACT, SUBTRACT, true",
    "LARGER,     MORE,       ADD,      ADD,      true",
    "LARGER,     FEWER,      ADD,      SUBTRACT, false",
    "SMALLER,    MORE,       SUBTRACT, ADD,      false",
    "SMALLER,    FEWER,      SUBTRACT, SUBTRACT, true",
  })
  void eachKindHasItsOperationAndItsCue(
      Role unknown, Wording wording, Operation finds, Operation cue, boolean agrees) {
    Kind kind = Kind.of(unknown, wording);
    assertEquals(finds, kind.operation());
    assertEquals(cue, kind.cue());
    assertEquals(agrees, kind.agrees());
  }
}
