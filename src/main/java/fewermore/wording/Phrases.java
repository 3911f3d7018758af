package fewermore.wording;

import fewermore.text.SourceSpan;
import fewermore.wording.EnglishVerbs.Verb;
import fewermore.wording.Side.CountedThing;
import fewermore.wording.Side.Place;
import fewermore.wording.Who.Form;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The phrases that statements and questions share, over one sentence's tokens. Every method takes the place it starts
 * at, and returns the phrase with the place after it, or null when there is none.
 *
 * <pre>
 * thing   = plain{1,4} ["of" plain{1,2}]                 red marbles, boxes of crayons
 * place   = preposition [article] plain{1,5} | time      on the top shelf, in Room 12, last week
 * who     = pronoun | name | article plain{1,4} | who's plain{0,3} | name "and" name | plural
 * verb    = adverb* [helper adverb*] form adverb*        has, has found, is using, read for
 * </pre>
 */
final class Phrases {
  record At<T>(T value, int next) {}

  /** Who or what with where: "the jar on the shelf". */
  record Located(Who who, List<Place> places) {}

  static final Set<String> ARTICLES = Set.of("the", "a", "an");
  static final Set<String> POSSESSIVES = Set.of("his", "her", "their", "my", "our", "its", "your");
  static final Set<String> BE = Set.of("is", "are", "was", "were");
  static final Set<String> SUBJECT_PRONOUNS = Set.of("he", "she", "they", "it", "we", "i", "you");
  static final Set<String> OBJECT_PRONOUNS = Set.of("him", "her", "them", "it", "us", "me", "you");
  private static final Set<String> OWN_PRONOUNS = Set.of("his", "hers", "theirs", "mine", "ours", "yours");
  static final Set<String> PREPOSITIONS = Set.of("in", "on", "at", "during", "under", "near", "inside", "outside",
      "after", "before", "from", "for", "with", "to", "by", "beside", "behind", "along", "around", "across", "through",
      "of", "into", "onto", "above", "below", "over", "up", "down", "about");
  private static final Set<String> TIMES = Set.of("yesterday", "today", "tonight", "monday", "tuesday", "wednesday",
      "thursday", "friday", "saturday", "sunday");
  private static final Set<String> TIME_HEADS = Set.of("week", "month", "year", "night", "weekend", "summer", "winter",
      "spring", "fall", "morning", "afternoon", "evening", "monday", "tuesday", "wednesday", "thursday", "friday",
      "saturday", "sunday", "day", "time", "season");
  private static final Set<String> ADVERBS = Set.of("only", "just", "also", "already", "exactly", "even", "really");
  private static final Set<String> HELPERS = Set.of("can", "could", "did", "does", "do");
  private static final Set<String> PARTICLES = Set.of("for", "up", "out");
  /** Capital nouns that a number follows as a name: Room 12. */
  static final Set<String> NUMBERED = Set.of("room", "grade", "class", "team", "bus", "group", "table", "box",
      "bag", "jar", "page", "lane", "bin", "shelf", "day", "week", "game", "round");
  /** Words that can't stand inside a thing or a holder. */
  static final Set<String> CLOSED = Set.of("than", "and", "but", "or", "nor", "so", "if", "when", "while", "because",
      "that", "which", "who", "whom", "whose", "how", "what", "where", "why", "there", "here", "it", "he", "she", "they",
      "we", "you", "i", "him", "them", "us", "me", "to", "in", "on", "at", "by", "for", "from", "with", "of", "into",
      "onto", "as", "most", "each", "every", "all", "some", "any", "no", "not", "both", "either", "neither", "too",
      "also", "only", "just", "then", "now", "later", "after", "before", "still", "again", "the", "a", "an", "this",
      "these", "those", "his", "her", "their", "my", "our", "its", "your", "very", "about", "around", "almost", "up",
      "out", "down", "off", "over", "under", "same", "other", "another", "else", "many", "much", "few", "several",
      "total", "altogether", "twice", "times", "half", "double", "one", "ones", "is", "are", "was", "were", "be", "been",
      "has", "have", "had", "does", "did", "do", "can", "could", "will", "would", "should", "must", "yesterday", "today",
      "tonight", "tomorrow", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "per",
      "however", "compared", "during", "dozen", "dozens", "hundred", "thousand", "least", "nearly", "extra",
      "more", "fewer", "less", "already", "exactly", "together", "nobody", "none", "never", "apiece", "until", "since",
      "whereas", "although", "though", "except", "instead", "near", "inside", "outside", "beside", "behind", "through");

