package fewermore.classroom;

import fewermore.marking.Work;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is known of a class on one day: from this, and from when each tablet was last heard, follows what {@link Seat}
 * each child has in the room.
 *
 * @param children the class list, in its order
 * @param sets those the children see today, in order
 * @param sittings of today, in the order of coming in
 * @param sent drafts, hand-ins and raised hands on today's problems, in the order they were written
 * @param late hand-ins that arrived today and belong to another day or to a sitting that was over, by child
 * @param absent when the teacher marked a child absent today, by child
 * @param visited when she was last with a child, by child
 * @param stuckAfter how long an open problem may stand without a change
 * @param onlyFor the children a set is for, by the set's id; a set for the whole class is not there
 * @param earlier the version a problem took the place of, by the newer one's id
 */
public record RoomFacts(
    List<Child> children, List<ProblemSet> sets, List<Sat> sittings, List<Sent> sent, Map<Long, List<Late>> late,
    Map<Long, Instant> absent, Map<Long, Instant> visited, List<Pause> pauses, Duration stuckAfter,
    Map<Long, Set<Long>> onlyFor, Map<Long, Long> earlier) {

  /** How long an open problem may stand without a change where the teacher says nothing else. Ours. */
  public static final Duration USUAL_STUCK_AFTER = Duration.ofMinutes(4);

  public RoomFacts {
    children = List.copyOf(children);
    sets = List.copyOf(sets);
    sittings = List.copyOf(sittings);
    sent = List.copyOf(sent);
    late = Map.copyOf(late);
    absent = Map.copyOf(absent);
    visited = Map.copyOf(visited);
    pauses = List.copyOf(pauses);
    onlyFor = Map.copyOf(onlyFor);
    earlier = Map.copyOf(earlier);
  }

  /** Every set is for the whole class, and no problem has an earlier version. */
  public RoomFacts(
      List<Child> children, List<ProblemSet> sets, List<Sat> sittings, List<Sent> sent, Map<Long, List<Late>> late,
      Map<Long, Instant> absent, Map<Long, Instant> visited, List<Pause> pauses, Duration stuckAfter) {
    this(children, sets, sittings, sent, late, absent, visited, pauses, stuckAfter, Map.of(), Map.of());
  }

  /** The sets a child sees. */
  public List<ProblemSet> setsOf(long child) {
    return sets.stream().filter(set -> !onlyFor.containsKey(set.id()) || onlyFor.get(set.id()).contains(child)).toList();
  }

  /** @param newTablet a tablet first met today, while the class has used others before */
  public record Sat(Sitting sitting, boolean newTablet) {}

  /**
   * One thing a tablet sent.
   *
   * @param told whether the tablet was asked to look again because of it
   * @param taken whether the teacher took it as handed in
   */
  public record Sent(
      long child, long problem, String work, String page, int seq, SentItem.Kind kind, Work parts, Instant written,
      boolean told, boolean taken, String sitting) {}

  /** A hand-in that came late. */
  public record Late(String work, String page, int seq, Instant arrived) {}

  /** @param to null while it lasts */
  public record Pause(Instant from, Instant to) {}

  public boolean paused() {
    return pauses.stream().anyMatch(pause -> pause.to == null);
  }

  /** The time from one moment to another in which no pause was on. */
  Duration running(Instant from, Instant to) {
    Duration running = Duration.between(from, to);
    for (Pause pause : pauses) {
      Instant start = pause.from.isAfter(from) ? pause.from : from;
      Instant end = pause.to == null || pause.to.isAfter(to) ? to : pause.to;
      if (end.isAfter(start)) {
        running = running.minus(Duration.between(start, end));
      }
    }
    return running;
  }
}
