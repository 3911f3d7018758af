package fewermore.marking;

import fewermore.story.Comparison;

/** Marks the answer box against the story and the child's own equation. */
public final class AnswerMarker {
  private AnswerMarker() {}

  /** @param equation what stands on the equation line, or null when none was asked */
  public static AnswerMark mark(Comparison story, String equation, String written) {
    return AnswerMark.of(written.strip().equals(Integer.toString(story.answer()))
        ? AnswerVerdict.RIGHT : AnswerVerdict.OTHER);
  }
}
