package fewermore.calculation;

import java.util.Optional;

/** What a calculation is worked out with. */
public enum StrategyKind {
  PIECES("pieces"),
  LINE("line"),
  EXPANDED("expanded");

  private final String id;

  StrategyKind(String id) {
    this.id = id;
  }

  /** The word used in JSON, in the store and in CSV files. */
  public String id() {
    return id;
  }

  public static Optional<StrategyKind> of(String id) {
    for (StrategyKind kind : values()) {
      if (kind.id.equals(id)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  /** The state before the first step. */
  public State start(Calculation calculation) {
    return switch (this) {
      case PIECES -> Mat.empty(calculation);
      case LINE -> NumberLine.empty(calculation);
      case EXPANDED -> Expanded.empty(calculation);
    };
  }
}
