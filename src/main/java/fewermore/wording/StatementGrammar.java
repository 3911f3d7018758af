package fewermore.wording;

import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import fewermore.wording.EnglishVerbs.Verb;
import fewermore.wording.Fact.Amount;
import fewermore.wording.Fact.Compared;
import fewermore.wording.Phrases.At;
import fewermore.wording.Phrases.Located;
import fewermore.wording.Side.CountedThing;
import fewermore.wording.Side.Place;
import fewermore.wording.Who.Form;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The sentences that tell.
 *
 * <pre>
 * statements = clause (link clause)*
 * clause     = [place [","]] (exists | counted | pointing | contest | holding | deed)
 * exists     = "there" be amounts                               There are 52 hens on the farm
 * counted    = number thing ("and" number thing)* be place       52 hens are on the farm
 * pointing   = ("that" | "this" | "which" | "it") be comparison That is 14 more than Ben has
 * contest    = who won [who] "by" number [thing]                The Reds beat the Blues by 12 points
 * holding    = who [relative] verb amounts
 * relative   = "," "who" verb comparison ","
 * amounts    = amount ((","|"and") amount)* ["," ["which" be] comparison]
 * amount     = number [thing] [quality] place*
 * comparison = number more [thing] place* "than" reference
 *            | number thing more place* "than" reference
 * deed       = who verb word* place*                            Ana went to the beach for 3 days
 * reference  = "there" be thing | place | "the number of" thing | who [verb [thing]] place*
 * link       = [","] ("and" | "but" | "while") | "," | ";"
 * </pre>
 *
 * A method gives null where its rule does not hold; a sentence is read whole or not at all.
 */
final class StatementGrammar {
  private static final Set<String> LINKS = Set.of("and", "but", "while", "whereas", "so");
  private static final Set<String> WINNING = Set.of("won", "beat", "led", "lead", "leads", "wins", "beats", "outscored",
      "lost");
  private static final Set<String> NOT_IN_DEEDS = Set.of("than", "some", "all", "rest", "another", "extra", "any", "few",
      "several", "many", "lots", "additional", "away", "if", "because", "that", "which", "who");

  private final Phrases phrases;
  private final List<Fact> facts = new ArrayList<>();
  /** Amounts told by the way. */
  private final List<Fact> beside = new ArrayList<>();
  private Who lastSubject;
  private Verb lastVerb;

  StatementGrammar(Phrases phrases) {
    this.phrases = phrases;
  }

  /** statements; null when a part is not in the grammar. */
  List<Fact> statements(int from, int to) {
    int here = from;
    while (here < to) {
      int next = clause(here, to);
      if (next < 0) {
        return null;
      }
      here = afterLink(next, to);
      if (here < 0) {
        return null;
      }
    }
    facts.addAll(beside);
    return facts;
  }

  private int afterLink(int from, int to) {
    if (from == to) {
      return to;
    }
    int here = from;
    boolean mark = phrases.type(here, Token.Type.COMMA) || phrases.type(here, Token.Type.BREAK);
    if (mark) {
      here++;
    }
    boolean word = phrases.in(here, LINKS);
    if (word) {
      here++;
    }
    return here < to && (mark || word) ? here : -1;
  }

  private int clause(int from, int to) {
    At<List<Place>> lead = lead(from);
    int here = lead.next();
    if (!counted(from, here)) {
      return -1;
    }
    int next = exists(here, to, lead.value());
    if (next < 0) {
      next = counted(here, to, lead.value());
    }
    if (next < 0) {
      next = pointing(here, to);
    }
    if (next < 0) {
      next = contest(here, to);
    }
    if (next < 0) {
      next = holding(here, to, lead.value());
    }
    return next < 0 ? deed(here, to) : next;
  }

