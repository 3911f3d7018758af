package fewermore.marking;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a tablet is told of each part. Only the first of bars, equation and answer that does not fit says
 * <i>look again</i>, and the parts after it stay <i>there</i>, so that a child looks at one thing at a
 * time; the label is told by itself. At most two parts ever say <i>look again</i>. A strategy and
 * an estimate speak last, when all before them fit.
 */
public final class Signs {
  private static final List<Part> IN_TURN =
      List.of(Part.BARS, Part.EQUATION, Part.ANSWER, Part.STRATEGY, Part.ESTIMATE);

  private Signs() {}

  /** A sign for each part that was asked. With {@code tellLater} all stay {@link Sign#THERE}. */
  public static Map<Part, Sign> of(Marks marks, boolean tellLater) {
    Map<Part, Sign> signs = new EnumMap<>(Part.class);
    boolean stopped = tellLater;
    for (Part part : IN_TURN) {
      if (!asked(marks, part)) {
        continue;
      }
      boolean fits = fits(marks, part);
      signs.put(part, stopped ? Sign.THERE : fits ? Sign.FITS : Sign.LOOK_AGAIN);
      stopped |= !fits;
    }
    if (asked(marks, Part.LABEL)) {
      signs.put(Part.LABEL, tellLater ? Sign.THERE : fits(marks, Part.LABEL) ? Sign.FITS : Sign.LOOK_AGAIN);
    }
    return signs;
  }

  private static boolean asked(Marks marks, Part part) {
    return switch (part) {
      case BARS -> marks.bars() != null;
      case EQUATION -> marks.equation() != null;
      case ANSWER -> marks.answer() != null;
      case LABEL -> marks.label() != null;
      case ESTIMATE -> marks.estimate() != null;
      case STRATEGY -> marks.strategy() != null;
      case READING -> false;
    };
  }

  /** Whether a part that was asked says what the story says. */
  private static boolean fits(Marks marks, Part part) {
    return switch (part) {
      case BARS -> marks.bars() == BarsVerdict.FITS;
      case EQUATION -> marks.equation().fits();
      case ANSWER -> marks.answer().verdict() == AnswerVerdict.RIGHT;
      case LABEL -> marks.label() == LabelVerdict.NAMES_IT;
      case ESTIMATE -> marks.estimate() == EstimateVerdict.FITS;
      case STRATEGY -> marks.strategy().fits();
      case READING -> false;
    };
  }
}
