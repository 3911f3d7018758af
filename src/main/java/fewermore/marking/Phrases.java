package fewermore.marking;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.ResourceBundle.Control;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Sentences of one language with named places, from a bundle beside this class. */
final class Phrases {
  private static final Pattern PLACE = Pattern.compile("\\{([a-z-]+)}");

  private final ResourceBundle bundle;

  private Phrases(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** A language without a bundle of its own gets the English one, whatever the machine's language is. */
  static Phrases of(String name, Locale language) {
    return new Phrases(ResourceBundle.getBundle("fewermore.marking." + name, language,
        Control.getNoFallbackControl(Control.FORMAT_PROPERTIES)));
  }

  /** The sentence of a key. A place with nothing to stand in it is a bug. */
  String say(String key, Map<String, String> places) {
    return fill(bundle.getString(key), places)
        .orElseThrow(() -> new IllegalStateException(key + " needs more than " + places.keySet()));
  }

  /** The first of the texts {@code key.1}, {@code key.2} … whose places can all be filled and which may be said. */
  String sayFirst(String key, Map<String, String> places, Predicate<String> allowed) {
    for (int i = 1; bundle.containsKey(key + "." + i); i++) {
      Optional<String> text = fill(bundle.getString(key + "." + i), places);
      if (text.isPresent() && allowed.test(text.get())) {
        return text.get();
      }
    }
    throw new IllegalStateException("no text of " + key + " may be said");
  }

  private static Optional<String> fill(String text, Map<String, String> places) {
    StringBuilder filled = new StringBuilder();
    Matcher place = PLACE.matcher(text);
    while (place.find()) {
      String content = places.get(place.group(1));
      if (content == null) {
        return Optional.empty();
      }
      place.appendReplacement(filled, Matcher.quoteReplacement(content));
    }
    return Optional.of(place.appendTail(filled).toString());
  }
}
