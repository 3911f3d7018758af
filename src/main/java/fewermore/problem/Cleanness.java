package fewermore.problem;

import fewermore.story.Operation;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.problem.Rival.Cause;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether a problem's numbers tell the ways of going wrong apart by the answer alone. The rivals are the right answer,
 * the other operation, each given number repeated, and the commonest slips of both calculations where a ten is traded:
 * the smaller digit taken from the larger and a ten borrowed but left (Brown &amp; Burton 1978; rules as in VanLehn
 * 1990, from memory), and the new ten dropped. Every two must be at least {@value #APART} apart, so that a slip of one
 * in counting does not turn one into the other.
 *
 * <p>Not asked: that <i>turns subtraction round</i> differs from <i>from the story</i>, as both answer the same and
 * only the equation tells; nor that a ten too many is told from "borrowed but left", which are one number always.
 */
public final class Cleanness {
  /** How far every two rivals are apart at least. */
  public static final int APART = 2;

  private Cleanness() {}

  /** The answers to tell apart, for larger = smaller + difference with that unknown. */
  public static List<Rival> rivals(Relation amounts, Role unknown) {
    int larger = amounts.total();
    int smaller = amounts.firstPart();
    int difference = amounts.secondPart();
    return switch (unknown) {
      case LARGER -> rivals(smaller, difference, Operation.ADD);
      case SMALLER -> rivals(larger, difference, Operation.SUBTRACT);
      case DIFFERENCE -> rivals(larger, smaller, Operation.SUBTRACT);
    };
  }

  /** Every pair of rivals that is too near; empty when the numbers are clean. */
  public static List<NotSeparated> notSeparated(Relation amounts, Role unknown) {
    List<Rival> rivals = rivals(amounts, unknown);
    List<NotSeparated> pairs = new ArrayList<>();
    for (int i = 0; i < rivals.size(); i++) {
      for (int j = i + 1; j < rivals.size(); j++) {
        if (Math.abs(rivals.get(i).number() - rivals.get(j).number()) < APART) {
          pairs.add(new NotSeparated(rivals.get(i), rivals.get(j)));
        }
      }
    }
    return List.copyOf(pairs);
  }

  public static boolean isClean(Relation amounts, Role unknown) {
    return notSeparated(amounts, unknown).isEmpty();
  }

  private static List<Rival> rivals(int first, int second, Operation right) {
    int sum = first + second;
    int gap = Math.abs(first - second);
    List<Rival> rivals = new ArrayList<>();
    rivals.add(new Rival(Cause.RIGHT, right == Operation.ADD ? sum : gap));
    rivals.add(new Rival(Cause.OPPOSITE_OPERATION, right == Operation.ADD ? gap : sum));
    rivals.add(new Rival(Cause.REPEATS_FIRST, first));
    rivals.add(new Rival(Cause.REPEATS_SECOND, second));
    addSubtractionSlips(rivals, Math.max(first, second), Math.min(first, second));
    if (first % 10 + second % 10 >= 10) {
      rivals.add(new Rival(Cause.TEN_DROPPED, sum - 10));
    }
    return List.copyOf(rivals);
  }

  private static void addSubtractionSlips(List<Rival> rivals, int larger, int smaller) {
    if (larger % 10 < smaller % 10) {
      rivals.add(new Rival(Cause.SMALLER_FROM_LARGER,
          10 * (larger / 10 - smaller / 10) + smaller % 10 - larger % 10));
      rivals.add(new Rival(Cause.TEN_NOT_TAKEN, larger - smaller + 10));
    }
  }
}
