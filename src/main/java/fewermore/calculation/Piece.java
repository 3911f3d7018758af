package fewermore.calculation;

import java.util.Optional;

/** A base-ten piece: drawn as a square, a line and a dot (common practice, no source). */
public enum Piece {
  HUNDRED("hundred", 100),
  TEN("ten", 10),
  ONE("one", 1);

  private final String id;
  private final int worth;

  Piece(String id, int worth) {
    this.id = id;
    this.worth = worth;
  }

  /** The word used in JSON and in message keys. */
  public String id() {
    return id;
  }

  /** How many ones it is worth. */
  public int worth() {
    return worth;
  }

  public static Optional<Piece> of(String id) {
    for (Piece piece : values()) {
      if (piece.id.equals(id)) {
        return Optional.of(piece);
      }
    }
    return Optional.empty();
  }
}
