package fewermore.story;

import java.util.Optional;

/**
 * The six kinds of comparison, by the unknown and the wording: Common Core State Standards for
 * Mathematics (2010), Glossary, Table 1, p. 88, rows <i>Compare</i> (read second-hand).
 *
 * <p>Whether the wording {@linkplain #agrees agrees} with the operation that finds the unknown is
 * "consistent / inconsistent language" of Lewis &amp; Mayer (1987), J. Educational Psychology
 * 79(4):363-371, who define it for statements, the last four kinds; carrying it over to the wording of
 * a question, the first two kinds, is ours.
 */
public enum Kind {
  DIFFERENCE_MORE(Role.DIFFERENCE, Wording.MORE),
  DIFFERENCE_FEWER(Role.DIFFERENCE, Wording.FEWER),
  LARGER_MORE(Role.LARGER, Wording.MORE),
  LARGER_FEWER(Role.LARGER, Wording.FEWER),
  SMALLER_MORE(Role.SMALLER, Wording.MORE),
  SMALLER_FEWER(Role.SMALLER, Wording.FEWER);

  private final Role unknown;
  private final Wording wording;

  Kind(Role unknown, Wording wording) {
    this.unknown = unknown;
    this.wording = wording;
  }

  /** The kind counted in grids and files; "what is the difference" counts with difference/fewer. */
  public static Kind of(Role unknown, Wording wording) {
    Wording counted = wording == Wording.DIFFERENCE ? Wording.FEWER : wording;
    for (Kind kind : values()) {
      if (kind.unknown == unknown && kind.wording == counted) {
        return kind;
      }
    }
    throw new IllegalStateException("no kind for " + unknown + " and " + wording);
  }

  public static Optional<Kind> of(String id) {
    for (Kind kind : values()) {
      if (kind.id().equals(id)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  /** For example {@code larger-fewer}. */
  public String id() {
    return unknown.id() + "-" + wording.id();
  }

  public Role unknown() {
    return unknown;
  }

  public Wording wording() {
    return wording;
  }

  /** The operation on the two given numbers that finds the unknown. */
  public Operation operation() {
    return unknown == Role.LARGER ? Operation.ADD : Operation.SUBTRACT;
  }

  /** The operation a cue-word hunter takes: <i>more</i> pulls to +, <i>fewer</i> to −. */
  public Operation cue() {
    return wording == Wording.MORE ? Operation.ADD : Operation.SUBTRACT;
  }

  /** Whether the cue word pulls to the operation that finds the unknown. */
  public boolean agrees() {
    return cue() == operation();
  }
}