  private final List<Token> tokens;

  Phrases(List<Token> tokens) {
    this.tokens = tokens;
  }

  int size() {
    return tokens.size();
  }

  Token token(int i) {
    return tokens.get(i);
  }

  boolean is(int i, String word) {
    return i >= 0 && i < tokens.size() && tokens.get(i).is(word);
  }

  boolean in(int i, Set<String> words) {
    return i >= 0 && i < tokens.size() && tokens.get(i).in(words);
  }

  boolean type(int i, Token.Type type) {
    return i >= 0 && i < tokens.size() && tokens.get(i).type() == type;
  }

  boolean isAmount(int i) {
    return i >= 0 && i < tokens.size() && tokens.get(i).isAmount();
  }

  SourceSpan span(int from, int to) {
    return tokens.get(from).at().through(tokens.get(to - 1).at());
  }

  private Optional<ComparingWords.Word> comparing(int i) {
    return i < tokens.size() && tokens.get(i).isWord() ? ComparingWords.of(tokens.get(i).low()) : Optional.empty();
  }

  /** A word that may stand inside a thing: small, and neither a closed word nor one that is only a verb. */
  private boolean isPlain(int i) {
    return i < tokens.size() && tokens.get(i).isWord() && !tokens.get(i).capital() && isOpen(i);
  }

  private boolean isOpen(int i) {
    String word = tokens.get(i).low();
    return !CLOSED.contains(word) && !EnglishVerbs.isOnlyVerb(word) && ComparingWords.of(word).isEmpty()
        && !word.endsWith("'") && !word.contains("'");
  }

  /** thing = plain{1,4} ["of" plain{1,2}]; one after 1, else many. */
  At<CountedThing> thing(int from, boolean one) {
    int end = from;
    while (end - from < 5 && isPlain(end) && !(end > from && isUnitBeforeQuality(end))) {
      end++;
    }
    if (end == from || end - from > 4) {
      return null;
    }
    if (is(end, "of") && isPlain(end + 1)) {
      int of = end + 1;
      while (of - end < 4 && isPlain(of)) {
        of++;
      }
      CountedThing whole = counted(from, of, one);
      return whole == null ? null : new At<>(whole, of);
    }
    CountedThing thing = counted(from, end, one);
    return thing == null ? null : new At<>(thing, end);
  }

  private boolean isUnitBeforeQuality(int i) {
    String before = tokens.get(i - 1).low();
    return ComparingWords.isQuality(tokens.get(i).low())
        && (UnitWords.unit(before).isPresent() || EnglishPlurals.one(before).isPresent());
  }

  private CountedThing counted(int from, int to, boolean one) {
    List<String> words = new ArrayList<>();
    for (int i = from; i < to; i++) {
      words.add(tokens.get(i).low());
    }
    SourceSpan at = span(from, to);
    Optional<UnitWords.Unit> unit = words.size() == 1 ? UnitWords.unit(words.get(0)) : Optional.empty();
    if (unit.isPresent()) {
      return new CountedThing(unit.get().noun(), List.of(unit.get().noun().one()), unit.get(), at);
    }
    String phrase = String.join(" ", words);
    int head = words.contains("of") ? words.indexOf("of") - 1 : words.size() - 1;
    for (String word : words.subList(0, Math.max(head, 0))) {
      boolean plural = Nouns.of(word).filter(known -> known.many().equals(word) && !known.one().equals(word)).isPresent();
      if (plural) {
        return null;
      }
    }
    Optional<Noun> noun = one ? EnglishPlurals.ofOne(phrase) : EnglishPlurals.ofMany(phrase);
    return noun.map(found -> new CountedThing(found, List.of(found.one().split(" ")), null, at)).orElse(null);
  }

  /** The thing a money sign stands for. */
  static CountedThing money(Token token) {
    UnitWords.Unit unit = UnitWords.unit(token.low()).orElseThrow();
    return new CountedThing(unit.noun(), List.of(unit.noun().one()), unit, token.at());
  }

