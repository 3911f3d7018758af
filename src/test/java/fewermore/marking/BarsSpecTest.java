package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.marking.SpecFile.Example;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BarsSpecTest {
  private static final List<Example> BARS = SpecFile.read("bars.md");

  static Stream<Example> examples() {
    return BARS.stream();
  }

  @ParameterizedTest
  @MethodSource("examples")
  void allBarsOfTheSpecAreMarkedAsItSays(Example example) {
    Bars bars = new Bars(example.cell("longer"), example.cell("longer bar"), example.cell("shorter bar"),
        example.cell("gap"));
    assertEquals(example.cell("mark"), BarsMarker.mark(example.story(), bars).id(), example::toString);
  }

  @Test
  void everyMarkOfBarsHasAnExampleAndTheFileHasNotShrunk() {
    assertEquals(Arrays.stream(BarsVerdict.values()).map(BarsVerdict::id).collect(Collectors.toSet()),
        BARS.stream().map(example -> example.cell("mark")).collect(Collectors.toSet()));
    assertTrue(BARS.size() >= 40, BARS.size() + " bars");
  }
}
