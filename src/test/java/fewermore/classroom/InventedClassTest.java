package fewermore.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.InventedClass.Day;
import fewermore.classroom.InventedClass.Sent;
import fewermore.classroom.InventedClass.Visit;
import fewermore.marking.EquationReason;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.Problem;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.wording.ChildNames;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

class InventedClassTest {
  private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");
  private static final Instant TEN_IN_THE_MORNING = Instant.parse("2026-11-25T16:00:00Z");
  private static final List<Long> SEEDS = List.of(1L, 9L, 20L, -3L);

  /** A first try or a later one, with the marks the app would give it. */
  private record Read(InventedChild child, WayOfReasoning way, Day day, Problem problem, Sent sent, Marks marks) {}

  private static final Map<Long, InventedClass> MADE = new HashMap<>();

  private static InventedClass usual(long seed) {
    return MADE.computeIfAbsent(seed, InventedClassTest::made);
  }

  private static InventedClass made(long seed) {
    return InventedClass.of(InventedClass.USUAL, TEN_IN_THE_MORNING, CHICAGO, seed);
  }

  /** The hand-ins of each child on each problem, in order. */
  private static List<List<Read>> pieces(InventedClass invented) {
    List<List<Read>> pieces = new ArrayList<>();
    for (int at = 0; at < invented.days().size(); at++) {
      Day day = invented.days().get(at);
      for (Visit visit : day.visits()) {
        Map<Integer, List<Read>> byProblem = new HashMap<>();
        InventedChild child = invented.children().get(visit.child());
        for (Sent sent : visit.sent()) {
          Problem problem = day.problems().get(sent.problem());
          if (sent.kind() == SentItem.Kind.HANDED_IN) {
            byProblem.computeIfAbsent(sent.problem(), none -> new ArrayList<>()).add(new Read(child,
                child.ways().get(at), day, problem, sent, Marker.mark(problem.story(), sent.parts())));
          }
        }
        pieces.addAll(byProblem.values());
      }
    }
    return pieces;
  }

  private static List<Read> firsts(InventedClass invented) {
    return pieces(invented).stream().map(tries -> tries.get(0)).toList();
  }

  private static double share(List<Read> of, Predicate<Read> such) {
    assertFalse(of.isEmpty());
    return (double) of.stream().filter(such).count() / of.size();
  }

  @Test
  void theSameSeedMakesTheSameClassAndAnotherSeedAnother() {
    assertEquals(usual(9), made(9));
    assertNotEquals(usual(9), usual(20));
  }

  @Test
  void childrenAreToldApartByNameAndPictureInAClassOfAnySize() {
    for (int size : new int[] {InventedClass.FEWEST, InventedClass.USUAL, 39, InventedClass.MOST}) {
      InventedClass invented = InventedClass.of(size, TEN_IN_THE_MORNING, CHICAGO, size);
      Set<String> names = new HashSet<>();
      Set<Picture> pictures = new HashSet<>();
      Set<String> drawings = new HashSet<>();
      for (InventedChild child : invented.children()) {
        names.add(child.name().toLowerCase(java.util.Locale.ROOT));
        pictures.add(child.picture());
        drawings.add(child.picture().id());
        assertTrue(Picture.GROUNDS.contains(child.picture().ground()), child.picture().toString());
      }
      assertEquals(size, names.size());
      assertEquals(size, pictures.size());
      assertEquals(Math.min(size, Picture.ALL.size()), drawings.size());
    }
  }

  @Test
  void noNameOfTheClassKeepsANameOutOfTheProblems() {
    assertEquals(InventedClass.MOST, InventedNames.ALL.stream().distinct().count());
    Set<String> drawn = new HashSet<>();
    var random = new java.util.Random(1);
    for (int i = 0; i < 1_500; i++) {
      drawn.add(ChildNames.one(random, InventedNames.ALL, Set.of()).orElseThrow().english());
    }
    assertEquals(ChildNames.all().size(), drawn.size(), "names that sound like one of the class are kept out");
  }

