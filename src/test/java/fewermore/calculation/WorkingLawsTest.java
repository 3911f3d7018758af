package fewermore.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.Step.CrossOut;
import fewermore.calculation.Step.Put;
import fewermore.calculation.Step.Row;
import fewermore.calculation.Step.Trade;
import fewermore.calculation.Working.Verdict;
import fewermore.story.Operation;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What holds of any steps a child can make. */
class WorkingLawsTest {
  private static final long SEED = StepSamples.SEED;

  @Test
  void takingAStepBackGivesTheVeryStateBefore() {
    Random random = new Random(SEED);
    for (Working working : StepSamples.anyWorkings(3000)) {
      Working on = working.then(StepSamples.any(working.kind(), random));
      assertEquals(working, on.undone(), () -> "seed " + SEED);
      assertEquals(working.state(), on.undone().state(), () -> "seed " + SEED);
    }
  }

  @Test
  void theSameStepsGiveTheSameStatesAgain() {
    for (Working working : StepSamples.anyWorkings(2000)) {
      Working again = new Working(working.kind(), working.calculation(), List.copyOf(working.steps()));
      assertEquals(working.moves(), again.moves(), () -> "seed " + SEED);
      assertEquals(working.judge(), again.judge(), () -> "seed " + SEED);
    }
  }

  @Test
  void aStepThatCannotBeDoneChangesNothing() {
    int met = 0;
    for (Working working : StepSamples.anyWorkings(3000)) {
      State before = working.kind().start(working.calculation());
      for (State.Moved moved : working.moves()) {
        if (moved.check() == State.Check.NOT_POSSIBLE) {
          met++;
          assertEquals(before, moved.state(), () -> "seed " + SEED);
        }
        before = moved.state();
      }
    }
    assertTrue(met > 500, "too few were tried: " + met);
  }

  @Test
  void tradingKeepsTheNumberAndTradingBackKeepsThePieces() {
    Random random = new Random(SEED);
    for (int at = 0; at < 2000; at++) {
      Mat mat = (Mat) Working.begin(StrategyKind.PIECES, StepSamples.anyCalculation(random))
          .then(new Put(1, Piece.HUNDRED, 1 + random.nextInt(1))).then(new Put(1, Piece.TEN, 1 + random.nextInt(15)))
          .then(new Put(1, Piece.ONE, 1 + random.nextInt(15))).state();
      Trade trade = random.nextBoolean() ? new Trade(Piece.TEN, Piece.ONE) : new Trade(Piece.HUNDRED, Piece.TEN);
      Mat after = (Mat) mat.after(trade).state();
      assertEquals(mat.first().value(), after.first().value());
      Mat back = (Mat) after.after(new Trade(trade.get(), trade.give())).state();
      assertEquals(mat.first(), back.first());
    }
  }

  /** Laying out and crossing out different pieces, the two rows, the two places: in any order the same. */
  @Test
  void stepsThatDoNotTouchEachOtherGiveTheSameInEitherOrder() {
    Calculation calculation = new Calculation(62, Operation.SUBTRACT, 28);
    Step[][] pairs = {
      {new Put(1, Piece.TEN, 6), new Put(1, Piece.ONE, 12)},
      {new Put(2, Piece.TEN, 2), new Put(1, Piece.ONE, 2)},
      {new Step.Break(Row.FIRST, 62, 50, 12), new Step.Break(Row.SECOND, 28, 20, 8)},
    };
    StrategyKind[] kinds = {StrategyKind.PIECES, StrategyKind.PIECES, StrategyKind.EXPANDED};
    for (int at = 0; at < pairs.length; at++) {
      Working begun = Working.begin(kinds[at], calculation);
      assertEquals(begun.then(pairs[at][0]).then(pairs[at][1]).state(),
          begun.then(pairs[at][1]).then(pairs[at][0]).state());
    }
    Working laid = Working.begin(StrategyKind.PIECES, calculation).then(pairs[0][0]).then(pairs[0][1]);
    assertEquals(laid.then(new CrossOut(Piece.ONE, 8)).then(new CrossOut(Piece.TEN, 2)).state(),
        laid.then(new CrossOut(Piece.TEN, 2)).then(new CrossOut(Piece.ONE, 8)).state());
    Working broken = Working.begin(StrategyKind.EXPANDED, calculation).then(pairs[2][0]).then(pairs[2][1]);
    Step tens = new Step.Combine(Step.Place.TENS, 30);
    Step ones = new Step.Combine(Step.Place.ONES, 4);
    assertEquals(broken.then(tens).then(ones).state(), broken.then(ones).then(tens).state());
  }

  @Test
  void judgingNeverThrowsAndAnUnfinishedStartIsNoFault() {
    for (Working working : StepSamples.anyWorkings(6000)) {
      assertTrue(working.judge().firstWrong() < working.steps().size());
    }
    WorkedSolutionsTest.everyCalculation(calculation -> {
      for (WorkedSolution solution : WorkedSolutions.of(calculation)) {
        Working part = solution.working().undone();
        while (!part.steps().isEmpty()) {
          Verdict verdict = part.judge().verdict();
          assertFalse(verdict == Verdict.SLIP || verdict == Verdict.OTHER_CALCULATION,
              solution.way() + " " + calculation.text() + " after " + part.steps() + part.judge());
          part = part.undone();
        }
        assertEquals(Verdict.BLANK, part.judge().verdict());
      }
    });
  }

  @Test
  void twoStrategiesAgreeWhenTheyComeToTheSameNumber() {
    Calculation calculation = new Calculation(52, Operation.SUBTRACT, 14);
    Working one = WorkedSolutions.of(calculation, Way.TRADE_FIRST).orElseThrow().working();
    Working other = WorkedSolutions.of(calculation, Way.COUNT_UP).orElseThrow().working();
    assertTrue(Working.agree(one, other));
    assertFalse(Working.agree(one, other.undone().then(new Step.Write(39))));
    assertFalse(Working.agree(one, Working.begin(StrategyKind.LINE, calculation)));
  }

  @Test
  void anAdditionServesEitherOrderAndAnotherCalculationServesNone() {
    Calculation sum = new Calculation(28, Operation.ADD, 34);
    WorkedSolutions.of(new Calculation(34, Operation.ADD, 28)).forEach(solution -> assertEquals(Verdict.FITS,
        new Working(solution.way().kind(), sum, solution.working().steps()).judge().verdict(), solution.way().id()));
    Calculation other = new Calculation(71, Operation.SUBTRACT, 35);
    WorkedSolutions.of(new Calculation(34, Operation.ADD, 28)).forEach(solution -> assertFalse(Verdict.FITS
        == new Working(solution.way().kind(), other, solution.working().steps()).judge().verdict()));
  }
}
