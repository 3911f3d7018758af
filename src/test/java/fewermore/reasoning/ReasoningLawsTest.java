package fewermore.reasoning;

import static fewermore.reasoning.Made.MONDAY;
import static fewermore.reasoning.Made.TABLE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberRange;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.story.Persons;
import fewermore.story.Thing;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The laws of the estimate, on seeded work; those about whole simulated classes are in {@link SimulatedClassTest}. */
class ReasoningLawsTest {
  private static final int ROUNDS = 300;
  private static final double SAME = 1e-9;

  private static Ways after(Ways ways, List<Evidence> evidence) {
    for (Evidence each : evidence) {
      ways = ways.after(each, TABLE);
    }
    return ways;
  }

  private static void assertSame(Ways expected, Ways found, String seed) {
    for (WayOfReasoning way : WayOfReasoning.values()) {
      assertEquals(expected.of(way), found.of(way), SAME, way.id() + ", " + seed);
    }
  }

  @Test
  void theWaysSumToOneAfterAnyWorkBlanksAndNonsenseIncluded() {
    for (int seed = 0; seed < ROUNDS; seed++) {
      Random random = new Random(seed);
      List<Evidence> evidence = new ArrayList<>();
      for (int day = 0; day < 6; day++) {
        evidence.addAll(Made.anyEvidence(MONDAY.plusDays(day), 1 + random.nextInt(9), random));
      }
      for (Estimate.Day day : Estimate.of(evidence, TABLE).days()) {
        double sum = 0;
        for (WayOfReasoning way : WayOfReasoning.values()) {
          double chance = day.after().of(way);
          assertTrue(chance >= 0 && chance <= 1, "seed " + seed + ": " + chance);
          sum += chance;
        }
        assertEquals(1, sum, SAME, "seed " + seed);
      }
    }
  }

  @Test
  void agreeingWorkLeavesStoryAndCueWordExactlyWhereTheyStood() {
    double start = TABLE.share(WayOfReasoning.FROM_THE_STORY) / TABLE.share(WayOfReasoning.BY_THE_CUE_WORD);
    int seen = 0;
    for (int seed = 0; seed < 3 * ROUNDS; seed++) {
      Random random = new Random(seed);
      SimulatedChild stories = new SimulatedChild(TABLE, random);
      Ways ways = Ways.start(TABLE);
      for (int i = 0; i < 8; i++) {
        Kind kind = Kind.values()[random.nextInt(6)];
        Comparison story = stories.story(kind);
        Optional<Evidence> evidence = Made.evidence(MONDAY, story, Made.anyWork(story, random));
        if (kind.agrees() && evidence.isPresent()) {
          ways = ways.after(evidence.get(), TABLE);
          seen++;
        }
      }
      assertEquals(start, ways.of(WayOfReasoning.FROM_THE_STORY) / ways.of(WayOfReasoning.BY_THE_CUE_WORD), SAME,
          "seed " + seed);
    }
    assertTrue(seen > 1_000);
  }

  @Test
  void theOrderOfTheWorkWithinADayDoesNotMatter() {
    for (int seed = 0; seed < ROUNDS; seed++) {
      Random random = new Random(seed);
      List<Evidence> evidence = Made.anyEvidence(MONDAY, 8, random);
      Ways one = Estimate.of(evidence, TABLE).ways();
      List<Evidence> shuffled = new ArrayList<>(evidence);
      Collections.shuffle(shuffled, random);
      assertSame(one, Estimate.of(shuffled, TABLE).ways(), "seed " + seed);
    }
  }

  @Test
  void noWorkOrALabelMovesNothing() {
    Comparison story = Made.story(Kind.LARGER_FEWER);
    Work label = new Work(null, null, "shells", null, null);
    assertTrue(Made.evidence(MONDAY, story, label).isEmpty());
    assertTrue(Made.evidence(MONDAY, story, Work.NOT_ASKED).isEmpty());
    Estimate before = Estimate.of(Made.anyEvidence(MONDAY, 4, new Random(1)), TABLE);
    assertEquals(before.ways(), Estimate.of(before.evidence(), TABLE).ways());
    // The same equation with any label.
    for (String written : List.of("shells", "", "Ines", "plain shells")) {
      Work work = new Work("62 − 28 = □", "34", written, null, null);
      assertEquals(Made.evidence(MONDAY, story, work), Made.evidence(MONDAY, story, new Work("62 − 28 = □", "34", null, null, null)));
    }
  }

