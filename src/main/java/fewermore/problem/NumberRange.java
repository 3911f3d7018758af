package fewermore.problem;

import java.util.Optional;

/**
 * How large a problem's numbers are. All three quantities stay within the limit; the larger amount is above half of
 * it, so that "within 100" is not met with 12 and 7 (ours). The smaller amount and the difference have a least value,
 * below which there is nothing to work out.
 */
public enum NumberRange {
  WITHIN_20(20, 3),
  WITHIN_50(50, 6),
  WITHIN_100(100, 6);

  private final int limit;
  private final int least;

  NumberRange(int limit, int least) {
    this.limit = limit;
    this.least = least;
  }

  /** The largest number, included. */
  public int limit() {
    return limit;
  }

  /** The smallest amount or difference, included. */
  public int least() {
    return least;
  }

  /** For example {@code within-100}. */
  public String id() {
    return "within-" + limit;
  }

  public static Optional<NumberRange> of(String id) {
    for (NumberRange range : values()) {
      if (range.id().equals(id)) {
        return Optional.of(range);
      }
    }
    return Optional.empty();
  }
}
