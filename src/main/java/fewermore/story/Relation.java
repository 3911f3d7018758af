package fewermore.story;

/**
 * One additive relation: {@code total = firstPart + secondPart}. A comparison reads it as larger,
 * smaller, difference; <i>add to</i>, <i>take from</i> and <i>put together</i> problems are the same
 * relation read otherwise, and a two-step problem is two of them sharing a quantity.
 */
public record Relation(int total, int firstPart, int secondPart) {
  public Relation {
    if (firstPart < 0 || secondPart < 0 || total != firstPart + secondPart) {
      throw new IllegalArgumentException(total + " = " + firstPart + " + " + secondPart);
    }
  }
}
