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

class EstimateSpecTest {
  private static final List<Example> ESTIMATES = SpecFile.read("estimates.md");

  static Stream<Example> examples() {
    return ESTIMATES.stream();
  }

  @ParameterizedTest
  @MethodSource("examples")
  void everyEstimateOfTheSpecIsMarkedAsItSays(Example example) {
    assertEquals(example.cell("mark"), EstimateMarker.mark(example.story(), example.cell("written")).id(),
        example::toString);
  }

  @Test
  void everyMarkOfAnEstimateHasAnExampleAndTheFileHasNotShrunk() {
    assertEquals(Arrays.stream(EstimateVerdict.values()).map(EstimateVerdict::id).collect(Collectors.toSet()),
        ESTIMATES.stream().map(example -> example.cell("mark")).collect(Collectors.toSet()));
    assertTrue(ESTIMATES.size() >= 40, ESTIMATES.size() + " estimates");
  }
}
