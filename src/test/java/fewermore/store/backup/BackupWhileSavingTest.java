package fewermore.store.backup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.OneLossIsALoss;
import org.junit.jupiter.api.Test;

@OneLossIsALoss
class BackupWhileSavingTest {
  @Test
  void aBackupMadeWhileChildrenSaveIsOfOneMoment() throws Exception {
    BackupWhileSaving.Outcome outcome = BackupWhileSaving.run(3);
    assertEquals(3, outcome.consistent(), outcome.toString());
    assertTrue(outcome.saves() >= 20, outcome.toString());
  }
}
