package fewermore.prediction;

/**
 * What one way of reasoning would most plainly write: the solution form, not the only one.
 *
 * @param equation with {@code □} for the unknown, for example {@code 52 − 14 = □}
 * @param answer the number that follows when no slip of calculation is made
 */
public record Prediction(WayOfReasoning way, Plan plan, String equation, int answer) {
  /** The sign for the unknown, U+25A1. */
  public static final String UNKNOWN = "□";
}
