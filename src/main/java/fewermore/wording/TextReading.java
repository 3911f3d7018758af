package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import fewermore.wording.EnglishVerbs.Verb;
import fewermore.wording.Fact.Amount;
import fewermore.wording.Fact.AskedAmount;
import fewermore.wording.Fact.AskedDifference;
import fewermore.wording.Fact.Compared;
import fewermore.wording.Phrases.At;
import fewermore.wording.ReadText.Declined;
import fewermore.wording.ReadText.NounInText;
import fewermore.wording.ReadText.NumberInText;
import fewermore.wording.ReadText.Part;
import fewermore.wording.ReadText.Place;
import fewermore.wording.ReadText.Reason;
import fewermore.wording.ReadText.Understood;
import fewermore.wording.Side.CountedThing;
import fewermore.wording.StoryFinder.Found;
import fewermore.wording.StoryFinder.Lost;
import fewermore.wording.StoryFinder.Outcome;
import fewermore.wording.Who.Form;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** One reading of one text, from its sentences to the story or the reason why there is none. */
final class TextReading {
  private static final Set<String> SPANISH = Set.of("tiene", "tienen", "cuántos", "cuántas", "cuantos", "cuantas",
      "cuánto", "cuál", "más", "menos", "hay", "encontró", "mide", "pesa", "años", "diferencia", "conchas", "niños");
  private static final Set<String> BEFORE_HOW = Set.of("find", "tell", "then", "so", "figure", "out", "work", "can",
      "you", "please", "show", "write", "and", "me", "of", "exactly");
  private static final Set<String> ASKED = Set.of("many", "much", "long", "tall", "old", "far", "high", "deep", "wide",
      "heavy", "warm", "is", "was");
  private static final Set<String> IMPERATIVE = Set.of("find", "tell", "figure", "work", "show", "write");
  private static final Set<String> CONDITIONS = Set.of("if", "when", "suppose", "since");
  private static final Set<String> AMOUNT_WORDS = Set.of("some", "all", "rest", "another", "extra", "any", "few",
      "several", "many", "lots", "additional", "fewer", "more", "less");
  private static final Set<String> LATER = Set.of("then", "later", "now", "afterward", "afterwards", "again", "still",
      "anymore", "until");
  private static final Set<String> MOVING = Set.of("go", "come", "get", "buy", "find", "receive", "put", "bring",
      "throw", "move", "fly", "send", "win", "pick", "collect", "make", "catch", "leave");

  private final String text;
  private final List<TextSentence> sentences;
  private final List<NumberInText> numbers;
  private final Discourse discourse = new Discourse();
  private final List<Fact> facts = new ArrayList<>();
  private Fact asked;
  private SourceSpan question;

  private TextReading(String text, List<TextSentence> sentences) {
    this.text = text;
    this.sentences = sentences;
    this.numbers = sentences.stream().flatMap(sentence -> sentence.tokens().stream())
        .filter(token -> token.value() >= 0).map(token -> new NumberInText(token.value(), token.at())).toList();
  }

  static ReadText of(String text) {
    SourceSpan whole = new SourceSpan(0, text.length());
    if (text.isBlank()) {
      return new Declined(text, Reason.EMPTY, List.of(whole), "There is no text.", "A problem was expected.",
          "Type the story and its question.", List.of(), List.of(), List.of());
    }
    if (text.length() > WordingReader.LONGEST) {
      return new Declined(text, Reason.TOO_LONG, List.of(whole), "The text has " + text.length() + " characters.",
          "One problem was expected, " + WordingReader.LONGEST + " at most.",
          "Leave an empty line between problems.", List.of(), List.of(), List.of());
    }
    return new TextReading(text, EnglishTokens.of(text)).read();
  }

  private ReadText read() {
    Refusal refusal = notEnglish();
    if (refusal == null) {
      refusal = LookAlikes.in(sentences);
    }
    if (refusal == null) {
      refusal = sentences();
    }
    if (refusal == null && asked == null) {
      refusal = new Refusal(Reason.NO_QUESTION, whole(), "No sentence asks.", "A question was expected.",
          "End with a question, for example: How many does she have?");
    }
    if (refusal == null) {
      placesAsHolders();
      refusal = change();
    }
    if (refusal != null) {
      return declined(refusal);
    }
    return found();
  }

