package fewermore.wording;

import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import fewermore.wording.EnglishVerbs.Sense;
import fewermore.wording.EnglishVerbs.Verb;
import fewermore.wording.Fact.Amount;
import fewermore.wording.Fact.AskedAmount;
import fewermore.wording.Fact.AskedDifference;
import fewermore.wording.Phrases.At;
import fewermore.wording.Phrases.Located;
import fewermore.wording.Side.CountedThing;
import fewermore.wording.Side.Place;
import fewermore.wording.UnitWords.Dimension;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The sentences that ask.
 *
 * <pre>
 * question   = ["by"] "how" asked | "what" be (difference | measure)
 * asked      = "many" more [thing] compared          How many more shells does Ana have than Ben
 *            | "many" unit more compared             How many feet longer is the rope than the chain
 *            | "much" more [mass] compared           How much longer is …, How much more money …
 *            | "many" thing [quality] told           How many shells does Ben have
 *            | "much" [mass] told | quality told     How much does it cost, How old is Ben
 * compared   = than kind [told]                      than pears did Ana pick, than ducks are there
 *            | told [than reference place*]
 *            | helper who "need" goal
 * told       = be "there" place* | be place* | be who | helper who verb place* | who verb place*
 *            | verb place*
 * goal       = ["to" verb (number [thing] | "as many" [thing] "as" reference)]
 * than       = "than" | "compared" ("to" | "with") | "over"
 * difference = "the difference" ["in" (["the number of"] thing [who verb] | measure-noun)
 *            | ("between" | "of") kind "and" kind]
 * measure    = who's measure-noun | "the" measure-noun "of" who
 * </pre>
 */
final class QuestionGrammar {
  private static final Set<String> DO = Set.of("do", "does", "did", "can", "could", "will", "would", "should", "must");
  private static final Set<String> HAVE = Set.of("has", "have", "had");
  private static final Map<String, Set<Dimension>> MASSES = Map.of("money", EnumSet.of(Dimension.MONEY), "time",
      EnumSet.of(Dimension.TIME), "weight", EnumSet.of(Dimension.WEIGHT));
  private static final Map<String, Set<String>> MEASURES = Map.ofEntries(Map.entry("height", Set.of("tall", "high")),
      Map.entry("heights", Set.of("tall", "high")), Map.entry("length", Set.of("long")),
      Map.entry("lengths", Set.of("long")), Map.entry("age", Set.of("old")), Map.entry("ages", Set.of("old")),
      Map.entry("weight", Set.of("heavy")), Map.entry("weights", Set.of("heavy")), Map.entry("width", Set.of("wide")),
      Map.entry("widths", Set.of("wide")), Map.entry("depth", Set.of("deep")), Map.entry("price", Set.of("expensive")),
      Map.entry("prices", Set.of("expensive")), Map.entry("cost", Set.of("expensive")),
      Map.entry("costs", Set.of("expensive")), Map.entry("distance", Set.of("far")),
      Map.entry("temperature", Set.of("warm")), Map.entry("temperatures", Set.of("warm")));

  private final Phrases phrases;
  private final int to;
  private Fact goal;

  QuestionGrammar(Phrases phrases, int to) {
    this.phrases = phrases;
    this.to = to;
  }

  /** question; the facts it holds, a goal's number before what is asked, or null. */
  List<Fact> question(int from, List<Place> lead) {
    int here = phrases.is(from, "by") ? from + 1 : from;
    Fact asked = null;
    if (phrases.is(here, "how")) {
      asked = how(here + 1, lead);
    } else if (phrases.is(here, "what") && phrases.in(here + 1, Phrases.BE)) {
      asked = what(here + 2, lead);
    } else if (phrases.is(here, "find") && phrases.is(here + 2, "difference")) {
      asked = what(here + 1, lead);
    }
    if (asked == null) {
      return null;
    }
    return goal == null ? List.of(asked) : List.of(goal, asked);
  }

  private Fact how(int from, List<Place> lead) {
    if (from >= to || !phrases.token(from).isWord()) {
      return null;
    }
    Side side = Side.of(null, null, lead, null);
    String word = phrases.token(from).low();
    if (ComparingWords.isQuality(word)) {
      return amount(told(from + 1, to, side.measured(qualities(word), ComparingWords.measuredIn(word))));
    }
    if (word.equals("many")) {
      return howMany(from + 1, side);
    }
    return word.equals("much") ? howMuch(from + 1, side) : null;
  }

  private static Set<String> qualities(String word) {
    return word.equals("tall") || word.equals("high") ? Set.of("tall", "high") : Set.of(word);
  }

