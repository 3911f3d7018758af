package fewermore.reasoning;

import static fewermore.reasoning.Made.TABLE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberRange;
import fewermore.story.Kind;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class NextProblemTest {
  private static Map<Kind, Double> bits(Ways ways) {
    Map<Kind, Double> bits = new EnumMap<>(Kind.class);
    NextProblem.candidates(NumberRange.WITHIN_100)
        .forEach(each -> bits.put(each.kind(), NextProblem.bits(ways, each, true, TABLE)));
    return bits;
  }

  @Test
  void fromTheStartingSharesTheSmallerWithMoreTellsMostAndTheLargerWithMoreLeast() {
    Map<Kind, Double> bits = bits(Ways.start(TABLE));
    // Simulated for this project with other slips; a tenth of a bit either way.
    Map<Kind, Double> reference = Map.of(Kind.SMALLER_MORE, .73, Kind.SMALLER_FEWER, .64, Kind.DIFFERENCE_MORE, .64,
        Kind.LARGER_FEWER, .59, Kind.DIFFERENCE_FEWER, .58, Kind.LARGER_MORE, .45);
    reference.forEach((kind, expected) -> assertEquals(expected, bits.get(kind), .10, kind.id()));
    bits.forEach((kind, found) -> assertTrue(found <= bits.get(Kind.SMALLER_MORE) && found >= bits.get(Kind.LARGER_MORE)));
  }

  @Test
  void betweenStoryAndWordTheLargerWithFewerTellsMost() {
    double[] two = new double[Ways.ALL.length];
    two[WayOfReasoning.FROM_THE_STORY.ordinal()] = .5;
    two[WayOfReasoning.BY_THE_CUE_WORD.ordinal()] = .5;
    Map<Kind, Double> bits = bits(Ways.scaled(two));
    assertEquals(.49, bits.get(Kind.LARGER_FEWER), .10);
    assertEquals(.44, bits.get(Kind.SMALLER_MORE), .12);
    assertEquals(.33, bits.get(Kind.DIFFERENCE_MORE), .10);
  }

  @Test
  void neverTheKindAskedLast() {
    List<NextProblem.Candidate> candidates = NextProblem.candidates(NumberRange.WITHIN_100);
    for (Kind last : Kind.values()) {
      assertNotEquals(last, NextProblem.best(Ways.start(TABLE), candidates, last, true, TABLE).orElseThrow().kind());
    }
    assertTrue(NextProblem.best(Ways.start(TABLE), candidates.subList(0, 3), candidates.get(0).kind(), true, TABLE).isEmpty());
  }

  @Test
  void theNumberAloneTellsLessThanTheEquation() {
    for (NextProblem.Candidate each : NextProblem.candidates(NumberRange.WITHIN_100)) {
      assertTrue(NextProblem.bits(Ways.start(TABLE), each, false, TABLE)
          < NextProblem.bits(Ways.start(TABLE), each, true, TABLE), each.toString());
    }
  }
}
