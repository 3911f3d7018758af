package fewermore.problem;

import java.util.Locale;

/** Two rival answers that are one number, or too near each other: the answer alone can't tell which it is. */
public record NotSeparated(Rival first, Rival second) {

  /** One sentence for the teacher. */
  public String says() {
    if (first.number() == second.number()) {
      return "Both " + first.says() + " and " + second.says() + " give " + first.number() + ".";
    }
    return capital(first.says()) + " gives " + first.number() + ", and " + second.says() + " gives " + second.number()
        + ": too near to tell apart.";
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
