package fewermore.wording;

/** The gender of a Spanish noun, with the forms that agree with it. */
public enum Gender {
  FEMININE("la", "cuántas"),
  MASCULINE("el", "cuántos");

  private final String article;
  private final String howMany;

  Gender(String article, String howMany) {
    this.article = article;
    this.howMany = howMany;
  }

  /** <i>la</i> or <i>el</i>. */
  public String article() {
    return article;
  }

  /** <i>cuántas</i> or <i>cuántos</i>. */
  public String howMany() {
    return howMany;
  }
}
