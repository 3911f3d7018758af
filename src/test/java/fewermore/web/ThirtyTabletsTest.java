package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.OneLossIsALoss;
import org.junit.jupiter.api.Test;

@OneLossIsALoss
class ThirtyTabletsTest {
  /** A minute of cuts where all tests are run for good, a short while by hand. */
  private static final int SECONDS = System.getenv("CI") == null ? 15 : 60;

  @Test
  void onABadWiFiEveryHandInArrivesOnceInOrderUnderItsOwnChild() throws Exception {
    ThirtyTablets.Outcome outcome = ThirtyTablets.run(SECONDS, System.nanoTime());
    System.out.println(outcome);
    assertTrue(outcome.right(), outcome.toString());
    assertTrue(outcome.handedIn() > 30 && outcome.answersLost() > 0 && outcome.cut() > 0, outcome.toString());
  }
}
