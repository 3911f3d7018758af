package fewermore.reasoning;

import fewermore.prediction.Plan;
import java.util.Arrays;

/**
 * How well a piece of work fits each plan: the chance of just this work, given the plan, up to one factor for all of
 * them. None below 0. Every weight the same says nothing.
 */
public final class PlanWeights {
  private static final int PLANS = Plan.values().length;

  private final double[] weights;

  private PlanWeights(double[] weights) {
    this.weights = weights;
  }

  static Builder of(Plan plan, double weight) {
    return new Builder().and(plan, weight);
  }

  static Builder all(double weight) {
    Builder builder = new Builder();
    Arrays.fill(builder.weights, weight);
    return builder;
  }

  public double of(Plan plan) {
    return weights[plan.ordinal()];
  }

  /** The chance of this work for a child who takes the plans with these chances. */
  double likelihood(double[] row, double floor) {
    double sum = 0;
    for (int plan = 0; plan < PLANS; plan++) {
      sum += row[plan] * weights[plan];
    }
    return Math.max(sum, floor);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PlanWeights that && Arrays.equals(weights, that.weights);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(weights);
  }

  @Override
  public String toString() {
    return Arrays.toString(weights);
  }

  static final class Builder {
    private final double[] weights = new double[PLANS];

    Builder and(Plan plan, double weight) {
      weights[plan.ordinal()] = weight;
      return this;
    }

    PlanWeights made() {
      return new PlanWeights(weights);
    }
  }
}
