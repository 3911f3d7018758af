package fewermore.problem;

import java.util.Locale;

/** Two rival answers that one number, or its neighbor, could come from: the answer alone can't tell which. */
public record NotSeparated(Rival first, Rival second) {

  /** One sentence for the teacher. */
  public String says() {
    return first.number() == second.number()
        ? "Both " + first.cause().says() + " and " + second.cause().says() + " give " + first.number() + "."
        : first.cause().says().substring(0, 1).toUpperCase(Locale.ROOT) + first.cause().says().substring(1)
            + " is " + first.number() + " and " + second.cause().says() + " is " + second.number()
            + ": too near to tell apart.";
  }
}
