package fewermore.wording;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * One and many of nouns, those we know and those we do not: <i>gizmos, gizmo</i>. Irregular ones are listed; the rest
 * follow the spelling rules of English.
 */
final class EnglishPlurals {
  private static final Map<String, String> IRREGULAR = Map.ofEntries(Map.entry("people", "person"),
      Map.entry("men", "man"), Map.entry("women", "woman"), Map.entry("children", "child"),
      Map.entry("teeth", "tooth"), Map.entry("feet", "foot"), Map.entry("mice", "mouse"), Map.entry("geese", "goose"),
      Map.entry("oxen", "ox"), Map.entry("dice", "die"), Map.entry("cacti", "cactus"), Map.entry("loaves", "loaf"),
      Map.entry("knives", "knife"), Map.entry("wolves", "wolf"), Map.entry("shelves", "shelf"),
      Map.entry("calves", "calf"), Map.entry("halves", "half"), Map.entry("scarves", "scarf"),
      Map.entry("leaves", "leaf"), Map.entry("lives", "life"), Map.entry("elves", "elf"), Map.entry("wives", "wife"),
      Map.entry("thieves", "thief"), Map.entry("hooves", "hoof"), Map.entry("firemen", "fireman"),
      Map.entry("snowmen", "snowman"), Map.entry("quizzes", "quiz"), Map.entry("buses", "bus"),
      Map.entry("movies", "movie"), Map.entry("cookies", "cookie"), Map.entry("pies", "pie"),
      Map.entry("brownies", "brownie"), Map.entry("ties", "tie"), Map.entry("zombies", "zombie"),
      Map.entry("smoothies", "smoothie"), Map.entry("hoodies", "hoodie"), Map.entry("genies", "genie"),
      Map.entry("shoes", "shoe"), Map.entry("toes", "toe"), Map.entry("canoes", "canoe"), Map.entry("axes", "axe"),
      Map.entry("gloves", "glove"), Map.entry("olives", "olive"), Map.entry("doves", "dove"),
      Map.entry("hives", "hive"), Map.entry("caves", "cave"), Map.entry("waves", "wave"),
      Map.entry("stoves", "stove"), Map.entry("sleeves", "sleeve"), Map.entry("bees", "bee"));
  private static final Set<String> ALIKE = Set.of("fish", "sheep", "deer", "moose", "bison", "shrimp", "salmon",
      "trout", "goldfish", "jellyfish", "starfish", "aircraft", "popcorn", "lego", "elk", "swine", "quail", "squid");
  private static final Map<String, String> MANY = new HashMap<>();

  static {
    IRREGULAR.forEach((many, one) -> MANY.put(one, many));
  }

  private EnglishPlurals() {}

  /** The noun of a phrase that was used for many, or empty when its last word can't be a plural. */
  static Optional<Noun> ofMany(String phrase) {
    Optional<Noun> known = Nouns.of(phrase);
    if (known.isPresent()) {
      return known.filter(noun -> noun.many().equals(phrase));
    }
    return withHead(phrase, head -> one(head).map(one -> new String[] {one, head}));
  }

  /** The noun of a phrase that was used for one. */
  static Optional<Noun> ofOne(String phrase) {
    Optional<Noun> known = Nouns.of(phrase);
    if (known.isPresent()) {
      return known.filter(noun -> noun.one().equals(phrase));
    }
    return withHead(phrase, head -> IRREGULAR.containsKey(head) || head.length() > 3 && head.endsWith("s")
        && !head.endsWith("ss") && !head.endsWith("us") ? Optional.empty() : Optional.of(new String[] {head, many(head)}));
  }

  private static Optional<Noun> withHead(String phrase, Function<String, Optional<String[]>> forms) {
    int of = phrase.indexOf(" of ");
    String before = of < 0 ? phrase : phrase.substring(0, of);
    String after = of < 0 ? "" : phrase.substring(of);
    int space = before.lastIndexOf(' ');
    String modifiers = before.substring(0, space + 1);
    String head = before.substring(space + 1);
    Optional<Noun> known = Nouns.of(head);
    Optional<String[]> bent = known.isPresent()
        ? Optional.of(new String[] {known.get().one(), known.get().many()})
            .filter(both -> forms.apply(head).isPresent())
        : forms.apply(head);
    return bent.map(both -> new Noun(modifiers + both[0] + after, modifiers + both[1] + after, null, null, null));
  }

  /** The singular of a plural, or empty when the word is none. */
  static Optional<String> one(String many) {
    if (ALIKE.contains(many)) {
      return Optional.of(many);
    }
    if (IRREGULAR.containsKey(many)) {
      return Optional.of(IRREGULAR.get(many));
    }
    Optional<Noun> known = Nouns.of(many);
    if (known.isPresent()) {
      return known.filter(noun -> noun.many().equals(many)).map(Noun::one);
    }
    if (many.length() < 3 || !many.endsWith("s") || many.endsWith("ss") || many.endsWith("us") || many.endsWith("is")
        || many.endsWith("'s")) {
      return Optional.empty();
    }
    if (many.length() > 4 && many.endsWith("ies")) {
      return Optional.of(many.substring(0, many.length() - 3) + "y");
    }
    if (many.endsWith("sses") || many.endsWith("shes") || many.endsWith("ches") || many.endsWith("xes")
        || many.endsWith("zzes") || many.endsWith("oes")) {
      return Optional.of(many.substring(0, many.length() - 2));
    }
    return Optional.of(many.substring(0, many.length() - 1));
  }

  /** The plural of a singular. */
  static String many(String one) {
    if (ALIKE.contains(one)) {
      return one;
    }
    if (MANY.containsKey(one)) {
      return MANY.get(one);
    }
    if (one.matches(".*[^aeiou]y")) {
      return one.substring(0, one.length() - 1) + "ies";
    }
    return one.matches(".*(s|x|z|sh|ch)") ? one + "es" : one + "s";
  }
}