  private static Fact amount(Side told) {
    return told == null ? null : new AskedAmount(told);
  }

  private Fact howMany(int from, Side side) {
    Optional<ComparingWords.Word> more = more(from);
    if (more.isPresent()) {
      if (!more.get().qualities().isEmpty()) {
        return null;
      }
      At<CountedThing> thing = phrases.thing(from + 1, false);
      Side asked = thing == null ? side : side.with(thing.value());
      return compared(thing == null ? from + 1 : thing.next(), asked, more.get(), from);
    }
    At<CountedThing> thing = phrases.thing(from, false);
    if (thing == null) {
      return amount(told(from, to, side));
    }
    int here = thing.next();
    Optional<ComparingWords.Word> after = more(here);
    if (after.isPresent()) {
      return fits(after.get(), thing.value())
          ? compared(here + 1, side.with(thing.value()).measured(after.get().qualities(), Set.of()), after.get(), here)
          : null;
    }
    if (here < to && phrases.token(here).isWord() && ComparingWords.isQuality(phrases.token(here).low())) {
      String quality = phrases.token(here).low();
      return amount(told(here + 1, to, side.with(thing.value()).measured(qualities(quality), Set.of())));
    }
    return amount(told(here, to, side.with(thing.value())));
  }

  private static boolean fits(ComparingWords.Word word, CountedThing thing) {
    return word.qualities().isEmpty() || ComparingWords.canBeIn(word.qualities(), thing.unit());
  }

  private Fact howMuch(int from, Side side) {
    Optional<ComparingWords.Word> more = more(from);
    int here = more.isPresent() ? from + 1 : from;
    Set<Dimension> dimensions = EnumSet.allOf(Dimension.class);
    Set<String> qualities = more.isPresent() ? more.get().qualities() : Set.of();
    if (more.isPresent() && phrases.is(here, "expensive")) {
      qualities = Set.of("expensive");
      here++;
    }
    if (!qualities.isEmpty()) {
      dimensions = EnumSet.noneOf(Dimension.class);
      for (String quality : qualities) {
        dimensions.addAll(ComparingWords.measuredIn(quality));
      }
    } else if (here < to && phrases.token(here).isWord() && MASSES.containsKey(phrases.token(here).low())) {
      dimensions = MASSES.get(phrases.token(here).low());
      here++;
    }
    Side asked = side.measured(qualities, dimensions);
    return more.isPresent() ? compared(here, asked, more.get(), from) : amount(told(here, to, asked));
  }

  /** compared = than kind [told] | told [than reference place*] | helper who "need" goal. */
  private Fact compared(int from, Side side, ComparingWords.Word word, int wordAt) {
    SourceSpan at = phrases.token(wordAt).at();
    int than = than(from);
    if (than > 0) {
      return kinds(than, side, word, at);
    }
    Fact need = needed(from, side, at, word);
    if (need != null) {
      return need;
    }
    for (int i = from; i < to; i++) {
      int after = than(i);
      int end = phrases.type(i - 1, Token.Type.COMMA) ? i - 1 : i;
      if (after > 0) {
        Side subject = told(from, end, side);
        return subject == null ? null : compared(subject, after, word, at);
      }
    }
    Side subject = told(from, to, side);
    return subject == null ? null : new AskedDifference(subject, null, word.wording(), at, false);
  }

  private Fact compared(Side subject, int after, ComparingWords.Word word, SourceSpan at) {
    boolean kinds = subject.who() == null;
    Side reference = new References(phrases).reference(after, to, kinds);
    if (reference == null) {
      return null;
    }
    boolean bare = reference.who() != null && reference.who().is(Who.Form.BARE);
    Side whole = reference.thing() == null && !bare ? reference.with(subject.thing()) : reference;
    return new AskedDifference(subject, whole.measured(subject.qualities(), subject.dimensions()), word.wording(), at,
        false);
  }

  /** than kind [told]: the reference is a thing. */
  private Fact kinds(int from, Side side, ComparingWords.Word word, SourceSpan at) {
    for (int end = to; end > from; end--) {
      Side reference = new References(phrases).reference(from, end, true);
      Side subject = reference == null ? null : end == to ? side : told(end, to, side);
      if (subject != null) {
        Side whole = reference.with(subject.who());
        return new AskedDifference(subject, reference.thing() == null ? whole.with(subject.thing()) : whole,
            word.wording(), at, false);
      }
    }
    for (int end = from + 1; end < to; end++) {
      Side reference = new References(phrases).reference(from, end, false);
      Side subject = reference == null || reference.who() == null ? null : told(end, to, side);
      if (subject != null && subject.who() != null) {
        return new AskedDifference(subject, reference.with(subject.thing()), word.wording(), at, false);
      }
    }
    return null;
  }

