package fewermore.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json.Unusable;
import fewermore.json.ReadingJson;
import fewermore.wording.WordingReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/**
 * {@code read}: problem texts in, stories out, as JSON lines. A text that is declined is an answer like any other; only
 * a line without a text is a problem.
 *
 * <pre>
 * {"id":"r1","text":"Ines has 14 fewer shells than Tomas. Tomas has 52 shells. How many shells does Ines have?"}
 * {"id":"r1","kind":"compare","story":{…},"answer":38,"label":"shells"}
 * {"id":"r2","kind":"declined","reason":"two-comparisons","at":[17,62],"says":"There are two comparisons here. …"}
 * </pre>
 */
public final class ReadCommand {
  private ReadCommand() {}

  /**
   * Reads line by line until the input ends; closes neither stream.
   *
   * @return the exit code: 0, or 3 when at least one line could not be used
   */
  public static int run(InputStream in, OutputStream out) throws IOException {
    return JsonLines.run(in, out, ReadCommand::read);
  }

  private static ObjectNode read(JsonNode line) {
    JsonNode text = line.path("text");
    if (!text.isTextual()) {
      throw new Unusable("text: a problem's text was expected; give it as \"text\":\"…\"");
    }
    return ReadingJson.write(WordingReader.read(text.asText()));
  }
}
