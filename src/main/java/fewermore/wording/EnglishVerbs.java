package fewermore.wording;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The verbs a problem is told with. Forms in the list are known; a word in <i>-ed</i> is taken for the past of a verb
 * we do not know.
 */
final class EnglishVerbs {

  /** What a verb says of an amount. */
  enum Sense {
    /** has, owns: the amount is there. */
    HAVE,
    /** is, are. */
    BE,
    /** found, made, bought: the amount is there afterwards. */
    GAIN,
    /** read, walked, gave: the amount is that of the deed. */
    ACT,
    /** weighs, costs. */
    MEASURE,
    /** needs, wants: a goal. */
    NEED
  }

  /**
   * A verb in one of its forms.
   *
   * @param base the form that names it: "find"
   * @param changes whether the deed changes an amount that was there: "eat"
   */
  record Verb(String base, Sense sense, boolean changes) {

    /** Whether an amount told with this verb and one told with the other are amounts of the same sort. */
    boolean goesWith(Verb other) {
      return base.equals(other.base) || stays() && other.stays() || measures() && other.measures();
    }

    private boolean stays() {
      return sense == Sense.HAVE || sense == Sense.BE || sense == Sense.GAIN;
    }

    private boolean measures() {
      return sense == Sense.BE || sense == Sense.MEASURE;
    }
  }

  private static final Map<String, Verb> FORMS = new HashMap<>();
  private static final Set<String> BASES = new HashSet<>();
  private static final Set<String> PARTICIPLES = new HashSet<>();
  /** Forms that are never nouns, so that they can't stand inside a thing or a holder. */
  private static final Set<String> ONLY_VERBS = new HashSet<>();

  static {
    irregular(Sense.HAVE, false, "have has had had", "hold holds held held", "keep keeps kept kept");
    irregular(Sense.BE, false, "be is was been", "be are were been");
    irregular(Sense.GAIN, false, "find finds found found", "make makes made made", "get gets got gotten",
        "buy buys bought bought", "catch catches caught caught", "build builds built built",
        "win wins won won", "grow grows grew grown", "bring brings brought brought");
    irregular(Sense.ACT, false, "read reads read read", "write writes wrote written", "draw draws drew drawn",
        "see sees saw seen", "swim swims swam swum", "run runs ran run", "ride rides rode ridden",
        "drive drives drove driven", "hear hears heard heard", "sing sings sang sung",
        "sleep sleeps slept slept", "throw throws threw thrown", "hit hits hit hit", "feed feeds fed fed",
        "do does did done", "know knows knew known", "teach teaches taught taught", "go goes went gone",
        "come comes came come", "blow blows blew blown", "fly flies flew flown", "dig digs dug dug",
        "sit sits sat sat", "stand stands stood stood", "wear wears wore worn", "choose chooses chose chosen",
        "meet meets met met", "tell tells told told", "say says said said", "send sends sent sent",
        "lay lays laid laid", "put puts put put", "fold folds folded folded", "think thinks thought thought");
    irregular(Sense.ACT, true, "give gives gave given", "take takes took taken", "eat eats ate eaten",
        "drink drinks drank drunk", "lose loses lost lost", "sell sells sold sold", "break breaks broke broken",
        "spend spends spent spent", "leave leaves left left", "steal steals stole stolen", "lend lends lent lent",
        "fall falls fell fallen", "cut cuts cut cut");
    irregular(Sense.MEASURE, false, "cost costs cost cost");
    regular(Sense.HAVE, false, "own", "contain", "carry");
    regular(Sense.GAIN, false, "collect", "pick", "gather", "bake", "earn", "save", "score", "receive", "cook",
        "harvest", "create");
    regular(Sense.ACT, false, "plant", "pack", "use", "fill", "walk", "jump", "hop", "count", "wait", "work", "play",
        "practice", "study", "travel", "hike", "bike", "climb", "paint", "color", "stack", "clap", "skip", "knit",
        "sew", "wash", "deliver", "pull", "push", "kick", "bounce", "juggle", "watch", "visit", "answer", "solve",
        "spell", "learn", "print", "cross", "listen", "look", "rake", "shovel", "sweep", "mail", "like", "prefer",
        "vote", "dance", "camp", "fish", "stay", "live", "toss", "roll", "stick", "glue", "string", "tie", "crawl",
        "slide", "skate", "row", "sail", "load", "stamp", "water", "decorate", "sort", "help", "pass", "serve",
        "guess", "type", "call", "ask", "start", "open", "hang", "follow", "notice");
    regular(Sense.ACT, true, "share", "trade", "borrow", "return", "donate", "remove", "add", "drop", "join",
        "arrive", "hide", "subtract", "die", "hatch", "pop", "burn", "melt", "disappear", "refill", "replace",
        "wander", "escape", "hand", "pour", "waste");
    regular(Sense.MEASURE, false, "weigh", "measure", "last");
    regular(Sense.NEED, false, "need", "want");
    ONLY_VERBS.addAll(Set.of("has", "have", "had", "is", "are", "was", "were", "been", "be", "does", "did", "do",
        "gives", "gave", "found", "bought", "made", "got", "caught", "brought", "wrote", "drew", "saw", "ate", "took",
        "lost", "sold", "broke", "went", "came", "threw", "won", "grew", "kept", "held", "told", "said", "sent", "rode",
        "drove", "ran", "swam", "wore", "chose", "knew", "taught", "built", "find", "buy", "make", "get", "read",
        "collected", "picked", "planted", "scored", "earned", "saved", "used", "baked", "filled", "packed", "walked",
        "waited", "worked", "hopped", "jumped", "weighs", "weigh", "costs", "needs", "collect", "sell", "see", "take",
        "write", "eat", "lose", "give", "spent", "fell", "put", "wants", "sees", "finds", "makes", "gets", "buys"));
  }

