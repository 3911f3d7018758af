package fewermore.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import fewermore.json.SpanishJson;
import fewermore.json.StoryJson;
import fewermore.story.Comparison;
import fewermore.wording.Language;
import fewermore.wording.WordingWriter;
import fewermore.wording.Writing;
import fewermore.wording.WrittenText;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.Random;

/**
 * {@code write}: stories in, problem texts out, one JSON object a line, in order. A line that can't be used gives
 * {@code {"id":…,"problem":"…"}} in its place, and the rest go on. Beside the story there may be the Spanish of words
 * that are not in the lexicon:
 *
 * <pre>
 * {"id":"w1","story":{…},"spanish":{"nouns":[{"english":["gizmo","gizmos"],"spanish":["chisme","chismes"],"gender":"m"}],
 *                                   "holders":[{"english":"my brother","spanish":"mi hermano"}]}}
 * </pre>
 */
public final class WriteCommand {
  /** All lines were used. */
  public static final int ALL_USED = 0;
  /** At least one line could not be used. */
  public static final int SOME_NOT_USED = 3;

  private WriteCommand() {}

  /**
   * Reads to the end, holding one line at a time.
   *
   * @param seed chooses verbs, shapes and measured things; the same story and seed give the same text wherever the
   *     line stands
   * @param language {@code en} or {@code es}
   * @return {@value #ALL_USED} or {@value #SOME_NOT_USED}
   * @throws IllegalArgumentException for another language
   */
  public static int run(InputStream in, OutputStream out, long seed, String language) throws IOException {
    Language written = Language.of(language)
        .orElseThrow(() -> new IllegalArgumentException("language: en or es was expected, found " + language));
    var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    var writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    int code = ALL_USED;
    for (String line = reader.readLine(); line != null; line = reader.readLine()) {
      ObjectNode reply = reply(line, seed, written);
      if (reply.has("problem")) {
        code = SOME_NOT_USED;
      }
      writer.write(Json.write(reply));
      writer.write('\n');
      if (!reader.ready()) {
        writer.flush();
      }
    }
    writer.flush();
    return code;
  }

  private static ObjectNode reply(String line, long seed, Language language) {
    ObjectNode reply = Json.object();
    reply.putNull("id");
    try {
      JsonNode request = Json.read(line);
      if (request.has("id")) {
        reply.set("id", request.get("id"));
      }
      Comparison story = StoryJson.read(request.path("story"));
      Writing writing =
          WordingWriter.write(story, language, random(story, seed), SpanishJson.read(request.path("spanish")));
      if (writing instanceof WrittenText text) {
        return reply.put("text", text.text()).put("answer", story.answer()).put("label", text.label());
      }
      return reply.put("problem", "story: " + ((Writing.Declined) writing).says());
    } catch (Json.Unusable e) {
      return reply.put("problem", e.getMessage());
    }
  }

  private static Random random(Comparison story, long seed) {
    return new Random(31 * seed + Json.write(StoryJson.write(story)).hashCode());
  }
}