  /** place = preposition … | time; an empty key tells nothing apart: "in her bag", "for 3 days". */
  At<Place> place(int from) {
    At<Place> time = time(from);
    if (time != null) {
      return time;
    }
    if (!in(from, PREPOSITIONS) || is(from, "by") && isAmount(from + 1)) {
      return null;
    }
    At<Place> timeAfter = time(from + 1);
    if (timeAfter != null) {
      return new At<>(new Place(timeAfter.value().key(), timeAfter.value().shown(), span(from, timeAfter.next())),
          timeAfter.next());
    }
    int start = from + 1;
    boolean own = in(start, POSSESSIVES);
    if (own || in(start, ARTICLES) || in(start, Set.of("this", "that"))) {
      start++;
    }
    int end = start;
    boolean counted = false;
    while (end < size() && end - start < 6 && isPlaceWord(end)) {
      counted |= tokens.get(end).value() >= 0;
      end++;
    }
    if (end == start) {
      return null;
    }
    String key = own || counted && !in(start, NUMBERED) ? "" : words(start, end);
    return new At<>(new Place(key, shown(from + 1, end), span(from, end)), end);
  }

  private boolean isPlaceWord(int i) {
    Token token = tokens.get(i);
    if (token.type() == Token.Type.NUMBER || token.type() == Token.Type.MONEY || token.type() == Token.Type.LABEL) {
      return true;
    }
    return token.isWord() && (isOpen(i) || token.low().endsWith("'s") || token.low().endsWith("s'")
        || token.is("o'clock") || token.in(POSSESSIVES) && in(i - 1, PREPOSITIONS));
  }

  private At<Place> time(int from) {
    if (in(from, TIMES)) {
      boolean part = from + 1 < size() && in(from + 1, Set.of("morning", "afternoon", "evening", "night"));
      return new At<>(new Place(words(from, from + (part ? 2 : 1)), shown(from, from + (part ? 2 : 1)),
          span(from, from + (part ? 2 : 1))), from + (part ? 2 : 1));
    }
    if (in(from, Set.of("last", "this", "that", "the")) && in(from + 1, TIME_HEADS) && !is(from, "the")) {
      String shown = tokens.get(from).low() + " " + shown(from + 1, from + 2);
      return new At<>(new Place(words(from, from + 2), shown, span(from, from + 2)), from + 2);
    }
    return null;
  }

  /** place*, as far as they go. */
  At<List<Place>> places(int from) {
    List<Place> places = new ArrayList<>();
    int here = from;
    for (At<Place> place = place(here); place != null; place = place(here)) {
      if (!place.value().key().isEmpty()) {
        places.add(place.value());
      }
      here = place.next();
    }
    return new At<>(places, here);
  }

  /** who with places, which must fill the stretch; null otherwise. */
  Located located(int from, int to) {
    Who whole = who(from, to);
    if (whole != null) {
      return new Located(whole, List.of());
    }
    for (int split = from + 1; split < to; split++) {
      if (in(split, PREPOSITIONS) || in(split, TIMES)) {
        Who who = who(from, split);
        At<List<Place>> places = places(split);
        if (who != null && places.next() == to) {
          return new Located(who, places.value());
        }
      }
    }
    return null;
  }

  /** who, which must fill the stretch; null otherwise. */
  Who who(int from, int to) {
    if (to <= from || to - from > 7 || to > size()) {
      return null;
    }
    for (int i = from; i < to; i++) {
      if (tokens.get(i).isMark()) {
        return null;
      }
    }
    if (to - from == 1) {
      Who one = oneWord(from);
      if (one != null) {
        return one;
      }
    }
    Who group = group(from, to);
    if (group != null) {
      return group;
    }
    Who owned = owned(from, to);
    if (owned != null) {
      return owned;
    }
    if (in(from, ARTICLES)) {
      return withArticle(from, to);
    }
    return bareOrName(from, to);
  }

  private Who oneWord(int i) {
    Token token = tokens.get(i);
    if (token.in(SUBJECT_PRONOUNS) || token.in(OBJECT_PRONOUNS)) {
      return Who.of(Form.PRONOUN, token.low(), token.low(), token.at());
    }
    if (token.in(OWN_PRONOUNS)) {
      Who owner = Who.of(Form.PRONOUN, ownerOf(token.low()), token.low(), token.at());
      return new Who(Form.OWNED, owner.key() + "'s", token.low(), token.at(), owner, null);
    }
    if (token.in(Set.of("that", "this"))) {
      return Who.of(Form.POINTER, token.low(), token.low(), token.at());
    }
    return null;
  }

