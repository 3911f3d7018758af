package fewermore.wording;

import fewermore.text.SourceSpan;
import fewermore.wording.UnitWords.Dimension;
import java.util.List;
import java.util.Set;

/**
 * One of the amounts a text speaks of, by all that is said to tell it apart. What is not said is null or empty and
 * may be anything.
 *
 * @param who who or what has it
 * @param thing what is counted, or the unit
 * @param places where or when: "on Monday", "on the top shelf"
 * @param verb what is done with it
 * @param qualities the adjectives that may measure it: long, tall, old
 * @param dimensions what its unit must measure, where only "how much" or "how long" says it
 */
record Side(Who who, CountedThing thing, List<Place> places, EnglishVerbs.Verb verb, Set<String> qualities,
    Set<Dimension> dimensions) {
  /** Where or when. */
  record Place(String key, String shown, SourceSpan at) {}

  Side {
    places = List.copyOf(places);
  }

  /**
   * A thing as a text says it.
   *
   * @param words all words, the last one before "of" in the singular
   * @param unit the unit it is, or null
   */
  record CountedThing(Noun noun, List<String> words, UnitWords.Unit unit, SourceSpan at) {

    /** Whether this says at least as much as the other: "red marbles" of "marbles". */
    boolean saysAllOf(CountedThing other) {
      return head().equals(other.head()) && words.containsAll(other.words);
    }

    boolean same(CountedThing other) {
      return words.equals(other.words);
    }

    /** Whether both may be the same thing, one of them said more fully. */
    boolean mayBe(CountedThing other) {
      return saysAllOf(other) || other.saysAllOf(this);
    }

    private String head() {
      int of = words.indexOf("of");
      return words.get((of < 0 ? words.size() : of) - 1);
    }
  }

  static Side of(Who who, CountedThing thing, List<Place> places, EnglishVerbs.Verb verb) {
    return new Side(who, thing, places, verb, Set.of(), Set.of());
  }

  Side with(Who other) {
    return new Side(other, thing, places, verb, qualities, dimensions);
  }

  Side with(CountedThing other) {
    return new Side(who, other, places, verb, qualities, dimensions);
  }

  Side with(List<Place> others) {
    return new Side(who, thing, others, verb, qualities, dimensions);
  }

  Side with(EnglishVerbs.Verb other) {
    return new Side(who, thing, places, other, qualities, dimensions);
  }

  Side measured(Set<String> by, Set<Dimension> in) {
    return new Side(who, thing, places, verb, by, in);
  }

  /** What this says and, where it says nothing, what the other says. */
  Side filledFrom(Side other) {
    return new Side(who == null ? other.who : who, thing == null ? other.thing : thing,
        places.isEmpty() ? other.places : places, verb == null ? other.verb : verb,
        qualities.isEmpty() ? other.qualities : qualities, dimensions.isEmpty() ? other.dimensions : dimensions);
  }

  boolean whoDiffers(Side other) {
    return who != null && other.who != null && !who.same(other.who);
  }

  boolean thingDiffers(Side other) {
    return thing != null && other.thing != null && !thing.mayBe(other.thing)
        || outside(other) || other.outside(this);
  }

  /** Whether this counts what the other can't: "How tall?" is not answered in dollars, but may be in cubes. */
  private boolean outside(Side other) {
    if (thing == null || other.dimensions.isEmpty()) {
      return false;
    }
    return thing.unit() == null
        ? qualities.isEmpty() || !other.dimensions.contains(Dimension.LENGTH)
        : !other.dimensions.contains(thing.unit().dimension());
  }

  boolean placeDiffers(Side other) {
    if (places.isEmpty() || other.places.isEmpty()) {
      return false;
    }
    List<String> mine = places.stream().map(Place::key).toList();
    List<String> others = other.places.stream().map(Place::key).toList();
    return !mine.containsAll(others) && !others.containsAll(mine);
  }

  boolean qualityDiffers(Side other) {
    return !qualities.isEmpty() && !other.qualities.isEmpty()
        && qualities.stream().noneMatch(other.qualities::contains);
  }

  /** Whether something said tells the two apart. */
  boolean differs(Side other) {
    return whoDiffers(other) || thingDiffers(other) || placeDiffers(other) || qualityDiffers(other);
  }
}
