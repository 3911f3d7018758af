package fewermore.classroom;

import fewermore.classroom.RoomFacts.Sat;
import fewermore.classroom.RoomFacts.Sent;
import fewermore.classroom.Seat.Heard;
import fewermore.classroom.Seat.Status;
import fewermore.classroom.Seat.Why;
import fewermore.marking.Part;
import fewermore.marking.Work;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Who is working, stuck, waiting, done or away right now.
 *
 * <p>A child is <b>stuck</b> when her hand is up and the teacher has not been since; when the problem she was last on
 * asks her to look again and has no tries left; or when nothing changed for some minutes while a problem is open.
 * Minutes of a pause do not count. Of a tablet that is not heard nothing is known but that: its child is
 * <b>waiting</b>, unless her hand was up before or all her work is there.
 */
public final class Room {
  /** A tablet asks every 15 s, give or take 3: two rounds may be lost. Ours. */
  public static final Duration HERE = Duration.ofSeconds(40);

  /** Ours. */
  public static final Duration QUIET = Duration.ofMinutes(2);

  private Room() {}

  /** What the room knows of the tablets, beside the facts. */
  public interface Tablets {
    /** When the tablet of a sitting was last heard. */
    Instant heard(Sitting sitting);

    /** Whether it said that it can't read aloud. */
    boolean noVoice(Sitting sitting);

    /** The part last changed in a child's work on a problem, if that was seen. */
    Optional<Part> changed(long child, long problem);
  }

  /** One problem of the day for one child. */
  private record Standing(int number, long problem, int tries, List<Part> asks, List<Sent> sent) {
    List<Sent> handIns() {
      return sent.stream().filter(item -> item.kind() == SentItem.Kind.HANDED_IN).toList();
    }

    Optional<Sent> newest() {
      return sent.stream().filter(item -> item.kind() != SentItem.Kind.HELP).reduce((first, second) -> second);
    }

    boolean handedIn() {
      return !handIns().isEmpty();
    }

    boolean changedSince() {
      return handedIn() && newest().orElseThrow().kind() == SentItem.Kind.DRAFT;
    }

    boolean askedToLookAgain() {
      return newest().filter(item -> item.kind() == SentItem.Kind.HANDED_IN && item.told()).isPresent();
    }

    boolean noTriesLeft() {
      return handIns().size() >= tries;
    }
  }

  /** The class in the order of the list. */
  public static List<Seat> seats(RoomFacts facts, Tablets tablets, Instant now) {
    Map<Long, List<Sent>> sent = by(facts.sent(), Sent::child);
    Map<Long, List<Sat>> sittings = by(facts.sittings(), sat -> sat.sitting().child().id());
    return facts.children().stream().map(child -> seat(facts, tablets, now, child,
        sent.getOrDefault(child.id(), List.of()), sittings.getOrDefault(child.id(), List.of()))).toList();
  }

  private static <T> Map<Long, List<T>> by(List<T> all, Function<T, Long> key) {
    Map<Long, List<T>> by = new HashMap<>();
    all.forEach(each -> by.computeIfAbsent(key.apply(each), none -> new ArrayList<>()).add(each));
    return by;
  }

