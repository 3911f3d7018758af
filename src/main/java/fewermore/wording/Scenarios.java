package fewermore.wording;

import static fewermore.wording.Gender.FEMININE;
import static fewermore.wording.Gender.MASCULINE;

import fewermore.wording.Scenario.Counted;
import fewermore.wording.Scenario.Measured;
import fewermore.wording.Scenario.Topic;
import fewermore.wording.Scenario.TwoKinds;
import java.util.List;

/** The invented scenarios. They only grow: a problem on file names its scenario by id. */
final class Scenarios {
  private static final Verb FIND = Verb.past("found", "find", "encontró", "encontraron");
  private static final Verb PICK = Verb.past("picked", "pick", "recogió", "recogieron");
  private static final Verb READ = Verb.past("read", "read", "leyó", "leyeron");
  private static final Verb USE = Verb.past("used", "use", "usó", "usaron");
  private static final Verb PLANT = Verb.past("planted", "plant", "sembró", "sembraron");
  private static final Verb DRAW = Verb.past("drew", "draw", "dibujó", "dibujaron");
  private static final Verb FILL = Verb.past("filled", "fill", "llenó", "llenaron");
  private static final Verb PACK = Verb.past("packed", "pack", "empacó", "empacaron");
  private static final Verb MAKE = Verb.past("made", "make", "hizo", "hicieron");
  private static final Verb SELL = Verb.past("sold", "sell", "vendió", "vendieron");
  private static final Verb SEE = Verb.past("saw", "see", "vio", "vieron");
  private static final Verb TAKE = Verb.past("took", "take", "dio", "dieron");
  private static final Verb WRITE = Verb.past("wrote", "write", "escribió", "escribieron");
  private static final Verb GET = Verb.past("got", "get", "ganó", "ganaron");
  private static final Verb SAVE = Verb.past("saved", "save", "ahorró", "ahorraron");
  private static final Verb RIDE = Verb.past("rode", "ride", "recorrió", "recorrieron");
  private static final Verb WALK = Verb.past("walked", "walk", "caminó", "caminaron");
  private static final Verb WEIGH = Verb.present("weighs", "weigh", "pesa", "pesan");
  private static final Verb COST = Verb.present("costs", "cost", "cuesta", "cuestan");

  private static final Measure LENGTH =
      Measure.adjective("long", "longer", "shorter", "length", "mide", "miden", "");
  private static final Measure HEIGHT =
      Measure.adjective("tall", "taller", "shorter", "height", "mide", "miden", "");
  private static final Measure AGE =
      Measure.adjective("old", "older", "younger", "age", "tiene", "tienen", null);
  private static final Measure WEIGHT = Measure.verb(WEIGH, "weight", "", "");
  private static final Measure PRICE = Measure.verb(COST, "cost", "", "");

  private static final Noun FRUIT = new Noun("fruit", "fruits", "fruta", "frutas", FEMININE);
  private static final Noun FLOWER = new Noun("flower", "flowers", "flor", "flores", FEMININE);
  private static final Noun BIRD = new Noun("bird", "birds", "ave", "aves", FEMININE);
  private static final Noun ANIMAL = new Noun("animal", "animals", "animal", "animales", MASCULINE);
  private static final Noun TREE = new Noun("tree", "trees", "árbol", "árboles", MASCULINE);
  private static final Noun SHAPE = new Noun("shape", "shapes", "figura", "figuras", FEMININE);
  private static final Noun PAPER = new Noun("paper", "papers", "papel", "papeles", MASCULINE);

  static final Noun INCH = new Noun("inch", "inches", "pulgada", "pulgadas", FEMININE);
  static final Noun FOOT = new Noun("foot", "feet", "pie", "pies", MASCULINE);
  static final Noun YARD = new Noun("yard", "yards", "yarda", "yardas", FEMININE);
  static final Noun CENTIMETER =
      new Noun("centimeter", "centimeters", "centímetro", "centímetros", MASCULINE);
  static final Noun MILE = new Noun("mile", "miles", "milla", "millas", FEMININE);
  static final Noun POUND = new Noun("pound", "pounds", "libra", "libras", FEMININE);
  static final Noun MINUTE = new Noun("minute", "minutes", "minuto", "minutos", MASCULINE);
  static final Noun DOLLAR = new Noun("dollar", "dollars", "dólar", "dólares", MASCULINE);
  static final Noun CENT = new Noun("cent", "cents", "centavo", "centavos", MASCULINE);
  static final Noun YEAR = new Noun("year", "years", "año", "años", MASCULINE);

