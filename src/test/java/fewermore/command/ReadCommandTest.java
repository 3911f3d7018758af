package fewermore.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import fewermore.json.StoryJson;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReadCommandTest {
  private static final String SHELLS = "{\"id\":\"r1\",\"text\":\"Ines has 14 fewer shells than Tomas. "
      + "Tomas has 52 shells. How many shells does Ines have?\"}";

  @Test
  void aTextBecomesItsStoryWithAnswerAndLabel() throws IOException {
    Ran ran = run(SHELLS);
    assertEquals(0, ran.code);
    assertEquals("""
        {"id":"r1","kind":"compare","story":{"persons":{"larger":"Tomas","smaller":"Ines"},\
        "thing":["shell","shells"],"otherThing":null,"wider":[],"numbers":[{"role":"larger","value":52},\
        {"role":"difference","value":14}],"unknown":"smaller","wording":"fewer"},"answer":38,"label":"shells"}\
        """, ran.lines.get(0).toString());
  }

  @Test
  void aDeclinedTextIsAnAnswerAndNoProblem() throws IOException {
    Ran ran = run("{\"id\":2,\"text\":\"Ana has twice as many shells as Ben. Ben has 9 shells. How many has Ana?\"}");
    assertEquals(0, ran.code);
    assertEquals("""
        {"id":2,"kind":"declined","reason":"times","at":[8,13],"says":"‘twice’ is not a difference. \
        A comparison says how many more or how many fewer. Say by how many one has more."}\
        """, ran.lines.get(0).toString());
  }

  @Test
  void extraNumbersStandBesideTheGivenOnes() throws IOException {
    JsonNode story = run("{\"text\":\"Ines has 14 fewer shells than Tomas. Tomas has 52 shells. Ines has 6 hats. "
        + "How many shells does Ines have?\"}").lines.get(0).path("story");
    assertEquals("{\"role\":\"extra\",\"value\":6}", story.path("numbers").get(2).toString());
    assertEquals(List.of(6), StoryJson.read(story).extras());
  }

  @Test
  void aLineThatCantBeUsedIsAnsweredInItsPlaceAndTheRestGoOn() throws IOException {
    Ran ran = run(String.join("\n", SHELLS, "{\"id\":", "", "[]", "{\"id\":7}", "{\"id\":8,\"text\":5}",
        "{\"id\":9,\"text\":\"\"}", SHELLS));
    assertEquals(3, ran.code);
    assertEquals(8, ran.lines.size());
    assertTrue(ran.lines.get(1).path("problem").asText().startsWith("not JSON at character"), ran.lines::toString);
    assertTrue(ran.lines.get(2).path("problem").asText().startsWith("the line is empty"));
    assertTrue(ran.lines.get(3).path("problem").asText().startsWith("the line is not an object"));
    assertEquals("{\"id\":7,\"problem\":\"text: a problem's text was expected; give it as \\\"text\\\":\\\"…\\\"\"}",
        ran.lines.get(4).toString());
    assertEquals(8, ran.lines.get(5).path("id").asInt());
    assertEquals("empty", ran.lines.get(6).path("reason").asText());
    assertEquals(ran.lines.get(0), ran.lines.get(7));
  }

  @Test
  void whatIsReadCanBeWrittenAgain() throws IOException {
    JsonNode read = run(SHELLS).lines.get(0);
    var written = new ByteArrayOutputStream();
    String line = "{\"id\":\"w1\",\"story\":" + read.path("story") + "}";
    WriteCommand.run(new ByteArrayInputStream(line.getBytes(StandardCharsets.UTF_8)), written, 1, "en");
    String text = Json.read(written.toString(StandardCharsets.UTF_8)).path("text").asText();
    JsonNode again = run(Json.write(Json.object().put("text", text))).lines.get(0);
    assertEquals(read.path("story"), again.path("story"), text);
  }

  /** Twenty thousand lines through a pipe that is never held whole. */
  @Test
  void manyLinesPassWithoutBeingHeld() throws IOException {
    ManyLines lines = new ManyLines(SHELLS, 20_000);
    assertEquals(0, ReadCommand.run(lines.in(), lines.out()));
    assertEquals(20_000, lines.written());
  }

  private record Ran(int code, List<JsonNode> lines) {}

  private static Ran run(String lines) throws IOException {
    var out = new ByteArrayOutputStream();
    int code = ReadCommand.run(new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)), out);
    return new Ran(code, out.toString(StandardCharsets.UTF_8).lines().map(Json::read).toList());
  }
}
