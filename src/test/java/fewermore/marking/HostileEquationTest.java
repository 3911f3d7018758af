package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** All that a stranger can put on the equation line: a mark and, where it can't be read, a sentence. */
class HostileEquationTest {
  private static final Duration GUARD = Duration.ofSeconds(5);
  private static final Comparison STORY =
      RandomEquations.story(52, 38, Role.SMALLER, Wording.MORE, List.of(6));

  static List<String> lines() {
    return List.of(
        "1".repeat(100_000),
        "52 − 14 = x".repeat(10_000),
        " ".repeat(100_000) + "52 − 14 = x" + " ".repeat(100_000),
        "9".repeat(10_000) + " − 14 = x",
        "52 − " + "0".repeat(10_000) + "14 = x",
        "(".repeat(100_000),
        "(".repeat(400) + "52" + ")".repeat(400) + " − 14 = x",
        ")".repeat(500),
        "52" + " − 1".repeat(240) + " = x",
        "14" + " + 53".repeat(150) + " = 52",
        "14" + " + 7 − 3".repeat(90) + " = 52",
        "14 + 999999999 − 999999998" + " + 123456789 − 1".repeat(50) + " = 52",
        "1" + " + 2 − 1 = 3".repeat(60),
        "52" + "=52".repeat(300),
        "52 − 14" + " = 38 − 0".repeat(90),
        "=".repeat(1000),
        "-".repeat(1000),
        "_".repeat(1000),
        "_".repeat(900) + " = 52 − 14",
        "x".repeat(1000),
        "52 − 14 = \u0000",
        "\u0000",
        "\u202E52 − 14 = x\u202C",
        "52 − 14 = \u2067x\u2069",
        "\u200E52 − 14 = x",
        "🧮 − 🍎 = 🐻",
        "52 − 14 = 👨‍👩‍👧‍👦",
        "\uD83D",
        "52 − 14 = \uDE42",
        "52 − 14 = e\u0301",
        "５２ − １４ = x",
        "٥٢ − ١٤ = x",
        "52 − 14 = x; DROP TABLE work",
        "<script>alert(1)</script>",
        "=cmd|' /C calc'!A0",
        "52 − 14 = ∞",
        "52 − 14 ≠ x",
        "999999999 + 999999999 = x",
        "x = 999999999 − 1");
  }

  @ParameterizedTest
  @MethodSource("lines")
  void everyLineGetsAMarkInTime(String line) {
    EquationMark mark = assertTimeoutPreemptively(GUARD, () -> {
      EquationMarker.ownCalculation(STORY, line);
      EquationMarker.ownValue(STORY, line);
      return EquationMarker.mark(STORY, line);
    });
    assertNotNull(mark.reason());
    if (mark.reason() == EquationReason.UNREADABLE) {
      String says = mark.problem().says();
      assertTrue(says.startsWith("Expected ") && says.endsWith(".") && says.length() < 250, says);
      assertTrue(says.codePoints().noneMatch(c -> Character.getType(c) == Character.FORMAT
          || Character.isISOControl(c)), says);
    }
    assertTrue(mark.at() == null || mark.at().end() <= line.length());
  }

  /** All characters that Unicode calls dash, and the minus signs among the mathematical ones. */
  @Test
  void everyDashIsAMinusOrSaidNotToBe() {
    int read = 0;
    for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
      if (Character.getType(c) == Character.DASH_PUNCTUATION || "−⁻₋➖∸⊟".indexOf(c) >= 0) {
        EquationMark mark = EquationMarker.mark(STORY, "52 " + Character.toString(c) + " 14 = x");
        assertTrue(mark.fits() || mark.reason() == EquationReason.UNREADABLE, Integer.toHexString(c));
        read += mark.fits() ? 1 : 0;
      }
    }
    assertTrue(read >= 12, "dashes read as minus: " + read);
  }

  @Test
  void anyHeapOfSignsGetsAMark() {
    long seed = 8_128;
    Random random = new Random(seed);
    String signs = "0123456789 +-−–=x?_□()yN .,$🙂\u0000\u202E\uD83D\t";
    assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
      for (int i = 0; i < 50_000; i++) {
        StringBuilder line = new StringBuilder();
        for (int j = random.nextInt(30); j >= 0; j--) {
          line.append(signs.charAt(random.nextInt(random.nextBoolean() ? 18 : signs.length())));
        }
        String written = line.toString();
        EquationMark mark = EquationMarker.mark(STORY, written);
        assertEquals(mark.reason() == EquationReason.UNREADABLE, mark.problem() != null,
            () -> "seed " + seed + ": " + written);
        assertTrue(mark.at() == null || mark.at().end() <= written.length(), () -> "seed " + seed + ": " + written);
      }
    });
  }
}
