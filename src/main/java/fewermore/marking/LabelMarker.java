package fewermore.marking;

import fewermore.story.Comparison;

/** Marks the label: does it name the thing counted? */
public final class LabelMarker {
  private LabelMarker() {}

  public static LabelVerdict mark(Comparison story, String written) {
    return written.isBlank() ? LabelVerdict.BLANK : LabelVerdict.NOT_RECOGNISED;
  }
}