  /** Where what follows <i>than</i> begins, or 0. */
  private int than(int i) {
    if (phrases.is(i, "than")) {
      return i + 1;
    }
    if (phrases.is(i, "compared") && phrases.in(i + 1, Set.of("to", "with"))) {
      return i + 2;
    }
    return phrases.is(i, "over") && !phrases.in(i + 1, Set.of("there")) ? i + 1 : 0;
  }

  /** helper who "need" goal. */
  private Fact needed(int from, Side side, SourceSpan at, ComparingWords.Word word) {
    if (!phrases.in(from, DO) || word.wording() != Wording.MORE) {
      return null;
    }
    for (int verb = from + 2; verb < to; verb++) {
      Optional<Verb> need = phrases.token(verb).isWord()
          ? EnglishVerbs.ofBase(phrases.token(verb).low()) : Optional.empty();
      Who who = need.isEmpty() ? null : phrases.who(from + 1, verb);
      boolean must = phrases.in(from, Set.of("should", "must", "would"));
      if (who == null || need.get().sense() != Sense.NEED && !must) {
        continue;
      }
      Side subject = side.with(who);
      if (verb + 1 == to) {
        return must ? null : new AskedDifference(subject, null, Wording.MORE, at, true);
      }
      for (int end = verb + 1; end < to; end++) {
        if (phrases.is(end, "to")) {
          return reached(end + 1, subject, at);
        }
      }
      return null;
    }
    return null;
  }

  /** verb (number [thing] | "as many" [thing] "as" reference). */
  private Fact reached(int from, Side subject, SourceSpan at) {
    if (!phrases.in(from, Set.of("have", "get", "reach", "make", "collect", "save", "score"))) {
      return null;
    }
    if (phrases.isAmount(from + 1)) {
      Token number = phrases.token(from + 1);
      CountedThing thing = subject.thing();
      int here = from + 2;
      if (number.type() == Token.Type.MONEY) {
        thing = Phrases.money(number);
      } else {
        At<CountedThing> counted = phrases.thing(here, number.value() == 1);
        if (counted != null) {
          thing = counted.value();
          here = counted.next();
        }
      }
      if (phrases.places(here).next() != to) {
        return null;
      }
      goal = new Amount(Side.of(subject.who(), thing, List.of(), EnglishVerbs.of("needs").orElseThrow()), number);
      return new AskedDifference(subject, null, Wording.MORE, at, true);
    }
    int here = from + 1;
    if (phrases.is(here, "as") && phrases.is(here + 1, "many")) {
      here += 2;
      At<CountedThing> thing = phrases.thing(here, false);
      here = thing == null ? here : thing.next();
    } else if (phrases.is(here, "the") && phrases.is(here + 1, "same") && phrases.is(here + 2, "number")) {
      here += 3;
      if (phrases.is(here, "of")) {
        At<CountedThing> thing = phrases.thing(here + 1, false);
        here = thing == null ? here : thing.next();
      }
    } else {
      return null;
    }
    if (!phrases.is(here, "as")) {
      return null;
    }
    Side reference = new References(phrases).reference(here + 1, to, false);
    return reference == null || reference.who() == null ? null
        : new AskedDifference(reference.with(subject.thing()), subject, Wording.MORE, at, false);
  }

  /** told = be "there" place* | be place* | be who | helper who verb place* | who verb place* | verb place*. */
  private Side told(int from, int end, Side side) {
    if (from >= end) {
      return null;
    }
    if (phrases.in(from, Phrases.BE)) {
      return be(from + 1, end, side);
    }
    if (phrases.in(from, DO) || phrases.in(from, HAVE)) {
      boolean perfect = phrases.in(from, HAVE);
      for (int verb = from + 2; verb < end + (perfect ? 1 : 0); verb++) {
        Side told = perfect ? perfect(from, verb, end, side) : done(from, verb, end, side);
        if (told != null) {
          return told;
        }
      }
      if (!perfect) {
        return null;
      }
    }
    for (int verb = from + 1; verb < end; verb++) {
      At<Verb> told = phrases.verb(verb);
      Located who = told == null ? null : phrases.located(from, verb);
      if (who != null && !who.who().is(Who.Form.POINTER) && !who.who().is(Who.Form.BARE)
          && phrases.places(told.next()).next() == end) {
        return side.with(who.who()).with(told.value())
            .with(joined(joined(side.places(), who.places()), phrases.places(told.next()).value()));
      }
    }
    At<Verb> verb = phrases.verb(from);
    if (verb == null) {
      return null;
    }
    At<List<Place>> places = phrases.places(verb.next());
    return places.next() == end && side.thing() != null
        ? side.with(verb.value()).with(joined(side.places(), places.value())) : null;
  }

