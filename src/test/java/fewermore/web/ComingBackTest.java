package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.OneLossIsALoss;
import org.junit.jupiter.api.Test;

/** A short form of {@link ComingBack}. */
@OneLossIsALoss
class ComingBackTest {
  @Test
  void allThatWaitedIsAcknowledgedOnceAndPagesAnswerMeanwhile() throws Exception {
    ComingBack.Outcome outcome = ComingBack.run(12, 30);
    assertEquals(360, outcome.acknowledged());
    assertEquals(360, outcome.onTheLaptop());
    assertEquals(0, outcome.pagesFailed());
    assertTrue(outcome.pages() > 0, outcome.toString());
  }
}
