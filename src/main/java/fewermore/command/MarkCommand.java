package fewermore.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.MarksJson;
import fewermore.json.StoryJson;
import fewermore.json.WorkJson;
import fewermore.marking.Marker;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Locale;

/**
 * {@code mark}: story and work in, marks out, as JSON lines.
 *
 * <pre>
 * {"id":"e1","story":{…},"work":{"equation":"52 - 14 = x","answer":"38","label":"shells"}}
 * {"id":"e1","equation":"fits",…,"answer":"right","slips":[],"label":"names-it","says":{…},"prompt":{}}
 * </pre>
 */
public final class MarkCommand {
  private MarkCommand() {}

  /**
   * Marks line by line until the input ends; closes neither stream.
   *
   * @return the exit code: 0, or 3 when at least one line could not be used
   */
  public static int run(InputStream in, OutputStream out) throws IOException {
    return JsonLines.run(in, out, MarkCommand::mark);
  }

  private static ObjectNode mark(JsonNode line) {
    Comparison story = StoryJson.read(line.get("story"));
    Work work = WorkJson.read(line.get("work"));
    return MarksJson.write(story, work, Marker.mark(story, work), Locale.ENGLISH);
  }
}
