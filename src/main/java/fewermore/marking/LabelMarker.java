package fewermore.marking;

import fewermore.story.Comparison;
import java.util.Locale;

/** Marks the label: does it name the thing counted? */
public final class LabelMarker {
  private LabelMarker() {}

  public static LabelVerdict mark(Comparison story, String written) {
    String seen = Visible.of(written).toLowerCase(Locale.ROOT);
    if (seen.isEmpty()) {
      return LabelVerdict.BLANK;
    }
    if (seen.equalsIgnoreCase(story.thing().one()) || seen.equalsIgnoreCase(story.thing().many())) {
      return LabelVerdict.NAMES_IT;
    }
    return LabelVerdict.NOT_RECOGNISED;
  }
}
