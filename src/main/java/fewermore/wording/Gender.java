package fewermore.wording;

/** The gender of a Spanish noun, with the forms that agree with it. */
public enum Gender {
  FEMININE("la", "las", "cuántas"),
  MASCULINE("el", "los", "cuántos");

  private final String article;
  private final String articleMany;
  private final String howMany;

  Gender(String article, String articleMany, String howMany) {
    this.article = article;
    this.articleMany = articleMany;
    this.howMany = howMany;
  }

  /** <i>la</i> or <i>el</i>. */
  public String article() {
    return article;
  }

  /** <i>las</i> or <i>los</i>. */
  public String articleMany() {
    return articleMany;
  }

  /** <i>cuántas</i> or <i>cuántos</i>. */
  public String howMany() {
    return howMany;
  }
}
