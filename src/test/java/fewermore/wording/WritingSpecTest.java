package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs the examples of {@code spec/writing.md}. */
class WritingSpecTest {
  private static final Pattern STORY = Pattern.compile(
      "(.+); (.+) > (.+); (\\d+) = (\\d+) \\+ (\\d+); (\\w+); (\\w+)(?:; extra (\\d+))?");

  @TestFactory
  Stream<DynamicTest> everyExampleIsWrittenSo() throws IOException {
    return examples().stream().map(example ->
        DynamicTest.dynamicTest(example.get("story") + " / " + example.get("shape"), () -> check(example)));
  }

  @Test
  void theFileIsNotEmpty() throws IOException {
    assertTrue(examples().size() >= 30, "only " + examples().size() + " examples");
  }

  private static void check(Map<String, String> example) {
    Matcher said = STORY.matcher(example.get("story"));
    assertTrue(said.matches(), example.get("story"));
    Comparison story = story(said);
    Optional<Scene> scene = scene(said.group(1), story);
    Shape shape = shape(example.get("shape"));
    for (Language language : Language.values()) {
      Writing writing = scene.isEmpty() ? WordingWriter.write(story, language, new Random(1))
          : WordingWriter.write(story, scene.get(), language, shape);
      String expected = example.get(language.code());
      if (writing instanceof Writing.Declined declined) {
        assertEquals(expected, declined.reason().id());
      } else {
        WrittenText text = (WrittenText) writing;
        assertEquals(expected, text.text());
        if (example.containsKey("aloud " + language.code())) {
          assertEquals(example.get("aloud " + language.code()), text.forSpeech());
        }
      }
    }
  }

  /** A scenario's own scene with the named persons, or the one found for a story from outside. */
  private static Optional<Scene> scene(String about, Comparison story) {
    Optional<Scenario> scenario = Lexicon.scenario(about);
    if (story.persons().larger() != null && scenario.isPresent()
        && scenario.get() instanceof Scenario.Measured measured) {
      Scene.Measured found = (Scene.Measured) Lexicon.sceneOf(story, new Random(1)).orElseThrow();
      return Optional.of(new Scene.Measured(found.larger(), found.smaller(), measured.owned(), measured.unit(),
          measured.measure()));
    }
    return Lexicon.sceneOf(story, new Random(1));
  }

  private static Comparison story(Matcher said) {
    String[] about = said.group(1).split("/");
    Role unknown = Role.of(said.group(7)).orElseThrow();
    Wording wording = Wording.of(said.group(8)).orElseThrow();
    Thing thing = thing(about[0]);
    Thing other = about.length > 1 ? thing(about[1]) : null;
    if (Lexicon.scenario(about[0]).orElse(null) instanceof Scenario.TwoKinds) {
      boolean first = unknown == Role.LARGER || unknown == Role.DIFFERENCE && wording != Wording.FEWER;
      thing = thing(said.group(first ? 2 : 3));
      other = thing(said.group(first ? 3 : 2));
    }
    boolean nobody = said.group(2).equals("nobody");
    return new Comparison(nobody ? Persons.UNNAMED : new Persons(said.group(2), said.group(3)), thing, other, List.of(),
        new Relation(number(said.group(4)), number(said.group(5)), number(said.group(6))), unknown, wording,
        said.group(9) == null ? List.of() : List.of(number(said.group(9))));
  }

  private static Thing thing(String about) {
    Scenario scenario = Lexicon.scenario(about).orElse(null);
    if (scenario instanceof Scenario.Counted counted) {
      return counted.thing().thing();
    }
    if (scenario instanceof Scenario.Measured measured) {
      return measured.unit().thing();
    }
    return Lexicon.noun(about).map(Noun::thing)
        .orElseGet(() -> new Thing(about.substring(0, about.length() - 1), about));
  }

  private static int number(String digits) {
    return Integer.parseInt(digits);
  }

  private static Shape shape(String words) {
    return new Shape(words.contains("question first"), words.contains("turned"), words.contains("pronoun"),
        words.contains("left out"), words.contains("other question"));
  }

  private static List<Map<String, String>> examples() throws IOException {
    List<Map<String, String>> examples = new ArrayList<>();
    try (InputStream file = WritingSpecTest.class.getResourceAsStream("/spec/writing.md")) {
      Map<String, String> example = null;
      for (String line : new String(file.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
        if (line.equals("```example")) {
          example = new HashMap<>();
        } else if (line.equals("```")) {
          examples.add(example);
          example = null;
        } else if (example != null) {
          int colon = line.indexOf(':');
          example.put(line.substring(0, colon), line.substring(colon + 1).strip());
        }
      }
    }
    return examples;
  }
}
