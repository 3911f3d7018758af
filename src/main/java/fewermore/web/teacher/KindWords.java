package fewermore.web.teacher;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Role;
import fewermore.story.Wording;

/**
 * A kind of comparison in the teacher's words.
 *
 * @param asked what is asked, for example {@code larger}
 * @param word the word in the story: {@code more}, {@code fewer}, or {@code difference}
 */
public record KindWords(Kind kind, String asked, String word) {
  public static KindWords of(Kind kind) {
    return new KindWords(kind, kind.unknown().id(), kind.wording().id());
  }

  public static KindWords of(Comparison story) {
    return new KindWords(story.kind(), story.unknown().id(),
        story.wording() == Wording.DIFFERENCE ? "difference" : story.wording().id());
  }

  public boolean agrees() {
    return kind.agrees();
  }

  public boolean asksLarger() {
    return kind.unknown() == Role.LARGER;
  }

  public boolean asksSmaller() {
    return kind.unknown() == Role.SMALLER;
  }

  public boolean asksDifference() {
    return kind.unknown() == Role.DIFFERENCE;
  }

  /** "Larger amount asked" / "Difference asked". */
  public String sentence() {
    return switch (kind.unknown()) {
      case LARGER -> "Larger amount asked";
      case SMALLER -> "Smaller amount asked";
      case DIFFERENCE -> "Difference asked";
    };
  }
}
