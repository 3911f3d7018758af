package fewermore.wording;

/** The ways the scenarios measure. */
final class Measures {
  static final Measure LENGTH =
      Measure.adjective("long", "longer", "shorter", "length", "mide", "miden", "");
  static final Measure HEIGHT =
      Measure.adjective("tall", "taller", "shorter", "height", "mide", "miden", "");
  static final Measure AGE =
      Measure.adjective("old", "older", "younger", "age", "tiene", "tienen", null);
  static final Measure WEIGHT =
      Measure.verb(Verbs.WEIGH, "weight", "", "");
  static final Measure PRICE =
      Measure.verb(Verbs.COST, "cost", "", "");
  static final Measure READING = Measure.time(Verbs.READ);
  static final Measure WALKING = Measure.time(Verbs.WALK);
  static final Measure HOPPING = Measure.time(Verbs.HOP);
  static final Measure WORKING = Measure.time(Verbs.WORK);
  static final Measure WAITING = Measure.time(Verbs.WAIT);
  static final Measure MONEY_HELD = Measure.verb(Verb.HAVE, null, "money", "dinero");
  static final Measure MONEY_SAVED = Measure.verb(Verbs.SAVE, null, "money", "dinero");
  static final Measure RIDING = Measure.verb(Verbs.RIDE, null, null, null);
  static final Measure CAPACITY = Measure.verb(Verbs.HOLD, null, "", "");

  private Measures() {}
}
