package fewermore.web.teacher;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The warm-up: which words tell us that two numbers are compared. {@code pages/board/warm-up.html},
 * {@code GET /board/warm-up?step=n}. The class calls out, the teacher taps; the next step marks the words. The last
 * slide says what they do not tell: what to do with the numbers.
 *
 * @param slides one sentence each
 * @param found the words of all sentences, as they came
 */
public record WarmUpPage(List<Slide> slides, List<String> found, int lastStep) {
  /** Words that say that two numbers are compared. Our list, of what our stories say. */
  static final Set<String> COMPARING = Set.of("more", "fewer", "less", "longer", "shorter", "taller", "older", "younger",
      "heavier", "lighter", "than", "difference");

  public WarmUpPage {
    slides = List.copyOf(slides);
    found = List.copyOf(found);
  }

  /** @param step when the sentence comes; the words are marked one step later */
  public record Slide(List<Word> words, int step) {}

  /** @param id the word's own; @param tells whether it says that numbers are compared */
  public record Word(String id, String text, boolean tells) {}

  public static WarmUpPage of(List<String> sentences) {
    List<Slide> slides = new ArrayList<>();
    Set<String> found = new LinkedHashSet<>();
    for (String sentence : sentences) {
      List<Word> words = new ArrayList<>();
      for (String text : sentence.strip().split("\\s+")) {
        String bare = bare(text);
        boolean tells = COMPARING.contains(bare);
        if (tells) {
          found.add(bare);
        }
        words.add(new Word("w" + slides.size() + "-" + words.size(), text, tells));
      }
      slides.add(new Slide(List.copyOf(words), 2 * slides.size() + 1));
    }
    return new WarmUpPage(slides, List.copyOf(found), 2 * slides.size() + 1);
  }

  private static String bare(String word) {
    return word.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]", "");
  }

  /** Whether a sentence says that two numbers are compared. */
  public static boolean compares(String sentence) {
    for (String word : sentence.split("\\s+")) {
      if (COMPARING.contains(bare(word))) {
        return true;
      }
    }
    return false;
  }

  /** The comparing words of a sentence. */
  public static Set<String> words(String sentence) {
    Set<String> words = new LinkedHashSet<>();
    for (String word : sentence.split("\\s+")) {
      if (COMPARING.contains(bare(word))) {
        words.add(bare(word));
      }
    }
    return words;
  }
}
