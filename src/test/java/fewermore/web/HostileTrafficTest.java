package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A short form of {@link HostileTraffic}. */
class HostileTrafficTest {
  private static final int REQUESTS = 1_500;

  @Test
  void malformedRequestsGetASentenceAndTheClassGoesOnWorking() throws Exception {
    HostileTraffic.Outcome outcome = HostileTraffic.run(REQUESTS, 20261126L);
    assertEquals(List.of(), outcome.wrong());
    assertTrue(outcome.answers().values().stream().mapToInt(Integer::intValue).sum() == REQUESTS, outcome.answers().toString());
    assertTrue(outcome.answers().getOrDefault(400, 0) > REQUESTS / 20, outcome.answers().toString());
    assertTrue(outcome.handedIn() > 10, "handed in " + outcome.handedIn());
    assertEquals(outcome.handedIn(), outcome.acknowledged());
  }
}
