package fewermore.marking;

import fewermore.story.Operation;

/**
 * The two-number calculation that a child's own equation asks for, whatever the story asks: the slips of
 * an answer are looked for on this one.
 *
 * <p>For {@code 14 + x = 52} it is 52 − 14; for {@code 17 + 37 = x} it is 17 + 37, in the order written.
 * A subtraction turned round is given as it stands: {@code 14 − 52 = x} is 14 − 52, with {@code first}
 * below {@code second}. Both numbers are whole, from 0 up.
 */
public record OwnCalculation(int first, Operation operation, int second) {
  /** What the calculation truly comes to; below 0 for a subtraction turned round. */
  public int value() {
    return operation == Operation.ADD ? first + second : first - second;
  }
}
