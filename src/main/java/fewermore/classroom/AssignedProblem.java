package fewermore.classroom;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import java.util.List;

/**
 * A problem as it stands in the class's store; never changed once it has work.
 *
 * @param sentences the text in English, one sentence an element
 * @param spanish the text in Spanish, or empty when there is none
 * @param spoken the English sentences as they are read aloud, numbers as words
 * @param spokenSpanish the Spanish ones; empty when there are none
 */
public record AssignedProblem(
    long id, Comparison story, String scenario, long seed, List<String> sentences, List<String> spanish,
    List<String> spoken, List<String> spokenSpanish) {
  public AssignedProblem {
    sentences = List.copyOf(sentences);
    spanish = List.copyOf(spanish);
    spoken = List.copyOf(spoken);
    spokenSpanish = List.copyOf(spokenSpanish);
  }

  /** A problem that is read aloud as it is written. */
  public AssignedProblem(
      long id, Comparison story, String scenario, long seed, List<String> sentences, List<String> spanish) {
    this(id, story, scenario, seed, sentences, spanish, sentences, spanish);
  }

  public Kind kind() {
    return story.kind();
  }

  /** The sentences in a child's language, English where there is no other. */
  public List<String> sentences(String language) {
    return "es".equals(language) && !spanish.isEmpty() ? spanish : sentences;
  }

  /** The same sentences as they are read aloud. */
  public List<String> spoken(String language) {
    return "es".equals(language) && !spanish.isEmpty() ? spokenSpanish : spoken;
  }

  /** The language a child who reads {@code language} gets it in. */
  public String languageFor(String language) {
    return "es".equals(language) && !spanish.isEmpty() ? "es" : "en";
  }

  public String text() {
    return String.join(" ", sentences);
  }
}
