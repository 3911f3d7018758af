package fewermore.marking;

import java.util.List;
import org.apache.commons.text.similarity.LevenshteinDistance;

/**
 * How near a written word or phrase is to the right one.
 *
 * @param byEar weighted distance by letters and sound ({@link Spelling}); 0 is the very word
 * @param byLetters letters to insert, delete or replace
 */
record Nearness(double byEar, int byLetters) {
  static final Nearness SAME = new Nearness(0, 0);
  static final Nearness FAR = new Nearness(Double.POSITIVE_INFINITY, Integer.MAX_VALUE / 4);

  /** Sounding the same as a word counts as next to spelling it. */
  private static final double SOUNDS_THE_SAME = 0.05;

  /** How far a common word may be from the part of a word it stands for: it sounds the same, by rule. */
  private static final double PART_LIMIT = 0.2;

  private static final double EVEN = 1e-9;

  /**
   * A word read as a form of another. A common word is that word and no misspelling: it must be the form
   * or sound the same.
   */
  static Nearness of(String written, String form) {
    if (written.equals(form)) {
      return SAME;
    }
    if (isCommon(written)) {
      return CommonWords.soundAlike(written, form) ? new Nearness(SOUNDS_THE_SAME, letters(written, form)) : FAR;
    }
    return spelled(written, form);
  }

  /**
   * Several written words read as one ("rain cote"). A part that is a common word must be nearly the part of
   * the word that it stands for, so that "rain boots" is not read as raincoats.
   */
  static Nearness ofJoined(List<String> parts, String form) {
    String joined = String.join("", parts);
    if (joined.equals(form)) {
      return SAME;
    }
    if (isCommon(joined) || parts.size() > 2) {
      return FAR;
    }
    Nearness whole = spelled(joined, form);
    if (whole == FAR) {
      return FAR;
    }
    for (int i = 1; i < form.length(); i++) {
      if (standsFor(parts.get(0), form.substring(0, i)) && standsFor(parts.get(1), form.substring(i))) {
        return whole;
      }
    }
    return FAR;
  }

  private static boolean standsFor(String part, String of) {
    return !isCommon(part) || part.equals(of) || CommonWords.soundAlike(part, of)
        || Spelling.off(part, of) <= PART_LIMIT;
  }

  /** A spelling of a form, whatever else it may spell. */
  static Nearness spelled(String written, String form) {
    if (written.equals(form)) {
      return SAME;
    }
    double off = Spelling.off(written, form);
    return off <= Spelling.limit(form) ? new Nearness(off, letters(written, form)) : FAR;
  }

  static boolean isCommon(String word) {
    return CommonWords.contains(word) || Units.isShortForm(word);
  }

  private static int letters(String written, String form) {
    return LevenshteinDistance.getDefaultInstance().apply(written, form);
  }

  Nearness plus(Nearness other) {
    return this == FAR || other == FAR ? FAR : new Nearness(byEar + other.byEar, byLetters + other.byLetters);
  }

  Nearness orNearer(Nearness other) {
    return other.byEar < byEar ? other : this;
  }

  boolean far() {
    return byEar == Double.POSITIVE_INFINITY;
  }

  boolean same() {
    return byEar == 0;
  }

  /** Nearer both by ear and by letters; when the two disagree, neither is nearer. */
  boolean nearerThan(Nearness other) {
    return !far() && (other.far() || byEar < other.byEar - EVEN && byLetters < other.byLetters);
  }
}