  private static Seat seat(
      RoomFacts facts, Tablets tablets, Instant now, Child child, List<Sent> sent, List<Sat> sittings) {
    List<Sat> open = sittings.stream().filter(sat -> sat.sitting().open())
        .sorted(Comparator.comparing((Sat sat) -> tablets.heard(sat.sitting()))).toList();
    Sat on = open.isEmpty() ? null : open.get(open.size() - 1);
    int atOnce = (int) open.stream()
        .filter(sat -> heard(tablets.heard(sat.sitting()), now) != Heard.AWAY).count();
    List<Standing> standings = standings(facts, child, sent);
    Instant visited = facts.visited().getOrDefault(child.id(), Instant.MIN);
    boolean hand = sent.stream()
        .anyMatch(item -> item.kind() == SentItem.Kind.HELP && item.written().isAfter(visited));
    int handedIn = (int) standings.stream().filter(Standing::handedIn).count();
    Instant absent = facts.absent().get(child.id());
    boolean cameInSince = absent != null
        && sittings.stream().anyMatch(sat -> sat.sitting().startedAt().isAfter(absent));

    Found found;
    if (absent != null && !cameInSince) {
      found = Found.of(Status.AWAY, Why.MARKED_ABSENT);
    } else if (standings.isEmpty()) {
      found = Found.of(Status.WAITING, on == null && sittings.isEmpty() ? Why.NOT_COME_IN : Why.NO_PROBLEMS);
    } else if (on == null) {
      found = withoutTablet(standings, sittings, handedIn);
    } else {
      found = onTablet(facts, tablets, now, sent, standings, on.sitting(), visited, hand);
    }
    Heard heard = on == null ? Heard.NONE : heard(tablets.heard(on.sitting()), now);
    Part part = found.at == null ? null : part(child, tablets, found.at);
    return new Seat(child, found.status, found.why, found.at == null ? 0 : found.at.number, part, handedIn,
        standings.size(), found.since, on == null ? null : on.sitting().tabletName(), heard,
        Math.max(atOnce, on == null ? 0 : 1), on != null && on.newTablet(),
        on != null && tablets.noVoice(on.sitting()), hand && on != null,
        facts.late().getOrDefault(child.id(), List.of()).size());
  }

  private record Found(Status status, Why why, Standing at, Instant since) {
    static Found of(Status status, Why why) {
      return new Found(status, why, null, null);
    }
  }

  private static Found withoutTablet(List<Standing> standings, List<Sat> sittings, int handedIn) {
    if (handedIn == standings.size()) {
      return Found.of(Status.DONE, Why.ALL_HANDED_IN);
    }
    if (sittings.isEmpty()) {
      return Found.of(Status.WAITING, Why.NOT_COME_IN);
    }
    Instant left = sittings.stream().map(sat -> sat.sitting().endedAt()).max(Comparator.naturalOrder()).orElseThrow();
    return new Found(Status.WAITING, Why.LEFT_EARLY, null, left);
  }

  private static Found onTablet(RoomFacts facts, Tablets tablets, Instant now, List<Sent> sent,
      List<Standing> standings, Sitting sitting, Instant visited, boolean hand) {
    Standing last = last(standings).orElse(null);
    if (hand) {
      Sent raised = sent.stream().filter(item -> item.kind() == SentItem.Kind.HELP)
          .reduce((first, second) -> second).orElseThrow();
      Standing at = standings.stream().filter(each -> each.problem == raised.problem()).findFirst().orElse(last);
      return new Found(Status.STUCK, Why.ASKED_FOR_HELP, at, raised.written());
    }
    boolean looking = last != null && last.askedToLookAgain();
    Predicate<Standing> isOpen = each -> !each.handedIn() || each.changedSince()
        || each == last && looking && !each.noTriesLeft();
    boolean away = heard(tablets.heard(sitting), now) == Heard.AWAY;
    if (away && standings.stream().anyMatch(isOpen)) {
      return new Found(Status.WAITING, Why.NOT_HEARD, last, tablets.heard(sitting));
    }
    if (!away && looking && last.noTriesLeft() && last.newest().orElseThrow().written().isAfter(visited)) {
      return new Found(Status.STUCK, Why.NO_TRIES_LEFT, last, null);
    }
    if (standings.stream().noneMatch(isOpen)) {
      return Found.of(Status.DONE, Why.ALL_HANDED_IN);
    }
    Instant changed = latest(sitting.startedAt(), visited);
    for (Standing each : standings) {
      changed = latest(changed, each.newest().map(Sent::written).orElse(Instant.MIN));
    }
    if (facts.running(changed, now).compareTo(facts.stuckAfter()) >= 0) {
      return new Found(Status.STUCK, Why.NO_CHANGE, last, changed);
    }
    if (last == null) {
      return Found.of(Status.WORKING, Why.JUST_CAME_IN);
    }
    if (last.newest().orElseThrow().kind() == SentItem.Kind.DRAFT) {
      return new Found(Status.WORKING, Why.ON_A_PART, last, null);
    }
    return looking && !last.noTriesLeft()
        ? new Found(Status.WORKING, Why.LOOKING_AGAIN, last, null)
        : Found.of(Status.WORKING, Why.BETWEEN_PROBLEMS);
  }

