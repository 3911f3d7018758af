package fewermore.wording;

import java.util.Locale;

/** A sentence while it is put together, shown and spoken side by side. */
final class Line {
  private final StringBuilder shown = new StringBuilder();
  private final StringBuilder spoken = new StringBuilder();

  /** Words to say next; null or empty adds nothing. */
  Line say(String words) {
    if (words != null && !words.isEmpty()) {
      add(words, words);
    }
    return this;
  }

  Line english(int number) {
    add(Integer.toString(number), EnglishNumbers.words(number));
    return this;
  }

  /** A number that stands right before its noun. */
  Line spanish(int number, Gender gender) {
    add(Integer.toString(number), SpanishNumbers.beforeNoun(number, gender));
    return this;
  }

  /** A number whose noun was said before and is left out. */
  Line spanishAlone(int number, Gender gender) {
    add(Integer.toString(number), SpanishNumbers.alone(number, gender));
    return this;
  }

  Sentence statement() {
    return ended("", ".");
  }

  Sentence question() {
    return ended("", "?");
  }

  Sentence spanishQuestion() {
    return ended("¿", "?");
  }

  private void add(String digits, String words) {
    String gap = shown.length() == 0 ? "" : " ";
    shown.append(gap).append(digits);
    spoken.append(gap).append(words);
  }

  private Sentence ended(String opening, String closing) {
    return new Sentence(opening + capital(shown) + closing, opening + capital(spoken) + closing);
  }

  private static String capital(CharSequence words) {
    return words.subSequence(0, 1).toString().toUpperCase(Locale.ROOT) + words.subSequence(1, words.length());
  }
}