  private Refusal notEnglish() {
    Token first = null;
    int spanish = 0;
    for (TextSentence sentence : sentences) {
      for (Token token : sentence.tokens()) {
        if (token.in(SPANISH) || token.type() == Token.Type.OTHER && token.low().equals("¿")) {
          first = first == null ? token : first;
          spanish++;
        }
      }
    }
    return spanish < 2 ? null : new Refusal(Reason.NOT_ENGLISH, first.at(), "This text is Spanish.",
        "Only English is read.", "Type the English text, and give the Spanish words with it.");
  }

  private Refusal sentences() {
    for (TextSentence sentence : sentences) {
      Refusal refusal = sentence(sentence);
      if (refusal != null) {
        return refusal;
      }
    }
    return null;
  }

  private Refusal sentence(TextSentence sentence) {
    List<Token> tokens = sentence.tokens();
    int how = askingWord(sentence);
    if (how >= 0) {
      return asking(sentence, how);
    }
    if (sentence.asks()) {
      return new Refusal(Reason.NO_NUMBER_ASKED, sentence.at(), "This question does not ask how many or how much.",
          "A question for a number was expected.", "Ask how many, how much, or what the difference is.");
    }
    if (sentence.hasNumber() || hasComparing(tokens)) {
      return telling(sentence, 0, tokens.size());
    }
    mentionNames(sentence);
    return null;
  }

  /** Where the question of a sentence begins, or -1 when it does not ask. */
  private static int askingWord(TextSentence sentence) {
    List<Token> tokens = sentence.tokens();
    for (int i = 0; i < tokens.size(); i++) {
      if (tokens.get(i).is("how") || tokens.get(i).is("what")) {
        boolean imperative = (tokens.get(0).in(IMPERATIVE) || i == 0) && i + 1 < tokens.size()
            && tokens.get(i + 1).in(ASKED);
        return sentence.asks() || imperative ? i : -1;
      }
    }
    if (tokens.get(0).is("find") && sentence.tokens().stream().anyMatch(token -> token.is("difference"))) {
      return 0;
    }
    return -1;
  }

  private Refusal asking(TextSentence sentence, int how) {
    List<Token> tokens = sentence.tokens();
    if (tokens.stream().filter(token -> token.in(Set.of("how", "what"))).count() > 1 || asked != null
        || tokens.stream().limit(how).anyMatch(token -> token.is("who") && tokens.indexOf(token) == 0)) {
      return new Refusal(Reason.TWO_QUESTIONS, sentence.at(), "Two things are asked.", "One question was expected.",
          "Ask one of them.");
    }
    int end = how;
    int from = 0;
    while (end > 0 && (tokens.get(end - 1).isMark() || tokens.get(end - 1).in(BEFORE_HOW) || tokens.get(end - 1).is("by"))) {
      end--;
    }
    if (end == how && end > 0) {
      return unread(sentence, 0, tokens.size());
    }
    List<Side.Place> lead = List.of();
    if (end > 0) {
      if (tokens.get(0).in(CONDITIONS)) {
        from = 1;
        if (from < end && tokens.get(from).is("that")) {
          from++;
        }
      }
      At<List<Side.Place>> place = new Phrases(tokens).places(from);
      if (place.next() == end && from == 0) {
        lead = place.value();
      } else {
        Refusal refusal = telling(sentence, from, end);
        if (refusal != null) {
          return refusal;
        }
      }
    }
    int to = how;
    while (to < tokens.size() && !tokens.get(to).in(CONDITIONS)) {
      to++;
    }
    int after = to + 1;
    while (to > how && tokens.get(to - 1).isMark()) {
      to--;
    }
    List<Fact> parsed = new QuestionGrammar(new Phrases(tokens), to).question(how, lead);
    if (parsed == null) {
      return unread(sentence, how, to);
    }
    if (after < tokens.size()) {
      Refusal refusal = telling(sentence, after, tokens.size());
      if (refusal != null) {
        return refusal;
      }
    }
    question = tokens.get(how).at().through(end == 0 && after >= tokens.size() ? sentence.at()
        : tokens.get(to - 1).at());
    for (Fact fact : parsed) {
      Fact resolved = discourse.resolve(fact);
      if (resolved == null) {
        return discourse.refusal();
      }
      if (resolved instanceof Amount) {
        facts.add(resolved);
      } else {
        asked = resolved;
      }
    }
    return null;
  }

