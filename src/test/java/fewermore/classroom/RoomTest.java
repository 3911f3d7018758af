package fewermore.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.RoomFacts.Pause;
import fewermore.classroom.RoomFacts.Sat;
import fewermore.classroom.RoomFacts.Sent;
import fewermore.classroom.Seat.Heard;
import fewermore.classroom.Seat.Status;
import fewermore.classroom.Seat.Why;
import fewermore.marking.Part;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Who is working, stuck, waiting, done or away; minutes after ten o'clock. */
class RoomTest {
  private static final Instant TEN = Instant.parse("2026-11-25T16:00:00Z");
  private static final Child CHILD = new Child(1, 1, "Noor", "shell", "sea", "en");
  private static final Work LINE = new Work("52 - 14", "", "", null, null);

  private final List<Sat> sittings = new ArrayList<>();
  private final List<Sent> sent = new ArrayList<>();
  private final Map<Long, Instant> absent = new HashMap<>();
  private final Map<Long, Instant> visited = new HashMap<>();
  private final List<Pause> pauses = new ArrayList<>();
  private final Map<String, Instant> heard = new HashMap<>();
  private final Map<Long, Part> changed = new HashMap<>();
  private boolean given = true;

  private static Instant at(double minutes) {
    return TEN.plusMillis(Math.round(minutes * 60_000));
  }

  private RoomTest in(String id, double from, Double until) {
    sittings.add(new Sat(new Sitting(id, CHILD, "t-" + id, "Otter", at(from), until == null ? null : at(until)), false));
    return this;
  }

  private RoomTest heard(String id, double minute) {
    heard.put(id, at(minute));
    return this;
  }

  private RoomTest sends(long problem, SentItem.Kind kind, double minute, boolean told) {
    sent.add(new Sent(1, problem, "w" + problem, "p", sent.size() + 1, kind, kind == SentItem.Kind.HELP
        ? Work.NOT_ASKED : LINE, at(minute), told, false, "a"));
    return this;
  }

  private RoomTest draft(long problem, double minute) {
    return sends(problem, SentItem.Kind.DRAFT, minute, false);
  }

  private RoomTest handIn(long problem, double minute, boolean lookAgain) {
    return sends(problem, SentItem.Kind.HANDED_IN, minute, lookAgain);
  }

  private Seat seat(double now) {
    List<AssignedProblem> problems = List.of(problem(1), problem(2));
    List<ProblemSet> sets = given ? List.of(new ProblemSet(1, 1, LocalDate.of(2026, 11, 25), true, 3, false,
        ProblemSet.USUAL_PARTS, problems)) : List.of();
    RoomFacts facts = new RoomFacts(List.of(CHILD), sets, sittings, sent, Map.of(), absent, visited, pauses,
        RoomFacts.USUAL_STUCK_AFTER);
    return Room.seats(facts, new Room.Tablets() {
      @Override
      public Instant heard(Sitting sitting) {
        return heard.getOrDefault(sitting.id(), sitting.startedAt());
      }

      @Override
      public boolean noVoice(Sitting sitting) {
        return false;
      }

      @Override
      public Optional<Part> changed(long child, long problem) {
        return Optional.ofNullable(changed.get(problem));
      }
    }, at(now)).get(0);
  }

