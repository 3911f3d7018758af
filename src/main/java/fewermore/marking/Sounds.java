package fewermore.marking;

import java.util.regex.Pattern;

/**
 * A rough sounding-out of English spelling: one letter a sound, so that "fone" and "phone" meet. Ours; made
 * for children's spellings of nouns and tuned on real ones, no more.
 */
final class Sounds {
  /** @param needs letters without which the pattern can't be found, looked for first because it is quick */
  private record Rule(String needs, Pattern pattern, String sound) {}

  private static Rule rule(String needs, String pattern, String sound) {
    return new Rule(needs, Pattern.compile(pattern), sound);
  }

  /** Tried one after the other; capitals stand for sounds that have no letter of their own. */
  private static final Rule[] RULES = {
    rule("n", "^[kgp]n", "n"), rule("wr", "^wr", "r"), rule("ps", "^ps", "s"), rule("x", "^x", "z"),
    rule("wh", "wh", "w"), rule("rh", "rh", "r"), rule("sch", "sch", "sk"), rule("tch", "tch", "C"),
    rule("ion", "[ts]+ion", "Sun"), rule("ch", "ch", "C"), rule("sh", "sh", "S"), rule("ph", "ph", "f"),
    rule("igh", "eigh|aigh", "a"), rule("igh", "igh", "i"), rule("ugh", "augh|ough", "o"), rule("gh", "gh", ""),
    rule("ck", "ck", "k"), rule("qu", "qu", "kw"), rule("x", "x", "ks"), rule("sc", "sc(?=[eiy])", "s"),
    rule("c", "c(?=[eiy])", "s"), rule("c", "c", "k"), rule("q", "q", "k"), rule("dge", "dg(?=e)", "j"),
    rule("g", "g(?=[eiy])", "j"), rule("th", "th", "T"), rule("mb", "mb$", "m"), rule("stle", "stle(?=s?$)", "sul"),
    rule("le", "(?<=[^aeiouy])le(?=s?$)", "ul"), rule("e", "(?<=[^aeiouy])e(?=s?$)", ""), rule("z", "z", "s"),
    rule("y", "y", "i"), rule("e", "ee|ea|ie|ei", "e"), rule("", "oo|ou|ew|ue|ui", "u"), rule("a", "ai|au|aw", "a"),
    rule("o", "oa|ow|oe", "o"), rule("r", "[aeiou]r(?![aeiou])", "ur"),
  };

  private Sounds() {}

  static String of(String word) {
    String sound = word;
    for (Rule rule : RULES) {
      if (sound.contains(rule.needs())) {
        sound = rule.pattern().matcher(sound).replaceAll(rule.sound());
      }
    }
    return single(sound);
  }

  /** Doubled sounds are heard once. */
  private static String single(String sound) {
    StringBuilder single = new StringBuilder(sound.length());
    for (int i = 0; i < sound.length(); i++) {
      if (i == 0 || sound.charAt(i) != sound.charAt(i - 1)) {
        single.append(sound.charAt(i));
      }
    }
    return single.toString();
  }
}
