package fewermore.reasoning;

import fewermore.prediction.WayOfReasoning;
import java.util.Arrays;

/** How likely each way of reasoning is: from 0 to 1 each, 1 together. Never changes. */
public final class Ways {
  static final WayOfReasoning[] ALL = WayOfReasoning.values();

  private final double[] chances;

  /** Takes the array as its own. */
  private Ways(double[] chances) {
    this.chances = chances;
  }

  /** Scales these to sum 1. */
  static Ways scaled(double[] weights) {
    return new Ways(Bayes.scaled(weights));
  }

  /** Before any work was seen. */
  public static Ways start(ReasoningTable table) {
    double[] shares = new double[ALL.length];
    for (WayOfReasoning way : ALL) {
      shares[way.ordinal()] = table.share(way);
    }
    return scaled(shares);
  }

  public double of(WayOfReasoning way) {
    return chances[way.ordinal()];
  }

  double at(int way) {
    return chances[way];
  }

  /** The likeliest way; of two as likely, the first in the order of {@link WayOfReasoning}. */
  public WayOfReasoning top() {
    return ALL[highest(-1)];
  }

  /** The likeliest but one. */
  public WayOfReasoning next() {
    return ALL[highest(highest(-1))];
  }

  private int highest(int except) {
    int highest = -1;
    for (int way = 0; way < chances.length; way++) {
      if (way != except && (highest < 0 || chances[way] > chances[highest])) {
        highest = way;
      }
    }
    return highest;
  }

  /** Bayes' rule: chances after one more piece of work. */
  Ways after(Evidence evidence, ReasoningTable table) {
    double[] likelihood = new double[chances.length];
    for (int way = 0; way < likelihood.length; way++) {
      likelihood[way] = evidence.weights().likelihood(table.row(evidence.kind(), way), table.floor());
    }
    return new Ways(Bayes.after(chances, likelihood));
  }

  /** The step between two days with work: some of the children come with a way drawn afresh. */
  Ways nextDay(ReasoningTable table) {
    double afresh = table.drawnAfresh();
    double[] next = new double[chances.length];
    for (int way = 0; way < next.length; way++) {
      next[way] = (1 - afresh) * chances[way] + afresh * table.share(ALL[way]);
    }
    return scaled(next);
  }

  /** Shannon's entropy in bits, from 0 to log2 7. */
  public double entropy() {
    return Bayes.entropy(chances);
  }

  /** What an outcome with these likelihoods by way is expected to tell, in bits. */
  double expectedInformation(Iterable<double[]> outcomes) {
    return Bayes.expectedInformation(chances, outcomes);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Ways that && Arrays.equals(chances, that.chances);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(chances);
  }

  @Override
  public String toString() {
    return Arrays.toString(chances);
  }
}