  private static AssignedProblem problem(long id) {
    return new AssignedProblem(id, new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null,
        List.of(), new Relation(52, 38, 14), Role.SMALLER, Wording.FEWER, List.of()), "shells", id,
        List.of("Tomas has 52 shells."), List.of());
  }

  private static void is(Status status, Why why, Seat seat) {
    assertEquals(status + " " + why, seat.status() + " " + seat.why());
  }

  @Test
  void whoHasNotComeInWaits() {
    is(Status.WAITING, Why.NOT_COME_IN, seat(5));
    given = false;
    in("a", 0, null).heard("a", 5);
    is(Status.WAITING, Why.NO_PROBLEMS, seat(5));
  }

  @Test
  void aChildWorksWhileSomethingChangesAndIsStuckAfterFourMinutesWithoutAChange() {
    in("a", 0, null).heard("a", 1);
    is(Status.WORKING, Why.JUST_CAME_IN, seat(1));
    draft(2, 2).heard("a", 5.9);
    Seat seat = seat(5.99);
    is(Status.WORKING, Why.ON_A_PART, seat);
    assertEquals(2, seat.problem());
    assertEquals(Part.EQUATION, seat.part());
    is(Status.STUCK, Why.NO_CHANGE, seat(6));
    changed.put(2L, Part.LABEL);
    assertEquals(Part.LABEL, seat(5).part(), "the part that was seen changing");
  }

  @Test
  void minutesOfAPauseDoNotCount() {
    in("a", 0, null).draft(1, 2).heard("a", 9);
    pauses.add(new Pause(at(3), at(5)));
    is(Status.WORKING, Why.ON_A_PART, seat(7.9));
    is(Status.STUCK, Why.NO_CHANGE, seat(8));
    pauses.add(new Pause(at(7), null));
    is(Status.WORKING, Why.ON_A_PART, seat(9));
  }

  @Test
  void aRaisedHandStaysUpUntilTheTeacherHasBeen() {
    in("a", 0, null).draft(1, 1).sends(1, SentItem.Kind.HELP, 2, false).heard("a", 8);
    Seat seat = seat(2.1);
    is(Status.STUCK, Why.ASKED_FOR_HELP, seat);
    assertTrue(seat.hand());
    draft(1, 3);
    is(Status.STUCK, Why.ASKED_FOR_HELP, seat(3));
    visited.put(1L, at(4));
    is(Status.WORKING, Why.ON_A_PART, seat(7.9));
    is(Status.STUCK, Why.NO_CHANGE, seat(8));
    sends(1, SentItem.Kind.HELP, 5, false);
    is(Status.STUCK, Why.ASKED_FOR_HELP, seat(5.1));
  }

  @Test
  void aHandRaisedBeforeTheVisitAndArrivedAfterItIsLowered() {
    in("a", 0, null).draft(1, 1).heard("a", 4);
    visited.put(1L, at(3));
    sends(1, SentItem.Kind.HELP, 2, false);
    assertFalse(seat(4).hand());
  }

  @Test
  void aChildWithoutTriesIsStuckUntilSheGoesOnOrTheTeacherHasBeen() {
    in("a", 0, null).handIn(1, 1, true).handIn(1, 2, true).heard("a", 5);
    is(Status.WORKING, Why.LOOKING_AGAIN, seat(2.5));
    handIn(1, 3, true);
    is(Status.STUCK, Why.NO_TRIES_LEFT, seat(3.5));
    draft(2, 4);
    is(Status.WORKING, Why.ON_A_PART, seat(4.5));
    sent.remove(sent.size() - 1);
    visited.put(1L, at(4));
    is(Status.WORKING, Why.BETWEEN_PROBLEMS, seat(4.5));
  }

  @Test
  void ofATabletThatIsNotHeardNothingIsSaidButThat() {
    in("a", 0, null).draft(1, 1).heard("a", 1);
    assertEquals(Heard.HERE, seat(1 + 39 / 60.0).heard());
    Seat quiet = seat(1 + 40 / 60.0);
    assertEquals(Heard.QUIET, quiet.heard());
    is(Status.WORKING, Why.ON_A_PART, quiet);
    Seat away = seat(3);
    assertEquals(Heard.AWAY, away.heard());
    is(Status.WAITING, Why.NOT_HEARD, away);
    assertEquals(at(1), away.since());
    is(Status.WAITING, Why.NOT_HEARD, seat(9));
    handIn(1, 1, false).handIn(2, 1, false);
    is(Status.DONE, Why.ALL_HANDED_IN, seat(9));
  }

  @Test
  void doneIsWhoHandedInAllAndWhoLeftEarlierWaits() {
    in("a", 0, null).handIn(1, 1, false).heard("a", 4);
    is(Status.WORKING, Why.BETWEEN_PROBLEMS, seat(1));
    handIn(2, 2, false);
    is(Status.DONE, Why.ALL_HANDED_IN, seat(2));
    draft(1, 3);
    is(Status.WORKING, Why.ON_A_PART, seat(3));
    sittings.clear();
    in("a", 0, 3.5);
    is(Status.DONE, Why.ALL_HANDED_IN, seat(4));
    sent.removeIf(item -> item.problem() == 2);
    Seat left = seat(4);
    is(Status.WAITING, Why.LEFT_EARLY, left);
    assertEquals(1, left.handedIn());
  }

  @Test
  void awayIsWhoWasMarkedAbsentUntilSheComesIn() {
    absent.put(1L, at(1));
    is(Status.AWAY, Why.MARKED_ABSENT, seat(2));
    in("a", 3, null).heard("a", 3);
    is(Status.WORKING, Why.JUST_CAME_IN, seat(3));
    absent.put(1L, at(4));
    is(Status.AWAY, Why.MARKED_ABSENT, seat(4));
  }

  @Test
  void aChildOnTwoTabletsIsFlaggedWhileBothAreHeard() {
    in("a", 0, null).in("b", 1, null).heard("a", 2).heard("b", 2);
    assertEquals(2, seat(2).tablets());
    heard("b", 5);
    assertEquals(1, seat(5).tablets());
  }

  @Test
  void theChangedPartIsFoundBetweenTwoSnapshots() {
    Work before = new Work("52 - 14 = x", "", "", null, null);
    assertEquals(Optional.of(Part.ANSWER), Room.changed(before, new Work("52 - 14 = x", "3", "", null, null)));
    assertEquals(Optional.empty(), Room.changed(before, new Work("52 - 14 = x", null, "", null, null)));
    assertEquals(Optional.of(Part.EQUATION), Room.changed(before, new Work("52 + 14 = x", "", "", null, null)));
    assertEquals(Duration.ofMinutes(4), RoomFacts.USUAL_STUCK_AFTER);
  }
}
