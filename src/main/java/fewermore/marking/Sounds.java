package fewermore.marking;

import java.util.regex.Pattern;

/**
 * A rough sounding-out of English spelling: one letter a sound, so that "fone" and "phone" meet. Ours; made
 * for children's spellings of nouns and tuned on real ones, no more.
 */
final class Sounds {
  private record Rule(Pattern pattern, String sound) {}

  private static Rule rule(String pattern, String sound) {
    return new Rule(Pattern.compile(pattern), sound);
  }

  /** Tried one after the other; capitals stand for sounds that have no letter of their own. */
  private static final Rule[] RULES = {
    rule("^[kgp]n", "n"), rule("^wr", "r"), rule("^ps", "s"), rule("^x", "z"), rule("wh", "w"), rule("rh", "r"),
    rule("sch", "sk"), rule("tch", "C"), rule("[ts]+ion", "Sun"), rule("ch", "C"), rule("sh", "S"), rule("ph", "f"),
    rule("igh", "i"), rule("eigh|aigh", "a"), rule("augh|ough", "o"), rule("gh", ""), rule("ck", "k"),
    rule("qu", "kw"), rule("x", "ks"), rule("sc(?=[eiy])", "s"), rule("c(?=[eiy])", "s"), rule("c", "k"),
    rule("q", "k"), rule("dg(?=e)", "j"), rule("g(?=[eiy])", "j"), rule("th", "T"), rule("mb$", "m"),
    rule("stle(?=s?$)", "sul"), rule("(?<=[^aeiouy])le(?=s?$)", "ul"), rule("(?<=[^aeiouy])e(?=s?$)", ""),
    rule("z", "s"), rule("y", "i"), rule("ee|ea|ie|ei", "e"), rule("oo|ou|ew|ue|ui", "u"), rule("ai|au|aw", "a"),
    rule("oa|ow|oe", "o"), rule("[aeiou]r(?![aeiou])", "ur"), rule("(.)\\1+", "$1"),
  };

  private Sounds() {}

  static String of(String word) {
    String sound = word;
    for (Rule rule : RULES) {
      sound = rule.pattern().matcher(sound).replaceAll(rule.sound());
    }
    return sound;
  }
}
