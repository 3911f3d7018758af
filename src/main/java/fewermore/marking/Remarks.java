package fewermore.marking;

import fewermore.story.Comparison;
import java.util.Map;

/** One plain sentence a part for the teacher, quoting the child's own work. American English. */
public final class Remarks {
  private Remarks() {}

  public static Map<Part, String> of(Comparison story, Work work, Marks marks) {
    return Map.of();
  }
}
