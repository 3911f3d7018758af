package fewermore.calculation;

import java.util.Optional;

/**
 * A good way to work a calculation out. Names and orders are common practice; none was taken from a published list.
 */
public enum Way {
  /** Trades before anything is crossed out. */
  TRADE_FIRST("trade-first", StrategyKind.PIECES),
  /** Crosses out tens and the ones there are, then trades for the rest. */
  TRADE_WHEN_NEEDED("trade-when-needed", StrategyKind.PIECES),
  /** Lays out the smaller number and puts on until it is the larger. */
  BUILD_UP("build-up", StrategyKind.PIECES),
  /** Lays out both, joins them, trades ten ones for a ten. */
  JOIN_AND_TRADE("join-and-trade", StrategyKind.PIECES),
  /** Lays out the first number and puts the second on, tens first. */
  PUT_ON("put-on", StrategyKind.PIECES),
  /** Jumps the tens, then the ones. */
  TENS_FIRST("tens-first", StrategyKind.LINE),
  /** Jumps to the next ten, then the rest. */
  THROUGH_THE_TEN("through-the-ten", StrategyKind.LINE),
  /** Jumps a round number of tens, then mends it. */
  COMPENSATION("compensation", StrategyKind.LINE),
  /** Jumps from the smaller number up to the larger through friendly tens. */
  COUNT_UP("count-up", StrategyKind.LINE),
  /** Moves both numbers by the same, so that the second is round: the difference stays. */
  SAME_DIFFERENCE("same-difference", StrategyKind.LINE),
  /** Breaks both numbers by tens and ones, then regroups. */
  REGROUP("regroup", StrategyKind.EXPANDED),
  /** Breaks the first number at once so that there are ones enough, or leaves the ones together until the end. */
  BREAK_TO_FIT("break-to-fit", StrategyKind.EXPANDED);

  private final String id;
  private final StrategyKind kind;

  Way(String id, StrategyKind kind) {
    this.id = id;
    this.kind = kind;
  }

  /** The word used in addresses and in message keys. */
  public String id() {
    return id;
  }

  public StrategyKind kind() {
    return kind;
  }

  public static Optional<Way> of(String id) {
    for (Way way : values()) {
      if (way.id.equals(id)) {
        return Optional.of(way);
      }
    }
    return Optional.empty();
  }
}
