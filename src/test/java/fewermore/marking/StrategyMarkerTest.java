package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.Calculation;
import fewermore.calculation.SlipRule;
import fewermore.calculation.Step;
import fewermore.calculation.Step.Jump;
import fewermore.calculation.Step.Start;
import fewermore.calculation.Step.Write;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Way;
import fewermore.calculation.WorkedSolutions;
import fewermore.calculation.Working.Verdict;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A strategy is held against the child's own equation; slips in it are named from its steps. */
class StrategyMarkerTest {
  private static final Comparison STORY = SpecFile.story("Theo 52, Mara ?, 14 fewer; shell/shells");

  private static StrategyWork line(Step... steps) {
    return new StrategyWork(StrategyKind.LINE, List.of(steps), null);
  }

  private static StrategyMark mark(String equation, StrategyWork work) {
    return StrategyMarker.mark(STORY, equation, work);
  }

  @Test
  void stepsThatDoTheChildsOwnEquationFitEvenWhereTheEquationDoesNot() {
    assertEquals(Verdict.FITS, mark("52 + 14 = x", line(new Start(52), new Jump(10, 62), new Jump(4, 66))).verdict());
    assertEquals(Verdict.SLIP, mark("52 − 14 = x", line(new Start(52), new Jump(10, 62), new Jump(4, 66))).verdict());
    assertEquals(List.of(SlipRule.ADDED_INSTEAD),
        mark("52 − 14 = x", line(new Start(52), new Jump(10, 62), new Jump(4, 66))).slips());
  }

  @Test
  void anAddUpToServesASubtractionAndAMissingAddend() {
    StrategyWork up = line(new Start(14), new Jump(6, 20), new Jump(30, 50), new Jump(2, 52));
    assertEquals(Way.COUNT_UP, mark("14 + x = 52", up).way());
    assertEquals(Verdict.FITS, mark("14 + x = 52", up).verdict());
    assertEquals(Verdict.FITS, mark("52 − 14 = x", up).verdict());
    assertEquals(Verdict.FITS, mark("", up).verdict());
    assertEquals(Verdict.FITS, mark(null, up).verdict());
    assertEquals(Verdict.FITS, mark("14 − 52 = x", up).verdict());
  }

  @Test
  void everyWayServesTheEquationItWasMadeForAndIsBlankOrUnfinishedBefore() {
    Calculation calculation = new Calculation(52, Operation.SUBTRACT, 14);
    WorkedSolutions.of(calculation).forEach(solution -> {
      StrategyWork work = new StrategyWork(solution.way().kind(), solution.working().steps(), null);
      assertEquals(Verdict.FITS, mark("52 − 14 = x", work).verdict(), solution.way().id());
    });
    assertEquals(Verdict.BLANK, mark("52 − 14 = x", StrategyWork.EMPTY).verdict());
    assertEquals(Verdict.UNFINISHED, mark("52 − 14 = x", line(new Start(52), new Jump(-10, 42))).verdict());
    assertEquals(Verdict.OTHER_CALCULATION, mark("52 − 14 = x", line(new Start(52), new Jump(-10, 45))).verdict());
  }

  @Test
  void aSecondStrategyAgreesOrDiffers() {
    StrategyWork back = line(new Start(52), new Jump(-14, 38));
    StrategyWork up = line(new Start(14), new Jump(38, 52));
    assertEquals(true, mark("", new StrategyWork(StrategyKind.LINE, back.steps(), up)).agrees());
    assertEquals(false, mark("", new StrategyWork(StrategyKind.LINE, back.steps(),
        line(new Start(14), new Jump(39, 52)))).agrees());
    assertEquals(null, mark("", back).agrees());
  }

  @Test
  void everyVerdictHasOneSentenceForTheTeacherThatSaysWhatWasDone() {
    Map<Verdict, StrategyWork> works = Map.of(Verdict.BLANK, StrategyWork.EMPTY,
        Verdict.FITS, line(new Start(52), new Jump(-2, 50), new Jump(-12, 38)),
        Verdict.SLIP, line(new Start(52), new Jump(-10, 42), new Jump(-4, 39)),
        Verdict.OTHER_CALCULATION, line(new Start(52), new Jump(-14, 30), new Write(30)),
        Verdict.UNFINISHED, line(new Start(52)));
    List<String> said = new ArrayList<>();
    for (Verdict verdict : Verdict.values()) {
      Work work = new Work("52 − 14 = x", null, null, null, null, works.get(verdict));
      Marks marks = Marker.mark(STORY, work);
      assertEquals(verdict, marks.strategy().verdict());
      String remark = Remarks.of(STORY, work, marks).get(Part.STRATEGY);
      assertTrue(remark.endsWith(".") && !remark.contains("{"), remark);
      said.add(remark);
    }
    assertEquals("Works 52 − 14 out on the number line and comes to 39; the steps show that the child counted the "
        + "starting number when counting back.", said.get(Verdict.SLIP.ordinal()));
    assertEquals(5, said.stream().distinct().count());
  }

  @Test
  void aNumberBeyondAHundredIsNotJudged() {
    Comparison large = SpecFile.story("Theo 520, Mara ?, 140 fewer; shell/shells");
    assertEquals(Verdict.OTHER_CALCULATION,
        StrategyMarker.mark(large, "", line(new Start(520), new Jump(-140, 380))).verdict());
    assertFalse(StrategyMarker.calculation(large, "").isPresent());
  }
}
