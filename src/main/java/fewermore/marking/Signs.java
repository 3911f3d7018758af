package fewermore.marking;

import java.util.EnumMap;
import java.util.Map;

/** What a tablet is told of each part: at most two are ever <i>look again</i>. */
public final class Signs {
  private Signs() {}

  /** A sign for each part that was asked. With {@code tellLater} all stay {@link Sign#THERE}. */
  public static Map<Part, Sign> of(Marks marks, boolean tellLater) {
    return new EnumMap<>(Part.class);
  }
}
