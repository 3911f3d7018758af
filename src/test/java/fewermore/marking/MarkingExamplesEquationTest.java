package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import fewermore.json.StoryJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The equations of {@code spec/marking-examples.jsonl}: worked examples written by hand for this project. */
class MarkingExamplesEquationTest {
  @TestFactory
  Stream<DynamicTest> everyEquationIsMarkedAsTheExampleSays() {
    return examples().stream().map(example -> DynamicTest.dynamicTest(
        "marking-examples.jsonl " + example.path("id").asText(), () -> check(example)));
  }

  @Test
  void theFileHasNotShrunk() {
    assertTrue(examples().size() >= 34, "equations: " + examples().size());
  }

  private static void check(JsonNode example) {
    var story = StoryJson.read(example.path("story"));
    EquationMark mark = EquationMarker.mark(story, example.path("work").path("equation").asText());
    JsonNode expect = example.path("expect");
    assertEquals(expect.path("equation").asText(), mark.reason().id());
    assertEquals(expect.path("expression").isTextual() ? expect.path("expression").asText() : null,
        mark.expression() == null ? null : mark.expression().id());
    assertEquals(expect.path("cueLed").asBoolean(), mark.cueLed(), "cueLed");
    assertEquals(expect.path("equalsChain").asBoolean(), mark.equalsChain(), "equalsChain");
    assertEquals(expect.path("solvedForm").asBoolean(), mark.solvedForm(), "solvedForm");
    assertEquals(expect.path("notTrue").asBoolean(), mark.notTrue(), "notTrue");
  }

  private static List<JsonNode> examples() {
    try (var in = MarkingExamplesEquationTest.class.getResourceAsStream("/spec/marking-examples.jsonl")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().map(Json::read)
          .filter(example -> example.path("expect").has("equation")).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
