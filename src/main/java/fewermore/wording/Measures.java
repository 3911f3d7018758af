package fewermore.wording;

/** The ways the scenarios measure. */
final class Measures {
  static final Measure LENGTH =
      Measure.adjective("long", "longer", "shorter", "mide", "miden", "");
  static final Measure HEIGHT =
      Measure.adjective("tall", "taller", "shorter", "mide", "miden", "");
  static final Measure AGE =
      Measure.adjective("old", "older", "younger", "tiene", "tienen", null);
  static final Measure WEIGHT =
      Measure.verb(Verbs.WEIGH, "", "");
  static final Measure PRICE =
      Measure.verb(Verbs.COST, "", "");
  static final Measure READING = Measure.time(Verbs.READ);
  static final Measure WALKING = Measure.time(Verbs.WALK);
  static final Measure HOPPING = Measure.time(Verbs.HOP);
  static final Measure WORKING = Measure.time(Verbs.WORK);
  static final Measure WAITING = Measure.time(Verbs.WAIT);
  static final Measure MONEY_HELD = Measure.verb(Verb.HAVE, "money", "dinero");
  static final Measure MONEY_SAVED = Measure.verb(Verbs.SAVE, "money", "dinero");
  static final Measure RIDING = Measure.verb(Verbs.RIDE, null, null);
  static final Measure CAPACITY = Measure.verb(Verbs.HOLD, "", "");

  private Measures() {}
}
