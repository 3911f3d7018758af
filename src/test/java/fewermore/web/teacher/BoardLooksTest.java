package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.problem.NumberRange;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.story.Kind;
import fewermore.wording.Sentence;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What can be said of the Board without a browser: contrast, sizes, words. */
class BoardLooksTest {
  /** Text is seen at 4.5 : 1 with the light of a classroom on the screen; the Board's own floors. */
  private static final double TEXT = 12;
  private static final double PARTS = 7;

  private static Map<String, String> tokens(boolean dark) throws IOException {
    String css = Files.readString(Path.of("static/css/tokens.css"));
    String dim = css.substring(css.indexOf(".board-dark {"), css.indexOf("@media (prefers-reduced-motion"));
    String light = css.substring(css.indexOf(":root {"), css.indexOf(".board-dark {"));
    Map<String, String> tokens = new TreeMap<>();
    for (String part : dark ? List.of(light, dim) : List.of(light)) {
      Matcher token = Pattern.compile("--([a-z-]+): (#[0-9A-Fa-f]{6});").matcher(part);
      while (token.find()) {
        tokens.put(token.group(1), token.group(2));
      }
    }
    return tokens;
  }

  /** Relative luminance and contrast: WCAG 2.2, "contrast ratio". */
  private static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(String color) {
    double[] parts = new double[3];
    for (int at = 0; at < 3; at++) {
      double part = Integer.parseInt(color.substring(1 + 2 * at, 3 + 2 * at), 16) / 255.0;
      parts[at] = part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
  }

  @Test
  void theBoardsTextAndBarsHaveTheirContrastInLightAndDark() throws IOException {
    assertEquals(21, contrast("#000000", "#FFFFFF"), 0.001);
    List<String> wrong = new ArrayList<>();
    for (boolean dark : new boolean[] {false, true}) {
      Map<String, String> tokens = tokens(dark);
      for (String[] pair : new String[][] {{"ink", "paper", "t"}, {"ink", "page", "t"}, {"longer", "paper", "p"},
          {"on-longer", "longer", "p"}, {"on-shorter", "shorter", "p"}, {"shorter-edge", "paper", "p"},
          {"gap", "gap-paper", "p"}, {"ink", "gap-paper", "t"}, {"unknown-edge", "unknown", "t"}, {"on-unknown", "unknown", "t"}}) {
        double found = contrast(tokens.get(pair[0]), tokens.get(pair[1]));
        if (found < (pair[2].equals("t") ? TEXT : PARTS)) {
          wrong.add((dark ? "dark " : "light ") + pair[0] + " on " + pair[1] + ": " + found);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void everySizeHasItsClass() throws IOException {
    String css = Files.readString(Path.of("static/css/board-sizes.css"));
    for (int size = BoardFrame.LEAST; size <= BoardFrame.MOST; size++) {
      assertTrue(css.contains(".b-" + size + " { --b: "), "size " + size);
    }
    assertEquals(BoardFrame.LEAST, BoardFrame.size(3, 2));
    assertEquals(BoardFrame.MOST, BoardFrame.size(30, 2));
    assertEquals(70, BoardFrame.size(27, 4));
  }

  @Test
  void everyComparingStoryHasAWordThatTellsIt() {
    for (Kind kind : Kind.values()) {
      for (long seed = 0; seed < 200; seed++) {
        List<String> sentences = ProblemWriter.generate(kind, NumberRange.WITHIN_100, Regrouping.EITHER, seed)
            .english().sentences().stream().map(Sentence::text).toList();
        assertTrue(sentences.stream().anyMatch(WarmUpPage::compares), kind + " " + sentences);
      }
    }
  }

  @Test
  void theWarmUpMarksTheWordsOfEachSentenceAndGathersThem() {
    WarmUpPage page = WarmUpPage.of(List.of("Ines has 14 fewer shells than Tomas.", "The oak is 3 feet taller than the elm."));
    assertEquals(List.of("fewer", "than"), page.slides().get(0).words().stream().filter(WarmUpPage.Word::tells)
        .map(WarmUpPage.Word::text).toList());
    assertEquals(List.of("fewer", "than", "taller"), page.found());
    assertEquals(3, page.slides().get(1).step());
    assertEquals(5, page.lastStep());
    assertEquals(Set.of(), WarmUpPage.words("Tomas has 52 shells."));
  }
}
