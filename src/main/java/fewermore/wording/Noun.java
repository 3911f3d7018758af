package fewermore.wording;

import fewermore.story.Thing;

/**
 * A thing that can be counted or a unit, one and many, in both languages. The Spanish forms and the gender are null
 * for a noun that only the teacher's own problem has; such a noun can be written in English alone.
 */
public record Noun(String one, String many, String spanishOne, String spanishMany, Gender gender) {

  /** A noun from outside the lexicon, with no Spanish. */
  public static Noun englishOnly(Thing thing) {
    return new Noun(thing.one(), thing.many(), null, null, null);
  }

  public boolean hasSpanish() {
    return spanishOne != null;
  }

  /** One thing after 1, many after every other number, 0 included. */
  public String english(int count) {
    return count == 1 ? one : many;
  }

  public String spanish(int count) {
    return count == 1 ? spanishOne : spanishMany;
  }

  public Thing thing() {
    return new Thing(one, many);
  }
}
