package fewermore.wording;

import static fewermore.wording.Nouns.noun;

import fewermore.wording.Scenario.Counted;
import fewermore.wording.Scenario.Measured;
import fewermore.wording.Scenario.Topic;
import fewermore.wording.Scenario.TwoKinds;
import java.util.List;

/** The invented scenarios. They only grow: a problem on file names its scenario by id. */
final class Scenarios {
  private static final Noun FRUIT = noun("fruit");
  private static final Noun BIRD = noun("bird");
  private static final Noun ANIMAL = noun("animal");
  private static final Noun TREE = noun("tree");
  private static final Noun SHAPE = noun("shape");
  private static final Noun PAPER = noun("paper");
  private static final Noun ROPE = noun("rope");
  private static final Noun PUMPKIN = noun("pumpkin");
  private static final Noun TANK = noun("tank");

  private static final List<List<Holder>> TALL = List.of(
      List.of(Holder.thing("the tree", "el árbol"), Holder.thing("the barn", "el granero")),
      List.of(Holder.thing("the tower", "la torre"), Holder.thing("the school", "la escuela")));
  private static final List<List<Holder>> OLD = List.of(
      List.of(Holder.thing("the tree", "el árbol"), Holder.thing("the turtle", "la tortuga")));
  private static final List<List<Holder>> GOODS = List.of(
      List.of(Holder.thing("the pen", "la pluma"), Holder.thing("the ruler", "la regla")),
      List.of(Holder.thing("the apple", "la manzana"), Holder.thing("the orange", "la naranja")),
      List.of(Holder.thing("the card", "la tarjeta"), Holder.thing("the candle", "la vela")));

  static final List<Scenario> ALL = List.of(
      counted("shells", noun("shell"), Verbs.FIND),
      counted("rocks", noun("rock"), Verbs.FIND),
      counted("acorns", noun("acorn"), Verbs.FIND),
      counted("leaves", noun("leaf"), Verbs.FIND),
      counted("feathers", noun("feather"), Verbs.FIND),
      counted("stickers", noun("sticker"), Verb.HAVE),
      counted("buttons", noun("button"), Verb.HAVE),
      counted("marbles", noun("marble"), Verb.HAVE),
      counted("balloons", noun("balloon"), Verb.HAVE),
      counted("stamps", noun("stamp"), Verb.HAVE),
      counted("apples", noun("apple"), Verbs.PICK, FRUIT),
      counted("carrots", noun("carrot"), Verbs.PICK),
      counted("seeds", noun("seed"), Verbs.PLANT),
      counted("books", noun("book"), Verbs.READ),
      counted("pages", noun("page"), Verbs.READ),
      counted("words", noun("word"), Verbs.WRITE),
      counted("blocks", noun("block"), Verbs.USE),
      counted("stars", noun("star"), Verbs.DRAW, SHAPE),
      counted("cups", noun("cup"), Verbs.FILL),
      counted("boxes", noun("box"), Verbs.PACK),
      counted("cards", noun("card"), Verbs.MAKE),
      counted("paper-boats", noun("paper boat"), Verbs.MAKE, noun("boat"), PAPER),
      counted("tickets", noun("ticket"), Verbs.SELL),
      counted("birds", noun("bird"), Verbs.SEE, ANIMAL),
      counted("frogs", noun("frog"), Verbs.SEE, ANIMAL),
      counted("steps", noun("step"), Verbs.TAKE),
      new Counted("points", Topic.POINTS, noun("point"), Verbs.GET, List.of()),

      somewhere("pond-fish", noun("red fish"), noun("black fish"), "in the pond", "en el estanque"),
      somewhere("farm-birds", noun("hen"), noun("duck"), "on the farm", "en la granja", BIRD, ANIMAL),
      somewhere("farm-animals", noun("goat"), noun("cow"), "on the farm", "en la granja", ANIMAL),
      somewhere("garden-flowers", noun("white flower"), noun("yellow flower"), "in the garden", "en el jardín"),
      somewhere("box-blocks", noun("red block"), noun("green block"), "in the box", "en la caja"),
      somewhere("big-shells", noun("big shell"), noun("small shell"), "in the box", "en la caja"),
      somewhere("street-cars", noun("car"), noun("truck"), "on the street", "en la calle"),
      somewhere("park-trees", noun("oak"), noun("pine"), "in the park", "en el parque", TREE),
      owned("orchard-fruit", noun("apple"), noun("pear"), Verbs.PICK, FRUIT),
      owned("pens-and-pencils", noun("pen"), noun("pencil"), Verb.HAVE),
      owned("planted-vegetables", noun("bean"), noun("carrot"), Verbs.PLANT, noun("vegetable")),

      owns("rope", Topic.LENGTH, Units.FOOT, Measures.LENGTH, ROPE),
      owns("ribbon", Topic.LENGTH, Units.INCH, Measures.LENGTH, noun("ribbon")),
      owns("train", Topic.LENGTH, Units.CENTIMETER, Measures.LENGTH, noun("train")),
      owns("garden", Topic.LENGTH, Units.YARD, Measures.LENGTH, noun("garden")),
      owns("block-tower", Topic.LENGTH, Units.CENTIMETER, Measures.HEIGHT, noun("tower")),
      owns("sunflower", Topic.LENGTH, Units.INCH, Measures.HEIGHT, noun("sunflower")),
      compared("tall-things", Topic.LENGTH, Units.FOOT, Measures.HEIGHT, TALL),
      compared("old-things", Topic.AGE, Units.YEAR, Measures.AGE, OLD),
      owns("turtle", Topic.AGE, Units.YEAR, Measures.AGE, noun("turtle")),
      owns("parrot", Topic.AGE, Units.YEAR, Measures.AGE, noun("parrot")),
      owns("dog", Topic.WEIGHT, Units.POUND, Measures.WEIGHT, noun("dog")),
      owns("pig", Topic.WEIGHT, Units.POUND, Measures.WEIGHT, noun("pig")),
      children("reading-time", Topic.TIME, Units.MINUTE, Measures.READING),
      children("walking-time", Topic.TIME, Units.MINUTE, Measures.WALKING),
      children("dollars", Topic.MONEY, Units.DOLLAR, Measures.MONEY_HELD),
      children("saved-dollars", Topic.MONEY, Units.DOLLAR, Measures.MONEY_SAVED),
      compared("prices", Topic.MONEY, Units.CENT, Measures.PRICE, GOODS),
      children("bike-miles", Topic.DISTANCE, Units.MILE, Measures.RIDING));

