package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks the estimate: is it reasonable? By friendly tens and by direction, the check that catches most
 * reversals (Standards for Mathematical Practice 1 and 6 ask for such checks; from memory).
 */
public final class EstimateMarker {
  private static final Pattern ROUGHLY = Pattern.compile("^(?:about|around|~|≈)\\s*");

  private static final Pattern SIDE = Pattern.compile("(bigger|smaller) than (\\d{1,4})");

  private EstimateMarker() {}

  /**
   * "about 40" is read as 40; "smaller than 52" by its direction, when 52 is {@link #amount the amount} it must lie
   * above or below. What is neither is {@link EstimateVerdict#FAR_OFF}.
   */
  public static EstimateVerdict mark(Comparison story, String written) {
    String seen = Visible.of(written).toLowerCase(Locale.ROOT);
    if (seen.isEmpty()) {
      return EstimateVerdict.BLANK;
    }
    Matcher side = SIDE.matcher(seen);
    if (side.matches() && Integer.parseInt(side.group(2)) == amount(story)) {
      return side.group(1).equals("bigger") == (story.unknown() == Role.LARGER)
          ? EstimateVerdict.FITS : EstimateVerdict.WRONG_DIRECTION;
    }
    OptionalInt number = Visible.number(ROUGHLY.matcher(seen).replaceFirst(""));
    if (number.isEmpty()) {
      return EstimateVerdict.FAR_OFF;
    }
    int estimate = number.getAsInt();
    if (fits(story, estimate)) {
      return EstimateVerdict.FITS;
    }
    return wrongDirection(story, estimate) ? EstimateVerdict.WRONG_DIRECTION : EstimateVerdict.FAR_OFF;
  }

  /** The given number that the answer must lie above, when the larger is asked for, or else below. */
  public static int amount(Comparison story) {
    return story.value(story.unknown() == Role.LARGER ? Role.SMALLER : Role.LARGER);
  }

  private static boolean fits(Comparison story, int estimate) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    for (int a : tensBeside(first)) {
      for (int b : tensBeside(second)) {
        if (estimate == (story.kind().operation() == Operation.ADD ? a + b : a - b)) {
          return true;
        }
      }
    }
    return estimate % 10 == 0 && Math.abs(estimate - story.answer()) <= 5;
  }

  /** The ten below and the ten above; a number of tens is its own. */
  private static int[] tensBeside(int number) {
    return number % 10 == 0 ? new int[] {number} : new int[] {number - number % 10, number - number % 10 + 10};
  }

  private static boolean wrongDirection(Comparison story, int estimate) {
    return story.unknown() == Role.LARGER
        ? estimate <= amount(story) : estimate >= amount(story);
  }
}