  private static final List<List<Holder>> TREES = List.of(
      List.of(Holder.thing("the oak", "el roble"), Holder.thing("the pine", "el pino")),
      List.of(Holder.thing("the maple", "el arce"), Holder.thing("the elm", "el olmo")));
  private static final List<List<Holder>> GOODS = List.of(
      List.of(Holder.thing("the pen", "la pluma"), Holder.thing("the ruler", "la regla")),
      List.of(Holder.thing("the apple", "la manzana"), Holder.thing("the orange", "la naranja")),
      List.of(Holder.thing("the card", "la tarjeta"), Holder.thing("the candle", "la vela")));

  static final List<Scenario> ALL = List.of(
      counted("shells", new Noun("shell", "shells", "concha", "conchas", FEMININE), FIND),
      counted("rocks", new Noun("rock", "rocks", "piedra", "piedras", FEMININE), FIND),
      counted("acorns", new Noun("acorn", "acorns", "bellota", "bellotas", FEMININE), FIND),
      counted("leaves", new Noun("leaf", "leaves", "hoja", "hojas", FEMININE), FIND),
      counted("feathers", new Noun("feather", "feathers", "pluma", "plumas", FEMININE), FIND),
      counted("stickers", new Noun("sticker", "stickers", "calcomanía", "calcomanías", FEMININE), Verb.HAVE),
      counted("buttons", new Noun("button", "buttons", "botón", "botones", MASCULINE), Verb.HAVE),
      counted("marbles", new Noun("marble", "marbles", "canica", "canicas", FEMININE), Verb.HAVE),
      counted("balloons", new Noun("balloon", "balloons", "globo", "globos", MASCULINE), Verb.HAVE),
      counted("stamps", new Noun("stamp", "stamps", "estampilla", "estampillas", FEMININE), Verb.HAVE),
      counted("apples", new Noun("apple", "apples", "manzana", "manzanas", FEMININE), PICK, FRUIT),
      counted("carrots", new Noun("carrot", "carrots", "zanahoria", "zanahorias", FEMININE), PICK),
      counted("seeds", new Noun("seed", "seeds", "semilla", "semillas", FEMININE), PLANT),
      counted("books", new Noun("book", "books", "libro", "libros", MASCULINE), READ),
      counted("pages", new Noun("page", "pages", "página", "páginas", FEMININE), READ),
      counted("words", new Noun("word", "words", "palabra", "palabras", FEMININE), WRITE),
      counted("blocks", new Noun("block", "blocks", "bloque", "bloques", MASCULINE), USE),
      counted("stars", new Noun("star", "stars", "estrella", "estrellas", FEMININE), DRAW, SHAPE),
      counted("cups", new Noun("cup", "cups", "vaso", "vasos", MASCULINE), FILL),
      counted("boxes", new Noun("box", "boxes", "caja", "cajas", FEMININE), PACK),
      counted("cards", new Noun("card", "cards", "tarjeta", "tarjetas", FEMININE), MAKE),
      counted("paper-boats", new Noun("paper boat", "paper boats", "barco de papel", "barcos de papel", MASCULINE),
          MAKE, new Noun("boat", "boats", "barco", "barcos", MASCULINE), PAPER),
      counted("tickets", new Noun("ticket", "tickets", "boleto", "boletos", MASCULINE), SELL),
      counted("birds", new Noun("bird", "birds", "pájaro", "pájaros", MASCULINE), SEE, ANIMAL),
      counted("frogs", new Noun("frog", "frogs", "rana", "ranas", FEMININE), SEE, ANIMAL),
      counted("steps", new Noun("step", "steps", "paso", "pasos", MASCULINE), TAKE),
      new Counted("points", Topic.POINTS, new Noun("point", "points", "punto", "puntos", MASCULINE), GET, List.of()),

      somewhere("pond-fish", new Noun("red fish", "red fish", "pez rojo", "peces rojos", MASCULINE),
          new Noun("black fish", "black fish", "pez negro", "peces negros", MASCULINE), "in the pond",
          "en el estanque"),
      somewhere("farm-birds", new Noun("hen", "hens", "gallina", "gallinas", FEMININE),
          new Noun("duck", "ducks", "pato", "patos", MASCULINE), "on the farm", "en la granja", BIRD, ANIMAL),
      somewhere("farm-animals", new Noun("goat", "goats", "cabra", "cabras", FEMININE),
          new Noun("cow", "cows", "vaca", "vacas", FEMININE), "on the farm", "en la granja", ANIMAL),
      somewhere("garden-flowers", new Noun("white flower", "white flowers", "flor blanca", "flores blancas", FEMININE),
          new Noun("yellow flower", "yellow flowers", "flor amarilla", "flores amarillas", FEMININE), "in the garden",
          "en el jardín"),
      somewhere("box-blocks", new Noun("red block", "red blocks", "bloque rojo", "bloques rojos", MASCULINE),
          new Noun("green block", "green blocks", "bloque verde", "bloques verdes", MASCULINE), "in the box",
          "en la caja"),
      somewhere("big-shells", new Noun("big shell", "big shells", "concha grande", "conchas grandes", FEMININE),
          new Noun("small shell", "small shells", "concha pequeña", "conchas pequeñas", FEMININE), "in the box",
          "en la caja"),
      somewhere("street-cars", new Noun("car", "cars", "carro", "carros", MASCULINE),
          new Noun("truck", "trucks", "camión", "camiones", MASCULINE), "on the street", "en la calle"),
      somewhere("park-trees", new Noun("oak", "oaks", "roble", "robles", MASCULINE),
          new Noun("pine", "pines", "pino", "pinos", MASCULINE), "in the park", "en el parque", TREE),
      owned("orchard-fruit", new Noun("apple", "apples", "manzana", "manzanas", FEMININE),
          new Noun("pear", "pears", "pera", "peras", FEMININE), PICK, FRUIT),
      owned("drawn-shapes", new Noun("star", "stars", "estrella", "estrellas", FEMININE),
          new Noun("heart", "hearts", "corazón", "corazones", MASCULINE), DRAW, SHAPE),
      owned("planted-flowers", new Noun("rose", "roses", "rosa", "rosas", FEMININE),
          new Noun("tulip", "tulips", "tulipán", "tulipanes", MASCULINE), PLANT, FLOWER),

      owns("rope", Topic.LENGTH, FOOT, LENGTH, new Noun("rope", "ropes", "cuerda", "cuerdas", FEMININE)),
      owns("ribbon", Topic.LENGTH, INCH, LENGTH, new Noun("ribbon", "ribbons", "cinta", "cintas", FEMININE)),
      owns("snake", Topic.LENGTH, CENTIMETER, LENGTH,
          new Noun("snake", "snakes", "serpiente", "serpientes", FEMININE)),
      owns("garden", Topic.LENGTH, YARD, LENGTH, new Noun("garden", "gardens", "jardín", "jardines", MASCULINE)),
      owns("block-tower", Topic.LENGTH, INCH, HEIGHT, new Noun("tower", "towers", "torre", "torres", FEMININE)),
      owns("plant", Topic.LENGTH, CENTIMETER, HEIGHT, new Noun("plant", "plants", "planta", "plantas", FEMININE)),
      compared("tall-trees", Topic.LENGTH, FOOT, HEIGHT, TREES),
      compared("old-trees", Topic.AGE, YEAR, AGE, TREES),
      owns("turtle", Topic.AGE, YEAR, AGE, new Noun("turtle", "turtles", "tortuga", "tortugas", FEMININE)),
      owns("parrot", Topic.AGE, YEAR, AGE, new Noun("parrot", "parrots", "loro", "loros", MASCULINE)),
      owns("dog", Topic.WEIGHT, POUND, WEIGHT, new Noun("dog", "dogs", "perro", "perros", MASCULINE)),
      owns("pumpkin", Topic.WEIGHT, POUND, WEIGHT,
          new Noun("pumpkin", "pumpkins", "calabaza", "calabazas", FEMININE)),
      children("reading-time", Topic.TIME, MINUTE, Measure.time(READ)),
      children("walking-time", Topic.TIME, MINUTE, Measure.time(WALK)),
      children("dollars", Topic.MONEY, DOLLAR, Measure.verb(Verb.HAVE, null, "money", "dinero")),
      children("saved-dollars", Topic.MONEY, DOLLAR, Measure.verb(SAVE, null, "money", "dinero")),
      compared("prices", Topic.MONEY, CENT, PRICE, GOODS),
      children("bike-miles", Topic.DISTANCE, MILE, Measure.verb(RIDE, null, null, null)));

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

  private static Scenario owns(String id, Topic topic, Noun unit, Measure measure, Noun owned) {
    return new Measured(id, topic, unit, measure, owned, List.of());
  }

  private static Scenario children(String id, Topic topic, Noun unit, Measure measure) {
    return new Measured(id, topic, unit, measure, null, List.of());
  }

  private static Scenario compared(String id, Topic topic, Noun unit, Measure measure, List<List<Holder>> pairs) {
    return new Measured(id, topic, unit, measure, null, pairs);
  }
}
