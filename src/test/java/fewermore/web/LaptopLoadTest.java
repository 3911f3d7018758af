package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A short form of {@link LaptopLoad}: nothing is refused, and who watches hears; no figure is asked for. */
class LaptopLoadTest {
  @Test
  void aClassAtFullSpeedIsRefusedNothing() throws Exception {
    LaptopLoad.Outcome outcome = LaptopLoad.run(List.of(12), 1, 1, 20);
    assertTrue(outcome.right(), outcome.toString());
    assertEquals(1, outcome.full().size());
    assertTrue(outcome.full().get(0).app().aSecond() > 0, outcome.toString());
  }
}