  private static String ownerOf(String possessive) {
    return switch (possessive) {
      case "his" -> "he";
      case "her", "hers" -> "she";
      case "their", "theirs" -> "they";
      case "my", "mine" -> "i";
      case "our", "ours" -> "we";
      case "your", "yours" -> "you";
      default -> "it";
    };
  }

  /** name "and" name. */
  private Who group(int from, int to) {
    for (int i = from + 1; i < to - 1; i++) {
      if (is(i, "and")) {
        Who first = who(from, i);
        Who second = who(i + 1, to);
        return first == null || second == null
            ? null : Who.of(Form.GROUP, first.key() + " and " + second.key(), shown(from, to), span(from, to));
      }
    }
    return null;
  }

  /** who's plain{0,3} | his plain{1,3}. */
  private Who owned(int from, int to) {
    if (in(from, POSSESSIVES) && to - from > 1) {
      Who owner = Who.of(Form.PRONOUN, ownerOf(tokens.get(from).low()), tokens.get(from).low(), tokens.get(from).at());
      return ownedBy(owner, from, from + 1, to);
    }
    for (int i = from; i < to; i++) {
      String word = tokens.get(i).isWord() ? tokens.get(i).low() : "";
      if (word.endsWith("'s") || word.endsWith("s'")) {
        String bare = word.endsWith("'s") ? word.substring(0, word.length() - 2) : word.substring(0, word.length() - 1);
        SourceSpan at = tokens.get(from).at().through(tokens.get(i).at());
        int cut = word.length() - bare.length();
        SourceSpan ownerAt = new SourceSpan(at.start(), at.end() - cut);
        boolean article = in(from, ARTICLES);
        if (i > from && !article && !isNamed(from, i)) {
          return null;
        }
        String before = i > from + (article ? 1 : 0) ? words(from + (article ? 1 : 0), i) + " " : "";
        String shownBefore = i > from ? shown(from, i) + " " : "";
        String name = tokens.get(i).capital() ? tokens.get(i).text().substring(0, bare.length()) : bare;
        Who owner = Who.of(Form.NAMED, before + bare, shownBefore + name, ownerAt);
        return ownedBy(owner, from, i + 1, to);
      }
    }
    return null;
  }

  private Who ownedBy(Who owner, int from, int noun, int to) {
    for (int i = noun; i < to; i++) {
      if (!isPlain(i)) {
        return null;
      }
    }
    String owned = noun == to ? null : words(noun, to);
    String key = owner.key() + "'s" + (owned == null ? "" : " " + owned);
    return new Who(Form.OWNED, key, shown(from, to), span(from, to), owner, owned);
  }

  private Who withArticle(int from, int to) {
    for (int i = from + 1; i < to; i++) {
      boolean open = tokens.get(i).isWord() && isOpen(i) || is(i, "of") && i > from + 1 && i < to - 1;
      if (!open && !isNumberedName(i)) {
        return null;
      }
    }
    return to - from < 2 ? null : Who.of(Form.NAMED, words(from + 1, to), shown(from, to), span(from, to));
  }

  private boolean isNumberedName(int i) {
    return type(i, Token.Type.NUMBER) && in(i - 1, NUMBERED);
  }

  private Who bareOrName(int from, int to) {
    if (isNamed(from, to)) {
      return Who.of(Form.NAMED, words(from, to), shown(from, to), span(from, to));
    }
    for (int i = from; i < to; i++) {
      if (!tokens.get(i).isWord() || !isOpen(i) || tokens.get(i).capital() && i > from) {
        return null;
      }
    }
    CountedThing plural = counted(from, to, false);
    return plural == null ? null : Who.of(Form.BARE, words(from, to), words(from, to), span(from, to));
  }

  /** name = capital{1,3} | title capital | numbered number; the first word of a sentence may be a common noun. */
  private boolean isNamed(int from, int to) {
    boolean numbered = to - from == 2 && isNumberedName(to - 1) && tokens.get(from).capital();
    if (numbered) {
      return true;
    }
    for (int i = from; i < to; i++) {
      boolean letter = i > from && tokens.get(i).text().length() == 1;
      if (!tokens.get(i).isWord() || !tokens.get(i).capital() || !isOpen(i) && !letter) {
        return false;
      }
    }
    if (from == 0 && to - from == 1) {
      String word = tokens.get(from).low();
      boolean child = ChildNames.pronoun(tokens.get(from).text()) != Pronoun.NONE;
      return child || Nouns.of(word).isEmpty() || EnglishPlurals.one(word).isEmpty();
    }
    return to - from <= 3;
  }

