package fewermore.wording;

/**
 * What the holders do with the things, as told and as asked: <i>found</i>, <i>did … find</i>, <i>encontró</i>.
 *
 * @param told the form in a statement about one holder: "has", "found"
 * @param helper the helping verb of the question about one holder: "does", "did"
 * @param base the form after the helping verb: "have", "find"
 * @param spanish the form about one holder, in statement and question: "tiene", "encontró"
 * @param spanishMany the form about several holders: "tienen", "encontraron"
 */
public record Verb(String told, String helper, String base, String spanish, String spanishMany) {
  public static final Verb HAVE = new Verb("has", "does", "have", "tiene", "tienen");

  static Verb past(String told, String base, String spanish, String spanishMany) {
    return new Verb(told, "did", base, spanish, spanishMany);
  }

  static Verb present(String told, String base, String spanish, String spanishMany) {
    return new Verb(told, "does", base, spanish, spanishMany);
  }

  String told(Holder holder) {
    return holder.several() && helper.equals("does") ? base : told;
  }

  String helper(Holder holder) {
    return holder.several() && helper.equals("does") ? "do" : helper;
  }

  String spanish(Holder holder) {
    return holder.several() ? spanishMany : spanish;
  }
}
