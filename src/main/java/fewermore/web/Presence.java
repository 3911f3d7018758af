package fewermore.web;

import fewermore.classroom.Sitting;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * When each sitting's tablet was last heard. Kept in memory only: after a restart every tablet counts as heard at the
 * start, until it is not.
 */
final class Presence {
  private final Instant start;
  private final Map<String, Instant> heard = new ConcurrentHashMap<>();

  Presence(Clock clock) {
    this.start = clock.instant();
  }

  void heard(String sitting, Instant now) {
    heard.merge(sitting, now, (before, after) -> after.isAfter(before) ? after : before);
  }

  Instant heard(Sitting sitting) {
    Instant known = sitting.startedAt().isAfter(start) ? sitting.startedAt() : start;
    Instant last = heard.get(sitting.id());
    return last == null || last.isBefore(known) ? known : last;
  }
}
