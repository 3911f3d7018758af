package fewermore.problem;

import fewermore.calculation.SlipRule;
import fewermore.story.Operation;
import fewermore.story.Relation;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether a problem's numbers tell the ways of going wrong apart by the answer alone. The rivals are the right answer,
 * the other operation, each given number repeated, and the main slips of both calculations where a ten is traded: the
 * smaller digit taken from the larger, a ten borrowed but left, and the new ten dropped ({@link SlipRule} names the
 * sources). Every two must be at least {@value #APART} apart, so that a slip of one in counting does not turn one into
 * the other. That these are the rivals, and the distance, are ours.
 *
 * <p>Not asked: that <i>turns subtraction round</i> differs from <i>from the story</i>, as both answer the same and
 * only the equation tells; nor that a ten too many is told from "borrowed but left", which are one number always.
 */
public final class Cleanness {
  /** How far every two rivals are apart at least. */
  public static final int APART = 2;

  /** The slips of the catalogs' commonest kind, of the right calculation and of the opposite one alike. */
  private static final List<SlipRule> SLIPS =
      List.of(SlipRule.SMALLER_FROM_LARGER, SlipRule.BORROW_TENS_LEFT, SlipRule.CARRIED_TEN_DROPPED);

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
    List<Rival> rivals = new ArrayList<>();
    rivals.add(new Rival("right", "the right answer", result(first, right, second)));
    rivals.add(new Rival("opposite-operation", "the other operation", result(first, right.opposite(), second)));
    rivals.add(new Rival("repeats-a-number", "repeating " + first, first));
    rivals.add(new Rival("repeats-a-number", "repeating " + second, second));
    for (SlipRule slip : SLIPS) {
      slip.predicts(first, slip.operation(), second).ifPresent(number ->
          rivals.add(new Rival(slip.id(), "a child who " + slip.says(), number)));
    }
    return List.copyOf(rivals);
  }

  private static int result(int first, Operation operation, int second) {
    return operation == Operation.ADD ? first + second : Math.abs(first - second);
  }
}
