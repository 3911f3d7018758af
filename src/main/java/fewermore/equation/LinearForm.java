package fewermore.equation;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * An expression as {@code factor · x + constant}, where all unknown signs in it are the same.
 *
 * @param name the unknown sign as in {@link Expression.Unknown#name}; −1 when there is none
 */
public record LinearForm(int name, int factor, long constant) {
  private static final int NO_NAME = -1;

  public static LinearForm number(long value) {
    return new LinearForm(NO_NAME, 0, value);
  }

  public static LinearForm unknown(int name) {
    return new LinearForm(name, 1, 0);
  }

  /** Empty when the two have different unknown signs. */
  public Optional<LinearForm> plus(LinearForm other) {
    return plus(other, 1);
  }

  /** Empty when the two have different unknown signs. */
  public Optional<LinearForm> minus(LinearForm other) {
    return plus(other, -1);
  }

  private Optional<LinearForm> plus(LinearForm other, int sign) {
    if (name != NO_NAME && other.name != NO_NAME && name != other.name) {
      return Optional.empty();
    }
    return Optional.of(new LinearForm(name == NO_NAME ? other.name : name,
        factor + sign * other.factor, constant + sign * other.constant));
  }

  /** The whole number that makes this form 0; empty when there is none or more than one. */
  public OptionalLong zero() {
    return factor == 0 || constant % factor != 0 ? OptionalLong.empty() : OptionalLong.of(-constant / factor);
  }

  /** The value of a form without unknown sign; empty for one with. */
  public OptionalLong plainValue() {
    return name == NO_NAME ? OptionalLong.of(constant) : OptionalLong.empty();
  }
}