  @Test
  void renamingAndOtherSignsForTheUnknownAndMinusMoveNothing() {
    Random random = new Random(4);
    int seen = 0;
    for (Kind kind : Kind.values()) {
      Comparison story = Made.story(kind);
      Comparison renamed = new Comparison(new Persons("Ana", "Bo"), new Thing("pear", "pears"),
          new Thing("fig", "figs"), List.of(), story.amounts(), story.unknown(), story.wording(), List.of());
      for (int i = 0; i < 100; i++) {
        Work work = Made.anyWork(story, random);
        if (work.equation() == null) {
          continue;
        }
        Optional<Evidence> expected = Made.evidence(MONDAY, story, work);
        assertEquals(expected, Made.evidence(MONDAY, renamed, work));
        for (String unknown : List.of("x", "_", "□", "?", "N", "____")) {
          for (String minus : List.of("-", "−", "–")) {
            Work other = new Work(work.equation().replace("□", unknown).replace("−", minus), work.answer(), null, null, null);
            assertEquals(expected, Made.evidence(MONDAY, story, other), work.equation() + " as " + other.equation());
            seen++;
          }
        }
      }
    }
    assertTrue(seen > 3_000);
  }

  @Test
  void aWaysOwnPredictionNeverLowersItAgainstAWayThatPredictsOtherwise() {
    int seen = 0;
    for (Kind kind : Kind.values()) {
      for (WayOfReasoning way : WayOfReasoning.values()) {
        if (way == WayOfReasoning.NO_STEADY_WAY) {
          continue;
        }
        Evidence own = Made.predicted(MONDAY, way, kind);
        String written = way.predict(Made.story(kind)).orElseThrow().equation();
        for (WayOfReasoning other : WayOfReasoning.values()) {
          boolean otherwise = other.predict(Made.story(kind)).map(each -> !each.equation().equals(written)).orElse(true);
          if (otherwise) {
            assertTrue(Estimate.ratio(TABLE, own, way, other) >= 1,
                () -> kind + ": " + written + " lowers " + way + " against " + other);
            seen++;
          }
        }
      }
    }
    assertTrue(seen > 100);
  }

  @Test
  void aRightAnswerBesideTheWrongOperationIsReadAsTheOperation() {
    for (Kind kind : Kind.values()) {
      WayOfReasoning way = kind.operation() == Operation.ADD
          ? WayOfReasoning.ALWAYS_TAKES_AWAY : WayOfReasoning.ALWAYS_ADDS;
      String equation = way.predict(Made.story(kind)).orElseThrow().equation();
      int right = Made.story(kind).answer();
      assertEquals(Made.evidence(MONDAY, kind, equation, ""), Made.evidence(MONDAY, kind, equation, "" + right));
    }
  }

  @Test
  void theStepBetweenDaysIsTakenOnceBeforeEachDayWithWorkHoweverFarApart() {
    Evidence first = Made.predicted(MONDAY, WayOfReasoning.BY_THE_CUE_WORD, Kind.LARGER_FEWER);
    for (int later : List.of(1, 3, 90)) {
      Evidence second = Made.predicted(MONDAY.plusDays(later), WayOfReasoning.BY_THE_CUE_WORD, Kind.SMALLER_MORE);
      Ways expected = Ways.start(TABLE).after(first, TABLE).nextDay(TABLE).after(second, TABLE);
      assertSame(expected, Estimate.of(List.of(first, second), TABLE).ways(), later + " days");
    }
    // With no telling work it moves toward the starting shares.
    Ways cue = after(Ways.start(TABLE), List.of(first, first, first));
    Ways start = Ways.start(TABLE);
    Ways next = cue.nextDay(TABLE);
    for (WayOfReasoning way : WayOfReasoning.values()) {
      assertEquals(.8 * cue.of(way) + .2 * start.of(way), next.of(way), SAME);
      assertTrue(Math.abs(next.of(way) - start.of(way)) <= Math.abs(cue.of(way) - start.of(way)) + SAME);
    }
  }

