package fewermore.problem;

import fewermore.story.Relation;
import java.util.Optional;

/** Whether the calculation trades a ten. */
public enum Regrouping {
  NEEDED("needed"),
  NOT_NEEDED("not-needed"),
  EITHER("either");

  private final String id;

  Regrouping(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }

  public static Optional<Regrouping> of(String id) {
    for (Regrouping regrouping : values()) {
      if (regrouping.id.equals(id)) {
        return Optional.of(regrouping);
      }
    }
    return Optional.empty();
  }

  /** Adding the parts makes a new ten exactly when taking either part from the total trades one. */
  public static boolean isNeeded(Relation amounts) {
    return amounts.firstPart() % 10 + amounts.secondPart() % 10 >= 10;
  }

  boolean allows(Relation amounts) {
    return this == EITHER || isNeeded(amounts) == (this == NEEDED);
  }
}
