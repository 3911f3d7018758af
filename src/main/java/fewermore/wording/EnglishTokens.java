package fewermore.wording;

import fewermore.text.SourceSpan;
import fewermore.wording.Token.Type;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A text as sentences of tokens.
 *
 * <pre>
 * text      = sentence*
 * sentence  = token* END
 * token     = word | number | money | label | mark
 * number    = digits ("," 3 digits)* | number words to 999 | [number | "a"] "dozen"
 * money     = "$" digits | digits "¢"
 * label     = digits ("st" | "nd" | "rd" | "th") | digits ":" digits | digits ("-" letters)+
 * </pre>
 *
 * Runs once over the text; the time is linear in its length.
 */
final class EnglishTokens {
  /** The largest number a story may hold. */
  static final int LARGEST = 1_000_000;

  private static final Set<String> TITLES = Set.of("mr", "mrs", "ms", "dr", "st", "mx");
  private static final Set<String> SHORT_UNITS = Set.of("in", "ft", "yd", "yds", "mi", "cm", "mm", "m", "km", "lb", "lbs",
      "oz", "kg", "g", "min", "mins", "hr", "hrs", "sec", "secs", "yr", "yrs", "pt", "pts", "gal", "wk", "wks");
  private static final Set<String> ORDINALS = Set.of("st", "nd", "rd", "th");
  private static final Set<String> ONE_DAY = Set.of("day", "morning", "afternoon", "evening", "night", "week",
      "weekend", "summer", "winter", "spring", "fall", "monday", "tuesday", "wednesday", "thursday", "friday",
      "saturday", "sunday");
  private static final Set<String> NOT_COUNTED_BY_ONE = Set.of("of", "another", "at", "by", "is", "has", "are", "was",
      "had", "in", "on", "and", "or", "than", "who", "that", "which", "to", "from", "with");
  private static final Set<String> POINTS_TO_ONE = Set.of("the", "that", "this", "which", "each", "every", "another",
      "any", "no", "first", "second", "last", "other", "same", "big", "bigger", "long", "longer", "short", "shorter",
      "small", "smaller", "red", "blue", "green", "new", "old");
  private static final Map<String, Integer> UNITS = numberWords(0, 19);
  private static final Map<String, Integer> TENS = Map.of("twenty", 20, "thirty", 30, "forty", 40, "fifty", 50,
      "sixty", 60, "seventy", 70, "eighty", 80, "ninety", 90);

  private final String text;
  private int here;

  private EnglishTokens(String text) {
    this.text = text;
  }

  /** The sentences of a text; never fails. */
  static List<TextSentence> of(String text) {
    return sentences(new EnglishTokens(text).tokens());
  }

  private static List<TextSentence> sentences(List<Token> tokens) {
    List<TextSentence> sentences = new ArrayList<>();
    List<Token> sentence = new ArrayList<>();
    for (Token token : tokens) {
      if (token.type() != Type.END) {
        sentence.add(token);
      } else if (!sentence.isEmpty()) {
        sentences.add(sentence(sentence, token.low().equals("?"), token.at()));
        sentence = new ArrayList<>();
      }
    }
    if (!sentence.isEmpty()) {
      sentences.add(sentence(sentence, false, sentence.get(sentence.size() - 1).at()));
    }
    return sentences;
  }

  private static TextSentence sentence(List<Token> raw, boolean asks, SourceSpan end) {
    return new TextSentence(withNumberWords(raw), asks, raw.get(0).at().through(end));
  }

  private List<Token> tokens() {
    List<Token> tokens = new ArrayList<>();
    skipListNumber();
    while (here < text.length()) {
      char c = text.charAt(here);
      if (Character.isWhitespace(c) || isQuote(c)) {
        here++;
      } else if (isDigit(c) || c == '$' && isDigit(at(here + 1))) {
        tokens.add(number());
      } else if ((c == '-' || c == '−') && isDigit(at(here + 1)) && !isLetterOrDigit(at(here - 1))) {
        here++;
        Token number = number();
        tokens.add(new Token(Type.NOT_WHOLE, number.low(), -1, new SourceSpan(number.at().start() - 1,
            number.at().end()), ""));
      } else if (Character.isLetter(c)) {
        tokens.add(word(tokens.isEmpty() ? null : tokens.get(tokens.size() - 1)));
      } else {
        tokens.add(mark(c));
      }
    }
    return tokens;
  }

