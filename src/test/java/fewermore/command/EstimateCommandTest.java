package fewermore.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.ReasoningTable;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class EstimateCommandTest {
  private int exit;

  private List<JsonNode> answers(String... lines) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    exit = EstimateCommand.run(new ByteArrayInputStream(String.join("\n", lines).getBytes(StandardCharsets.UTF_8)), out,
        ReasoningTable.standard());
    List<JsonNode> answers = new ArrayList<>();
    out.toString(StandardCharsets.UTF_8).lines().forEach(line -> answers.add(Json.read(line)));
    return answers;
  }

  private static String problem(String unknown, String wording, String equation, String answer) {
    String numbers = unknown.equals("larger") ? "smaller\",\"value\":34},{\"role\":\"difference\",\"value\":28"
        : "larger\",\"value\":62},{\"role\":\"difference\",\"value\":28";
    return "{\"story\":{\"persons\":{\"larger\":\"Tomas\",\"smaller\":\"Ines\"},\"thing\":[\"shell\",\"shells\"],"
        + "\"numbers\":[{\"role\":\"" + numbers + "}],\"unknown\":\"" + unknown + "\",\"wording\":\"" + wording + "\"},"
        + "\"work\":{\"equation\":\"" + equation + "\",\"answer\":\"" + answer + "\"}}";
  }

  private static String day(String day, String... problems) {
    return "{\"day\":\"" + day + "\",\"problems\":[" + String.join(",", problems) + "]}";
  }

  private static String child(String id, String... days) {
    return "{\"child\":\"" + id + "\",\"occasions\":[" + String.join(",", days) + "]}";
  }

  private static final String FEWER = problem("larger", "fewer", "34 - 28 = x", "6");
  private static final String MORE = problem("smaller", "more", "62 + 28 = x", "90");
  private static final String AGREEING = problem("smaller", "fewer", "62 - 28 = x", "34");

  @Test
  void twoEquationsByTheWordLookAsIfAndOnTwoDaysTheySayIt() throws IOException {
    List<JsonNode> answers = answers(child("c1", day("2026-10-05", FEWER, MORE)),
        child("c2", day("2026-10-05", FEWER, MORE), day("2026-10-07", MORE, FEWER)));
    assertEquals(0, exit);
    assertEquals("c1", answers.get(0).get("child").asText());
    assertEquals("by-the-cue-word", answers.get(0).get("says").asText());
    assertEquals("looks-as-if", answers.get(0).get("strength").asText());
    assertEquals("reasons", answers.get(1).get("strength").asText());
    double sum = 0;
    for (WayOfReasoning way : WayOfReasoning.values()) {
      sum += answers.get(0).get("ways").get(way.id()).asDouble();
    }
    assertEquals(1, sum, 1e-9);
    assertTrue(answers.get(0).get("next").hasNonNull("unknown") && answers.get(0).get("next").hasNonNull("wording"));
  }

  @Test
  void agreeingWorkAndNoWorkAreTooEarly() throws IOException {
    for (JsonNode answer : answers(child("a", day("2026-10-05", AGREEING, AGREEING, AGREEING, AGREEING)), child("b"))) {
      assertEquals("too-early", answer.get("says").asText());
      assertEquals("too-early", answer.get("strength").asText());
    }
  }

  @Test
  void theNextProblemIsNotOfTheKindAskedLast() throws IOException {
    for (String last : List.of(FEWER, MORE, AGREEING)) {
      JsonNode next = answers(child("c", day("2026-10-05", last))).get(0).get("next");
      String kind = next.get("unknown").asText() + next.get("wording").asText();
      assertTrue(!last.contains("\"unknown\":\"" + next.get("unknown").asText() + "\",\"wording\":\"" + next.get("wording").asText()),
          kind);
    }
  }

  @Test
  void aLineThatCannotBeUsedSaysWhereAndTheRestGoOn() throws IOException {
    List<JsonNode> answers = answers("{\"child\":\"x\"}", child("y", "{\"day\":\"5 October\",\"problems\":[]}"),
        child("z", day("2026-10-05", "{\"story\":{}}")), child("c", day("2026-10-05", FEWER)));
    assertEquals(3, exit);
    assertTrue(answers.get(0).get("problem").asText().startsWith("occasions: a list was expected"));
    assertTrue(answers.get(1).get("problem").asText().startsWith("occasions[0].day: a date was expected"));
    assertTrue(answers.get(2).get("problem").asText().startsWith("occasions[0].problems[0]: story"));
    assertEquals("z", answers.get(2).get("child").asText());
    assertEquals("too-early", answers.get(3).get("strength").asText());
  }
}
