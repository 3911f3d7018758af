package fewermore.marking;

import java.util.OptionalInt;

/** What a person sees of a written text: control, format and bidi marks left out, every space a plain one. */
final class Visible {
  /** Longest number read, in digits; a longer one is no number of a story. */
  private static final int MOST_DIGITS = 9;

  private Visible() {}

  /** The text without what can't be seen, and without spaces at its ends. */
  static String of(String written) {
    StringBuilder seen = new StringBuilder(written.length());
    written.codePoints().forEach(c -> {
      switch (Character.getType(c)) {
        case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.PRIVATE_USE, Character.UNASSIGNED -> {
          if (Character.isWhitespace(c)) {
            seen.append(' ');
          }
        }
        case Character.SPACE_SEPARATOR, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> seen.append(' ');
        default -> seen.appendCodePoint(c);
      }
    });
    return seen.toString().strip();
  }

  static boolean blank(String written) {
    return of(written).isEmpty();
  }

  /** The whole number that stands there alone (one full stop after it is overlooked); empty for anything else. */
  static OptionalInt number(String written) {
    String seen = of(written);
    if (seen.endsWith(".")) {
      seen = seen.substring(0, seen.length() - 1);
    }
    if (seen.isEmpty() || seen.length() > MOST_DIGITS) {
      return OptionalInt.empty();
    }
    int value = 0;
    for (int i = 0; i < seen.length(); i++) {
      int digit = Character.digit(seen.charAt(i), 10);
      if (digit < 0) {
        return OptionalInt.empty();
      }
      value = 10 * value + digit;
    }
    return OptionalInt.of(value);
  }
}
