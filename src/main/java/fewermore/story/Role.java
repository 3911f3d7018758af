package fewermore.story;

import java.util.Optional;

/** The part a quantity plays in a comparison: {@code larger = smaller + difference}. */
public enum Role {
  LARGER("larger"),
  SMALLER("smaller"),
  DIFFERENCE("difference");

  private final String id;

  Role(String id) {
    this.id = id;
  }

  /** The word used in JSON, in the store and in CSV files. */
  public String id() {
    return id;
  }

  public static Optional<Role> of(String id) {
    for (Role role : values()) {
      if (role.id.equals(id)) {
        return Optional.of(role);
      }
    }
    return Optional.empty();
  }
}