  private Refusal telling(TextSentence sentence, int from, int to) {
    List<Token> part = sentence.tokens().subList(from, to);
    int start = 0;
    while (start < part.size() && (part.get(start).in(Set.of("and", "but", "so", "also", "suppose", "however"))
        || start > 0 && part.get(start).type() == Token.Type.COMMA)) {
      start++;
    }
    for (Token token : part) {
      if (token.in(LATER)) {
        return new Refusal(Reason.CHANGE, token.at(), "‘" + token.low() + "’ tells of an amount that has changed.",
            "Two amounts that stay were expected.", "Compare what two have.");
      }
    }
    List<Fact> parsed = new StatementGrammar(new Phrases(part)).statements(start, part.size());
    if (parsed == null) {
      return unread(sentence, from, to);
    }
    for (Fact fact : parsed) {
      Fact resolved = discourse.resolve(fact);
      if (resolved == null) {
        return discourse.refusal();
      }
      facts.add(resolved);
    }
    return null;
  }

  /** "in the red box" and "the red box" are the same holder, where both are said. */
  private void placesAsHolders() {
    Map<String, Who> holders = new LinkedHashMap<>();
    for (Side side : sides(new Alternative(facts, asked))) {
      if (side.who() != null && !side.who().is(Form.GROUP) && !side.who().is(Form.BARE)) {
        holders.putIfAbsent(side.who().key(), side.who());
      }
    }
    boolean said = sides(new Alternative(facts, asked)).stream()
        .anyMatch(side -> isPlaced(side) && holders.containsKey(side.places().get(0).key()));
    if (said) {
      facts.replaceAll(fact -> withHolders(fact, holders));
      asked = withHolders(asked, holders);
    }
  }

  private static boolean isPlaced(Side side) {
    return side != null && side.who() == null && side.places().size() == 1;
  }

  private static Fact withHolders(Fact fact, Map<String, Who> holders) {
    if (fact instanceof Amount one) {
      return new Amount(withHolder(one.side(), holders), one.number());
    }
    if (fact instanceof Compared one) {
      return new Compared(withHolder(one.subject(), holders), withHolder(one.reference(), holders), one.wording(),
          one.number(), one.word());
    }
    if (fact instanceof AskedAmount one) {
      return new AskedAmount(withHolder(one.side(), holders));
    }
    if (fact instanceof AskedDifference one) {
      return new AskedDifference(withHolder(one.subject(), holders), withHolder(one.reference(), holders),
          one.wording(), one.word(), one.goal());
    }
    return fact;
  }

  private static Side withHolder(Side side, Map<String, Who> holders) {
    if (!isPlaced(side)) {
      return side;
    }
    Side.Place place = side.places().get(0);
    Who who = holders.getOrDefault(place.key(), Who.of(Form.NAMED, place.key(), place.shown(), place.at()));
    return side.with(List.of())
        .with(new Who(who.form(), who.key(), who.shown(), place.at(), who.owner(), who.owned()));
  }

  private static boolean hasComparing(List<Token> tokens) {
    return tokens.stream().anyMatch(token -> token.isWord() && ComparingWords.of(token.low()).isPresent()
        || token.is("than"));
  }

  private Refusal unread(TextSentence sentence, int from, int to) {
    List<Token> part = sentence.tokens().subList(from, to);
    SourceSpan at = part.isEmpty() ? sentence.at() : part.get(0).at().through(part.get(part.size() - 1).at());
    for (int i = 0; i + 1 < part.size(); i++) {
      boolean than = part.subList(i, part.size()).stream().anyMatch(token -> token.is("than"));
      if (part.get(i).isAmount() && part.get(i + 1).is("more") && !than) {
        return new Refusal(Reason.MORE_WITHOUT_THAN, part.get(i + 1).at(),
            "It is not said more than who or what; it may be an amount that is added.",
            "‘than’ and the other one were expected.", "Say it in full, with ‘than’ and a name.");
      }
    }
    for (Token token : part) {
      if (token.is("difference")) {
        return new Refusal(Reason.WHO_HAS_MORE, token.at(), "I can't tell who has more.",
            "A sentence that says who has more or fewer was expected.", "Say which of the two has how many more than the other.");
      }
      Optional<Verb> verb = token.isWord() ? EnglishVerbs.of(token.low()) : Optional.empty();
      if (verb.isPresent() && verb.get().changes()) {
        return new Refusal(Reason.CHANGE, token.at(), "‘" + token.low() + "’ may tell of an amount that changes.",
            "Two amounts that stay were expected.", "Compare what two have.");
      }
    }
    return new Refusal(Reason.UNREAD, at, "I can't read this part for sure.",
        "One fact a sentence was expected, for example: Ana has 12 more shells than Ben.",
        "Say it in a plainer sentence, or set the roles by hand.");
  }

