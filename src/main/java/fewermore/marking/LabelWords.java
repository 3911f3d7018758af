package fewermore.marking;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A label or a name as plain lower-case words: accents off ("piñata" is "pinata"), a possessive 's off,
 * numbers and letters parted ("38in"), signs of units kept where they mean one, other signs and drawings
 * dropped.
 */
final class LabelWords {
  /** A label longer than this, in characters, is no label. */
  static final int LONGEST = 200;

  private final List<String> words = new ArrayList<>();
  private final StringBuilder word = new StringBuilder();

  private LabelWords() {}

  static List<String> of(String written) {
    String plain = Normalizer.normalize(written.toLowerCase(Locale.ROOT).replaceAll("[“”″]", "\""),
        Normalizer.Form.NFKD);
    LabelWords reading = new LabelWords();
    int[] signs = plain.codePoints().filter(c -> Character.getType(c) != Character.NON_SPACING_MARK).toArray();
    for (int i = 0; i < signs.length; i++) {
      if (isApostrophe(signs[i])) {
        i += reading.apostrophe(signs, i);
      } else {
        reading.sign(signs[i]);
      }
    }
    reading.endWord();
    return List.copyOf(reading.words);
  }

  /** @return how many signs after the apostrophe go with it: the s of a possessive */
  private int apostrophe(int[] signs, int at) {
    if (afterNumber()) {
      endWord();
      words.add("'");
      return 0;
    }
    boolean possessive = !word.isEmpty() && at + 1 < signs.length && signs[at + 1] == 's'
        && (at + 2 == signs.length || !Character.isLetter(signs[at + 2]));
    return possessive ? 1 : 0;
  }

  private void sign(int c) {
    if (c == '$' || c == '¢' || c == '°' || c == '"' && afterNumber()) {
      endWord();
      words.add(Character.toString(c));
    } else if (!Character.isLetterOrDigit(c)) {
      endWord();
    } else {
      if (!word.isEmpty() && Character.isDigit(c) != Character.isDigit(word.codePointBefore(word.length()))) {
        endWord();
      }
      word.appendCodePoint(c);
    }
  }

  private boolean afterNumber() {
    String last = !word.isEmpty() ? word.toString() : words.isEmpty() ? "" : words.get(words.size() - 1);
    return !last.isEmpty() && Character.isDigit(last.charAt(0));
  }

  private void endWord() {
    if (!word.isEmpty()) {
      words.add(word.toString());
      word.setLength(0);
    }
  }

  private static boolean isApostrophe(int c) {
    return c == '\'' || c == '’' || c == '‘' || c == 'ʼ' || c == '′' || c == '`' || c == '´';
  }
}
