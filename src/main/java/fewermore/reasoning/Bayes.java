package fewermore.reasoning;

/** The arithmetic of chances, whatever they are chances of. */
final class Bayes {
  private Bayes() {}

  /** Scales to sum 1; at least one must be above 0. */
  static double[] scaled(double[] weights) {
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    double[] chances = new double[weights.length];
    for (int i = 0; i < weights.length; i++) {
      chances[i] = weights[i] / sum;
    }
    return chances;
  }

  /** Bayes' rule: after ∝ before × likelihood. */
  static double[] after(double[] before, double[] likelihood) {
    double[] after = new double[before.length];
    for (int i = 0; i < before.length; i++) {
      after[i] = before[i] * likelihood[i];
    }
    return scaled(after);
  }

  /** Shannon's entropy in bits. */
  static double entropy(double[] chances) {
    double bits = 0;
    for (double chance : chances) {
      bits -= chance > 0 ? chance * Math.log(chance) / Math.log(2) : 0;
    }
    return bits;
  }

  /**
   * The entropy now, less its mean after an outcome, in bits: from 0 up.
   *
   * @param outcomes the likelihood of each outcome by hypothesis; over all outcomes each hypothesis sums to 1
   */
  static double expectedInformation(double[] chances, Iterable<double[]> outcomes) {
    double left = 0;
    for (double[] likelihood : outcomes) {
      double of = 0;
      for (int i = 0; i < chances.length; i++) {
        of += chances[i] * likelihood[i];
      }
      left += of > 0 ? of * entropy(after(chances, likelihood)) : 0;
    }
    return Math.max(0, entropy(chances) - left);
  }
}
