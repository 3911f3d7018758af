package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import org.junit.jupiter.api.Test;
import org.matheclipse.core.eval.ExprEvaluator;

/**
 * A computer algebra library as judge: Symja (org.matheclipse) solves each line, and no line with an unknown
 * sign may fit whose solution is not the story's answer.
 */
class EquationAlgebraTest {
  private static final long SEED = 31_415;
  private static final int EQUATIONS = 10_000;

  @Test
  void noEquationFitsWhoseSolutionIsNotTheAnswer() {
    RandomEquations random = new RandomEquations(SEED);
    ExprEvaluator symja = new ExprEvaluator(true, (short) 0);
    int fitting = 0;
    int solvedRightWithoutFitting = 0;
    int done = 0;
    while (done < EQUATIONS) {
      Comparison story = random.story();
      String line = random.line(story);
      if (line.indexOf('x') < 0 || line.indexOf('x') != line.lastIndexOf('x') || line.split("=").length != 2
          || line.strip().endsWith("=")) {
        continue;
      }
      done++;
      String solution = symja.eval("Solve(" + line.replace("=", "==") + ", x)").toString();
      String answer = "{{x->" + story.answer() + "}}";
      boolean fits = EquationMarker.mark(story, line).fits();
      if (fits) {
        fitting++;
        assertEquals(answer, solution, () -> "seed " + SEED + ": " + line + " for " + story);
      } else if (answer.equals(solution)) {
        solvedRightWithoutFitting++;
      }
    }
    assertTrue(fitting >= 1000, "too few fit to tell: " + fitting);
    assertTrue(solvedRightWithoutFitting >= 5, "a right solution is not enough: " + solvedRightWithoutFitting);
  }

  @Test
  void aSolvedFormIsNotTrueExactlyWhenTheLibrarySaysFalse() {
    RandomEquations random = new RandomEquations(SEED + 1);
    ExprEvaluator symja = new ExprEvaluator(true, (short) 0);
    int wrong = 0;
    int done = 0;
    while (done < 2_000) {
      Comparison story = random.story();
      String line = random.line(story);
      EquationMark mark = EquationMarker.mark(story, line);
      if (mark.solvedForm() && !mark.equalsChain() && line.split("=").length == 2) {
        done++;
        boolean isTrue = symja.eval(line.replace("=", "==")).isTrue();
        assertEquals(isTrue, !mark.notTrue(), () -> "seed " + (SEED + 1) + ": " + line + " for " + story);
        wrong += isTrue ? 0 : 1;
      }
    }
    assertTrue(wrong >= 200, "too few are wrong to tell: " + wrong);
  }
}
