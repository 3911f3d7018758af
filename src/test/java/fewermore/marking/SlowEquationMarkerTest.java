package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.equation.EquationReader;
import fewermore.story.Comparison;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The marker against the same rules written slowly and obviously. */
class SlowEquationMarkerTest {
  private static final long SEED = 20261125;
  private static final int EQUATIONS = 20_000;

  @Test
  void theFastMarkerAgreesWithTheSlowOneOnTwentyThousandEquations() {
    RandomEquations random = new RandomEquations(SEED);
    Map<EquationReason, Integer> seen = new EnumMap<>(EquationReason.class);
    for (int i = 0; i < EQUATIONS; i++) {
      Comparison story = random.story();
      String line = random.line(story);
      EquationMark mark = EquationMarker.mark(story, line);
      seen.merge(mark.reason(), 1, Integer::sum);
      String slow = SlowEquationMarker.mark(story, EquationReader.read(line).equation().orElseThrow());
      boolean eitherSign = slow.contains(SlowEquationMarker.EITHER_SIGN);
      assertEquals(slow.replace(SlowEquationMarker.EITHER_SIGN, "opposite-operation"),
          eitherSign ? describe(mark).replace(" cue-led", "") : describe(mark),
          () -> "seed " + SEED + ": " + line + " for " + story);
    }
    for (EquationReason reason : EquationReason.values()) {
      boolean readable = reason != EquationReason.BLANK && reason != EquationReason.UNREADABLE;
      assertTrue(!readable || seen.getOrDefault(reason, 0) >= 100, reason + " is too rare to tell: " + seen);
    }
  }

  static String describe(EquationMark mark) {
    return mark.reason().id() + (mark.expression() == null ? "" : " " + mark.expression().id())
        + (mark.solvedForm() ? " solved" : "") + (mark.cueLed() ? " cue-led" : "")
        + (mark.notTrue() ? " not-true" : "") + (mark.equalsChain() ? " equals-chain" : "");
  }
}