  private Side be(int from, int end, Side side) {
    Verb be = EnglishVerbs.of("is").orElseThrow();
    int here = phrases.is(from, "there") ? from + 1 : from;
    At<List<Place>> places = phrases.places(here);
    if (places.next() == end && (here > from || !places.value().isEmpty())) {
      return side.with(be).with(joined(side.places(), places.value()));
    }
    if (here > from) {
      return null;
    }
    Located who = phrases.located(from, end);
    if (who != null) {
      return side.with(who.who()).with(be).with(joined(side.places(), who.places()));
    }
    for (int ing = from + 1; ing < end; ing++) {
      Optional<Verb> verb = phrases.token(ing).isWord() && phrases.token(ing).low().endsWith("ing")
          ? EnglishVerbs.of(phrases.token(ing).low()) : Optional.empty();
      Who subject = verb.isEmpty() ? null : phrases.who(from, ing);
      if (subject != null && phrases.places(ing + 1).next() == end) {
        return side.with(subject).with(verb.get());
      }
    }
    return null;
  }

  private Side done(int helper, int verb, int end, Side side) {
    Optional<Verb> base = phrases.token(verb).isWord()
        ? EnglishVerbs.ofBase(phrases.token(verb).low()) : Optional.empty();
    if (base.isEmpty()) {
      return null;
    }
    return rest(helper + 1, verb, end, side, base.get());
  }

  private Side perfect(int helper, int verb, int end, Side side) {
    if (verb == end) {
      Located who = phrases.located(helper + 1, end);
      return who == null ? null : side.with(who.who()).with(EnglishVerbs.of("has").orElseThrow())
          .with(joined(side.places(), who.places()));
    }
    Optional<Verb> participle = phrases.token(verb).isWord()
        ? EnglishVerbs.ofPerfect(phrases.token(verb).low()) : Optional.empty();
    return participle.isEmpty() ? null : rest(helper + 1, verb, end, side,
        phrases.is(verb, "got") ? EnglishVerbs.of("has").orElseThrow() : participle.get());
  }

  private Side rest(int who, int verb, int end, Side side, Verb told) {
    Located subject = phrases.located(who, verb);
    int after = phrases.in(verb + 1, Set.of("up", "out", "for")) && verb + 2 == end ? verb + 2 : verb + 1;
    At<List<Place>> places = after == end ? new At<>(List.of(), end) : phrases.places(after);
    if (subject == null || places.next() != end || subject.who().is(Who.Form.POINTER)) {
      return null;
    }
    return side.with(subject.who()).with(told)
        .with(joined(joined(side.places(), subject.places()), places.value()));
  }

  private Fact what(int from, List<Place> lead) {
    if (phrases.is(from, "the") && phrases.is(from + 1, "difference")) {
      return difference(from + 2, phrases.token(from + 1).at());
    }
    if (phrases.is(from, "the") && phrases.is(from + 1, "temperature")) {
      At<List<Place>> places = phrases.places(from + 2);
      return places.next() != to ? null : new AskedAmount(Side.of(null, null, joined(lead, places.value()), null)
          .measured(Set.of("warm"), ComparingWords.measuredIn("warm")));
    }
    for (int noun = from + 1; noun < to; noun++) {
      Set<String> qualities = phrases.token(noun).isWord() ? MEASURES.get(phrases.token(noun).low()) : null;
      if (qualities == null) {
        continue;
      }
      if (phrases.is(from, "the") && noun == from + 1 && phrases.is(noun + 1, "of")) {
        return measured(phrases.who(noun + 2, to), qualities);
      }
      if (noun == to - 1) {
        Who owned = phrases.who(from, noun);
        return measured(owned == null ? null : owned.is(Who.Form.OWNED) && owned.owned() == null
            ? owned.owner() : owned, qualities);
      }
    }
    return null;
  }

  private static Fact measured(Who who, Set<String> qualities) {
    return who == null ? null
        : new AskedAmount(Side.of(who, null, List.of(), null).measured(qualities, dimensions(qualities)));
  }

