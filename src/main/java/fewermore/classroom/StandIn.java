package fewermore.classroom;

import fewermore.marking.EquationMarker;
import fewermore.marking.EquationReason;
import fewermore.story.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Equations for the wall that nobody of the class wrote, proved by the marker. */
final class StandIn {
  private StandIn() {}

  /** A line one can discuss; a blank or a bare number is not. */
  static boolean canBeInvented(EquationReason reason) {
    return switch (reason) {
      case TURNED_ROUND, OPPOSITE_OPERATION, UNKNOWN_MISPLACED -> true;
      case FITS, BLANK, UNREADABLE, NO_EQUALS, NUMBER_ONLY, EXTRA_NUMBER, MISSING_NUMBER, MISCOPIED_NUMBER,
          OTHER_NUMBERS -> false;
    };
  }

  static String fitting(Comparison story) {
    return story.value(story.given().get(0)) + " " + story.kind().operation().sign() + " "
        + story.value(story.given().get(1)) + " = □";
  }

  /** The first line that the marker gives this very reason and that no child wrote. */
  static Optional<String> of(Comparison story, EquationReason reason, Set<String> written) {
    return candidates(story).stream()
        .filter(line -> !written.contains(line))
        .filter(line -> EquationMarker.mark(story, line).reason() == reason)
        .findFirst();
  }

  /** Every line of two of the three quantities, with the box or the third number in the third place. */
  private static List<String> candidates(Comparison story) {
    List<String> values = story.given().stream().map(role -> Integer.toString(story.value(role))).toList();
    String answer = Integer.toString(story.answer());
    List<String> lines = new ArrayList<>();
    for (String third : List.of("□", answer)) {
      List<String> terms = List.of(values.get(0), values.get(1), third);
      for (int[] order : new int[][] {{0, 1, 2}, {1, 0, 2}, {0, 2, 1}, {2, 0, 1}, {1, 2, 0}, {2, 1, 0}}) {
        for (String sign : List.of(" − ", " + ")) {
          lines.add(terms.get(order[0]) + sign + terms.get(order[1]) + " = " + terms.get(order[2]));
          lines.add(terms.get(order[2]) + " = " + terms.get(order[0]) + sign + terms.get(order[1]));
        }
      }
    }
    // The unknown's sign in the place of a given number.
    lines.add(values.get(0) + " − □ = " + answer);
    lines.add("□ − " + values.get(1) + " = " + answer);
    lines.add("□ + " + values.get(1) + " = " + answer);
    lines.add(values.get(0) + " + □ = " + answer);
    return lines;
  }
}
