package fewermore.equation;

/** Which characters mean what on an equation line. */
final class WrittenSigns {
  /**
   * Hyphens and dashes that keyboards and autocorrection put where a minus is meant: hyphen-minus, hyphen,
   * non-breaking hyphen, figure, en and em dash, horizontal bar, superscript minus, minus, heavy minus,
   * small and full-width forms.
   */
  private static final String MINUS = "-\u2010\u2011\u2012\u2013\u2014\u2015\u207B\u2212\u2796\uFE58\uFE63\uFF0D";
  private static final String PLUS = "+\u2795\uFE62\uFF0B";
  private static final String EQUALS = "=\uFE66\uFF1D";
  private static final String BOX = "□☐▢◻◽⬜";

  private WrittenSigns() {}

  /** +1 for a plus, −1 for a minus, 0 for anything else. */
  static int operation(char c) {
    if (c == '+' || c == '-') {
      return c == '+' ? 1 : -1;
    }
    if (c < 128) {
      return 0;
    }
    return MINUS.indexOf(c) >= 0 ? -1 : PLUS.indexOf(c) >= 0 ? 1 : 0;
  }

  static boolean isEquals(char c) {
    return c == '=' || c >= 128 && EQUALS.indexOf(c) >= 0;
  }

  static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** Whether it is an unknown sign other than a letter. */
  static boolean isUnknown(char c) {
    return c == '?' || c == '_' || c >= 128 && (c == '？' || BOX.indexOf(c) >= 0);
  }

  static int unknownName(char c) {
    return c == '_' ? '_' : c == '?' || c == '？' ? '?' : '□';
  }

  static boolean isSpace(char c) {
    return c == ' ' || c >= 9 && c <= 13 || c >= 128 && (Character.isSpaceChar(c) || Character.isWhitespace(c));
  }

  /** Controls, bidirectional marks, joiners, lone surrogates, combining marks: nothing a reader would see. */
  static boolean isHidden(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.UNASSIGNED, Character.PRIVATE_USE,
          Character.NON_SPACING_MARK, Character.ENCLOSING_MARK, Character.COMBINING_SPACING_MARK -> true;
      default -> false;
    };
  }
}
