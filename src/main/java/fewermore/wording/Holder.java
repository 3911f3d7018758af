package fewermore.wording;

/**
 * Who or what has an amount: a child by name, or a thing ("the barn").
 *
 * @param english the phrase in the middle of a sentence: "Ines", "the barn"
 * @param spanish the same in Spanish, or null when it is not known
 * @param pronoun what a second sentence about the same holder may begin with
 */
public record Holder(String english, String spanish, Pronoun pronoun) {

  /** A child: the name is the same in both languages. */
  public static Holder child(String name, Pronoun pronoun) {
    return new Holder(name, name, pronoun);
  }

  static Holder thing(String english, String spanish) {
    return new Holder(english, spanish, Pronoun.IT);
  }

  /** Whether verbs take their plural: "the girls have". */
  public boolean several() {
    return pronoun == Pronoun.THEY;
  }

  /** "Ines's", "the girls'". */
  String possessive() {
    return several() && english.endsWith("s") ? english + "'" : english + "'s";
  }

  /** "de Ines", "del equipo". */
  String spanishPossessive() {
    return spanish.startsWith("el ") ? "del " + spanish.substring(3) : "de " + spanish;
  }
}
