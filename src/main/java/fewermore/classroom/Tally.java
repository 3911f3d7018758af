package fewermore.classroom;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;

/**
 * How often a child's work said something, of all the problems that could tell.
 *
 * @param so pieces of work that say so
 * @param against pieces of work that speak against
 * @param neither pieces of work in which an operation is written that speaks neither for nor against
 */
public record Tally(int so, int against, int neither) {
  /** Below this many problems that could tell, nothing is said. */
  public static final int ENOUGH = 3;

  public static final Tally NONE = new Tally(0, 0, 0);

  public static Tally of(Collection<Quote> quotes) {
    List<Quote> telling = quotes.stream().filter(quote -> quote.says().tells()).toList();
    return new Tally(count(telling, Says.SO), count(telling, Says.AGAINST), count(telling, Says.NEITHER));
  }

  /** Both together. */
  Tally plus(Tally other) {
    return new Tally(so + other.so, against + other.against, neither + other.neither);
  }

  private static int count(List<Quote> quotes, Says says) {
    return (int) quotes.stream().filter(quote -> quote.says() == says).count();
  }

  /** The problems that could tell. */
  public int of() {
    return so + against + neither;
  }

  /**
   * Whether the counts alone carry it: three problems or more, and three in five of them say so (of children said to
   * follow the cue word by that line, three in four did in a simulation; the line is ours).
   */
  public boolean holds() {
    return of() >= ENOUGH && so * 5 >= of() * 3;
  }

  /** For example {@code 10 of 11}. */
  public String words() {
    return so + " of " + of();
  }

  /** The day on which the latest of these was written; there must be one. */
  static LocalDate lastDay(Collection<Quote> quotes) {
    return quotes.stream().map(Quote::day).max(LocalDate::compareTo).orElseThrow();
  }
}
