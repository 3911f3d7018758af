package fewermore.marking;

import fewermore.story.Comparison;

/** Marks the estimate: is it reasonable? */
public final class EstimateMarker {
  private EstimateMarker() {}

  public static EstimateVerdict mark(Comparison story, String written) {
    return written.isBlank() ? EstimateVerdict.BLANK : EstimateVerdict.FAR_OFF;
  }
}
