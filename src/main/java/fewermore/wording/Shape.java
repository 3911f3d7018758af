package fewermore.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * In which order and how fully a problem's three sentences are told. What a story does not allow (a pronoun for a
 * holder not just named) is told in full instead.
 *
 * @param questionFirst the question before the two statements
 * @param turned the comparing sentence before the known amount; the smaller amount before the larger
 * @param pronoun "She has 14 fewer …" where the sentence before is about the same holder
 * @param leftOut the noun is not said again: "14 fewer than Tomas"
 * @param otherQuestion the second way of asking: "how many feet long" for "how long"
 */
public record Shape(boolean questionFirst, boolean turned, boolean pronoun, boolean leftOut, boolean otherQuestion) {
  /** Known amount, comparing sentence, question; everything said in full. */
  public static final Shape PLAIN = new Shape(false, false, false, false, false);

  /** All 32, the plain one first. */
  public static List<Shape> all() {
    List<Shape> all = new ArrayList<>();
    for (int bits = 0; bits < 32; bits++) {
      all.add(new Shape((bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0, (bits & 8) != 0, (bits & 16) != 0));
    }
    return List.copyOf(all);
  }

  /** A shape by chance: the question first in a quarter, the turned order in a third (ours: a child meets all). */
  public static Shape draw(Random random) {
    return new Shape(random.nextInt(4) == 0, random.nextInt(3) == 0, random.nextBoolean(), random.nextInt(3) == 0,
        random.nextBoolean());
  }
}
