package fewermore.marking;

/**
 * How far a child's spelling is from a word, by letters and by sound: a weighted edit distance over the
 * letters and over a rough English sounding-out, whichever is nearer. The weights are ours: children's
 * misspellings mostly change vowels, doubled letters, silent letters and the order of two letters, and
 * mostly keep the consonants they hear (Treiman 1993, Beginning to Spell; from memory). Weights and limit
 * were chosen on two thirds of the nouns of a collection of real misspellings and measured on the rest.
 */
final class Spelling {
  /** Written or right words longer than this are not compared. */
  private static final int LONGEST = 40;

  private static final double BY_SOUND = 0.1;
  private static final double VOWEL_FOR_VOWEL = 0.4;
  private static final double LIKE_FOR_LIKE = 0.5;
  private static final double OTHER_FOR_OTHER = 1.0;
  private static final double DOUBLED = 0.2;
  private static final double VOWEL_MORE = 0.5;
  private static final double SOFT_MORE = 0.6;
  private static final double CONSONANT_MORE = 0.9;
  private static final double TURNED_ROUND = 0.6;

  private static final double LIMIT_A_LETTER = 0.26;
  private static final double LEAST_LIMIT = 0.6;
  private static final double MOST_LIMIT = 2.5;

  private static final String VOWELS = "aeiouy";
  /** Consonants often left out or put in: weakly heard, or silent in many words. */
  private static final String SOFT = "hwrgl";
  private static final String[] HEARD_ALIKE =
      {"ckq", "csz", "gj", "gk", "fv", "dt", "bp", "bd", "mn", "xs", "wv", "CS", "Cj", "Tf", "Tt", "SZs"};

  private static final boolean[][] ALIKE = alike();

  private Spelling() {}

  /** How far off a spelling may be and still be read as the word. */
  static double limit(String word) {
    return Math.min(MOST_LIMIT, Math.max(LEAST_LIMIT, LIMIT_A_LETTER * word.length()));
  }

  /**
   * 0 for the same word, about 1 for one wrong consonant, no upper bound; infinite for a written form that is
   * empty or very long. Lower-case letters expected.
   */
  static double off(String written, String word) {
    if (written.equals(word)) {
      return 0;
    }
    if (written.isEmpty() || written.length() > LONGEST || word.length() > LONGEST
        || Math.abs(written.length() - word.length()) > LONGEST / 4) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.min(byLetters(written, word), BY_SOUND + byLetters(Sounds.of(written), Sounds.of(word)));
  }

  /** The weighted edit distance alone, neighbors turned round included. */
  static double byLetters(String a, String b) {
    double[] beforeLast = new double[b.length() + 1];
    double[] last = new double[b.length() + 1];
    double[] row = new double[b.length() + 1];
    for (int j = 1; j <= b.length(); j++) {
      last[j] = last[j - 1] + more(b, j - 1);
    }
    for (int i = 1; i <= a.length(); i++) {
      double more = more(a, i - 1);
      row[0] = last[0] + more;
      for (int j = 1; j <= b.length(); j++) {
        double best = last[j - 1] + change(a.charAt(i - 1), b.charAt(j - 1));
        best = Math.min(best, last[j] + more);
        best = Math.min(best, row[j - 1] + more(b, j - 1));
        if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
          best = Math.min(best, beforeLast[j - 2] + TURNED_ROUND);
        }
        row[j] = best;
      }
      double[] free = beforeLast;
      beforeLast = last;
      last = row;
      row = free;
    }
    return last[b.length()];
  }

  private static double change(char x, char y) {
    if (x == y) {
      return 0;
    }
    if (VOWELS.indexOf(x) >= 0 && VOWELS.indexOf(y) >= 0) {
      return VOWEL_FOR_VOWEL;
    }
    return x < ALIKE.length && y < ALIKE.length && ALIKE[x][y] ? LIKE_FOR_LIKE : OTHER_FOR_OTHER;
  }

  private static double more(String word, int at) {
    char c = word.charAt(at);
    if (at > 0 && word.charAt(at - 1) == c) {
      return DOUBLED;
    }
    return VOWELS.indexOf(c) >= 0 ? VOWEL_MORE : SOFT.indexOf(c) >= 0 ? SOFT_MORE : CONSONANT_MORE;
  }

  private static boolean[][] alike() {
    boolean[][] alike = new boolean[128][128];
    for (String group : HEARD_ALIKE) {
      group.chars().forEach(x -> group.chars().forEach(y -> alike[x][y] = true));
    }
    return alike;
  }
}
