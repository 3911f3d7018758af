package fewermore.marking;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Common English words, so that a word is not taken for a misspelling of another ("pears" for "bears"), and
 * which of them sound alike ("pair", "pear"). The words are the smaller sizes of SCOWL, the sounds are from
 * CMUdict; both licences stand under {@code META-INF/licenses}.
 */
final class CommonWords {
  /** Sorted, one a line, ASCII: searched where it lies, so that 60,000 words cost no 60,000 objects. */
  private static final byte[] WORDS = read("common-words.txt");

  private static final Map<String, List<String>> ALIKE = alike();

  private CommonWords() {}

  /** Whether this is a word of the list or the plural of one; lower case expected. */
  static boolean contains(String word) {
    return listed(word) || word.endsWith("s") && !word.endsWith("ss") && listed(singular(word));
  }

  private static String singular(String plural) {
    if (plural.endsWith("ies")) {
      return plural.substring(0, plural.length() - 3) + "y";
    }
    boolean hissing = Stream.of("ses", "xes", "zes", "ches", "shes").anyMatch(plural::endsWith);
    return plural.substring(0, plural.length() - (hissing ? 2 : 1));
  }

  private static boolean listed(String word) {
    if (word.length() < 2) {
      return false;
    }
    int low = 0;
    int high = WORDS.length;
    while (low < high) {
      int start = lineStart((low + high) >>> 1);
      int order = compare(start, word);
      if (order == 0) {
        return true;
      }
      if (order < 0) {
        low = lineEnd(start) + 1;
      } else {
        high = start;
      }
    }
    return false;
  }

  /** Whether two different words of the list, or the plurals of two, are pronounced the same, stress left out. */
  static boolean soundAlike(String word, String other) {
    return listedAlike(word, other)
        || word.endsWith("s") && other.endsWith("s") && listedAlike(singular(word), singular(other));
  }

  private static boolean listedAlike(String word, String other) {
    return ALIKE.getOrDefault(word, List.of()).contains(other);
  }

  private static int lineStart(int at) {
    int start = at;
    while (start > 0 && WORDS[start - 1] != '\n') {
      start--;
    }
    return start;
  }

  private static int lineEnd(int start) {
    int end = start;
    while (end < WORDS.length && WORDS[end] != '\n') {
      end++;
    }
    return end;
  }

  private static int compare(int start, String word) {
    for (int i = 0; i < word.length(); i++) {
      char listed = start + i < WORDS.length ? (char) WORDS[start + i] : '\n';
      if (listed != word.charAt(i)) {
        return Character.compare(listed, word.charAt(i));
      }
    }
    return start + word.length() < WORDS.length && WORDS[start + word.length()] != '\n' ? 1 : 0;
  }

  private static Map<String, List<String>> alike() {
    Map<String, List<String>> alike = new HashMap<>();
    for (String line : new String(read("homophones.txt"), StandardCharsets.US_ASCII).split("\n")) {
      List<String> group = List.of(line.split(" "));
      for (String word : group) {
        alike.merge(word, group, (some, more) -> Stream.concat(some.stream(), more.stream()).distinct().toList());
      }
    }
    return alike;
  }

  private static byte[] read(String name) {
    try (InputStream in = CommonWords.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("missing from the jar: " + name);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
