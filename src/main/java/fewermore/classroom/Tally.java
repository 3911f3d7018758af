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
 * @param days days with work that could tell
 */
public record Tally(int so, int against, int neither, int days) {
  /** Below this many problems that could tell, nothing is said. */
  public static final int ENOUGH = 3;

  /** From this many on, over two days, a statement may be clear. Ours. */
  public static final int ENOUGH_TO_BE_CLEAR = 4;

  public static final Tally NONE = new Tally(0, 0, 0, 0);

  public static Tally of(Collection<Quote> quotes) {
    List<Quote> telling = quotes.stream().filter(quote -> quote.says().tells()).toList();
    return new Tally(count(telling, Says.SO), count(telling, Says.AGAINST), count(telling, Says.NEITHER),
        (int) telling.stream().map(Quote::day).distinct().count());
  }

  private static int count(List<Quote> quotes, Says says) {
    return (int) quotes.stream().filter(quote -> quote.says() == says).count();
  }

  /** The problems that could tell. */
  public int of() {
    return so + against + neither;
  }

  /**
   * What the counts alone carry. <i>Looks as if</i>: three problems or more and three in five of them say so
   * (of children said to follow the cue word by that line, three in four did in a simulation; the line is
   * ours). <i>Clear</i>: four problems or more on at least two days, and four in five say so (ours).
   */
  public Strength strength() {
    if (of() < ENOUGH || so * 5 < of() * 3) {
      return Strength.TOO_EARLY;
    }
    boolean clear = of() >= ENOUGH_TO_BE_CLEAR && days >= 2 && so * 5 >= of() * 4;
    return clear ? Strength.CLEAR : Strength.LOOKS_AS_IF;
  }

  public boolean holds() {
    return strength() != Strength.TOO_EARLY;
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
