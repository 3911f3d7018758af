package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.HandIn;
import fewermore.marking.Work;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Somebody sets the laptop's clock while children work. */
class ClockSetTest {
  private static final class Settable extends Clock {
    private volatile Instant now = Instant.parse("2026-11-25T15:00:00Z");

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }

    private void set(Duration by) {
      now = now.plus(by);
    }
  }

  private static void handsIn(Tablet tablet, String answer, int seq) {
    tablet.sent(tablet.item(tablet.work(1), seq, "handed-in", new Work("52 - 14 = x", answer, "shells", null, null)));
  }

  @Test
  void workKeepsItsOrderAndItsDayWhenTheClockGoesBackOrForward() {
    Settable clock = new Settable();
    try (Rig rig = Rig.start(clock)) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      handsIn(tablet, "66", 1);
      clock.set(Duration.ofHours(-2));
      handsIn(tablet, "39", 2);
      clock.set(Duration.ofHours(3));
      handsIn(tablet, "38", 3);
      clock.set(Duration.ofMinutes(-90));
      List<HandIn> handIns = rig.pieces().get(0).handIns();
      assertEquals(List.of("66", "39", "38"), handIns.stream().map(each -> each.parts().answer()).toList());
      assertEquals("66", rig.pieces().get(0).evidence().parts().answer(), "the first one is the evidence");
      List<String> days = rig.services.database.read(handle ->
          handle.createQuery("SELECT DISTINCT CAST(work_day AS VARCHAR) FROM revision").mapTo(String.class).list());
      assertEquals(List.of("2026-11-25"), days);
    }
  }

  @Test
  void aClockAYearAheadAndBackAgainLosesNothingAndTheSetOfTheDayIsThere() {
    Settable clock = new Settable();
    try (Rig rig = Rig.start(clock)) {
      Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
      handsIn(tablet, "38", 1);
      clock.set(Duration.ofDays(365));
      tablet.send(tablet.item(tablet.work(1), 2, "handed-in", new Work("52 - 14 = x", "37", "shells", null, null)));
      clock.set(Duration.ofDays(-365));
      assertTrue(rig.services.problems.given(rig.classroom.id(), rig.services.today(rig.classroom)).stream()
          .anyMatch(set -> set.id() == rig.set.id()), "today's set is today's");
      List<HandIn> handIns = rig.pieces().get(0).handIns();
      assertEquals(2, handIns.size(), "work sent meanwhile was kept");
      assertEquals("38", handIns.get(0).parts().answer());
    }
  }
}
