package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.OneLossIsALoss;
import org.junit.jupiter.api.Test;

@OneLossIsALoss
class KillTest {
  @Test
  void nothingAcknowledgedIsMissingAfterKillMinusNine() throws Exception {
    KillRig.Outcome outcome = KillRig.run(8, System.nanoTime(), 700);
    assertTrue(outcome.acknowledged() >= 50, outcome.toString());
    assertEquals(0, outcome.lost(), outcome.toString());
    assertEquals(0, outcome.other(), outcome.toString());
    assertTrue(outcome.changes() >= 8, outcome.toString());
    assertEquals(0, outcome.changesLost(), outcome.toString());
  }
}
