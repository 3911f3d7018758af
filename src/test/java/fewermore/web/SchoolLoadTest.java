package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.OneLossIsALoss;
import org.junit.jupiter.api.Test;

@OneLossIsALoss
class SchoolLoadTest {
  @Test
  void appsThatShareADatabaseKeepAllTheyAcknowledgeEachForItself() throws Exception {
    SchoolLoad.Outcome outcome = SchoolLoad.run(3, 6, 6, 2);
    assertTrue(outcome.right(), outcome.toString());
    assertTrue(outcome.acknowledged() >= 18, outcome.toString());
    assertEquals(3, outcome.apps());
  }
}
