package fewermore.reasoning;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.stat.inference.GTest;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures computed for this project from small tables of their own, fed to the same arithmetic as the app's. They are
 * no published results; the formulas are Bayes' rule, Shannon's entropy and Wilson's interval.
 */
@DisplayName("Check figures (computed for this project)")
class CheckFiguresTest {
  // Understands, keyword, relational number, other; slips of .15 over twenty likely numbers.
  private static final double[] PRIOR = {.55, .15, .10, .20};
  private static final double SLIPS = .15;
  private static final double EACH_SLIP = 1.0 / 20;
  private static final double[] REVERSAL = answerOf(1);
  private static final double[] RIGHT = answerOf(0);

  private static double[] answerOf(int hypothesis) {
    double[] likelihood = new double[4];
    for (int i = 0; i < 3; i++) {
      likelihood[i] = SLIPS * EACH_SLIP + (i == hypothesis ? 1 - SLIPS : 0);
    }
    likelihood[3] = EACH_SLIP;
    return likelihood;
  }

  @Test
  void theWorkedPosteriorsComeOut() {
    double[] one = Bayes.after(PRIOR, REVERSAL);
    double[] two = Bayes.after(one, REVERSAL);
    assertArrayEquals(new double[] {.03, .90, .005, .07}, one, .005);
    assertArrayEquals(new double[] {.000, .995, .000, .005}, two, .001);
    assertArrayEquals(new double[] {.71, .19, .001, .10}, Bayes.after(one, RIGHT), .005);
    assertArrayEquals(new double[] {.03, .94, .000, .03}, Bayes.after(two, RIGHT), .006);
  }

  @ParameterizedTest
  @CsvSource({"SU-M,akdk,1.06", "DU-M,akdk,1.06", "BU-F,akda,.96", "SU-F,aadk,.81", "DU-F,aadk,.81", "BU-M,aada,.36"})
  void theWorkedInformationComesOut(String kind, String answers, double bits) {
    // Understands, keyword, relational number, adds: a the right answer, k the reversal, d the difference. The likely
    // numbers are seventeen here: so many give all six figures to two decimals; twenty give .01 more each.
    int numbers = 17;
    double[] prior = {.50, .25, .10, .15};
    List<double[]> outcomes = new ArrayList<>();
    for (int number = 0; number < numbers; number++) {
      String written = number < 3 ? "akd".substring(number, number + 1) : "";
      double[] likelihood = new double[4];
      for (int i = 0; i < 4; i++) {
        likelihood[i] = SLIPS / numbers + (answers.substring(i, i + 1).equals(written) ? 1 - SLIPS : 0);
      }
      outcomes.add(likelihood);
    }
    assertEquals(bits, Bayes.expectedInformation(prior, outcomes), .006, kind);
  }

  @ParameterizedTest
  @CsvSource({"3,3,.44,1.00", "3,5,.23,.88", "5,5,.57,1.00", "8,10,.49,.94", "5,24,.09,.40", "12,24,.31,.69", "18,24,.55,.88"})
  void wilsonsIntervalsComeOutAndAsCommonsMathHasThem(int seen, int of, double low, double high) {
    Interval interval = Interval.wilson(seen, of);
    assertEquals(low, interval.low(), .0051);
    assertEquals(high, interval.high(), .0051);
    var library = new WilsonScoreInterval().createInterval(of, seen, .95);
    assertEquals(library.getLowerBound(), interval.low(), 1e-9);
    assertEquals(library.getUpperBound(), interval.high(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({".05,.007,.001", ".10,.028,.009", ".20,.104,.058"})
  void aFalsePatternIsAsRareAsTheBinomialSays(double slip, double twoOfThree, double threeOfFive) {
    assertEquals(twoOfThree, 1 - new BinomialDistribution(null, 3, slip).cumulativeProbability(1), .0005);
    assertEquals(threeOfFive, 1 - new BinomialDistribution(null, 5, slip).cumulativeProbability(2), .0005);
  }

  @Test
  void expectedInformationIsTheMutualInformationBehindTheGTest() {

    long[] counts = {40, 20, 8, 6, 8, 6, 12};
    double[] chances = Bayes.scaled(Arrays.stream(counts).asDoubleStream().toArray());
    double difference = new GTest().gDataSetsComparison(
        new long[] {40, 20, 8, 6, 8, 6, 12}, new long[] {20, 40, 8, 6, 8, 12, 6});
    // G = 2 N ln 2 · I(row; column): the information that a child's row gives about her class.
    double[] other = Bayes.scaled(new double[] {20, 40, 8, 6, 8, 12, 6});
    List<double[]> columns = new ArrayList<>();
    for (int i = 0; i < chances.length; i++) {
      columns.add(new double[] {chances[i], other[i]});
    }
    double bits = Bayes.expectedInformation(new double[] {.5, .5}, columns);
    assertEquals(difference / (2 * 200 * Math.log(2)), bits, 1e-9);
    assertTrue(bits > .01);
  }
}