  @Test
  void onTheLastWholeDayAStrategyIsAskedInAllWorkAndTheRulesReadMostAsFitting() {
    for (long seed : SEEDS) {
      InventedClass invented = usual(seed);
      Map<Boolean, Integer> fits = new HashMap<>();
      for (int at = 0; at < invented.days().size(); at++) {
        Day day = invented.days().get(at);
        boolean asked = at == invented.days().size() - 2;
        for (Visit visit : day.visits()) {
          for (Sent sent : visit.sent()) {
            assertEquals(asked, sent.parts().strategy() != null, "day " + at);
            if (asked && !sent.parts().strategy().blank()) {
              Marks marks = Marker.mark(day.problems().get(sent.problem()).story(), sent.parts());
              fits.merge(marks.strategy().fits(), 1, Integer::sum);
            }
          }
        }
      }
      assertTrue(fits.get(true) > 2 * fits.get(false) && fits.get(false) >= 3, "seed " + seed + " " + fits);
    }
  }

  @Test
  void aFewReadSpanish() {
    long spanish = usual(1).children().stream().filter(child -> child.language().equals("es")).count();
    assertTrue(spanish >= 2 && spanish <= 6, "read Spanish: " + spanish);
  }

  @Test
  void everyWayOfReasoningOccursAmongTwentyFour() {
    for (long seed : SEEDS) {
      Set<WayOfReasoning> ways = EnumSet.noneOf(WayOfReasoning.class);
      usual(seed).children().forEach(child -> ways.add(child.ways().get(0)));
      assertEquals(EnumSet.allOf(WayOfReasoning.class), ways, "seed " + seed);
    }
  }

  @Test
  void mostChildrenKeepTheirWayAndAFewChangeIt() {
    for (long seed : SEEDS) {
      long changed = usual(seed).children().stream().filter(child -> Set.copyOf(child.ways()).size() > 1).count();
      assertTrue(changed >= 1 && changed <= 4, "seed " + seed + ": changed " + changed);
    }
  }

  @Test
  void allSixKindsAreAskedInTwoDaysRunning() {
    List<Day> days = usual(1).days();
    for (int day = 1; day < days.size(); day++) {
      Set<Kind> kinds = EnumSet.noneOf(Kind.class);
      days.get(day - 1).problems().forEach(problem -> kinds.add(problem.kind()));
      days.get(day).problems().forEach(problem -> kinds.add(problem.kind()));
      assertEquals(EnumSet.allOf(Kind.class), kinds);
    }
  }

  @Test
  void threeWeeksOfWeekdaysLeadUpToTodayWhateverDayAndHourItIs() {
    List<String> zones = List.of("America/Chicago", "Pacific/Honolulu", "Asia/Kolkata");
    for (int day = 1; day <= 7; day++) {
      for (String hour : List.of("00:00:00", "00:00:07", "07:10:00", "09:25:00", "15:00:00", "23:59:59")) {
        ZoneId where = ZoneId.of(zones.get(day % zones.size()));
        LocalDate today = LocalDate.of(2026, 11, day);
        Instant now = today.atTime(LocalTime.parse(hour)).atZone(where).toInstant();
        check(InventedClass.of(6, now, where, day), today, now, where, where + " " + today + " " + hour);
      }
    }
  }

