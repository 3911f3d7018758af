package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

class SignsTest {
  private static final EquationMark EQUATION_FITS = EquationMark.of(EquationReason.FITS);
  private static final EquationMark EQUATION_TURNED = EquationMark.of(EquationReason.TURNED_ROUND);
  private static final AnswerMark RIGHT = AnswerMark.of(AnswerVerdict.RIGHT);
  private static final AnswerMark WRONG = AnswerMark.of(AnswerVerdict.OTHER);

  @Test
  void workThatFitsSaysSoInEveryPart() {
    assertEquals(Map.of(Part.BARS, Sign.FITS, Part.EQUATION, Sign.FITS, Part.ANSWER, Sign.FITS, Part.LABEL, Sign.FITS),
        Signs.of(new Marks(EQUATION_FITS, RIGHT, LabelVerdict.NAMES_IT, BarsVerdict.FITS, null), false));
  }

  @Test
  void onlyTheFirstOfBarsEquationAndAnswerSaysLookAgain() {
    assertEquals(Map.of(Part.BARS, Sign.LOOK_AGAIN, Part.EQUATION, Sign.THERE, Part.ANSWER, Sign.THERE,
        Part.LABEL, Sign.FITS),
        Signs.of(new Marks(EQUATION_FITS, WRONG, LabelVerdict.NAMES_IT, BarsVerdict.INCOMPLETE, null), false));
    assertEquals(Map.of(Part.BARS, Sign.FITS, Part.EQUATION, Sign.LOOK_AGAIN, Part.ANSWER, Sign.THERE),
        Signs.of(new Marks(EQUATION_TURNED, RIGHT, null, BarsVerdict.FITS, null), false));
  }

  @Test
  void theLabelIsToldByItself() {
    assertEquals(Map.of(Part.BARS, Sign.LOOK_AGAIN, Part.ANSWER, Sign.THERE, Part.LABEL, Sign.LOOK_AGAIN),
        Signs.of(new Marks(null, RIGHT, LabelVerdict.TOO_GENERAL, BarsVerdict.BLANK, null), false));
  }

  @Test
  void anEquationThatFitsWithAWrongNumberOrInAChainFits() {
    EquationMark chain = new EquationMark(EquationReason.FITS, null, true, false, true, true, null, null);
    assertEquals(Map.of(Part.EQUATION, Sign.FITS, Part.ANSWER, Sign.LOOK_AGAIN),
        Signs.of(new Marks(chain, WRONG, null, null, null), false));
  }

  @Test
  void theEstimateSpeaksLast() {
    assertEquals(Map.of(Part.ANSWER, Sign.LOOK_AGAIN, Part.ESTIMATE, Sign.THERE),
        Signs.of(new Marks(null, WRONG, null, null, EstimateVerdict.FAR_OFF), false));
    assertEquals(Map.of(Part.ANSWER, Sign.FITS, Part.ESTIMATE, Sign.LOOK_AGAIN),
        Signs.of(new Marks(null, RIGHT, null, null, EstimateVerdict.FAR_OFF), false));
  }

  @Test
  void toldLaterEveryPartIsJustThere() {
    Marks marks = new Marks(EQUATION_TURNED, RIGHT, LabelVerdict.A_PERSON, BarsVerdict.FITS, EstimateVerdict.FITS);
    Map<Part, Sign> signs = Signs.of(marks, true);
    assertEquals(5, signs.size());
    assertTrue(signs.values().stream().allMatch(sign -> sign == Sign.THERE), signs::toString);
  }

  @Test
  void neverMoreThanTwoPartsSayLookAgain() {
    for (BarsVerdict bars : BarsVerdict.values()) {
      for (EquationReason reason : EquationReason.values()) {
        for (AnswerVerdict answer : AnswerVerdict.values()) {
          for (LabelVerdict label : LabelVerdict.values()) {
            for (EstimateVerdict estimate : EstimateVerdict.values()) {
              Marks marks = new Marks(EquationMark.of(reason), AnswerMark.of(answer), label, bars, estimate);
              long lookAgain = Signs.of(marks, false).values().stream().filter(sign -> sign == Sign.LOOK_AGAIN).count();
              assertTrue(lookAgain <= 2, marks::toString);
            }
          }
        }
      }
    }
  }
}
