package fewermore.prediction;

import fewermore.story.Comparison;
import fewermore.story.Role;
import java.util.List;

/**
 * The eight ways to write {@code larger = smaller + difference} with one quantity unknown: the sum on either side with
 * its addends in either order, and each of the two subtractions on either side.
 */
public final class Arrangements {
  private Arrangements() {}

  /** The eight equations that state a story, with {@code □} for the unknown; the solution form is among them. */
  public static List<String> of(Comparison story) {
    String larger = written(story, Role.LARGER);
    String smaller = written(story, Role.SMALLER);
    String difference = written(story, Role.DIFFERENCE);
    return List.of(
        larger + " − " + difference + " = " + smaller, larger + " − " + smaller + " = " + difference,
        smaller + " + " + difference + " = " + larger, difference + " + " + smaller + " = " + larger,
        smaller + " = " + larger + " − " + difference, difference + " = " + larger + " − " + smaller,
        larger + " = " + smaller + " + " + difference, larger + " = " + difference + " + " + smaller);
  }

  private static String written(Comparison story, Role role) {
    return role == story.unknown() ? Prediction.UNKNOWN : Integer.toString(story.value(role));
  }
}
