package fewermore.marking;

import fewermore.story.Comparison;

/** Marks an equation from the story's relation. */
public final class EquationMarker {
  private EquationMarker() {}

  public static EquationMark mark(Comparison story, String written) {
    return EquationMark.of(written.isBlank() ? EquationReason.BLANK : EquationReason.OTHER_NUMBERS);
  }
}
