package fewermore.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

@OneLossIsALoss
class PowerCutTest {
  @Test
  void afterAPowerCutAllOpensAndNothingAcknowledgedIsMissing() throws Exception {
    for (PowerCuts.Outcome outcome : PowerCuts.run(8, System.nanoTime())) {
      assertTrue(outcome.acknowledged() > 200, outcome.toString());
      assertEquals(0, outcome.lost(), outcome.toString());
      assertEquals(0, outcome.unopenable(), outcome.toString());
    }
  }
}
