package fewermore.problem;

import static fewermore.story.Kind.DIFFERENCE_FEWER;
import static fewermore.story.Kind.DIFFERENCE_MORE;
import static fewermore.story.Kind.LARGER_FEWER;
import static fewermore.story.Kind.LARGER_MORE;
import static fewermore.story.Kind.SMALLER_FEWER;
import static fewermore.story.Kind.SMALLER_MORE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Kind;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ProposedMixTest {

  @Test
  void theSheetsAreTheOnesTheSimulationFoundBest() {
    assertEquals(List.of(LARGER_FEWER, SMALLER_MORE, SMALLER_FEWER, SMALLER_MORE), ProposedMix.of(4));
    assertEquals(List.of(LARGER_FEWER, SMALLER_MORE, SMALLER_FEWER, SMALLER_MORE, LARGER_MORE, DIFFERENCE_MORE),
        ProposedMix.of(6));
    assertEquals(Map.of(LARGER_FEWER, 2, SMALLER_MORE, 2, SMALLER_FEWER, 1, LARGER_MORE, 1, DIFFERENCE_MORE, 1,
        DIFFERENCE_FEWER, 1), ProposedMix.counts(8));
  }

  @Test
  void everyProposedMixHasAProblemMostDoWellAndBothWordings() {
    for (int n = 1; n <= 30; n++) {
      List<Kind> kinds = ProposedMix.of(n);
      assertEquals(n, kinds.size());
      assertTrue(kinds.contains(SMALLER_FEWER), "n = " + n);
      assertEquals(n > 1, kinds.stream().anyMatch(kind -> !kind.agrees()), "n = " + n);
      assertNoKindTwiceRunning(kinds, "n = " + n);
      assertEquals(n, ProposedMix.counts(n).values().stream().mapToInt(Integer::intValue).sum());
    }
    assertEquals(EnumSet.allOf(Kind.class), EnumSet.copyOf(ProposedMix.of(8)));
  }

  @Test
  void chosenCountsAreKeptAndNoKindComesTwiceRunningWhereThatCanBe() {
    for (long seed = 0; seed < 3_000; seed++) {
      Random random = new Random(seed);
      Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
      int total = 0;
      int most = 0;
      for (Kind kind : Kind.values()) {
        int count = random.nextInt(4) * random.nextInt(3);
        counts.put(kind, count);
        total += count;
        most = Math.max(most, count);
      }
      List<Kind> kinds = ProposedMix.inOrder(counts);
      assertEquals(total, kinds.size(), "seed " + seed);
      for (Kind kind : Kind.values()) {
        assertEquals((long) counts.get(kind), kinds.stream().filter(kind::equals).count(), "seed " + seed);
      }
      if (2 * most <= total + 1) {
        assertNoKindTwiceRunning(kinds, "seed " + seed + " " + counts + " " + kinds);
      }
    }
  }

  @Test
  void countsOfTheProposalComeBackInTheProposedOrder() {
    for (int n = 2; n <= 6; n++) {
      assertEquals(ProposedMix.of(n), ProposedMix.inOrder(ProposedMix.counts(n)), "n = " + n);
    }
  }

  @Test
  void anEmptySetIsNotProposed() {
    assertThrows(IllegalArgumentException.class, () -> ProposedMix.of(0));
    assertEquals(List.of(), ProposedMix.inOrder(Map.of()));
  }

  private static void assertNoKindTwiceRunning(List<Kind> kinds, String which) {
    for (int i = 1; i < kinds.size(); i++) {
      assertNotEquals(kinds.get(i - 1), kinds.get(i), which);
    }
  }
}
