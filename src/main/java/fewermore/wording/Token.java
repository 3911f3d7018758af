package fewermore.wording;

import fewermore.text.SourceSpan;
import java.util.Set;

/**
 * A word, a number or a mark of a text.
 *
 * @param low the word in small letters with straight apostrophes, the mark itself, or the unit a money sign stands for
 * @param value of a number, else -1
 * @param at its place in the text
 * @param text the word as it is typed; empty for all else
 */
record Token(Type type, String low, int value, SourceSpan at, String text) {
  enum Type {
    WORD,
    NUMBER,
    /** A number whose unit is part of it: $16, 25¢. */
    MONEY,
    /** A number that names and does not count: 3rd, 3:30, 5-year-old. */
    LABEL,
    /** A fraction, a decimal, a number below 0. */
    NOT_WHOLE,
    /** More than a story may hold. */
    TOO_LARGE,
    COMMA,
    /** A semicolon, a colon or a dash. */
    BREAK,
    /** A full stop, a question mark or an exclamation mark. */
    END,
    /** Brackets and all else that the grammar does not have. */
    OTHER
  }

  /** Whether it is a word that begins with a capital letter. */
  boolean capital() {
    return !text.isEmpty() && Character.isUpperCase(text.charAt(0));
  }

  boolean is(String word) {
    return type == Type.WORD && low.equals(word);
  }

  boolean in(Set<String> words) {
    return type == Type.WORD && words.contains(low);
  }

  boolean isWord() {
    return type == Type.WORD;
  }

  /** A number that counts or measures. */
  boolean isAmount() {
    return type == Type.NUMBER || type == Type.MONEY;
  }

  boolean isMark() {
    return type == Type.COMMA || type == Type.BREAK || type == Type.END || type == Type.OTHER;
  }
}
