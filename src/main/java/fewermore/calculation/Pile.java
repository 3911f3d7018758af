package fewermore.calculation;

/** Base-ten pieces that lie together, each count from 0 up. */
public record Pile(int hundreds, int tens, int ones) {
  public static final Pile EMPTY = new Pile(0, 0, 0);

  /** The fewest pieces that make a number. */
  public static Pile of(int number) {
    return new Pile(number / 100, number / 10 % 10, number % 10);
  }

  public int value() {
    return 100 * hundreds + 10 * tens + ones;
  }

  public int count(Piece piece) {
    return switch (piece) {
      case HUNDRED -> hundreds;
      case TEN -> tens;
      case ONE -> ones;
    };
  }

  public boolean isEmpty() {
    return hundreds == 0 && tens == 0 && ones == 0;
  }

  /** With so many more, or fewer, of one piece. */
  Pile with(Piece piece, int more) {
    return switch (piece) {
      case HUNDRED -> new Pile(hundreds + more, tens, ones);
      case TEN -> new Pile(hundreds, tens + more, ones);
      case ONE -> new Pile(hundreds, tens, ones + more);
    };
  }

  Pile plus(Pile other) {
    return new Pile(hundreds + other.hundreds, tens + other.tens, ones + other.ones);
  }

  Places places() {
    return new Places(10 * hundreds + tens, ones);
  }
}
