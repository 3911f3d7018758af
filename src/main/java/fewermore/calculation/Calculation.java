package fewermore.calculation;

import fewermore.story.Operation;
import java.util.Optional;

/**
 * One calculation with two whole numbers from 0 to {@value SlipRule#LARGEST}. A subtraction takes the smaller from
 * the larger, or equal numbers from each other.
 */
public record Calculation(int first, Operation operation, int second) {
  /** @throws IllegalArgumentException outside those bounds; {@link #of} gives nothing instead */
  public Calculation {
    if (Math.min(first, second) < 0 || Math.max(first, second) > SlipRule.LARGEST) {
      throw new IllegalArgumentException(first + " and " + second + ": from 0 to " + SlipRule.LARGEST);
    }
    if (operation == Operation.SUBTRACT && first < second) {
      throw new IllegalArgumentException(first + " − " + second + ": the larger comes first");
    }
  }

  /** The same with a subtraction turned larger first; empty where a number lies outside the bounds. */
  public static Optional<Calculation> of(int first, Operation operation, int second) {
    if (Math.min(first, second) < 0 || Math.max(first, second) > SlipRule.LARGEST) {
      return Optional.empty();
    }
    boolean turn = operation == Operation.SUBTRACT && first < second;
    return Optional.of(new Calculation(turn ? second : first, operation, turn ? first : second));
  }

  public int result() {
    return adds() ? first + second : first - second;
  }

  public boolean adds() {
    return operation == Operation.ADD;
  }

  /** {@code 52 − 14}, with the true minus sign. */
  public String text() {
    return first + " " + operation.sign() + " " + second;
  }

  Places firstPlaces() {
    return Places.of(first);
  }

  Places secondPlaces() {
    return Places.of(second);
  }
}