  /** "3." or "3)" before a problem numbers the problem and is no number of the story. */
  private void skipListNumber() {
    int from = 0;
    while (from < text.length() && Character.isWhitespace(text.charAt(from))) {
      from++;
    }
    int digits = from;
    while (digits < text.length() && isDigit(text.charAt(digits)) && digits - from < 3) {
      digits++;
    }
    boolean numbered = digits > from && (at(digits) == '.' || at(digits) == ')') && Character.isWhitespace(at(digits + 1));
    here = numbered ? digits + 1 : from;
  }

  private Token number() {
    int start = here;
    boolean dollars = at(here) == '$';
    if (dollars) {
      here++;
    }
    long value = digits();
    while (at(here) == ',' && isDigit(at(here + 1)) && isDigit(at(here + 2)) && isDigit(at(here + 3))
        && !isDigit(at(here + 4))) {
      here++;
      value = value < LARGEST ? value * 1_000 + digits() : keptLarge();
    }
    boolean whole = true;
    if (at(here) == '.' && isDigit(at(here + 1))) {
      here++;
      int decimals = here;
      whole = digits() == 0 && dollars && here - decimals == 2;
    }
    if (at(here) == '/' && isDigit(at(here + 1)) || isFraction(at(here))) {
      here++;
      digits();
      return token(Type.NOT_WHOLE, "", -1, start);
    }
    if (at(here) == ' ' && isDigit(at(here + 1)) && isMixedFraction(here + 1)) {
      here++;
      digits();
      here++;
      digits();
      return token(Type.NOT_WHOLE, "", -1, start);
    }
    if (!whole) {
      return token(Type.NOT_WHOLE, "", -1, start);
    }
    if (at(here) == '%') {
      here++;
      return token(Type.OTHER, "%", -1, start);
    }
    if (value > LARGEST) {
      return token(Type.TOO_LARGE, "", -1, start);
    }
    if (dollars) {
      return token(Type.MONEY, "dollar", (int) value, start);
    }
    if (at(here) == '¢') {
      here++;
      return token(Type.MONEY, "cent", (int) value, start);
    }
    return label((int) value, start);
  }

  private Token label(int value, int start) {
    if (at(here) == ':' && isDigit(at(here + 1))) {
      here++;
      digits();
      return token(Type.LABEL, "clock", value, start);
    }
    if ((at(here) == '-' || at(here) == '–') && isDigit(at(here + 1))) {
      here++;
      digits();
      return token(Type.OTHER, "range", -1, start);
    }
    if (at(here) == '-' && Character.isLetter(at(here + 1))) {
      while (at(here) == '-' || isLetterOrDigit(at(here))) {
        here++;
      }
      return token(Type.LABEL, text.substring(start, here).toLowerCase(Locale.ROOT), value, start);
    }
    int letters = here;
    while (Character.isLetter(at(letters)) && letters - here < 3) {
      letters++;
    }
    if (letters > here && ORDINALS.contains(text.substring(here, letters).toLowerCase(Locale.ROOT))) {
      here = letters;
      return token(Type.LABEL, "ordinal", value, start);
    }
    return token(Type.NUMBER, "", value, start);
  }

  private boolean isMixedFraction(int from) {
    int digits = from;
    while (isDigit(at(digits)) && digits - from < 4) {
      digits++;
    }
    return at(digits) == '/' && isDigit(at(digits + 1));
  }

  private long digits() {
    long value = 0;
    while (isDigit(at(here))) {
      value = value > LARGEST ? value : value * 10 + (at(here) - '0');
      here++;
    }
    return value;
  }