  /** Units that a teacher's own problem may bring, each with a way to tell it; never drawn. */
  static final List<Measured> KNOWN_UNITS = List.of(
      owns("rope-meters", Topic.LENGTH, Units.METER, Measures.LENGTH, ROPE),
      children("bike-kilometers", Topic.DISTANCE, Units.KILOMETER, Measures.RIDING),
      children("seconds", Topic.TIME, Units.SECOND, Measures.HOPPING),
      children("hours", Topic.TIME, Units.HOUR, Measures.WORKING),
      children("days", Topic.TIME, Units.DAY, Measures.WAITING),
      children("weeks", Topic.TIME, Units.WEEK, Measures.WAITING),
      owns("ounces", Topic.WEIGHT, Units.OUNCE, Measures.WEIGHT, PUMPKIN),
      owns("grams", Topic.WEIGHT, Units.GRAM, Measures.WEIGHT, PUMPKIN),
      owns("kilograms", Topic.WEIGHT, Units.KILOGRAM, Measures.WEIGHT, PUMPKIN),
      owns("liters", Topic.CAPACITY, Units.LITER, Measures.CAPACITY, TANK),
      owns("gallons", Topic.CAPACITY, Units.GALLON, Measures.CAPACITY, TANK));

  private Scenarios() {}

  private static Scenario counted(String id, Noun thing, Verb verb, Noun... wider) {
    return new Counted(id, Topic.COUNTED, thing, verb, List.of(wider));
  }

  private static Scenario somewhere(String id, Noun first, Noun second, String place, String spanishPlace,
      Noun... wider) {
    return new TwoKinds(id, first, second, place, spanishPlace, null, List.of(wider));
  }

  private static Scenario owned(String id, Noun first, Noun second, Verb verb, Noun... wider) {
    return new TwoKinds(id, first, second, null, null, verb, List.of(wider));
  }

  private static Measured owns(String id, Topic topic, Noun unit, Measure measure, Noun owned) {
    return new Measured(id, topic, unit, measure, owned, List.of());
  }

  private static Measured children(String id, Topic topic, Noun unit, Measure measure) {
    return new Measured(id, topic, unit, measure, null, List.of());
  }

  private static Measured compared(String id, Topic topic, Noun unit, Measure measure, List<List<Holder>> pairs) {
    return new Measured(id, topic, unit, measure, null, pairs);
  }
}