  /** deed = who verb …, with nothing counted but by the way: "Ana went to the beach for 3 days". */
  private int deed(int from, int to) {
    int end = from;
    while (end < to && !phrases.token(end).isMark() && !(phrases.in(end, LINKS) && end > from + 1)) {
      Token token = phrases.token(end);
      boolean counts = token.isWord() && ComparingWords.of(token.low()).isPresent() || token.in(NOT_IN_DEEDS);
      Optional<Verb> verb = token.isWord() ? EnglishVerbs.of(token.low()) : Optional.empty();
      if (counts || verb.isPresent() && verb.get().changes()) {
        return -1;
      }
      end++;
    }
    for (int verb = from + 1; verb < end && verb - from < 7; verb++) {
      At<Verb> read = phrases.verb(verb);
      Located subject = read == null ? null : phrases.located(from, verb);
      if (subject == null || subject.who().is(Form.POINTER)) {
        continue;
      }
      int places = verb + 1;
      while (places < end && !phrases.isAmount(places) && phrases.place(places) == null) {
        places++;
      }
      boolean bare = phrases.places(places).next() == end;
      if (bare && counted(places, end)) {
        lastSubject = subject.who();
        lastVerb = read.value();
        facts.add(new Fact.Deed(Side.of(subject.who(), null, List.of(), null)));
        return end;
      }
    }
    return -1;
  }

  private At<List<Place>> lead(int from) {
    At<Place> place = phrases.place(from);
    if (place == null) {
      return new At<>(List.of(), from);
    }
    List<Place> places = place.value().key().isEmpty() ? List.of() : List.of(place.value());
    boolean comma = phrases.type(place.next(), Token.Type.COMMA);
    return new At<>(places, comma ? place.next() + 1 : place.next());
  }

  /** exists = "there" be amounts. */
  private int exists(int from, int to, List<Place> lead) {
    if (!phrases.is(from, "there") || !phrases.in(from + 1, Phrases.BE)) {
      return -1;
    }
    lastSubject = null;
    lastVerb = EnglishVerbs.of("is").orElseThrow();
    return amounts(from + 2, to, Side.of(null, null, lead, lastVerb), true);
  }

  /** counted = number thing be place. */
  private int counted(int from, int to, List<Place> lead) {
    if (!phrases.type(from, Token.Type.NUMBER)) {
      return -1;
    }
    List<Token> numbers = new ArrayList<>();
    List<CountedThing> things = new ArrayList<>();
    int here = from;
    while (phrases.type(here, Token.Type.NUMBER)) {
      At<CountedThing> thing = phrases.thing(here + 1, phrases.token(here).value() == 1);
      if (thing == null) {
        return -1;
      }
      numbers.add(phrases.token(here));
      things.add(thing.value());
      here = thing.next();
      if (phrases.is(here, "and") && phrases.type(here + 1, Token.Type.NUMBER)) {
        here++;
      }
    }
    if (!phrases.in(here, Phrases.BE)) {
      return -1;
    }
    At<List<Place>> places = phrases.places(here + 1);
    if (places.next() == here + 1 || places.next() > to || !counted(here + 1, places.next())) {
      return -1;
    }
    lastSubject = null;
    lastVerb = EnglishVerbs.of("is").orElseThrow();
    for (int i = 0; i < numbers.size(); i++) {
      facts.add(new Amount(Side.of(null, things.get(i), joined(lead, places.value()), lastVerb), numbers.get(i)));
    }
    return places.next();
  }

  /** pointing = ("that" | "this" | "which" | "it") be comparison; only after an amount. */
  private int pointing(int from, int to) {
    if (!phrases.in(from, Set.of("that", "this", "which", "that's")) ) {
      return -1;
    }
    int be = phrases.is(from, "that's") ? from : from + 1;
    if (be > from && !phrases.in(be, Phrases.BE)) {
      return -1;
    }
    Side pointed = Side.of(Who.of(Form.POINTER, "that", "that", phrases.token(from).at()), null, List.of(), null);
    return comparison(be + 1, to, pointed, false);
  }

