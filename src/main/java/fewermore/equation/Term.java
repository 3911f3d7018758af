package fewermore.equation;

import fewermore.text.SourceSpan;

/**
 * One number or unknown sign of a side, with the sign it counts with once parentheses are undone.
 *
 * @param sign +1 or −1
 * @param unknown whether it is an unknown sign; {@code value} is then 0
 * @param value the number, from 0 up
 * @param at where the number or unknown sign stands; empty for an empty side
 * @param signAt where the + or − written before it stands, or null when none is
 */
public record Term(int sign, boolean unknown, int value, SourceSpan at, SourceSpan signAt) {
  /** The number with its sign; 0 for an unknown sign. */
  public int signed() {
    return sign * value;
  }

  public Term withValue(int other) {
    return new Term(sign, unknown, other, at, signAt);
  }
}
