package fewermore.wording;

/** The verbs of the scenarios. Spanish forms are to be read by a native speaker. */
final class Verbs {
  static final Verb FIND = Verb.past("found", "find", "encontró", "encontraron");
  static final Verb PICK = Verb.past("picked", "pick", "recogió", "recogieron");
  static final Verb READ = Verb.past("read", "read", "leyó", "leyeron");
  static final Verb USE = Verb.past("used", "use", "usó", "usaron");
  static final Verb PLANT = Verb.past("planted", "plant", "sembró", "sembraron");
  static final Verb DRAW = Verb.past("drew", "draw", "dibujó", "dibujaron");
  static final Verb FILL = Verb.past("filled", "fill", "llenó", "llenaron");
  static final Verb PACK = Verb.past("packed", "pack", "empacó", "empacaron");
  static final Verb MAKE = Verb.past("made", "make", "hizo", "hicieron");
  static final Verb SELL = Verb.past("sold", "sell", "vendió", "vendieron");
  static final Verb SEE = Verb.past("saw", "see", "vio", "vieron");
  static final Verb TAKE = Verb.past("took", "take", "dio", "dieron");
  static final Verb WRITE = Verb.past("wrote", "write", "escribió", "escribieron");
  static final Verb GET = Verb.past("got", "get", "ganó", "ganaron");
  static final Verb SAVE = Verb.past("saved", "save", "ahorró", "ahorraron");
  static final Verb RIDE = Verb.past("rode", "ride", "recorrió", "recorrieron");
  static final Verb WALK = Verb.past("walked", "walk", "caminó", "caminaron");
  static final Verb WEIGH = Verb.present("weighs", "weigh", "pesa", "pesan");
  static final Verb COST = Verb.present("costs", "cost", "cuesta", "cuestan");
  static final Verb HOP = Verb.past("hopped", "hop", "saltó", "saltaron");
  static final Verb WORK = Verb.past("worked", "work", "trabajó", "trabajaron");
  static final Verb WAIT = Verb.past("waited", "wait", "esperó", "esperaron");
  static final Verb HOLD = Verb.present("holds", "hold", "contiene", "contienen");

  private Verbs() {}
}