  private static Instant latest(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  private static Heard heard(Instant at, Instant now) {
    Duration ago = Duration.between(at, now);
    return ago.compareTo(HERE) < 0 ? Heard.HERE : ago.compareTo(QUIET) < 0 ? Heard.QUIET : Heard.AWAY;
  }

  private static List<Standing> standings(RoomFacts facts, Child child, List<Sent> sent) {
    Map<Long, List<Sent>> byProblem = by(sent, Sent::problem);
    List<Standing> standings = new ArrayList<>();
    for (ProblemSet set : facts.setsOf(child.id())) {
      List<Part> asks = set.asks().stream().sorted().toList();
      for (AssignedProblem problem : set.problems()) {
        standings.add(new Standing(standings.size() + 1, problem.id(), set.tries(), asks,
            sentOn(facts, byProblem, problem.id())));
      }
    }
    return standings;
  }

  /** What was sent on a problem, or on the version of it that the child goes on with. */
  private static List<Sent> sentOn(RoomFacts facts, Map<Long, List<Sent>> byProblem, long problem) {
    Long version = problem;
    while (version != null && !byProblem.containsKey(version)) {
      version = facts.earlier().get(version);
    }
    return version == null ? List.of() : byProblem.get(version);
  }

  /** The problem whose work changed last. */
  private static Optional<Standing> last(List<Standing> standings) {
    return standings.stream().filter(each -> each.newest().isPresent())
        .max(Comparator.comparing(each -> each.newest().orElseThrow().written()));
  }

  /** The part that was seen changing; else the last one that has something in it; else the first. */
  private static Part part(Child child, Tablets tablets, Standing at) {
    return tablets.changed(child.id(), at.problem).orElseGet(() -> at.newest()
        .flatMap(item -> at.asks.stream().filter(part -> !blank(item.parts(), part)).reduce((first, second) -> second))
        .orElse(at.asks.isEmpty() ? null : at.asks.get(0)));
  }

  /** Whether nothing stands in a part. */
  public static boolean blank(Work work, Part part) {
    return switch (part) {
      case BARS -> work.bars() == null || work.bars().blank();
      case EQUATION -> empty(work.equation());
      case ANSWER -> empty(work.answer());
      case LABEL -> empty(work.label());
      case ESTIMATE -> empty(work.estimate());
      case STRATEGY -> work.strategy() == null || work.strategy().blank();
      case READING -> work.reading() == null || work.reading().blank();
    };
  }

  /** Whether nothing stands in any part. */
  public static boolean blank(Work work) {
    return java.util.Arrays.stream(Part.values()).allMatch(part -> blank(work, part));
  }

  private static boolean empty(String text) {
    return text == null || text.isBlank();
  }

  /** The part that differs between two snapshots of one work, the last in the order of parts where several do. */
  public static Optional<Part> changed(Work before, Work after) {
    BiFunction<Work, Part, Object> of = (work, part) -> switch (part) {
      case BARS -> work.bars();
      case EQUATION -> work.equation();
      case ANSWER -> work.answer();
      case LABEL -> work.label();
      case ESTIMATE -> work.estimate();
      case STRATEGY -> work.strategy();
      case READING -> work.reading();
    };
    Part changed = null;
    for (Part part : Part.values()) {
      Object was = before == null ? null : of.apply(before, part);
      Object is = of.apply(after, part);
      boolean both = java.util.Objects.equals(was, is) || blankOrNull(was) && blankOrNull(is);
      changed = both ? changed : part;
    }
    return Optional.ofNullable(changed);
  }

  private static boolean blankOrNull(Object value) {
    return value == null || value instanceof String text && text.isBlank()
        || value instanceof fewermore.marking.Bars bars && bars.blank()
        || value instanceof fewermore.marking.StrategyWork strategy && strategy.blank()
        || value instanceof fewermore.marking.Reading reading && reading.blank();
  }
}
