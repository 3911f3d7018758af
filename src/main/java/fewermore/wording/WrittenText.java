package fewermore.wording;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A problem's text.
 *
 * @param sentences in reading order; a page shows one a line
 * @param label what the answer counts, many, in the text's language
 */
public record WrittenText(Language language, List<Sentence> sentences, String label) implements Writing {
  public WrittenText {
    sentences = List.copyOf(sentences);
  }

  /** All sentences on one line. */
  public String text() {
    return sentences.stream().map(Sentence::text).collect(Collectors.joining(" "));
  }

  /** All sentences with numbers as words. */
  public String forSpeech() {
    return sentences.stream().map(Sentence::forSpeech).collect(Collectors.joining(" "));
  }
}