  /** contest = who won [who] "by" number [thing]. */
  private int contest(int from, int to) {
    for (int verb = from + 1; verb < to; verb++) {
      if (!phrases.in(verb, WINNING)) {
        continue;
      }
      int by = verb + 1;
      while (by < to && !phrases.is(by, "by")) {
        by++;
      }
      Who winner = phrases.who(from, verb);
      boolean game = phrases.is(verb + 1, "the") && phrases.in(verb + 2, Set.of("game", "race", "match", "contest"));
      Who other = by == verb + 1 || game ? null : phrases.who(verb + 1, by);
      if (winner == null || by + 1 >= to || !phrases.type(by + 1, Token.Type.NUMBER)
          || other == null && by != verb + 1 && !(game && by == verb + 3)) {
        return -1;
      }
      Token number = phrases.token(by + 1);
      At<CountedThing> thing = phrases.thing(by + 2, number.value() == 1);
      boolean lost = phrases.is(verb, "lost");
      if (lost && other != null) {
        return -1;
      }
      lastSubject = winner;
      lastVerb = null;
      CountedThing counted = thing == null ? null : thing.value();
      facts.add(new Compared(Side.of(winner, counted, List.of(), null),
          Side.of(other, counted, List.of(), null), lost ? Wording.FEWER : Wording.MORE, number,
          phrases.token(verb).at()));
      return thing == null ? by + 2 : thing.next();
    }
    return -1;
  }

  /** holding = who [relative] verb amounts; a subject or a verb just said may be left out. */
  private int holding(int from, int to, List<Place> lead) {
    for (int verb = from + 1; verb < to && verb - from < 9; verb++) {
      if (phrases.type(verb, Token.Type.COMMA)) {
        int relative = relative(from, verb, to);
        if (relative >= 0) {
          return relative;
        }
        break;
      }
      At<Verb> read = phrases.verb(verb);
      Located subject = read == null || read.next() >= to ? null : phrases.located(from, verb);
      if (subject != null) {
        int known = facts.size();
        int next = told(subject, lead, read, to);
        if (next >= 0) {
          return next;
        }
        facts.subList(known, facts.size()).clear();
      }
    }
    return leftOut(from, to, lead);
  }

  private int told(Located subject, List<Place> lead, At<Verb> verb, int to) {
    if (subject.who().is(Form.POINTER) || subject.who().is(Form.PRONOUN)
        && Phrases.OBJECT_PRONOUNS.contains(subject.who().key())
        && !Phrases.SUBJECT_PRONOUNS.contains(subject.who().key())) {
      return -1;
    }
    Who before = lastSubject;
    Verb verbBefore = lastVerb;
    lastSubject = subject.who();
    lastVerb = verb.value();
    int next = amounts(verb.next(), to,
        Side.of(subject.who(), null, joined(lead, subject.places()), verb.value()), false);
    if (next < 0) {
      lastSubject = before;
      lastVerb = verbBefore;
    }
    return next;
  }

  /** "and lost 4", "and Ben 38": what was just said is not said again. */
  private int leftOut(int from, int to, List<Place> lead) {
    if (lastVerb == null) {
      return -1;
    }
    At<Verb> verb = phrases.verb(from);
    if (verb != null && lastSubject != null && phrases.isAmount(verb.next())) {
      lastVerb = verb.value();
      return amounts(verb.next(), to, Side.of(lastSubject, null, lead, verb.value()), false);
    }
    for (int number = from + 1; number < to && number - from < 6; number++) {
      if (phrases.isAmount(number)) {
        Who who = phrases.who(from, number);
        if (who == null || !who.is(Form.NAMED) && !who.is(Form.OWNED)) {
          return -1;
        }
        lastSubject = who;
        return amounts(number, to, Side.of(who, null, lead, lastVerb), false);
      }
    }
    return -1;
  }

  /** relative = "," "who" verb comparison ","; then the rest of the clause about the same. */
  private int relative(int from, int comma, int to) {
    Who subject = phrases.who(from, comma);
    if (subject == null || !phrases.in(comma + 1, Set.of("who", "which"))) {
      return -1;
    }
    At<Verb> inner = phrases.verb(comma + 2);
    if (inner == null) {
      return -1;
    }
    lastSubject = subject;
    int next = amounts(inner.next(), to, Side.of(subject, null, List.of(), inner.value()), false);
    if (next < 0 || !phrases.type(next, Token.Type.COMMA)) {
      return -1;
    }
    At<Verb> outer = phrases.verb(next + 1);
    if (outer == null) {
      return -1;
    }
    lastVerb = outer.value();
    return amounts(outer.next(), to, Side.of(subject, null, List.of(), outer.value()), false);
  }

