package fewermore.marking;

import java.util.List;

/**
 * What a child pointed at in the story: the sentence she took for the question, and the numbers she took for what is
 * known. Evidence of reading; it is shown to the teacher and never marked.
 *
 * @param question the sentence as the child read it, or empty
 * @param known numbers as they stand in the story, in the order tapped
 */
public record Reading(String question, List<String> known) {
  public static final Reading EMPTY = new Reading("", List.of());

  public Reading {
    question = question == null ? "" : question;
    known = List.copyOf(known);
  }

  public boolean blank() {
    return question.isBlank() && known.isEmpty();
  }
}
