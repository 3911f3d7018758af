package fewermore.equation;

import fewermore.equation.SyntaxProblem.Kind;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the equation line.
 *
 * <pre>
 * line       = side { "=" side }
 * side       = [ expression ]            the first or the last side of two or more may be empty, once, when
 *                                        no unknown sign stands elsewhere: it is read as one
 * expression = term { ( "+" | "−" ) term }
 * term       = number | unknown | "(" expression ")"
 * number     = digit { digit }           at most 9 digits
 * unknown    = "□" | "?" | "_" { "_" } | letter
 * </pre>
 *
 * <p>Spaces may stand anywhere but inside a number. A minus is any of the dashes that keyboards and
 * autocorrection put in its place; a box is any of the square signs. Everything else is a
 * {@link SyntaxProblem}: reading never throws and takes time in proportion to the line, which is read to
 * at most {@value #LONGEST_LINE} signs and {@value #DEEPEST} parentheses inside each other.
 */
public final class EquationReader {
  /** Longest line read, in chars, spaces around it aside: a jump by ones from 1 to 100 is shorter. */
  public static final int LONGEST_LINE = 1000;
  public static final int LONGEST_NUMBER = 9;
  public static final int DEEPEST = 20;

  private final String text;
  private final int end;
  private int place;
  private int depth;
  private boolean sawUnknown;
  private SyntaxProblem problem;

  private EquationReader(String text, int start, int end) {
    this.text = text;
    this.place = start;
    this.end = end;
  }

  public static Reading read(String text) {
    int start = 0;
    int end = text.length();
    while (start < end && WrittenSigns.isSpace(text.charAt(start))) {
      start++;
    }
    while (end > start && WrittenSigns.isSpace(text.charAt(end - 1))) {
      end--;
    }
    if (start == end) {
      return new SyntaxProblem(Kind.NOTHING_WRITTEN, new SourceSpan(0, 0), "an equation", "nothing",
          "Write what the story says with numbers, + or −, and =.");
    }
    if (end - start > LONGEST_LINE) {
      return new SyntaxProblem(Kind.LINE_TOO_LONG, new SourceSpan(start + LONGEST_LINE, end),
          "a line of at most " + LONGEST_LINE + " signs", "a line of " + (end - start),
          "Write one equation on the line.");
    }
    return new EquationReader(text, start, end).line();
  }

  private Reading line() {
    List<Expression> sides = new ArrayList<>(2);
    int emptyAt = -1;
    int equalsAt = -1;
    while (true) {
      skipSpaces();
      boolean first = sides.isEmpty();
      if (place == end ? !first : first && isEquals(place)) {
        if (emptyAt >= 0) {
          return emptySide(first ? place : equalsAt);
        }
        emptyAt = sides.size();
        sides.add(null);
      } else {
        Expression side = expression();
        if (side == null) {
          return problem;
        }
        sides.add(side);
      }
      if (place == end) {
        break;
      }
      if (!isEquals(place)) {
        return unexpectedAfter(sides.get(sides.size() - 1));
      }
      equalsAt = place++;
    }
    if (emptyAt >= 0) {
      int at = emptyAt == 0 ? sides.size() > 1 ? firstEquals() : 0 : end;
      if (sawUnknown) {
        return emptySide(emptyAt == 0 ? at : equalsAt);
      }
      sides.set(emptyAt, new Expression.Unknown(0, new SourceSpan(at, at)));
    }
    return new Equation(sides);
  }

  private Expression expression() {
    Expression left = term();
    while (left != null) {
      skipSpaces();
      int operation = place < end ? WrittenSigns.operation(text.charAt(place)) : 0;
      if (operation == 0) {
        return left;
      }
      SourceSpan signAt = new SourceSpan(place, place + 1);
      place++;
      Expression right = termAfter(signAt);
      left = right == null ? null : new Expression.Joined(left, operation, signAt, right);
    }
    return null;
  }

  private Expression termAfter(SourceSpan signAt) {
    skipSpaces();
    String sign = signAt.of(text);
    if (place == end) {
      return fail(Kind.SIGN_LAST, signAt, "a number or ? after " + sign, "the end of the line",
          "Write the number that comes after " + sign + ".");
    }
    if (isSign(place)) {
      return twoSigns(signAt);
    }
    return term();
  }

  private Expression term() {
    skipSpaces();
    if (place == end) {
      return fail(Kind.PARENTHESIS, new SourceSpan(end, end), "a number or ? after (", "the end of the line",
          "Write what belongs in the parentheses, and a ) after it.");
    }
    char c = text.charAt(place);
    if (WrittenSigns.isDigit(c)) {
      return number();
    }
    if (WrittenSigns.isUnknown(c)) {
      return unknownSign();
    }
    if (c == '(') {
      return parenthesized();
    }
    if (c == ')') {
      return fail(Kind.PARENTHESIS, new SourceSpan(place, place + 1), "a number or ?", "“)”",
          "Write what belongs before ), or leave it out.");
    }
    if (isSign(place)) {
      return signFirst();
    }
    int letters = lettersFrom(place);
    if (letters == 0) {
      return otherSign();
    }
    int next = text.offsetByCodePoints(place, letters);
    return letters == 1 ? letter(next) : word(next);
  }

  private Expression number() {
    int start = place;
    long value = 0;
    while (place < end && WrittenSigns.isDigit(text.charAt(place))) {
      if (place - start < LONGEST_NUMBER) {
        value = value * 10 + text.charAt(place) - '0';
      }
      place++;
    }
    SourceSpan at = new SourceSpan(start, place);
    return at.length() <= LONGEST_NUMBER
        ? new Expression.Whole((int) value, at)
        : fail(Kind.NUMBER_TOO_LONG, at, "a number of at most " + LONGEST_NUMBER + " digits",
            "one of " + at.length() + " digits", "Write the number as it stands in the story.");
  }

  private Expression unknownSign() {
    int start = place;
    int name = WrittenSigns.unknownName(text.charAt(place++));
    while (name == '_' && place < end && text.charAt(place) == '_') {
      place++;
    }
    sawUnknown = true;
    return new Expression.Unknown(name, new SourceSpan(start, place));
  }

  private Expression letter(int next) {
    int start = place;
    place = next;
    sawUnknown = true;
    return new Expression.Unknown(Character.toLowerCase(text.codePointAt(start)), new SourceSpan(start, next));
  }

  private Expression parenthesized() {
    int start = place++;
    if (++depth > DEEPEST) {
      return fail(Kind.TOO_MANY_PARENTHESES, new SourceSpan(start, start + 1),
          "at most " + DEEPEST + " parentheses inside each other", "more", "Leave the parentheses out.");
    }
    Expression inner = expression();
    if (inner == null) {
      return null;
    }
    if (place == end) {
      return fail(Kind.PARENTHESIS, new SourceSpan(start, start + 1), "a ) for this (", "the end of the line",
          "Write ) where the part that belongs together ends.");
    }
    if (isEquals(place)) {
      return fail(Kind.PARENTHESIS, new SourceSpan(start, start + 1), "a ) for this (", "“=”",
          "Write ) before the = sign, or leave ( out.");
    }
    if (text.charAt(place) != ')') {
      problem = unexpectedAfter(inner);
      return null;
    }
    depth--;
    place++;
    return new Expression.Parenthesized(inner, new SourceSpan(start, place));
  }

  private SyntaxProblem unexpectedAfter(Expression last) {
    char c = text.charAt(place);
    if (c == ')') {
      return problem(Kind.PARENTHESIS, new SourceSpan(place, place + 1), "a ( before this )", "none",
          "Write ( where the part that belongs together starts, or leave ) out.");
    }
    List<Term> terms = last == null ? List.of() : last.terms();
    String before = terms.isEmpty() ? "what stands before" : terms.get(terms.size() - 1).at().of(text);
    String expected = "+, − or = after " + before;
    boolean afterSpace = WrittenSigns.isSpace(text.charAt(place - 1));
    if (WrittenSigns.isDigit(c) && afterSpace && WrittenSigns.isDigit(lastBeforeSpaces())) {
      int from = place;
      number();
      return problem(Kind.TWO_NUMBERS, terms.get(terms.size() - 1).at().through(new SourceSpan(from, place)),
          expected, "another number, " + quote(from, place),
          "If it is one number, close the gap; if there are two, write + or − between them.");
    }
    int letters = lettersFrom(place);
    if (letters > 1) {
      word(text.offsetByCodePoints(place, letters));
      return problem;
    }
    if (letters == 1 || WrittenSigns.isDigit(c) || WrittenSigns.isUnknown(c) || c == '(') {
      int next = letters == 1 ? text.offsetByCodePoints(place, 1) : place + 1;
      while (WrittenSigns.isDigit(c) && next < end && WrittenSigns.isDigit(text.charAt(next))) {
        next++;
      }
      return problem(Kind.SIDE_BY_SIDE, new SourceSpan(place, next), expected, quote(place, next),
          "Write + or − between them.");
    }
    otherSign();
    return problem;
  }

  private SyntaxProblem emptySide(int at) {
    return problem(Kind.EMPTY_SIDE, new SourceSpan(at, at + 1), "something on both sides of =",
        "nothing on one side", "Write what belongs on the empty side of =.");
  }

  private Expression signFirst() {
    SourceSpan at = new SourceSpan(place, place + 1);
    String sign = at.of(text);
    int before = place;
    while (before > 0 && WrittenSigns.isSpace(text.charAt(before - 1))) {
      before--;
    }
    if (before > 0 && isSign(before - 1)) {
      return twoSigns(new SourceSpan(before - 1, before));
    }
    return fail(Kind.SIGN_FIRST, at, "a number or ? before " + sign, "“" + sign + "” first",
        "Write the number that comes before " + sign + ".");
  }

  private Expression twoSigns(SourceSpan first) {
    SourceSpan second = new SourceSpan(place, place + 1);
    return fail(Kind.TWO_SIGNS, first.through(second), "a number or ? after " + first.of(text),
        "“" + second.of(text) + "”", "Write a number or ? between the two signs, or leave one of them out.");
  }

  private Expression word(int next) {
    return fail(Kind.WORD, new SourceSpan(place, next), "numbers and signs only",
        "the word " + quote(place, next), "Write signs in place of words: +, −, =, and ? for what is not known.");
  }

  private Expression otherSign() {
    int next = text.offsetByCodePoints(place, 1);
    SourceSpan at = new SourceSpan(place, next);
    int sign = text.codePointAt(place);
    if (WrittenSigns.isHidden(sign)) {
      return fail(Kind.HIDDEN_SIGN, at, "numbers and signs only",
          "a sign that cannot be seen (" + String.format("U+%04X", sign) + ")",
          "Erase the line and write it again.");
    }
    return fail(Kind.OTHER_SIGN, at, "numbers, +, −, =, ? or parentheses", quote(place, next),
        "×÷*/·:".indexOf(sign) >= 0 ? "Write + or − in its place." : "Leave it out.");
  }

  private <T> T fail(Kind kind, SourceSpan at, String expected, String found, String tryThis) {
    problem = problem(kind, at, expected, found, tryThis);
    return null;
  }

  private static SyntaxProblem problem(
      Kind kind, SourceSpan at, String expected, String found, String tryThis) {
    return new SyntaxProblem(kind, at, expected, found, tryThis);
  }

  private String quote(int from, int to) {
    int cut = Math.min(to, from + 20);
    if (cut < to && Character.isHighSurrogate(text.charAt(cut - 1))) {
      cut--;
    }
    return "“" + text.substring(from, cut) + (cut < to ? "…" : "") + "”";
  }

  /** How many letters stand side by side from {@code from}. */
  private int lettersFrom(int from) {
    int letters = 0;
    for (int i = from; i < end && Character.isLetter(text.codePointAt(i)); i = text.offsetByCodePoints(i, 1)) {
      letters++;
    }
    return letters;
  }

  private char lastBeforeSpaces() {
    int i = place - 1;
    while (i > 0 && WrittenSigns.isSpace(text.charAt(i))) {
      i--;
    }
    return text.charAt(i);
  }

  private int firstEquals() {
    int i = 0;
    while (!isEquals(i)) {
      i++;
    }
    return i;
  }

  private boolean isSign(int at) {
    return isEquals(at) || WrittenSigns.operation(text.charAt(at)) != 0;
  }

  private boolean isEquals(int at) {
    return at < end && WrittenSigns.isEquals(text.charAt(at));
  }

  private void skipSpaces() {
    while (place < end && WrittenSigns.isSpace(text.charAt(place))) {
      place++;
    }
  }
}
