package fewermore.wording;

import java.util.Optional;

/** The languages a problem can be written in. */
public enum Language {
  ENGLISH("en"),
  SPANISH("es");

  private final String code;

  Language(String code) {
    this.code = code;
  }

  /** The tag of BCP 47 that a page puts into {@code lang}. */
  public String code() {
    return code;
  }

  public static Optional<Language> of(String code) {
    for (Language language : values()) {
      if (language.code.equals(code)) {
        return Optional.of(language);
      }
    }
    return Optional.empty();
  }
}