  /** Names in a sentence without numbers: a pronoun may mean them. */
  private void mentionNames(TextSentence sentence) {
    List<Token> tokens = sentence.tokens();
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      boolean name = token.capital() && !Phrases.CLOSED.contains(token.low()) && !token.low().contains("'")
          && (i > 0 || capitalInside(token.low()) || ChildNames.pronoun(token.text()) != Pronoun.NONE);
      if (name) {
        discourse.mention(Who.of(Form.NAMED, token.low(), token.text(), token.at()));
      }
    }
  }

  private boolean capitalInside(String word) {
    return sentences.stream().anyMatch(sentence -> sentence.tokens().stream().skip(1)
        .anyMatch(token -> token.capital() && token.low().equals(word)));
  }

  /** Sentences without numbers that tell of a change. */
  private Refusal change() {
    Set<String> told = new HashSet<>();
    for (Fact fact : facts) {
      Verb verb = fact instanceof Amount amount ? amount.side().verb()
          : fact instanceof Compared one ? one.subject().verb() : null;
      if (verb != null) {
        told.add(verb.base());
      }
    }
    for (TextSentence sentence : sentences) {
      boolean isQuestion = question.start() >= sentence.at().start() && question.start() < sentence.at().end();
      if (sentence.hasNumber() || isQuestion) {
        continue;
      }
      boolean amountWord = sentence.tokens().stream().anyMatch(token -> token.in(AMOUNT_WORDS));
      for (Token token : sentence.tokens()) {
        Optional<Verb> verb = token.isWord() ? EnglishVerbs.of(token.low()) : Optional.empty();
        boolean changes = verb.isPresent() && !told.contains(verb.get().base())
            && (verb.get().changes() || amountWord && MOVING.contains(verb.get().base()));
        if (changes) {
          return new Refusal(Reason.CHANGE, token.at(), "‘" + token.low() + "’ may tell of an amount that changes.",
              "Two amounts that stay were expected.", "Leave this sentence out, or use another kind of problem.");
        }
      }
    }
    return null;
  }

  private ReadText found() {
    Set<Comparison> stories = new LinkedHashSet<>();
    ReadText understood = null;
    Refusal first = null;
    for (Alternative each : alternatives()) {
      Outcome outcome = StoryFinder.find(each.facts, each.asked, question);
      if (outcome instanceof Lost lost) {
        first = first == null ? lost.refusal() : first;
      } else {
        Understood one = understood((Found) outcome, each);
        stories.add(one.story());
        understood = one;
      }
    }
    if (stories.size() > 1) {
      return declined(new Refusal(Reason.WHO_HAS_MORE, question, "This can be read in two ways.",
          "One reading was expected.", "Name both sides in full."));
    }
    return understood == null ? declined(first) : understood;
  }

  private record Alternative(List<Fact> facts, Fact asked) {}

  /** "than ducks": ducks may be who has them or what is compared. */
  private List<Alternative> alternatives() {
    Alternative holders = new Alternative(facts, asked);
    Alternative things = new Alternative(facts.stream().map(TextReading::asThing).toList(), asThing(asked));
    return things.equals(holders) ? List.of(holders) : List.of(holders, things);
  }

  private static Fact asThing(Fact fact) {
    if (fact instanceof Compared one && one.reference() != null && isBare(one.reference())) {
      return new Compared(one.subject(), asThing(one.reference(), one.subject()), one.wording(), one.number(),
          one.word());
    }
    if (fact instanceof AskedDifference one && one.reference() != null && isBare(one.reference())) {
      Side subject = one.subject().who() != null && one.subject().who().is(Form.BARE)
          && one.subject().thing() == null ? asThing(one.subject(), one.subject().with((Who) null)) : one.subject();
      return new AskedDifference(subject, asThing(one.reference(), subject), one.wording(), one.word(), one.goal());
    }
    return fact;
  }

  private static boolean isBare(Side side) {
    return side.who() != null && side.who().is(Form.BARE);
  }

  private static Side asThing(Side side, Side subject) {
    Optional<Noun> noun = EnglishPlurals.ofMany(side.who().key());
    if (noun.isEmpty()) {
      return side;
    }
    CountedThing thing = new CountedThing(noun.get(), List.of(noun.get().one().split(" ")), null, side.who().at());
    return new Side(subject.who(), thing, side.places(), side.verb(), side.qualities(), side.dimensions());
  }

  private Understood understood(Found found, Alternative each) {
    Side larger = found.larger();
    Side smaller = found.smaller();
    boolean who = larger.who() != null && smaller.who() != null && larger.whoDiffers(smaller);
    boolean goal = larger.who() == null && smaller.who() != null && found.unknown() == Role.DIFFERENCE;
    boolean things = larger.thing() != null && smaller.thing() != null && !larger.thing().mayBe(smaller.thing());
    boolean askedIsLarger = found.unknown() == Role.LARGER
        || found.unknown() == Role.DIFFERENCE && found.wording() != Wording.FEWER;
    CountedThing own = found.asked().thing();
    CountedThing answer;
    CountedThing other = null;
    if (things && !(own != null && larger.thing().saysAllOf(own) && smaller.thing().saysAllOf(own))) {
      answer = askedIsLarger ? larger.thing() : smaller.thing();
      other = askedIsLarger ? smaller.thing() : larger.thing();
    } else {
      answer = own != null ? own : thingOf(found, each);
    }
    Persons persons = who ? persons(larger, smaller)
        : goal ? new Persons(null, smaller.who().shown())
        : things ? new Persons(larger.thing().noun().many(), smaller.thing().noun().many())
        : new Persons(placeOf(larger, smaller), placeOf(smaller, larger));
    List<Integer> extras = new ArrayList<>();
    List<Place> places = new ArrayList<>();
    for (NumberInText number : numbers) {
      Part part = partOf(number, found);
      places.add(new Place(part, number.at()));
      if (part == Part.EXTRA && (!isName(number) || !extras.contains(number.value()))) {
        extras.add(number.value());
      }
    }
    Thing thing = answer.noun().thing();
    Comparison story = new Comparison(persons, thing, other == null ? null : other.noun().thing(),
        wider(answer, other), found.amounts(), found.unknown(), found.wording(), extras);
    places.add(new Place(Part.QUESTION, question));
    places.add(new Place(Part.COMPARING_WORD, found.word()));
    addPlaces(places, found, each, answer, other, who);
    places.sort(Comparator.comparingInt((Place place) -> place.at().start()).thenComparing(place -> place.part()));
    return new Understood(text, story, places.stream().distinct().toList(), numbers, holders(), nouns(), false);
  }

  /** "Room 12" said twice has one number. */
  private boolean isName(NumberInText number) {
    for (TextSentence sentence : sentences) {
      List<Token> tokens = sentence.tokens();
      for (int i = 1; i < tokens.size(); i++) {
        if (tokens.get(i).at().equals(number.at())) {
          return tokens.get(i - 1).in(Phrases.NUMBERED);
        }
      }
    }
    return false;
  }

  /** The holders' names; where each owns one and the same measured thing, the owners' names. */
  private static Persons persons(Side larger, Side smaller) {
    Who one = larger.who();
    Who two = smaller.who();
    boolean owners = one.owner() != null && two.owner() != null && !one.owner().same(two.owner())
        && larger.thing() != null && larger.thing().unit() != null
        && (one.owned() == null || two.owned() == null || one.owned().equals(two.owned()));
    return owners ? new Persons(one.owner().shown(), two.owner().shown()) : new Persons(one.shown(), two.shown());
  }

  private static String placeOf(Side side, Side other) {
    return side.places().stream().filter(place -> other.places().stream().noneMatch(each ->
        each.key().equals(place.key()))).map(Side.Place::shown).findFirst().orElse(null);
  }

  private static CountedThing thingOf(Found found, Alternative each) {
    for (Fact fact : each.facts) {
      if (fact instanceof Compared one && one.subject().thing() != null) {
        return one.subject().thing();
      }
    }
    return found.larger().thing() != null ? found.larger().thing() : found.smaller().thing();
  }

  private static Part partOf(NumberInText number, Found found) {
    if (found.largerNumber() != null && found.largerNumber().at().equals(number.at())) {
      return Part.LARGER;
    }
    if (found.smallerNumber() != null && found.smallerNumber().at().equals(number.at())) {
      return Part.SMALLER;
    }
    return found.differenceNumber() != null && found.differenceNumber().at().equals(number.at())
        ? Part.DIFFERENCE : Part.EXTRA;
  }

  /** Words too wide for the label, where a scenario of ours knows them. */
  private static List<Thing> wider(CountedThing answer, CountedThing other) {
    for (Scenario scenario : Lexicon.scenarios()) {
      if (other == null && scenario instanceof Scenario.Counted counted && counted.thing().equals(answer.noun())) {
        return counted.wider().stream().map(Noun::thing).toList();
      }
      if (other != null && scenario instanceof Scenario.TwoKinds kinds
          && Set.of(kinds.first(), kinds.second()).equals(Set.of(answer.noun(), other.noun()))) {
        return kinds.wider().stream().map(Noun::thing).toList();
      }
    }
    return List.of();
  }

  private void addPlaces(List<Place> places, Found found, Alternative each, CountedThing answer, CountedThing other,
      boolean who) {
    for (Side side : sides(each)) {
      if (who && side.who() != null && side.who().same(found.larger().who())) {
        places.add(new Place(Part.LARGER_HOLDER, side.who().at()));
      } else if (side.who() != null && found.smaller().who() != null && side.who().same(found.smaller().who())) {
        if (who || found.larger().who() == null) {
          places.add(new Place(Part.SMALLER_HOLDER, side.who().at()));
        }
      }
      if (!who) {
        for (Side.Place place : side.places()) {
          if (place.shown().equals(placeOf(found.larger(), found.smaller()))) {
            places.add(new Place(Part.LARGER_HOLDER, place.at()));
          } else if (place.shown().equals(placeOf(found.smaller(), found.larger()))) {
            places.add(new Place(Part.SMALLER_HOLDER, place.at()));
          }
        }
      }
      CountedThing thing = side.thing();
      if (thing != null && thing.mayBe(answer)) {
        places.add(new Place(Part.THING, thing.at()));
      } else if (thing != null && other != null && thing.mayBe(other)) {
        places.add(new Place(Part.OTHER_THING, thing.at()));
      }
    }
  }

  private static List<Side> sides(Alternative each) {
    List<Side> sides = new ArrayList<>();
    for (Fact fact : each.facts) {
      addSides(sides, fact);
    }
    addSides(sides, each.asked);
    return sides;
  }

  private static void addSides(List<Side> sides, Fact fact) {
    if (fact instanceof Amount amount) {
      sides.add(amount.side());
    } else if (fact instanceof Compared one) {
      sides.add(one.subject());
      if (one.reference() != null) {
        sides.add(one.reference());
      }
    } else if (fact instanceof AskedAmount one) {
      sides.add(one.side());
    } else if (fact instanceof AskedDifference one) {
      sides.add(one.subject());
      if (one.reference() != null) {
        sides.add(one.reference());
      }
    }
  }

  private List<String> holders() {
    Set<String> shown = new LinkedHashSet<>();
    discourse.holders().forEach(who -> shown.add(who.shown()));
    if (shown.isEmpty()) {
      for (TextSentence sentence : sentences) {
        for (Token token : sentence.tokens()) {
          if (token.capital() && !Phrases.CLOSED.contains(token.low()) && Nouns.of(token.low()).isEmpty()) {
            shown.add(token.text());
          }
        }
      }
    }
    return List.copyOf(shown);
  }

  /** What stands after a number or after <i>how many</i>. */
  private List<NounInText> nouns() {
    Map<String, NounInText> nouns = new LinkedHashMap<>();
    for (TextSentence sentence : sentences) {
      Phrases phrases = new Phrases(sentence.tokens());
      for (int i = 0; i < phrases.size(); i++) {
        if (phrases.type(i, Token.Type.MONEY)) {
          CountedThing thing = Phrases.money(phrases.token(i));
          nouns.putIfAbsent(thing.noun().one(), new NounInText(thing.noun().thing(), thing.at()));
        }
        boolean after = phrases.type(i, Token.Type.NUMBER) || phrases.is(i, "many") && phrases.is(i - 1, "how");
        int next = i + 1 < phrases.size() && phrases.token(i + 1).isWord()
            && ComparingWords.of(phrases.token(i + 1).low()).isPresent() ? i + 2 : i + 1;
        At<CountedThing> thing = after && next < phrases.size()
            ? phrases.thing(next, phrases.token(i).value() == 1) : null;
        if (thing != null) {
          nouns.putIfAbsent(thing.value().noun().one(),
              new NounInText(thing.value().noun().thing(), thing.value().at()));
        }
      }
    }
    return List.copyOf(nouns.values());
  }

  private SourceSpan whole() {
    return new SourceSpan(0, text.length());
  }

  private Declined declined(Refusal refusal) {
    return new Declined(text, refusal.reason(), List.of(refusal.at()), refusal.found(), refusal.expected(),
        refusal.advice(), numbers, holders(), nouns());
  }
}