  private long keptLarge() {
    digits();
    return LARGEST + 1L;
  }

  private Token word(Token before) {
    int start = here;
    while (Character.isLetter(at(here)) || Character.getType(at(here)) == Character.NON_SPACING_MARK
        || isApostrophe(at(here)) && (Character.isLetter(at(here + 1)) || at(here - 1) == 's' && here > start)
        || at(here) == '-' && Character.isLetter(at(here + 1))) {
      here++;
    }
    String low = text.substring(start, here).replace('’', '\'').replace('ʼ', '\'').toLowerCase(Locale.ROOT);
    Token word = new Token(Type.WORD, low, -1, new SourceSpan(start, here),
        text.substring(start, here));
    if (at(here) == '.') {
      boolean goesOn = TITLES.contains(low)
          || before != null && before.type() == Type.NUMBER && SHORT_UNITS.contains(low) && smallFollows(here + 1);
      if (goesOn) {
        here++;
        return TITLES.contains(low) ? new Token(Type.WORD, low, -1, new SourceSpan(start, here),
            text.substring(start, here))
            : new Token(Type.WORD, low + ".", -1, new SourceSpan(start, here), text.substring(start, here));
      }
      if ((low.equals("a") || low.equals("p")) && (at(here + 1) == 'm' || at(here + 1) == 'M')) {
        here += at(here + 2) == '.' && smallFollows(here + 3) ? 3 : 2;
        return new Token(Type.WORD, low + "m", -1, new SourceSpan(start, here), "");
      }
    }
    return word;
  }

  private boolean smallFollows(int from) {
    int next = from;
    while (next < text.length() && Character.isWhitespace(text.charAt(next)) && next - from < 10) {
      next++;
    }
    return Character.isLowerCase(at(next)) || at(next) == ',';
  }

  private Token mark(char c) {
    int start = here;
    here++;
    switch (c) {
      case '.':
        if (at(here) == '.') {
          while (at(here) == '.') {
            here++;
          }
          return token(Type.OTHER, "…", -1, start);
        }
        return token(Type.END, ".", -1, start);
      case '?':
      case '!':
        boolean asks = c == '?';
        while (at(here) == '?' || at(here) == '!') {
          asks |= at(here) == '?';
          here++;
        }
        return token(Type.END, asks ? "?" : "!", -1, start);
      case ',':
        return token(Type.COMMA, ",", -1, start);
      case ';':
      case ':':
      case '—':
      case '–':
        return token(Type.BREAK, String.valueOf(c), -1, start);
      case '-':
        while (at(here) == '-') {
          here++;
        }
        return token(Type.BREAK, "-", -1, start);
      default:
        if (isFraction(c)) {
          return token(Type.NOT_WHOLE, "", -1, start);
        }
        if (Character.isHighSurrogate(c) && Character.isLowSurrogate(at(here))) {
          here++;
        }
        return token(Type.OTHER, text.substring(start, here), -1, start);
    }
  }

  private Token token(Type type, String low, int value, int start) {
    return new Token(type, low, value, new SourceSpan(start, here), "");
  }