  private static void check(InventedClass invented, LocalDate today, Instant now, ZoneId zone, String when) {
    List<Day> days = invented.days();
    assertEquals(InventedClass.DAYS_BEFORE + 1, days.size(), when);
    assertEquals(today, days.get(InventedClass.DAYS_BEFORE).date(), when);
    for (int at = 0; at < days.size(); at++) {
      Day day = days.get(at);
      boolean before = at < InventedClass.DAYS_BEFORE;
      if (before) {
        assertTrue(day.date().isBefore(days.get(at + 1).date()), when);
        assertTrue(EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY).contains(day.date().getDayOfWeek()), when);
      }
      assertEquals(day.date(), day.givenAt().atZone(zone).toLocalDate(), when);
      for (Visit visit : day.visits()) {
        Instant last = visit.from();
        assertFalse(last.isBefore(day.givenAt()), when);
        for (Sent sent : visit.sent()) {
          assertFalse(sent.at().isBefore(last), when);
          last = sent.at();
          LocalTime time = last.atZone(zone).toLocalTime();
          assertTrue(!before || time.isAfter(LocalTime.of(8, 30)) && time.isBefore(LocalTime.NOON), when + " " + time);
        }
        assertEquals(day.date(), last.atZone(zone).toLocalDate(), when);
        assertFalse(last.isAfter(now) || visit.to() != null && (visit.to().isBefore(last) || visit.to().isAfter(now)),
            when);
      }
    }
  }

  @Test
  void todayOnlyPartOfTheClassHasHandedInAndSomeAreStillAtWork() {
    Day today = usual(9).days().get(InventedClass.DAYS_BEFORE);
    int in = today.visits().size();
    assertTrue(in >= 12 && in < InventedClass.USUAL, "in: " + in);
    long there = today.visits().stream().filter(visit -> visit.to() == null).count();
    assertTrue(there >= 3, "still there: " + there);
    for (Visit visit : today.visits()) {
      long drafts = visit.sent().stream().filter(sent -> sent.kind() == SentItem.Kind.DRAFT).count();
      assertEquals(visit.to() == null ? 1 : 0, drafts, "a draft is what a child is still at");
    }
  }

  @Test
  void someAreAbsentOnSomeDaysAndTwoHaveTooLittleWorkToTell() {
    InventedClass invented = usual(9);
    int came = invented.days().subList(0, InventedClass.DAYS_BEFORE).stream()
        .mapToInt(day -> day.visits().size()).sum();
    int all = InventedClass.DAYS_BEFORE * InventedClass.USUAL;
    assertTrue(came > all * 3 / 4 && came < all, "came: " + came);
    Map<String, Integer> pieces = new HashMap<>();
    firsts(invented).forEach(read -> pieces.merge(read.child.name(), 1, Integer::sum));
    assertEquals(InventedClass.USUAL, pieces.size(), "everybody handed something in");
    assertEquals(2, pieces.values().stream().filter(count -> count < Tally.ENOUGH).count());
  }

  @Test
  void aTryAfterTheFirstFollowsAPromptAndThereAreAtMostThree() {
    int again = 0;
    for (List<Read> tries : pieces(usual(9))) {
      assertTrue(tries.size() <= ProblemSet.USUAL_TRIES);
      for (int at = 1; at < tries.size(); at++) {
        assertTrue(Signs.of(tries.get(at - 1).marks, false).containsValue(Sign.LOOK_AGAIN));
        assertNotEquals(tries.get(at - 1).sent.parts(), tries.get(at).sent.parts());
        again++;
      }
    }
    assertTrue(again > 50, "tries after a prompt: " + again);
  }

  @Test
  void whatIsWrittenIsAsMixedAsARealClass() {
    for (long seed : SEEDS) {
      List<Read> firsts = firsts(usual(seed));
      assertTrue(firsts.size() > 1_000, "seed " + seed + ": " + firsts.size());
      double fits = share(firsts, read -> read.marks.equation().fits());
      assertTrue(fits > .35 && fits < .80, "seed " + seed + ": equations that fit " + fits);
      double named = share(firsts, read -> read.marks.label() == LabelVerdict.NAMES_IT);
      assertTrue(named > .70 && named < .98, "seed " + seed + ": labels that name it " + named);
      double unreadable = share(firsts, read -> read.marks.equation().reason() == EquationReason.UNREADABLE);
      assertEquals(0, unreadable, "seed " + seed);
      for (EquationReason reason : List.of(EquationReason.BLANK, EquationReason.NO_EQUALS, EquationReason.NUMBER_ONLY,
          EquationReason.TURNED_ROUND, EquationReason.OPPOSITE_OPERATION)) {
        assertTrue(share(firsts, read -> read.marks.equation().reason() == reason) > 0, "seed " + seed + ": " + reason);
      }
      for (LabelVerdict verdict : List.of(LabelVerdict.BLANK, LabelVerdict.TOO_GENERAL, LabelVerdict.NOT_RECOGNISED)) {
        assertTrue(share(firsts, read -> read.marks.label() == verdict) > 0, "seed " + seed + ": " + verdict);
      }
      assertTrue(share(firsts, read -> !read.marks.answer().slips().isEmpty()) > .02, "seed " + seed + ": slips");
      assertTrue(share(firsts, read -> read.marks.equation().equalsChain()) > 0, "seed " + seed + ": chains");
      for (String signs : List.of(".*□.*", ".*[x?_n].*", ".*−.*", ".*[-–].*", ".*\\d[+−–-].*")) {
        assertTrue(share(firsts, read -> read.sent.parts().equation().matches(signs)) > 0,
            "seed " + seed + ": " + signs);
      }
    }
  }

  @Test
  void eachWayShowsInTheMarksOfTheWork() {
    for (long seed : SEEDS) {
      List<Read> firsts = firsts(usual(seed));
      Predicate<Read> fits = read -> read.marks.equation().fits();
      assertTrue(share(of(firsts, WayOfReasoning.FROM_THE_STORY, kind -> !kind.agrees()), fits) > .70, "seed " + seed);
      assertTrue(share(of(firsts, WayOfReasoning.BY_THE_CUE_WORD, kind -> !kind.agrees()), fits) < .40, "seed " + seed);
      assertTrue(share(of(firsts, WayOfReasoning.BY_THE_CUE_WORD, Kind::agrees), fits) > .80, "seed " + seed);
      Predicate<Kind> subtracts = kind -> kind.operation() == Operation.SUBTRACT;
      assertTrue(share(of(firsts, WayOfReasoning.ALWAYS_ADDS, subtracts),
          read -> read.marks.equation().reason() == EquationReason.OPPOSITE_OPERATION) > .70, "seed " + seed);
      assertTrue(share(of(firsts, WayOfReasoning.ALWAYS_TAKES_AWAY, kind -> kind.operation() == Operation.ADD),
          read -> read.marks.equation().reason() == EquationReason.OPPOSITE_OPERATION) > .60, "seed " + seed);
      assertTrue(share(of(firsts, WayOfReasoning.TURNS_SUBTRACTION_ROUND, subtracts),
          read -> read.marks.equation().reason() == EquationReason.TURNED_ROUND) > .50, "seed " + seed);
      assertTrue(share(of(firsts, WayOfReasoning.TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT,
          kind -> kind.unknown() != fewermore.story.Role.DIFFERENCE),
          read -> read.marks.answer().repeats() != null) > .50, "seed " + seed);
    }
  }

  private static List<Read> of(List<Read> all, WayOfReasoning way, Predicate<Kind> kinds) {
    return all.stream().filter(read -> read.way == way && kinds.test(read.problem.kind())).toList();
  }

  @Test
  void theStartingSharesGiveEveryChildOneWay() {
    for (int size = 1; size <= InventedClass.MOST; size++) {
      assertEquals(size, StartingShares.of(size).size());
    }
  }

  @Test
  void aClassOfAnotherSizeThanAClassHasIsRefused() {
    for (int size : new int[] {0, 4, 61, -1}) {
      assertThrows(IllegalArgumentException.class, () -> InventedClass.of(size, TEN_IN_THE_MORNING, CHICAGO, 1));
    }
  }
}
