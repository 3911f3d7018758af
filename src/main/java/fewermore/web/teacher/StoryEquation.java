package fewermore.web.teacher;

import fewermore.story.Comparison;
import fewermore.story.Role;

/** The equation that finds a story's unknown, for an answer key; seven more arrangements fit as well. */
public final class StoryEquation {
  private StoryEquation() {}

  /** For example {@code 28 + 15 = □}. */
  public static String of(Comparison story) {
    return expression(story) + " = □";
  }

  /** For example {@code 28 + 15}. */
  public static String expression(Comparison story) {
    Role first = story.unknown() == Role.LARGER ? Role.SMALLER : Role.LARGER;
    Role second = story.unknown() == Role.DIFFERENCE ? Role.SMALLER : Role.DIFFERENCE;
    return story.value(first) + " " + story.kind().operation().sign() + " " + story.value(second);
  }
}
