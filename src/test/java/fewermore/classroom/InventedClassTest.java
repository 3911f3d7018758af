package fewermore.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.InventedClass.InventedChild;
import fewermore.classroom.InventedClass.InventedDay;
import fewermore.classroom.InventedClass.InventedSitting;
import fewermore.marking.EquationReason;
import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.Problem;
import fewermore.story.Kind;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class InventedClassTest {
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final LocalDate FRIDAY = LocalDate.of(2026, 11, 20);

  private static InventedClass made(long seed, int size) {
    return InventedClass.make(seed, size, FRIDAY, ZONE);
  }

  @Test
  void theSameSeedGivesTheSameClass() {
    assertEquals(made(7, 24), made(7, 24));
    assertNotEquals(made(7, 24), made(8, 24));
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 24, 36, 60, 120})
  void noTwoChildrenHaveOneNameOrOnePictureOnOneGround(int size) {
    List<InventedChild> children = made(3, size).children();
    assertEquals(size, children.stream().map(InventedChild::name).distinct().count());
    assertEquals(size, children.stream().map(child -> child.picture() + child.ground()).distinct().count());
    if (size <= Picture.ALL.size()) {
      assertEquals(size, children.stream().map(InventedChild::picture).distinct().count());
    }
    assertTrue(children.stream().allMatch(child -> Picture.GROUNDS.contains(child.ground())));
  }

  @Test
  void fewerThanFiveChildrenAreNoClass() {
    assertThrows(IllegalArgumentException.class, () -> made(1, InventedClass.FEWEST - 1));
  }

  @Test
  void threeSchoolWeeksHoldAllSixKindsAndEndOnTheLastSchoolDay() {
    InventedClass invented = InventedClass.make(5, 24, LocalDate.of(2026, 11, 22), ZONE);
    List<LocalDate> days = invented.days().stream().map(InventedDay::day).toList();
    assertEquals(FRIDAY, days.get(days.size() - 1), "a Sunday's last school day is the Friday before");
    assertEquals(LocalDate.of(2026, 11, 2), days.get(0));
    assertTrue(days.stream().noneMatch(day -> day.getDayOfWeek().compareTo(DayOfWeek.FRIDAY) > 0));
    Set<Kind> kinds = invented.days().stream().flatMap(day -> day.problems().stream()).map(Problem::kind)
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Kind.class)));
    assertEquals(EnumSet.allOf(Kind.class), kinds);
  }

  @Test
  void aTabletHasOneChildAtATimeAndEachChildsTriesFollowOneAnother() {
    for (InventedDay day : made(11, 30).days()) {
      for (int tablet = 0; tablet < 6; tablet++) {
        int which = tablet;
        List<InventedSitting> here = day.sittings().stream().filter(sitting -> sitting.tablet() == which)
            .sorted(java.util.Comparator.comparing(InventedSitting::from)).toList();
        for (int i = 1; i < here.size(); i++) {
          assertFalse(here.get(i).from().isBefore(here.get(i - 1).to()), day.day() + " tablet " + tablet);
        }
      }
      for (InventedSitting sitting : day.sittings()) {
        var before = sitting.from();
        for (var attempt : sitting.tries()) {
          assertTrue(attempt.at().isAfter(before));
          before = attempt.at();
          assertTrue(attempt.seq() >= 1 && attempt.seq() <= ProblemSet.USUAL_TRIES);
        }
      }
    }
  }

  @Test
  void noProblemHasAChildOfTheClassInIt() {
    InventedClass invented = made(13, 40);
    for (InventedDay day : invented.days()) {
      for (Problem problem : day.problems()) {
        String text = problem.english().sentences().toString();
        invented.children().forEach(child ->
            assertFalse(text.matches("(?s).*\\b" + child.name() + "\\b.*"), child.name() + " in " + text));
      }
    }
  }

  @Test
  void theSharesOfWaysAreMetAsNearlyAsWholeChildrenAllow() {
    for (int size : new int[] {5, 12, 24, 31, 100}) {
      var many = InventedClass.allocated(size);
      assertEquals(size, many.values().stream().mapToInt(Integer::intValue).sum());
      assertTrue(Math.abs(many.get(WayOfReasoning.FROM_THE_STORY) - .40 * size) < 1, "size " + size);
    }
  }

  @Test
  void followingTheWordAndReadingTheStoryHaveTheSameChancesWhereTheyAgree() {
    for (Kind kind : Kind.values()) {
      boolean same = PlanChances.of(WayOfReasoning.FROM_THE_STORY, kind)
          .equals(PlanChances.of(WayOfReasoning.BY_THE_CUE_WORD, kind));
      assertEquals(kind.agrees(), same, kind.id());
    }
  }

  @Test
  void plansAreDrawnAsOftenAsTheTableSays() {
    long seed = 20261120;
    Random random = new Random(seed);
    int cue = 0;
    for (int i = 0; i < 20_000; i++) {
      if (PlanChances.draw(WayOfReasoning.BY_THE_CUE_WORD, Kind.LARGER_FEWER, random) == Plan.TAKES_AWAY_LARGER_FIRST) {
        cue++;
      }
    }
    assertEquals(.80 / .98, cue / 20_000.0, .012, "seed " + seed);
  }

  @Test
  void aMisspellingIsOneSmallChangeWithinTheWord() {
    Random random = new Random(4);
    for (int i = 0; i < 500; i++) {
      String spelled = InventedChildWork.misspelled("buttons", random);
      assertTrue(Math.abs(spelled.length() - 7) <= 1, spelled);
      assertTrue(spelled.endsWith("s"), spelled);
    }
  }

  @Test
  void theMarkerFindsEverySortOfWorkInAClass() {
    InventedPieces class24 = new InventedPieces(made(24, 24));
    Set<EquationReason> reasons = class24.pieces.stream().map(piece -> piece.evidence().marks().equation().reason())
        .collect(Collectors.toSet());
    assertTrue(reasons.containsAll(Set.of(EquationReason.FITS, EquationReason.OPPOSITE_OPERATION,
        EquationReason.TURNED_ROUND, EquationReason.NUMBER_ONLY, EquationReason.BLANK)), reasons.toString());
    assertTrue(class24.pieces.size() > 24 * 30, class24.pieces.size() + " pieces");
    assertTrue(class24.pieces.stream().anyMatch(piece -> piece.tries() > 1));
    assertTrue(class24.pieces.stream().anyMatch(piece -> piece.evidence().marks().equation().cueLed()));
  }

  /** Of 24, five go by the word, one of whom reads the story at last; a few more or fewer may show it by chance. */
  @Test
  void findingsOfInventedClassesNameAboutAsManyChildrenAsGoByTheWord() {
    int named = 0;
    for (long seed = 1; seed <= 20; seed++) {
      InventedPieces made = new InventedPieces(made(seed, 24));
      Findings findings = Findings.of(made.children, made.pieces, FRIDAY);
      assertEquals(24, findings.statements().stream().mapToInt(finding -> finding.children().size()).sum());
      named += findings.statements().stream().filter(finding -> finding.topic().followsTheWord())
          .mapToInt(finding -> finding.children().size()).sum();
    }
    assertTrue(named >= 20 * 3 && named <= 20 * 7, named + " in 20 classes");
  }
}
