package fewermore.marking;

import fewermore.story.Comparison;

/** Marks the bars: which is longer, and what stands on each place. */
public final class BarsMarker {
  private BarsMarker() {}

  public static BarsVerdict mark(Comparison story, Bars bars) {
    return bars.blank() ? BarsVerdict.BLANK : BarsVerdict.INCOMPLETE;
  }
}
