package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import fewermore.json.MarksJson;
import fewermore.json.StoryJson;
import fewermore.json.WorkJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whole pieces of work, every part of {@code spec/marking-examples.jsonl}, by hand for this project. */
class MarkingExamplesTest {
  static List<JsonNode> examples() {
    try (var in = MarkingExamplesTest.class.getResourceAsStream("/spec/marking-examples.jsonl")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().map(Json::read).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void everyExampleIsMarkedAsItExpects(JsonNode example) {
    var story = StoryJson.read(example.path("story"));
    Work work = WorkJson.read(example.path("work"));
    JsonNode marks = MarksJson.write(story, work, Marker.mark(story, work), Locale.ENGLISH);
    example.path("expect").properties().forEach(expected ->
        assertEquals(expected.getValue(), marks.get(expected.getKey()), example.path("id") + " " + expected.getKey()));
    List.of("equation", "answer", "label", "bars", "strategy").forEach(part ->
        assertEquals(example.path("work").has(part), marks.has(part), example.path("id") + " " + part));
  }

  @Test
  void theFileHasNotShrunk() {
    assertTrue(examples().size() >= 51, examples().size() + " examples");
  }
}
