package fewermore.reasoning;

import fewermore.prediction.WayOfReasoning;
import java.time.LocalDate;

/**
 * What may be said as of a day about the way a child reasons.
 *
 * @param asOf the last day with work
 * @param way what is said; null while it is too early
 * @param was for {@link Strength#CHANGED} what was said before, on the day {@code wasOn}; else null
 * @param early why it is too early; null when something is said
 * @param problems pieces of work in all
 * @param telling of these, how many could tell the likeliest way from the next, on {@code tellingDays} days
 */
public record Statement(
    LocalDate asOf, Strength strength, WayOfReasoning way, WayOfReasoning was, LocalDate wasOn, Early early,
    int problems, int telling, int tellingDays) {

  /** Why nothing can be said yet. */
  public enum Early {
    /** No work that can be read for a way. */
    NO_WORK,
    /** Only problems whose word agrees with the story: they can't tell reading the story from following the word. */
    ONLY_AGREEING,
    /** No way is likely enough. */
    NO_WAY_LIKELY_ENOUGH,
    /** One is, but fewer than two problems could tell it from the next. */
    TOO_FEW_THAT_TELL,
    /** The last two problems of the day both say another way: the child may be changing. */
    MAY_BE_CHANGING
  }

  /** Whether a way is said, with whatever strength. */
  public boolean says() {
    return way != null;
  }
}
