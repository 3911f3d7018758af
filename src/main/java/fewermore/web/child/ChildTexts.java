package fewermore.web.child;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.TreeMap;

/** What a child's pages say, from {@code messages/child*.properties}; English where a language has none. */
public final class ChildTexts {
  /** The languages a child can read in. */
  public static final List<String> LANGUAGES = List.of("en", "es");

  private static final String BUNDLE = "messages.child";

  private final ResourceBundle bundle;
  private final Locale locale;

  private ChildTexts(Locale locale) {
    this.locale = locale;
    // Without this the laptop's own language would stand in for English.
    this.bundle = ResourceBundle.getBundle(BUNDLE, locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** @param language {@code en}, {@code es} */
  public static ChildTexts in(String language) {
    return new ChildTexts(Locale.forLanguageTag(language));
  }

  public boolean has(String key) {
    return bundle.containsKey(key);
  }

  /** @throws java.util.MissingResourceException when no text has this key */
  public String of(String key, Object... values) {
    String text = bundle.getString(key);
    return values.length == 0 ? text : new MessageFormat(text, locale).format(values);
  }

  /** All texts whose key begins so, by the rest of the key, patterns not filled in. */
  public Map<String, String> startingWith(String prefix) {
    Map<String, String> texts = new TreeMap<>();
    for (String key : bundle.keySet()) {
      if (key.startsWith(prefix)) {
        texts.put(key.substring(prefix.length()), bundle.getString(key));
      }
    }
    return texts;
  }
}
