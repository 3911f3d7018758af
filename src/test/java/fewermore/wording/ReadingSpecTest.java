package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Thing;
import fewermore.wording.ReadText.Declined;
import fewermore.wording.ReadText.Reason;
import fewermore.wording.ReadText.Understood;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs the examples of {@code spec/reading.md}. */
class ReadingSpecTest {
  private static final Pattern NUMBERED = Pattern.compile("(\\d+)\\. (.*)");
  private static final String EXPECTED = "   → ";

  record Example(int number, String text, String expected) {
    boolean declined() {
      return expected.startsWith("declined: ");
    }
  }

  @TestFactory
  Stream<DynamicTest> everyExampleIsReadSo() throws IOException {
    return examples().stream().map(example -> DynamicTest.dynamicTest(example.number + ". " + example.text,
        () -> assertEquals(example.expected, said(WordingReader.read(example.text)))));
  }

  @Test
  void theFileHoldsEnoughOfBothAndIsNumberedThrough() throws IOException {
    List<Example> examples = examples();
    assertTrue(examples.size() >= 378, "only " + examples.size() + " examples");
    assertTrue(examples.stream().filter(Example::declined).count() >= 177);
    for (int i = 0; i < examples.size(); i++) {
      assertEquals(i + 1, examples.get(i).number);
    }
    assertEquals(examples.size(), examples.stream().map(Example::text).distinct().count());
  }

  /** Reasons that a text can have: all but those of nothing typed, too much typed, and roles set by hand. */
  @Test
  void everyReasonHasAnExample() throws IOException {
    Set<String> without = EnumSet.complementOf(EnumSet.of(Reason.EMPTY, Reason.TOO_LONG, Reason.ROLES)).stream()
        .map(Reason::id).collect(Collectors.toSet());
    examples().stream().filter(Example::declined)
        .forEach(example -> without.remove(example.expected.split(" ")[1]));
    assertEquals(Set.of(), without);
  }

  @Test
  void everyDeclinedExampleSaysThreeWholeSentences() throws IOException {
    for (Example example : examples()) {
      if (WordingReader.read(example.text) instanceof Declined declined) {
        for (String sentence : List.of(declined.found(), declined.expected(), declined.advice())) {
          assertTrue(sentence.matches("[A-Z‘].*[.?]"), example.number + ": " + sentence);
        }
      }
    }
  }

  static List<Example> examples() throws IOException {
    List<Example> examples = new ArrayList<>();
    try (InputStream file = ReadingSpecTest.class.getResourceAsStream("/spec/reading.md")) {
      Matcher numbered = null;
      for (String line : new String(file.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
        Matcher matcher = NUMBERED.matcher(line);
        if (matcher.matches()) {
          numbered = matcher;
        } else if (line.startsWith(EXPECTED)) {
          examples.add(new Example(Integer.parseInt(numbered.group(1)), numbered.group(2),
              line.substring(EXPECTED.length())));
        }
      }
    }
    return examples;
  }

  private static String said(ReadText read) {
    return read.match(new ReadText.Cases<>() {
      @Override
      public String understood(Understood understood) {
        Comparison story = understood.story();
        String other = story.otherThing() == null ? "" : ", not " + forms(story.otherThing());
        String extras = story.extras().isEmpty() ? "" : "; extra "
            + story.extras().stream().map(String::valueOf).collect(Collectors.joining(" "));
        return story.persons().larger() + " > " + story.persons().smaller() + "; " + forms(story.thing()) + other + "; "
            + story.amounts().total() + " = " + story.amounts().firstPart() + " + " + story.amounts().secondPart()
            + "; " + story.unknown().id() + "; " + story.wording().id() + extras;
      }

      @Override
      public String declined(Declined declined) {
        return "declined: " + declined.reason().id() + " at “" + declined.at().get(0).of(declined.text()) + "”";
      }
    });
  }

  private static String forms(Thing thing) {
    return thing.one() + "/" + thing.many();
  }
}