  @Test
  void expectedInformationIsNeverBelowZeroAndZeroBetweenWaysWhoseRowsAreEqual() {
    double[] two = new double[WayOfReasoning.values().length];
    two[WayOfReasoning.FROM_THE_STORY.ordinal()] = .5;
    two[WayOfReasoning.BY_THE_CUE_WORD.ordinal()] = .5;
    Ways storyOrCue = Ways.scaled(two);
    for (NextProblem.Candidate each : NextProblem.candidates(NumberRange.WITHIN_100)) {
      for (boolean equation : new boolean[] {true, false}) {
        double bits = NextProblem.bits(storyOrCue, each, equation, TABLE);
        if (each.kind().agrees()) {
          assertEquals(0, bits, SAME, each.kind() + " between story and cue word");
        } else {
          assertTrue(bits > .1, each.kind() + ": " + bits);
        }
        for (int seed = 0; seed < 20; seed++) {
          Ways ways = Estimate.of(Made.anyEvidence(MONDAY, 3, new Random(seed)), TABLE).ways();
          double any = NextProblem.bits(ways, each, equation, TABLE);
          assertTrue(any >= 0 && any <= ways.entropy() + SAME, "seed " + seed);
        }
      }
    }
  }

  @Test
  void theEstimateIsTheSumOverAllPaths() {
    for (int seed = 0; seed < 25; seed++) {
      Random random = new Random(seed);
      List<Evidence> evidence = new ArrayList<>();
      int days = 1 + random.nextInt(4);
      for (int day = 0; day < days; day++) {
        evidence.addAll(Made.anyEvidence(MONDAY.plusDays(3L * day), 1 + random.nextInt(4), random));
      }
      Estimate estimate = Estimate.of(evidence, TABLE);
      SlowEstimate slow = new SlowEstimate(evidence, TABLE);
      List<Ways> smoothed = estimate.smoothed();
      for (int day = 0; day < days; day++) {
        LocalDate until = estimate.days().get(day).day();
        SlowEstimate asOf = new SlowEstimate(
            evidence.stream().filter(each -> !each.day().isAfter(until)).toList(), TABLE);
        for (WayOfReasoning way : WayOfReasoning.values()) {
          assertEquals(asOf.on(day).get(way), estimate.days().get(day).after().of(way), SAME, "filtered, seed " + seed);
          assertEquals(slow.on(day).get(way), smoothed.get(day).of(way), SAME, "smoothed, seed " + seed);
        }
      }
    }
  }

  @Test
  void workingItOutAnewFromRawWorkIsWorkingItOutPieceByPiece() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      List<Evidence> evidence = new ArrayList<>();
      for (int day = 0; day < 20; day++) {
        evidence.addAll(Made.anyEvidence(MONDAY.plusDays(day), 1 + random.nextInt(6), random));
      }
      Estimate anew = Estimate.of(evidence, TABLE);
      Estimate pieceByPiece = Estimate.none(TABLE);
      for (Evidence each : evidence) {
        pieceByPiece = pieceByPiece.with(each);
      }
      assertEquals(anew.days(), pieceByPiece.days(), "seed " + seed);
      // A piece that comes days late is put where it belongs.
      List<Evidence> without = new ArrayList<>(evidence);
      Evidence late = without.remove(random.nextInt(evidence.size() - 6));
      Estimate withLate = Estimate.of(without, TABLE).with(late);
      for (int day = 0; day < anew.days().size(); day++) {
        for (WayOfReasoning way : WayOfReasoning.values()) {
          assertEquals(anew.days().get(day).after().of(way), withLate.days().get(day).after().of(way), 1e-12);
        }
      }
    }
  }
}