  /** amounts = amount ((","|"and") amount)* ["," ["which" be] comparison]. */
  private int amounts(int from, int to, Side side, boolean exists) {
    int next = element(from, to, side, exists);
    while (next >= 0 && next < to) {
      int here = next;
      boolean comma = phrases.type(here, Token.Type.COMMA);
      if (comma) {
        here++;
      }
      boolean and = phrases.is(here, "and");
      if (and) {
        here++;
      }
      if (comma && !and && apposition(here, to) >= 0) {
        next = apposed(here, to);
        continue;
      }
      if (!comma && !and || !phrases.isAmount(here)) {
        return next;
      }
      int more = element(here, to, side, exists);
      if (more < 0) {
        return next;
      }
      next = more;
    }
    return next;
  }

  /** Where the comparison of an apposition begins, or -1: ", 14 more than Ben", ", which is 14 more than Ben has". */
  private int apposition(int from, int to) {
    int here = from;
    if (phrases.is(here, "which") && phrases.in(here + 1, Phrases.BE)) {
      here += 2;
    } else if (!phrases.isAmount(here) || !lastIsAmount()) {
      return -1;
    }
    for (int i = here; i < to && !phrases.type(i, Token.Type.COMMA) && !phrases.is(i, "and"); i++) {
      if (phrases.is(i, "than")) {
        return here;
      }
    }
    return -1;
  }

  private int apposed(int from, int to) {
    Side pointed = Side.of(Who.of(Form.POINTER, "that", "that", phrases.token(from).at()), null, List.of(), null);
    return comparison(apposition(from, to), to, pointed, false);
  }

  private boolean lastIsAmount() {
    return !facts.isEmpty() && facts.get(facts.size() - 1) instanceof Amount;
  }

  private int element(int from, int to, Side side, boolean exists) {
    int compared = comparison(from, to, side, exists);
    return compared >= 0 ? compared : amount(from, to, side, exists);
  }

  /** amount = number [thing] [quality] place*. */
  private int amount(int from, int to, Side side, boolean exists) {
    if (!phrases.isAmount(from)) {
      return -1;
    }
    Token number = phrases.token(from);
    CountedThing counted = null;
    int here = from + 1;
    if (number.type() == Token.Type.MONEY) {
      counted = Phrases.money(number);
    } else {
      At<CountedThing> thing = phrases.thing(here, number.value() == 1);
      if (thing != null) {
        counted = thing.value();
        here = thing.next();
      }
    }
    if (counted == null && exists && !lastIsAmount()) {
      return -1;
    }
    Side measured = side.with(counted);
    if (here < to && phrases.token(here).isWord() && ComparingWords.isQuality(phrases.token(here).low())) {
      String quality = phrases.token(here).low();
      if (!fits(Set.of(quality), counted)) {
        return -1;
      }
      measured = measured.measured(Set.of(quality), Set.of());
      here++;
    }
    if (counted == null && side.who() != null && side.verb() != null && side.verb().sense() == EnglishVerbs.Sense.BE) {
      measured = measured.measured(Set.of("old"), ComparingWords.measuredIn("old"));
    }
    At<List<Place>> places = phrases.places(here);
    if (places.next() > to || !counted(here, places.next())) {
      return -1;
    }
    facts.add(new Amount(measured.with(joined(side.places(), places.value())), number));
    return end(places.next(), to);
  }

  /** Numbers inside places count something of their own: "for 3 days". */
  private boolean counted(int from, int to) {
    for (int i = from; i < to; i++) {
      boolean name = phrases.in(i - 1, Phrases.NUMBERED)
          || phrases.in(i + 1, Set.of("o'clock", "am", "pm")) || phrases.type(i, Token.Type.LABEL);
      if (!phrases.isAmount(i) || name) {
        continue;
      }
      Token number = phrases.token(i);
      At<CountedThing> thing = number.type() == Token.Type.MONEY ? new At<>(Phrases.money(number), i + 1)
          : phrases.thing(i + 1, number.value() == 1);
      if (thing == null) {
        return false;
      }
      beside.add(new Amount(Side.of(null, thing.value(), List.of(), null), number));
    }
    return true;
  }

