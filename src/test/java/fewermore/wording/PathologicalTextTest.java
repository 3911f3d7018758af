package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.text.SourceSpan;
import fewermore.wording.ReadText.Declined;
import fewermore.wording.ReadText.Reason;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a stranger can type: always an answer, and soon. The timeouts are far above what any of them takes. */
@Timeout(20)
class PathologicalTextTest {

  static Stream<String> hostile() {
    return Stream.of(
        "a".repeat(2_000), "A".repeat(2_000), "1".repeat(2_000), "-".repeat(2_000), "'".repeat(2_000),
        "a'".repeat(1_000), "a-".repeat(1_000), "1-".repeat(1_000), "1,".repeat(1_000), "1.".repeat(1_000),
        "1/".repeat(1_000), "1:".repeat(1_000), "$".repeat(2_000), "$1".repeat(1_000), "?".repeat(2_000),
        ".".repeat(2_000), "(".repeat(2_000), "and ".repeat(500), "than ".repeat(400), "more than ".repeat(200),
        "how many ".repeat(222), "has 1 ".repeat(333), "Ana has 1 ".repeat(200), "Ana and ".repeat(250) + "has 1",
        "Ana has 5 more " + "red ".repeat(450) + "shells than Ben. How many shells does Ana have?",
        "Ana's ".repeat(333), "the ".repeat(500), "of ".repeat(600), "one hundred ".repeat(166), "a dozen ".repeat(250),
        "twenty ".repeat(285), "Ana has 5 shells, ".repeat(111), "Ana has 5 shells and ".repeat(95),
        "Ana has 5 more shells than ".repeat(74), "How many does Ana have? ".repeat(83), "5 shells are ".repeat(153),
        "Ana, who has 5 more than Ben, ".repeat(66), "That is 5 more than that is ".repeat(71), "in in in ".repeat(222),
        "If if if ".repeat(222), "Ana has 5 more shells than Ben, which is ".repeat(48), "\u0000".repeat(500),
        "\uD83D\uDC1F".repeat(900), "\uD83D", "\uDC1F", "Ana has \uD83D 5 shells\uDC1F?", "e\u0301".repeat(900),
        "\u202E\u200B\u200D\uFEFF 5 shells?", "İıſß 5 more than ẞ?", "٣ shells. ３ shells? Ⅷ shells, x² shells",
        "½", "1½ 1 1/2 ¼", "\n\r\n\r\r\n", "\t \u00A0\u3000", "How", "how", "what is", "what is the", "by how", "how many",
        "how much", "how many more", "how many more than", "How many more than?", "find difference", "that's", "that is",
        "there are", "there are 5", "5", "$5", "5¢", "Ana", "Ana's", "s'", "'s", "than", "than than", "if", "If 5, how?",
        "who", "who?", ", ,", "?how?", "a a a a a", "Room 12 Room 12 Room 12 than Room 12?", "2147483648 shells?",
        "999999999999999999999999 shells", "1,2,3,4 shells", "00000000000000000000005 shells",
        "<script>alert(1)</script> has 5 more shells than Ben. How many?", "'; DROP TABLE problem; -- 5 shells?",
        "Ana has 5 shells\u0000. Ben has 3 more shells than Ana. How many shells does Ben have?");
  }

  @ParameterizedTest
  @MethodSource("hostile")
  void everyTextHasAnAnswerWithPlacesInsideIt(String text) {
    check(text);
  }

  @Test
  void randomWordsOfTheGrammarHaveAnAnswer() {
    String[] words = ("Ana Ben she he it they her his that this the a 5 12 $7 30¢ one twelve hundred dozen more fewer less "
        + "longer taller than and but if how many much what is are was does did has have had shells feet long old tall "
        + "Ana's Ben's rope , . ? ; : who which there in on of to by for red blue team Monday difference between need "
        + "won beat compared over as same number some gave").split(" ");
    for (long seed = 0; seed < 4_000; seed++) {
      Random random = new Random(seed);
      StringBuilder text = new StringBuilder();
      for (int length = 1 + random.nextInt(30); length > 0; length--) {
        text.append(words[random.nextInt(words.length)]).append(' ');
      }
      check(text.toString());
    }
  }

  @Test
  void randomCharactersHaveAnAnswer() {
    for (long seed = 0; seed < 2_000; seed++) {
      Random random = new Random(seed);
      StringBuilder text = new StringBuilder();
      for (int length = random.nextInt(200); length > 0; length--) {
        text.append((char) (random.nextInt(8) == 0 ? random.nextInt(0x10000) : 32 + random.nextInt(95)));
      }
      check(text.toString());
    }
  }

  @Test
  void nothingIsDeclinedAsEmptyAndTooMuchAsTooLong() {
    assertEquals(Reason.EMPTY, assertInstanceOf(Declined.class, WordingReader.read("  \n")).reason());
    assertEquals(Reason.EMPTY, assertInstanceOf(Declined.class, WordingReader.read("")).reason());
    assertEquals(Reason.TOO_LONG, assertInstanceOf(Declined.class, WordingReader.read("a ".repeat(1_001))).reason());
    assertEquals(List.of(), WordingReader.readAll(" \n\n "));
  }

  private static void check(String text) {
    ReadText read = WordingReader.read(text);
    assertNotNull(read);
    if (read instanceof Declined declined) {
      assertTrue(!declined.at().isEmpty());
      declined.at().forEach(at -> assertInside(at, text));
    } else {
      ((ReadText.Understood) read).places().forEach(place -> assertInside(place.at(), text));
    }
    Correction.of(read);
    WordingReader.readAll(text).forEach(each -> assertInside(each.at(), text));
  }

  private static void assertInside(SourceSpan at, String text) {
    assertTrue(at.end() <= text.length(), () -> at + " of " + text.length() + ": " + text);
  }
}
