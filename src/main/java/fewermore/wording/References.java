package fewermore.wording;

import fewermore.wording.EnglishVerbs.Verb;
import fewermore.wording.Phrases.At;
import fewermore.wording.Phrases.Located;
import fewermore.wording.Side.CountedThing;
import fewermore.wording.Side.Place;
import java.util.List;
import java.util.Set;

/** What stands after <i>than</i>: {@code reference} of {@link StatementGrammar}. */
final class References {
  private static final Set<String> AUXILIARIES = Set.of("is", "are", "was", "were", "does", "did", "do", "has", "have",
      "had", "can", "could");

  private final Phrases phrases;

  References(Phrases phrases) {
    this.phrases = phrases;
  }

  /**
   * The side that fills the stretch, or null.
   *
   * @param kinds whether things are compared, so that "ducks" is a thing
   */
  Side reference(int from, int to, boolean kinds) {
    if (phrases.is(from, "there") && phrases.in(from + 1, Phrases.BE)) {
      return thing(from + 2, to);
    }
    if (phrases.is(from, "the") && phrases.in(from + 1, Set.of("number", "amount")) && phrases.is(from + 2, "of")) {
      return thing(from + 3, to);
    }
    At<List<Place>> places = phrases.places(from);
    if (places.next() == to && !places.value().isEmpty()) {
      return Side.of(null, null, places.value(), null);
    }
    if (kinds) {
      return thing(phrases.is(from, "the") ? from + 1 : from, to);
    }
    return holder(from, to);
  }

  private Side thing(int from, int to) {
    At<CountedThing> thing = phrases.thing(from, false);
    if (thing == null) {
      return null;
    }
    At<List<Place>> places = phrases.places(thing.next());
    return places.next() == to ? Side.of(null, thing.value(), places.value(), null) : null;
  }

  /** who [verb [thing]] place*. */
  private Side holder(int from, int to) {
    Located plain = phrases.located(from, to);
    if (plain != null) {
      return Side.of(plain.who(), null, plain.places(), null);
    }
    for (int verb = from + 1; verb < to; verb++) {
      Who who = phrases.who(from, verb);
      if (who == null || !phrases.token(verb).isWord()) {
        continue;
      }
      boolean auxiliary = phrases.in(verb, AUXILIARIES);
      At<Verb> told = phrases.verb(verb);
      if (!auxiliary && told == null) {
        continue;
      }
      int afterVerb = told == null ? verb + 1 : told.next();
      Verb said = auxiliary && afterVerb == verb + 1 ? null : told == null ? null : told.value();
      At<List<Place>> places = phrases.places(afterVerb);
      if (places.next() == to) {
        return Side.of(who, null, places.value(), said);
      }
      At<CountedThing> thing = phrases.thing(afterVerb, false);
      if (thing != null && phrases.places(thing.next()).next() == to) {
        return Side.of(who, thing.value(), phrases.places(thing.next()).value(), said);
      }
    }
    return null;
  }
}
