package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import java.util.List;
import java.util.function.Predicate;

/**
 * The teacher records a problem in her own voice. {@code pages/teacher/voice.html}, {@code GET /voice/{problem}}.
 *
 * <p>Forms: {@code POST /voice/{problem}} with {@code language} and the file {@code sound}; {@code POST
 * /voice/{problem}/throw-away} with {@code language}. The sound is at {@code /voice/{problem}/{language}}.
 *
 * @param takes one a language the problem is written in
 */
public record VoicePage(long problem, List<Take> takes) {

  /** @param recorded whether there is a recording */
  public record Take(String language, String name, List<String> sentences, boolean recorded) {}

  public static VoicePage of(AssignedProblem problem, Predicate<String> recorded) {
    return new VoicePage(problem.id(), languages(problem).stream()
        .map(language -> new Take(language, language.equals("es") ? "Spanish" : "English",
            problem.sentences(language), recorded.test(language)))
        .toList());
  }

  /** The languages a problem is written in. */
  public static List<String> languages(AssignedProblem problem) {
    return problem.spanish().isEmpty() ? List.of("en") : List.of("en", "es");
  }
}