  private EnglishVerbs() {}

  /** The verb with this form. */
  static Optional<Verb> of(String form) {
    Verb known = FORMS.get(form);
    if (known != null) {
      return Optional.of(known);
    }
    if (form.length() > 5 && form.endsWith("ed") && Nouns.of(form).isEmpty()) {
      return Optional.of(new Verb(form.substring(0, form.length() - 2), Sense.ACT, false));
    }
    if (form.length() > 5 && form.endsWith("ing")) {
      return ofParticiple(form.substring(0, form.length() - 3));
    }
    return Optional.empty();
  }

  private static Optional<Verb> ofParticiple(String stem) {
    Verb verb = FORMS.get(stem);
    if (verb == null) {
      verb = FORMS.get(stem + "e");
    }
    if (verb == null && stem.length() > 2 && stem.charAt(stem.length() - 1) == stem.charAt(stem.length() - 2)) {
      verb = FORMS.get(stem.substring(0, stem.length() - 1));
    }
    return Optional.ofNullable(verb);
  }

  /** The verb whose base form, the one after <i>did</i>, this is. */
  static Optional<Verb> ofBase(String form) {
    return BASES.contains(form) ? Optional.ofNullable(FORMS.get(form)) : Optional.empty();
  }

  /** The verb whose form after <i>has</i> this is. */
  static Optional<Verb> ofPerfect(String form) {
    if (PARTICIPLES.contains(form)) {
      return Optional.ofNullable(FORMS.get(form));
    }
    return form.endsWith("ed") ? of(form) : Optional.empty();
  }

  static boolean isOnlyVerb(String form) {
    return ONLY_VERBS.contains(form);
  }

  private static void irregular(Sense sense, boolean changes, String... rows) {
    for (String row : rows) {
      String[] forms = row.split(" ");
      Verb verb = new Verb(forms[0], sense, changes);
      BASES.add(forms[0]);
      PARTICIPLES.add(forms[3]);
      for (String form : forms) {
        FORMS.putIfAbsent(form, verb);
      }
    }
  }

  private static void regular(Sense sense, boolean changes, String... bases) {
    for (String base : bases) {
      Verb verb = new Verb(base, sense, changes);
      BASES.add(base);
      PARTICIPLES.add(past(base));
      FORMS.putIfAbsent(base, verb);
      FORMS.putIfAbsent(third(base), verb);
      FORMS.putIfAbsent(past(base), verb);
    }
  }

  private static String third(String base) {
    if (base.matches(".*[^aeiou]y")) {
      return base.substring(0, base.length() - 1) + "ies";
    }
    return base.matches(".*(s|sh|ch|x|z|o)") ? base + "es" : base + "s";
  }

  private static String past(String base) {
    if (base.endsWith("e")) {
      return base + "d";
    }
    if (base.matches(".*[^aeiou]y")) {
      return base.substring(0, base.length() - 1) + "ied";
    }
    boolean doubled = base.matches("[^aeiou]*[aeiou][bdgmnpt]");
    return doubled ? base + base.charAt(base.length() - 1) + "ed" : base + "ed";
  }
}
