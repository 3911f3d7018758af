package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the child's own equation asks for and comes to; the stories are 52, 38 and 14. */
class OwnCalculationTest {
  @ParameterizedTest
  @CsvSource(nullValues = "-", value = {
    "SMALLER, 52 − 14 = x,                52 − 14, 38",
    "SMALLER, 14 + x = 52,                52 − 14, 38",
    "SMALLER, x = 52 − 10 − 4,            52 − 14, 38",
    "SMALLER, 52 − 14 = 42,               52 − 14, 38",
    "SMALLER, 52 − 10 = 42 − 4,           52 − 14, 38",
    "SMALLER, 14 − 52 = x,                14 − 52, -38",
    "SMALLER, 52 + x = 14,                14 − 52, -38",
    "SMALLER, 52 + 14 = x,                52 + 14, 66",
    "SMALLER, 14 + 52 = 66,               14 + 52, 66",
    "SMALLER, x − 14 = 52,                14 + 52, 66",
    "SMALLER, 52 + 14,                    52 + 14, 66",
    "SMALLER, 52 − 30,                    52 − 30, 22",
    "SMALLER, 14 − 52,                    14 − 52, -38",
    "SMALLER, 52 − 10 − 4,                52 − 14, 38",
    "SMALLER, 52 − 20 − 5,                -,       27",
    "SMALLER, 52 − 30 = x,                -,       22",
    "SMALLER, 52 − 30 = 21,               -,       22",
    "SMALLER, 52 − x = 38,                -,       14",
    "SMALLER, 25 − 14 = x,                -,       11",
    "SMALLER, 52 − 30 = 22 − 3 = 19,      -,       19",
    "SMALLER, x = 66,                     -,       66",
    "SMALLER, 66,                         -,       66",
    "SMALLER, 52 − x,                     -,       -",
    "SMALLER, x = y,                      -,       -",
    "SMALLER, 52 = 14,                    -,       -",
    "SMALLER, '',                         -,       -",
    "SMALLER, take away,                  -,       -",
    "SMALLER, 999999999 + 999999999 + 999999999, -, -",
    "LARGER,  14 + 38 = x,                14 + 38, 52",
    "LARGER,  38 + 14 = x,                38 + 14, 52",
    "LARGER,  x − 14 = 38,                14 + 38, 52",
    "LARGER,  38 − 14 = x,                38 − 14, 24",
    "LARGER,  14 − 38 = x,                14 − 38, -24",
    "LARGER,  14 + x = 38,                38 − 14, 24",
    "LARGER,  30 + 10 = 40 + 12 = 52,     38 + 14, 52",
    "DIFFERENCE, 38 + x = 52,             52 − 38, 14",
    "DIFFERENCE, 38 + 52 = 80,            38 + 52, 90"})
  void theOwnCalculationAndItsValueFollowFromTheLine(
      Role unknown, String line, String calculation, Integer value) {
    Comparison story = RandomEquations.story(52, 38, unknown, Wording.MORE, List.of());
    assertEquals(Optional.ofNullable(calculation), EquationMarker.ownCalculation(story, line)
        .map(own -> own.first() + " " + own.operation().sign() + " " + own.second()));
    assertEquals(value == null ? OptionalInt.empty() : OptionalInt.of(value),
        EquationMarker.ownValue(story, line));
    EquationMarker.ownCalculation(story, line).ifPresent(own -> assertEquals(
        own.operation() == Operation.ADD ? own.first() + own.second() : own.first() - own.second(), own.value()));
  }
}
