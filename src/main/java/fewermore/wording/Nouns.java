package fewermore.wording;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Every noun of the lexicon, alone or behind one adjective ("blue marble"): what scenarios are made of, and common
 * ones that teachers' own problems bring.
 */
final class Nouns {
  private static final Map<String, Noun> BY_FORM = new LinkedHashMap<>();
  private static final Map<String, List<String>> ADJECTIVES = new LinkedHashMap<>();

  static {
    for (List<String> row : rows("nouns.tsv")) {
      add(new Noun(row.get(0), row.get(1), row.get(2), row.get(3),
          row.get(4).equals("f") ? Gender.FEMININE : Gender.MASCULINE));
    }
    rows("adjectives.tsv").forEach(row -> ADJECTIVES.put(row.get(0), row));
  }

  private static final Set<String> SPANISH = spanish();

  private Nouns() {}

  /** The noun with this form, one or many, with or without one adjective before it. */
  static Optional<Noun> of(String form) {
    String words = form.strip().toLowerCase(Locale.ROOT);
    Noun noun = BY_FORM.get(words);
    if (noun != null) {
      return Optional.of(noun);
    }
    int space = words.indexOf(' ');
    if (space < 0) {
      return Optional.empty();
    }
    List<String> adjective = ADJECTIVES.get(words.substring(0, space));
    Noun bare = BY_FORM.get(words.substring(space + 1).strip());
    return adjective == null || bare == null ? Optional.empty() : Optional.of(described(adjective, bare));
  }

  /** Whether a word, without accents and in lower case, is the Spanish of a noun, one or many. */
  static boolean isSpanish(String plain) {
    return SPANISH.contains(plain);
  }

  private static Set<String> spanish() {
    Set<String> words = new HashSet<>();
    BY_FORM.values().forEach(noun -> Stream.of(noun.spanishOne(), noun.spanishMany())
        .map(word -> Normalizer.normalize(word, Normalizer.Form.NFKD).replaceAll("\\p{M}", "")).forEach(words::add));
    return words;
  }

  /** Every noun once, without adjectives. */
  static List<Noun> all() {
    return BY_FORM.values().stream().distinct().toList();
  }

  /** A noun that must be there. */
  static Noun noun(String form) {
    return of(form).orElseThrow(() -> new IllegalStateException("not in the lexicon: " + form));
  }

  private static Noun described(List<String> adjective, Noun noun) {
    int gender = noun.gender() == Gender.MASCULINE ? 1 : 3;
    return new Noun(adjective.get(0) + " " + noun.one(), adjective.get(0) + " " + noun.many(),
        noun.spanishOne() + " " + adjective.get(gender), noun.spanishMany() + " " + adjective.get(gender + 1),
        noun.gender());
  }

  private static void add(Noun noun) {
    BY_FORM.putIfAbsent(noun.one(), noun);
    BY_FORM.putIfAbsent(noun.many(), noun);
  }

  private static List<List<String>> rows(String file) {
    List<List<String>> rows = new ArrayList<>();
    try (InputStream stream = Nouns.class.getResourceAsStream("/wording/" + file);
        var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.startsWith("#")) {
          rows.add(List.of(line.split("\t")));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }
}