  /** "too" and "of her own" close a clause and say nothing. */
  private int end(int from, int to) {
    return from < to && phrases.in(from, Set.of("too", "also", "there", "already")) ? from + 1 : from;
  }

  /** comparison = number more [thing] place* "than" reference | number thing more place* "than" reference. */
  private int comparison(int from, int to, Side side, boolean exists) {
    if (!phrases.isAmount(from)) {
      return -1;
    }
    Token number = phrases.token(from);
    boolean one = number.value() == 1;
    CountedThing counted = number.type() == Token.Type.MONEY ? Phrases.money(number) : null;
    int here = from + 1;
    if (counted == null && here < to && more(here).isEmpty()) {
      At<CountedThing> thing = phrases.thing(here, one);
      if (thing == null) {
        return -1;
      }
      counted = thing.value();
      here = thing.next();
    }
    Optional<ComparingWords.Word> word = here < to ? more(here) : Optional.empty();
    if (word.isEmpty()) {
      return -1;
    }
    SourceSpan at = phrases.token(here).at();
    here++;
    Set<String> qualities = word.get().qualities();
    if (counted == null) {
      At<CountedThing> thing = thingAfterMore(here, one);
      if (thing != null) {
        counted = thing.value();
        here = thing.next();
      }
    }
    if (!fits(qualities, counted) || phrases.is(here, "expensive")) {
      return -1;
    }
    At<List<Place>> places = phrases.places(here);
    here = places.next();
    Side subject = side.with(counted).measured(qualities, Set.of()).with(joined(side.places(), places.value()));
    if (!phrases.is(here, "than")) {
      facts.add(new Compared(subject, null, word.get().wording(), number, at));
      return end(here, to);
    }
    if (here + 1 >= to) {
      return -1;
    }
    for (int end = referenceEnd(here + 1, to); end > here + 1; end--) {
      Side reference = new References(phrases).reference(here + 1, end, exists);
      if (reference != null && endsClause(end, to)) {
        Side whole = reference.measured(qualities, Set.of());
        facts.add(new Compared(subject, whole.with(kept(whole.thing(), counted, whole.who())), word.get().wording(),
            number, at));
        return referenceTold(end, to, reference);
      }
    }
    return -1;
  }

  private static CountedThing kept(CountedThing own, CountedThing counted, Who who) {
    return own != null || who != null && who.is(Form.BARE) ? own : counted;
  }

  private At<CountedThing> thingAfterMore(int from, boolean one) {
    At<CountedThing> thing = phrases.thing(from, one);
    return thing == null && one ? phrases.thing(from, false) : thing;
  }

  private static boolean fits(Set<String> qualities, CountedThing counted) {
    if (qualities.isEmpty()) {
      return true;
    }
    return counted != null && ComparingWords.canBeIn(qualities, counted.unit());
  }

  private Optional<ComparingWords.Word> more(int i) {
    return phrases.token(i).isWord() ? ComparingWords.of(phrases.token(i).low()) : Optional.empty();
  }

  private int referenceEnd(int from, int to) {
    int end = from;
    while (end < to && !phrases.token(end).isMark()) {
      end++;
    }
    return end;
  }

  private boolean endsClause(int at, int to) {
    return at == to || phrases.token(at).isMark() || phrases.in(at, LINKS);
  }

  /** "than Ben, who has 38 shells": the reference's own amount. */
  private int referenceTold(int from, int to, Side reference) {
    if (!phrases.type(from, Token.Type.COMMA) || !phrases.in(from + 1, Set.of("who", "which"))
        || reference.who() == null) {
      return from;
    }
    At<Verb> verb = phrases.verb(from + 2);
    if (verb == null || !phrases.isAmount(verb.next())) {
      return from;
    }
    lastSubject = reference.who();
    lastVerb = verb.value();
    int next = amount(verb.next(), to, Side.of(reference.who(), null, List.of(), verb.value()), false);
    return next < 0 ? from : next;
  }

  private static List<Place> joined(List<Place> first, List<Place> second) {
    List<Place> joined = new ArrayList<>(first);
    joined.addAll(second);
    return joined;
  }
}
