package fewermore.reasoning;

/**
 * Where a share may lie, given how often it was seen: Wilson (1927), J. American Statistical Association 22:209-212
 * (formula from memory), at 95 %.
 *
 * @param low from 0
 * @param high to 1
 */
public record Interval(double low, double high) {
  /** The normal quantile of .975. */
  private static final double Z = 1.959963984540054;

  /** @param seen times of {@code of}; with {@code of} 0 nothing is known: 0 to 1 */
  public static Interval wilson(int seen, int of) {
    if (seen < 0 || of < seen) {
      throw new IllegalArgumentException(seen + " of " + of);
    }
    if (of == 0) {
      return new Interval(0, 1);
    }
    double share = (double) seen / of;
    double z2 = Z * Z;
    double center = (share + z2 / (2 * of)) / (1 + z2 / of);
    double half = Z * Math.sqrt(share * (1 - share) / of + z2 / (4.0 * of * of)) / (1 + z2 / of);
    return new Interval(Math.max(0, center - half), Math.min(1, center + half));
  }
}
