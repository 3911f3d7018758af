package fewermore.classroom;

/**
 * Two children the teacher keeps in one group, or never in one: a hard limit.
 *
 * @param one the lower id of the two
 */
public record SeatedPair(long one, long other, boolean together) {
  public SeatedPair {
    if (one > other) {
      long higher = one;
      one = other;
      other = higher;
    }
  }
}