  /** The words in small letters, articles left out. */
  private String words(int from, int to) {
    StringBuilder words = new StringBuilder();
    for (int i = from; i < to; i++) {
      Token token = tokens.get(i);
      if (!token.in(ARTICLES) || token.capital() && i > from) {
        words.append(words.length() == 0 ? "" : " ").append(token.isWord() ? token.low() : String.valueOf(token.value()));
      }
    }
    return words.toString();
  }

  /** As a page shows it: articles, and a noun that only begins its sentence, in small letters. */
  String shown(int from, int to) {
    StringBuilder words = new StringBuilder();
    for (int i = from; i < to; i++) {
      Token token = tokens.get(i);
      boolean letter = i > from && token.text().length() == 1;
      boolean small = !token.capital() || token.in(CLOSED) && !token.is("i") && !token.in(TIMES) && !letter;
      String word = !token.isWord() ? String.valueOf(token.value()) : small ? token.low() : token.text();
      words.append(words.length() == 0 ? "" : " ").append(word);
    }
    return words.toString();
  }

  /** verb = adverb* [helper adverb*] form adverb* particle?; the last word is the form. */
  At<Verb> verb(int from) {
    int here = skipAdverbs(from);
    if (here >= size() || !tokens.get(here).isWord()) {
      return null;
    }
    String word = tokens.get(here).low();
    if (HELPERS.contains(word)) {
      int base = skipAdverbs(here + 1);
      Optional<Verb> verb = base < size() && tokens.get(base).isWord()
          ? EnglishVerbs.ofBase(tokens.get(base).low()) : Optional.empty();
      if (verb.isPresent()) {
        return new At<>(verb.get(), afterParticle(base + 1));
      }
      return null;
    }
    if (Set.of("has", "have", "had").contains(word)) {
      int participle = skipAdverbs(here + 1);
      Optional<Verb> verb = participle < size() && tokens.get(participle).isWord()
          ? EnglishVerbs.ofPerfect(tokens.get(participle).low()) : Optional.empty();
      if (verb.isPresent()) {
        return new At<>(tokens.get(participle).is("got") ? EnglishVerbs.of("has").orElseThrow() : verb.get(),
            afterParticle(participle + 1));
      }
    }
    if (BE.contains(word)) {
      int ing = skipAdverbs(here + 1);
      if (ing < size() && tokens.get(ing).isWord() && tokens.get(ing).low().endsWith("ing")) {
        Optional<Verb> verb = EnglishVerbs.of(tokens.get(ing).low());
        if (verb.isPresent()) {
          return new At<>(verb.get(), afterParticle(ing + 1));
        }
      }
    }
    Optional<Verb> verb = EnglishVerbs.of(word);
    if (verb.isEmpty() && isUnknownThird(here)) {
      verb = Optional.of(new Verb(word.substring(0, word.length() - 1), EnglishVerbs.Sense.ACT, false));
    }
    return verb.isEmpty() ? null : new At<>(verb.get(), afterParticle(here + 1));
  }

  /** "Ana juggles 12": a word in -s between a name and a number. */
  private boolean isUnknownThird(int i) {
    Token token = tokens.get(i);
    return i > 0 && token.low().length() > 3 && token.low().endsWith("s") && !token.capital() && isAmount(i + 1)
        && (tokens.get(i - 1).capital() || tokens.get(i - 1).in(SUBJECT_PRONOUNS));
  }

  private int skipAdverbs(int from) {
    int here = from;
    while (in(here, ADVERBS)) {
      here++;
    }
    return here;
  }

  private int afterParticle(int from) {
    int here = skipAdverbs(from);
    if (in(here, PARTICLES) && isAmount(skipAdverbs(here + 1))) {
      here = skipAdverbs(here + 1);
    }
    if (is(here, "a") && is(here + 1, "total") && is(here + 2, "of") && isAmount(here + 3)) {
      here += 3;
    }
    return here;
  }
}
