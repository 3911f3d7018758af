package fewermore.wording;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The revised Spache readability formula (1974): {@code 0.121·ASL + 0.082·PUW + 0.659}, words a sentence and percent
 * of words not on the list, each different one counted once (coefficients as given in the documentation of the R
 * package koRpus and of npm's spache-formula). Our choices: names and numerals count as familiar; so do listed words
 * with -s, -es, -ed, -ing, -er, -est or 's ("fewer", "longer"), and "foot" beside the listed "feet"; an unfamiliar word
 * and its plural are one word.
 */
final class Spache {
  private final Set<String> familiar = new HashSet<>();

  Spache() {
    try (InputStream list = Spache.class.getResourceAsStream("/readability/spache-revised-1974.txt")) {
      new String(list.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#"))
          .forEach(familiar::add);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  double grade(List<String> sentences, Collection<String> names) {
    int words = 0;
    Set<String> unfamiliar = new HashSet<>();
    for (String sentence : sentences) {
      for (String word : words(sentence)) {
        words++;
        if (!known(word, names)) {
          unfamiliar.add(word.toLowerCase(Locale.ROOT).replaceAll("s$", "").replaceAll("e$", ""));
        }
      }
    }
    return 0.121 * words / sentences.size() + 0.082 * 100 * unfamiliar.size() / words + 0.659;
  }

  static List<String> words(String sentence) {
    return List.of(sentence.replaceAll("[.?]", "").split(" "));
  }

  private boolean known(String written, Collection<String> names) {
    String word = written.replaceAll("'s?$", "");
    if (names.contains(word) || word.matches("\\d+")) {
      return true;
    }
    word = word.toLowerCase(Locale.ROOT);
    if (familiar.contains(word) || word.equals("foot")) {
      return true;
    }
    for (String ending : List.of("s", "es", "ed", "ing", "er", "est")) {
      if (word.endsWith(ending)) {
        String stem = word.substring(0, word.length() - ending.length());
        if (familiar.contains(stem) || familiar.contains(stem + "e") || familiar.contains(undoubled(stem))) {
          return true;
        }
      }
    }
    return false;
  }

  private static String undoubled(String stem) {
    int last = stem.length() - 1;
    return last > 1 && stem.charAt(last) == stem.charAt(last - 1) ? stem.substring(0, last) : stem;
  }
}
