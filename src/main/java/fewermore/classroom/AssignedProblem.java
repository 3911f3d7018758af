package fewermore.classroom;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import java.util.List;

/**
 * A problem as it stands in the class's store; never changed once it has work.
 *
 * @param sentences the text in English, one sentence an element
 * @param spanish the text in Spanish, or empty when there is none
 */
public record AssignedProblem(
    long id, Comparison story, String scenario, long seed, List<String> sentences, List<String> spanish) {
  public AssignedProblem {
    sentences = List.copyOf(sentences);
    spanish = List.copyOf(spanish);
  }

  public Kind kind() {
    return story.kind();
  }

  /** The sentences in a child's language, English where there is no other. */
  public List<String> sentences(String language) {
    return "es".equals(language) && !spanish.isEmpty() ? spanish : sentences;
  }

  public String text() {
    return String.join(" ", sentences);
  }
}
