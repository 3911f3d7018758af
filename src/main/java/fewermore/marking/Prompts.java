package fewermore.marking;

import fewermore.story.Comparison;
import java.util.Locale;
import java.util.Map;

/**
 * What a child is told where to look again: one prompt a part whose sign is {@link Sign#LOOK_AGAIN}.
 * Never holds the answer or the right equation. Texts come from the bundle {@code fewermore/marking/prompts}.
 */
public final class Prompts {
  private Prompts() {}

  public static Map<Part, String> of(Comparison story, Work work, Marks marks, boolean tellLater, Locale language) {
    return Map.of();
  }
}
