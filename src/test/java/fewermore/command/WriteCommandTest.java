package fewermore.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class WriteCommandTest {
  private static final String SHELLS = """
      {"id":"w1","story":{"persons":{"larger":"Tomas","smaller":"Ines"},"thing":["shell","shells"],"otherThing":null,\
      "numbers":[{"role":"larger","value":52},{"role":"difference","value":14}],"unknown":"smaller","wording":"fewer"}}\
      """;

  @Test
  void aStoryBecomesATextWithItsAnswerAndLabel() throws IOException {
    Ran ran = run(SHELLS, 1, "en");
    assertEquals(WriteCommand.ALL_USED, ran.code);
    JsonNode reply = ran.lines.get(0);
    assertEquals("w1", reply.path("id").asText());
    assertEquals(38, reply.path("answer").asInt());
    assertEquals("shells", reply.path("label").asText());
    assertTrue(reply.path("text").asText().contains("14 fewer"), reply::toString);
  }

  @Test
  void spanishHasASpanishLabel() throws IOException {
    JsonNode reply = run(SHELLS, 1, "es").lines.get(0);
    assertEquals("conchas", reply.path("label").asText());
    assertTrue(reply.path("text").asText().contains("menos que Tomas"), reply::toString);
  }

  @Test
  void aLineThatCantBeUsedIsAnsweredInItsPlace() throws IOException {
    String lines = String.join("\n", SHELLS, "{\"id\":", "", "{\"id\":7,\"story\":{\"unknown\":\"most\"}}",
        SHELLS.replace("\"Ines\"", "null"), SHELLS.replace("w1", "w9"));
    Ran ran = run(lines, 1, "en");
    assertEquals(WriteCommand.SOME_NOT_USED, ran.code);
    assertEquals(6, ran.lines.size());
    assertTrue(ran.lines.get(1).path("problem").asText().startsWith("not JSON at character"), ran.lines::toString);
    assertTrue(ran.lines.get(1).path("id").isNull());
    assertEquals("the line is empty; a JSON object was expected", ran.lines.get(2).path("problem").asText());
    assertEquals(7, ran.lines.get(3).path("id").asInt());
    assertEquals("story.unknown: larger, smaller or difference was expected; name the quantity that is asked",
        ran.lines.get(3).path("problem").asText());
    assertEquals("story: persons: two different names were expected, larger for who has more and smaller for who has "
        + "fewer; give both, or two kinds of thing", ran.lines.get(4).path("problem").asText());
    assertEquals("w9", ran.lines.get(5).path("id").asText());
    assertTrue(ran.lines.get(5).has("text"));
  }

  @Test
  void aNounWithoutSpanishIsAProblemInSpanishOnly() throws IOException {
    String gizmos = SHELLS.replace("shell", "gizmo");
    assertEquals(WriteCommand.ALL_USED, run(gizmos, 1, "en").code);
    Ran spanish = run(gizmos, 1, "es");
    assertEquals(WriteCommand.SOME_NOT_USED, spanish.code);
    assertEquals("story: no Spanish is known for \"gizmos\"; give the Spanish word, one and many, and its gender",
        spanish.lines.get(0).path("problem").asText());
  }

  @Test
  void theTeachersOwnSpanishIsTaken() throws IOException {
    String gizmos = SHELLS.replace("shell", "gizmo").replaceFirst("\\}$", ",\"spanish\":{\"nouns\":[{\"english\":"
        + "[\"gizmo\",\"gizmos\"],\"spanish\":[\"chisme\",\"chismes\"],\"gender\":\"m\"}]}}");
    Ran ran = run(gizmos, 1, "es");
    assertEquals(WriteCommand.ALL_USED, ran.code, ran.lines::toString);
    assertEquals("chismes", ran.lines.get(0).path("label").asText());
    assertTrue(ran.lines.get(0).path("text").asText().contains("cuántos chismes")
        || ran.lines.get(0).path("text").asText().contains("Cuántos chismes"), ran.lines::toString);
    String wrong = run(gizmos.replace("\"m\"", "\"x\""), 1, "es").lines.get(0).path("problem").asText();
    assertEquals("spanish.nouns: gender: f or m was expected, found \"x\"; give one", wrong);
  }

  @Test
  void theSameSeedGivesTheSameTextWhereverTheLineStands() throws IOException {
    String first = run(SHELLS, 5, "en").lines.get(0).path("text").asText();
    List<JsonNode> lines = run(SHELLS.replace("52", "61") + "\n" + SHELLS, 5, "en").lines;
    assertEquals(first, lines.get(1).path("text").asText());
    boolean varies = false;
    for (long seed = 0; seed < 20; seed++) {
      varies |= !run(SHELLS, seed, "en").lines.get(0).path("text").asText().equals(first);
    }
    assertTrue(varies);
  }

  @Test
  void anotherLanguageIsABug() {
    assertThrows(IllegalArgumentException.class, () -> run(SHELLS, 1, "fr"));
  }

  /** Fifty thousand lines through a pipe that is never held whole. */
  @Test
  void manyLinesPassWithoutBeingHeld() throws IOException {
    ManyLines lines = new ManyLines(SHELLS, 50_000);
    assertEquals(WriteCommand.ALL_USED, WriteCommand.run(lines.in(), lines.out(), 1, "en"));
    assertEquals(50_000, lines.written());
  }

  private record Ran(int code, List<JsonNode> lines) {}

  private static Ran run(String lines, long seed, String language) throws IOException {
    var out = new ByteArrayOutputStream();
    int code = WriteCommand.run(new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)), out, seed, language);
    return new Ran(code, out.toString(StandardCharsets.UTF_8).lines().map(Json::read).toList());
  }
}
