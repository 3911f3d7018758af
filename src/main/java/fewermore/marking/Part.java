package fewermore.marking;

import java.util.Optional;

/** A part of a child's work on one problem; each is marked on its own. */
public enum Part {
  /** Find the question, find what you know: never marked. */
  READING("reading"),
  BARS("bars"),
  EQUATION("equation"),
  STRATEGY("strategy"),
  ANSWER("answer"),
  LABEL("label"),
  ESTIMATE("estimate");

  private final String id;

  Part(String id) {
    this.id = id;
  }

  /** The word used in JSON, in the store and in CSV files. */
  public String id() {
    return id;
  }

  public static Optional<Part> of(String id) {
    for (Part part : values()) {
      if (part.id.equals(id)) {
        return Optional.of(part);
      }
    }
    return Optional.empty();
  }
}