  private char at(int index) {
    return index >= 0 && index < text.length() ? text.charAt(index) : '\0';
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isLetterOrDigit(char c) {
    return isDigit(c) || Character.isLetter(c);
  }

  private static boolean isApostrophe(char c) {
    return c == '\'' || c == '’' || c == 'ʼ';
  }

  private static boolean isQuote(char c) {
    return c == '"' || c == '“' || c == '”' || c == '‘' || isApostrophe(c) || c == '\uFEFF' || c == '\u200B';
  }

  private static boolean isFraction(char c) {
    return c == '½' || c == '¼' || c == '¾' || c == '⅓' || c == '⅔';
  }

  /** Number words joined and worth their value. */
  private static List<Token> withNumberWords(List<Token> raw) {
    List<Token> tokens = new ArrayList<>();
    for (int i = 0; i < raw.size(); ) {
      Spelled spelled = spelled(raw, i);
      if (spelled == null) {
        tokens.add(raw.get(i));
        i++;
      } else {
        SourceSpan at = raw.get(i).at().through(raw.get(i + spelled.length - 1).at());
        tokens.add(new Token(Type.NUMBER, "", spelled.value, at, ""));
        i += spelled.length;
      }
    }
    return tokens;
  }

  private record Spelled(int value, int length) {}

  private static Spelled spelled(List<Token> raw, int i) {
    Token first = raw.get(i);
    if (first.type() == Type.NUMBER) {
      return is(raw, i + 1, "dozen") && first.value() <= LARGEST / 12 ? new Spelled(first.value() * 12, 2) : null;
    }
    if (!first.isWord()) {
      return null;
    }
    if (first.is("a") && is(raw, i + 1, "dozen")) {
      return new Spelled(12, 2);
    }
    if (first.is("a") && is(raw, i + 1, "hundred")) {
      return hundreds(raw, i, 100, 2);
    }
    if (first.is("one") && !counts(raw, i)) {
      return null;
    }
    Spelled belowHundred = belowHundred(raw, i);
    if (belowHundred == null) {
      return null;
    }
    int next = i + belowHundred.length;
    if (is(raw, next, "dozen")) {
      return new Spelled(belowHundred.value * 12, belowHundred.length + 1);
    }
    if (is(raw, next, "hundred") && belowHundred.value > 0 && belowHundred.value < 10) {
      return hundreds(raw, i, belowHundred.value * 100, belowHundred.length + 1);
    }
    return belowHundred;
  }

  private static Spelled hundreds(List<Token> raw, int i, int value, int length) {
    int next = i + length;
    boolean and = is(raw, next, "and");
    Spelled rest = next + (and ? 1 : 0) < raw.size() ? belowHundred(raw, next + (and ? 1 : 0)) : null;
    return rest == null ? new Spelled(value, length) : new Spelled(value + rest.value,
        length + rest.length + (and ? 1 : 0));
  }

  private static Spelled belowHundred(List<Token> raw, int i) {
    Token first = raw.get(i);
    if (!first.isWord()) {
      return null;
    }
    String word = first.low();
    Integer unit = UNITS.get(word);
    if (unit != null) {
      return new Spelled(unit, 1);
    }
    int hyphen = word.indexOf('-');
    if (hyphen > 0) {
      Integer tens = TENS.get(word.substring(0, hyphen));
      Integer ones = UNITS.get(word.substring(hyphen + 1));
      return tens == null || ones == null || ones < 1 || ones > 9 ? null : new Spelled(tens + ones, 1);
    }
    Integer tens = TENS.get(word);
    if (tens == null) {
      return null;
    }
    Integer ones = i + 1 < raw.size() && raw.get(i + 1).isWord() ? UNITS.get(raw.get(i + 1).low()) : null;
    return ones != null && ones > 0 && ones < 10 ? new Spelled(tens + ones, 2) : new Spelled(tens, 1);
  }

  /** Whether <i>one</i> at this place is a number: not in "the one", "one of", "one day". */
  private static boolean counts(List<Token> raw, int i) {
    if (i > 0 && raw.get(i - 1).in(POINTS_TO_ONE) || i + 1 >= raw.size() || !raw.get(i + 1).isWord()) {
      return false;
    }
    return !raw.get(i + 1).in(NOT_COUNTED_BY_ONE) && !(i == 0 && raw.get(1).in(ONE_DAY));
  }

  private static boolean is(List<Token> raw, int i, String word) {
    return i < raw.size() && raw.get(i).is(word);
  }

  private static Map<String, Integer> numberWords(int from, int to) {
    Map<String, Integer> words = new HashMap<>();
    for (int number = from; number <= to; number++) {
      words.put(EnglishNumbers.words(number), number);
    }
    return Map.copyOf(words);
  }
}