  private static Set<Dimension> dimensions(Set<String> qualities) {
    Set<Dimension> dimensions = EnumSet.noneOf(Dimension.class);
    qualities.forEach(quality -> dimensions.addAll(ComparingWords.measuredIn(quality)));
    return dimensions;
  }

  /** difference = ["in" … | ("between" | "of") kind "and" kind]. */
  private Fact difference(int from, SourceSpan at) {
    Side open = Side.of(null, null, List.of(), null);
    if (from == to) {
      return new AskedDifference(open, null, Wording.DIFFERENCE, at, false);
    }
    if (phrases.is(from, "in")) {
      return differenceIn(from + 1, open, at);
    }
    if (!phrases.in(from, Set.of("between", "of"))) {
      return null;
    }
    for (int and = from + 1; and < to; and++) {
      if (phrases.is(and, "and")) {
        Side second = kind(and + 1, to);
        Side first = second == null ? null : kind(from + 1, and);
        if (first != null) {
          return new AskedDifference(first, second, Wording.DIFFERENCE, at, false);
        }
      }
    }
    return null;
  }

  private Fact differenceIn(int from, Side open, SourceSpan at) {
    int noun = phrases.in(from, Set.of("their", "the")) ? from + 1 : from;
    if (noun == to - 1 && phrases.token(noun).isWord() && MEASURES.containsKey(phrases.token(noun).low())) {
      Set<String> qualities = MEASURES.get(phrases.token(noun).low());
      return new AskedDifference(open.measured(qualities, dimensions(qualities)), null, Wording.DIFFERENCE, at, false);
    }
    int thing = phrases.is(from, "the") && phrases.is(from + 1, "number") && phrases.is(from + 2, "of")
        ? from + 3 : from;
    At<CountedThing> counted = phrases.thing(thing, false);
    if (counted == null) {
      return null;
    }
    Side both = open.with(counted.value());
    if (counted.next() == to) {
      return new AskedDifference(both, null, Wording.DIFFERENCE, at, false);
    }
    return twoWho(counted.next(), both, at);
  }

  /** who "and" who verb: "(that) Ana and Ben found". */
  private Fact twoWho(int from, Side both, SourceSpan at) {
    int start = phrases.is(from, "that") ? from + 1 : from;
    At<Verb> verb = phrases.verb(to - 1);
    for (int and = start + 1; and < to - 2; and++) {
      if (phrases.is(and, "and")) {
        Who first = phrases.who(start, and);
        Who second = phrases.who(and + 1, to - 1);
        return first == null || second == null || verb == null ? null
            : new AskedDifference(both.with(first).with(verb.value()), both.with(second).with(verb.value()),
                Wording.DIFFERENCE, at, false);
      }
    }
    return null;
  }

  /** A holder, a thing, "the number of" a thing, or a holder's measure. */
  private Side kind(int from, int end) {
    if (phrases.is(from, "the") && phrases.is(from + 1, "number") && phrases.is(from + 2, "of")) {
      At<CountedThing> thing = phrases.thing(from + 3, false);
      if (thing != null && thing.next() < end) {
        int who = phrases.is(thing.next(), "that") ? thing.next() + 1 : thing.next();
        Side holder = new References(phrases).reference(who, end, false);
        if (holder != null && holder.who() != null && holder.thing() == null && holder.verb() != null) {
          return holder.with(thing.value());
        }
      }
      return new References(phrases).reference(from, end, true);
    }
    if (phrases.is(from, "the") && phrases.is(from + 1, "number")) {
      Side holder = new References(phrases).reference(phrases.is(from + 2, "that") ? from + 3 : from + 2, end, false);
      return holder == null || holder.verb() == null ? null : holder;
    }
    if (end - from > 1 && phrases.token(end - 1).isWord() && MEASURES.containsKey(phrases.token(end - 1).low())) {
      Who owned = phrases.who(from, end - 1);
      Set<String> qualities = MEASURES.get(phrases.token(end - 1).low());
      Who who = owned != null && owned.is(Who.Form.OWNED) && owned.owned() == null ? owned.owner() : owned;
      return who == null ? null : Side.of(who, null, List.of(), null).measured(qualities, dimensions(qualities));
    }
    return new References(phrases).reference(from, end, false);
  }

  private Optional<ComparingWords.Word> more(int i) {
    return i < to && phrases.token(i).isWord() ? ComparingWords.of(phrases.token(i).low()) : Optional.empty();
  }

  private static List<Place> joined(List<Place> first, List<Place> second) {
    return Stream.concat(first.stream(), second.stream()).toList();
  }
}
