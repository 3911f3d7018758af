package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import fewermore.story.Comparison;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** All that a stranger can type: a verdict, a sentence and a prompt come back, in time, and nothing throws. */
class PathologicalTest {
  private static final Duration GUARD = Duration.ofSeconds(5);
  private static final List<Comparison> STORIES = List.of(
      SpecFile.story("Theo 52, Mara ?, 14 fewer; striped shell/striped shells; not plain shell/plain shells; wider"
          + " animal/animals"),
      SpecFile.story("the red rope 61, the blue rope ?, 26 fewer; inch/inches"),
      SpecFile.story("- 61, - 35, ? difference; chocolate chip cookie/chocolate chip cookies; not oat cookie/oat"
          + " cookies"));

  static Stream<String> writings() {
    return Stream.of(
        "a".repeat(100_000), "striped ".repeat(12_500), "shells shells shells shells shells shells shells shells",
        "9".repeat(100_000), "38 ".repeat(33_000), "(".repeat(100_000), "x = ".repeat(25_000), "1+".repeat(50_000),
        "\u0000", "\u0000\u0001\u0002shells\u0000", "🐚🐚🐚", "38 🐚", "👩‍👩‍👧‍👦", "\u202Esllehs\u202C", "\u200F38\u200E",
        "\uD800", "\uDC00\uD800", "\uFEFFshells", "s̸̡h̵e̴l̸l̷s̶", "\u0301".repeat(1000), "ﬁsh", "ǅ", "İ", "ßßß",
        "'''''", "\"\"\"", "$$$",
        "''38''", "' s ' s ' s", "of of of", "the the the", "than than than", "and", "has has has has has has has has",
        "38 more 38 more 38 more 38 more 38 more 38 more", "a b c d e f g h i j k l m n o p q r s t u v w x y z",
        "stripedplainstripedplainstripedpl", "{work} {0} ${x} \\u0041", "null", "<script>alert(1)</script>", "=1+1",
        "\r\n\t", "−−−",
        "٣٨", "３８", "38\u00A0shells", "x".repeat(41), "shell".repeat(40));
  }

  @ParameterizedTest
  @MethodSource("writings")
  void whateverStandsThereIsMarked(String written) {
    Assertions.assertTimeoutPreemptively(GUARD, () -> STORIES.forEach(story -> markEveryPart(story, written)));
  }

  @Test
  void tenThousandRandomWritingsAreMarked() {
    long seed = 20261125;
    Random random = new Random(seed);
    String signs = "0123456789+-−=x?□ ()abcdehilmnoprstuS'\"$.,\u0000\u202E\u200Bñé🐚";
    int[] points = signs.codePoints().toArray();
    for (int i = 0; i < 10_000; i++) {
      StringBuilder written = new StringBuilder();
      int length = random.nextInt(24);
      for (int j = 0; j < length; j++) {
        written.appendCodePoint(points[random.nextInt(points.length)]);
      }
      String text = written.toString();
      Assertions.assertDoesNotThrow(() -> markEveryPart(STORIES.get(random.nextInt(STORIES.size())), text),
          () -> "seed " + seed + ": " + text);
    }
  }

  @Test
  void aStoryOfStrangeWordsIsMarked() {
    List<Comparison> strange = List.of(
        SpecFile.story("\u0000 52, 🐚 ?, 14 fewer; 🐚/🐚🐚; not …/…; wider ?/?"),
        SpecFile.story("Theo 52, Mara ?, 14 fewer; " + "a b c d e f g h/" + "a b c d e f g hs"),
        SpecFile.story("Theo 52, Mara ?, 14 fewer; of/ofs; not the/thes"),
        SpecFile.story("Theo 52, Mara ?, 14 fewer; two words/one"),
        SpecFile.story("Theo 52, Mara ?, 14 fewer; " + "long".repeat(500) + "/" + "long".repeat(500) + "s"));
    Assertions.assertTimeoutPreemptively(GUARD, () -> strange.forEach(story ->
        List.of("🐚", "shells", "a b c", "of", "38", "Theo", "…", "long".repeat(40)).forEach(written ->
            markEveryPart(story, written))));
  }

  private static void markEveryPart(Comparison story, String written) {
    Work work = new Work(written, written, written, new Bars(written, written, written, written), written);
    Marks marks = Marker.mark(story, work);
    Remarks.of(story, work, marks).values().forEach(remark -> assertFalse(remark.isBlank()));
    for (Locale language : List.of(Locale.ENGLISH, Locale.forLanguageTag("es"))) {
      Prompts.of(story, work, marks, false, language).values().forEach(prompt -> assertFalse(prompt.isBlank()));
    }
    assertNotNull(Signs.of(marks, false));
  }
}
