package fewermore.marking;

import java.util.List;

/**
 * One way to understand an equation or chain as statements of one relation.
 *
 * @param says what must each state the relation
 * @param claims what must hold for every number written in it to be right
 * @param firstStep how many terms the first step has
 */
record Interpretation(Manner manner, List<Statement> says, List<Statement> claims, int firstStep) {
  enum Manner {
    /** As it stands, or taken whole. */
    PLAIN,
    /** Steps, each going on from the last result. */
    RUN_ON,
    /** Such steps without the last result, taken as the known number that the jumps reach. */
    RUN_ON_REACHING,
    /** Statements strung together, which counts only when every one is true. */
    STRUNG
  }

  static Interpretation plain(Statement statement, List<Statement> claims) {
    return new Interpretation(Manner.PLAIN, List.of(statement), claims, 0);
  }

  boolean isRunOn() {
    return manner == Manner.RUN_ON || manner == Manner.RUN_ON_REACHING;
  }

  /** Whether every number written is right when the unknown sign stands for {@code x}. */
  boolean isTrue(long x) {
    for (Statement claim : claims) {
      if (!claim.holds(x)) {
        return false;
      }
    }
    return true;
  }

  /** How it states the relation; null when it does not. */
  Arrangement.Match match(Arrangement relation) {
    if (manner == Manner.STRUNG && !isTrue(relation.unknownValue())) {
      return null;
    }
    Arrangement.Match match = null;
    for (Statement statement : says) {
      Arrangement.Match each = relation.match(statement, manner == Manner.RUN_ON_REACHING);
      if (each == null && manner == Manner.RUN_ON) {
        each = PartialSums.match(statement, firstStep, relation);
      }
      if (each == null) {
        return null;
      }
      match = match == null ? each : match;
    }
    return match;
  }
}
