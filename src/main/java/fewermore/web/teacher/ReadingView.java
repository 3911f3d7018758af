package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.marking.Reading;
import fewermore.story.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a child pointed at in the story, in sentences for the teacher. It says what was tapped and whether the story
 * compares with it; it is no mark.
 *
 * @param question the sentence the child took for the question, as read; empty when none was tapped
 * @param known the numbers tapped, in the order of tapping
 * @param says one sentence each on question and numbers
 */
public record ReadingView(String question, List<String> known, List<String> says) {

  /** @return null when the reading was not asked */
  static ReadingView of(AssignedProblem problem, Reading reading) {
    return reading == null ? null : new ReadingView(reading.question(), reading.known(),
        List.of(ofQuestion(problem, reading.question()), ofNumbers(problem.story(), reading.known())));
  }

  private static String ofQuestion(AssignedProblem problem, String tapped) {
    if (tapped.isBlank()) {
      return "No sentence was tapped for the question.";
    }
    boolean question = Stream.concat(problem.sentences().stream(), problem.spanish().stream())
        .filter(sentence -> sentence.strip().endsWith("?")).anyMatch(tapped::equals);
    return question ? "Tapped the question." : "Took “" + tapped + "” for the question.";
  }

  private static String ofNumbers(Comparison story, List<String> tapped) {
    if (tapped.isEmpty()) {
      return "No number was tapped for what is known.";
    }
    List<String> given = story.given().stream().map(role -> Integer.toString(story.value(role))).toList();
    List<String> beside = tapped.stream().filter(number -> !given.contains(number)).toList();
    List<String> missing = given.stream().filter(number -> !tapped.contains(number)).toList();
    List<String> says = new ArrayList<>();
    if (missing.isEmpty()) {
      says.add("Tapped both numbers the story compares with, " + and(given) + ".");
    } else {
      says.add("Did not tap " + and(missing) + ".");
    }
    if (!beside.isEmpty()) {
      says.add("Also tapped " + and(beside) + ", which the comparison does not need.");
    }
    return String.join(" ", says);
  }

  private static String and(List<String> numbers) {
    return numbers.stream().collect(Collectors.joining(" and "));
  }
}
