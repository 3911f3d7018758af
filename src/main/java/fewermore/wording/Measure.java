package fewermore.wording;

/**
 * How a measure is told. Either with an adjective (<i>is 52 feet long, 14 feet shorter than, how long is</i>) or with
 * a verb (<i>weighs 52 pounds, weighs 14 pounds less than, how much does … weigh</i>). Spanish always has a verb:
 * <i>mide, pesa, cuesta, tiene</i>.
 *
 * @param verb the verb; "is" for an adjective
 * @param before the English word between verb and amount: "for" in "read for 52 minutes", or null
 * @param adjective "long", "tall", "old", or null for a verb
 * @param more "longer", "taller", "older", or "more"
 * @param fewer "shorter", "younger", or "less"
 * @param mass what stands after <i>how much</i>: "money", "" for nothing, or null when only <i>how many UNITS</i> is
 *     good English
 * @param spanishMass what stands after <i>cuánto</i>: "dinero", "" for nothing, or null when the unit must be asked
 */
public record Measure(Verb verb, String before, String adjective, String more, String fewer,
    String mass, String spanishMass) {

  static Measure adjective(String adjective, String more, String fewer, String spanishVerb,
      String spanishVerbMany, String spanishMass) {
    return new Measure(Verb.present("is", "be", spanishVerb, spanishVerbMany), null, adjective, more, fewer, null,
        spanishMass);
  }

  static Measure verb(Verb verb, String mass, String spanishMass) {
    return new Measure(verb, null, null, "more", "less", mass, spanishMass);
  }

  static Measure time(Verb verb) {
    return new Measure(verb, "for", null, "more", "less", null, null);
  }

  boolean hasAdjective() {
    return adjective != null;
  }
}
