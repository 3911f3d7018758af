package fewermore.records;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** What a family reads, in English or Spanish. A text that is missing is a fault, never an empty line. */
public final class FamilyTexts {
  private final ResourceBundle texts;
  private final Locale locale;

  private FamilyTexts(Locale locale) {
    this.locale = locale;
    this.texts = ResourceBundle.getBundle("fewermore.records.family", locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** @param language {@code en} or {@code es} */
  public static FamilyTexts in(String language) {
    return new FamilyTexts(language.equals("es") ? Locale.forLanguageTag("es-US") : Locale.US);
  }

  public Locale locale() {
    return locale;
  }

  /** @param arguments numbers are written as the language writes them */
  public String of(String key, Object... arguments) {
    return new MessageFormat(texts.getString(key), locale).format(arguments);
  }

  public ResourceBundle all() {
    return texts;
  }
}
