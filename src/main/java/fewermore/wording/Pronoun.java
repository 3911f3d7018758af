package fewermore.wording;

import java.util.Optional;

/** The pronoun a holder may be taken up with. A name that is given to girls and boys has none. */
public enum Pronoun {
  SHE("she"),
  HE("he"),
  IT("it"),
  THEY("they"),
  NONE(null);

  private final String word;

  Pronoun(String word) {
    this.word = word;
  }

  /** The subject form, or empty where the name itself must be said again. */
  public Optional<String> word() {
    return Optional.ofNullable(word);
  }
}
