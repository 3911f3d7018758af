package fewermore.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import fewermore.json.Json.Unusable;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.function.Function;

/**
 * JSON lines in, JSON lines out, one for one and in order. One line is held at a time, so a million need no
 * more memory than one. A line that can't be used gives {@code {"id":…,"problem":"…"}} in its place.
 */
final class JsonLines {
  /** Every line was answered. */
  static final int ALL_USED = 0;
  /** At least one line could not be used. */
  static final int SOME_UNUSABLE = 3;

  /** Longest line taken, in bytes: far more than a story and a child's work, far less than the memory. */
  static final int LONGEST_LINE = 1 << 20;

  private JsonLines() {}

  /**
   * Answers each line, and leaves both streams open.
   *
   * @param answer takes the line's object, throws {@link Unusable} when it can't be used
   * @return {@link #ALL_USED} or {@link #SOME_UNUSABLE}
   */
  static int run(InputStream in, OutputStream out, Function<JsonNode, ObjectNode> answer) throws IOException {
    return run(in, out, "id", answer);
  }

  /** The same, for lines that are named by another field than {@code id}. */
  static int run(InputStream in, OutputStream out, String named, Function<JsonNode, ObjectNode> answer)
      throws IOException {
    InputStream lines = new BufferedInputStream(in, 1 << 16);
    OutputStream answers = new BufferedOutputStream(out, 1 << 16);
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    int exit = ALL_USED;
    boolean first = true;
    for (Ending ending = readLine(lines, line); ending != Ending.NO_LINE; ending = readLine(lines, line)) {
      ObjectNode reply;
      JsonNode id = null;
      try {
        JsonNode object = object(ending, line, first);
        id = object.get(named);
        reply = Json.object();
        reply.set(named, id);
        reply.setAll(answer.apply(object));
      } catch (Unusable problem) {
        reply = Json.object();
        reply.set(named, id);
        reply.put("problem", problem.getMessage());
        exit = SOME_UNUSABLE;
      }
      first = false;
      answers.write(Json.write(reply).getBytes(StandardCharsets.UTF_8));
      answers.write('\n');
      // Someone may be waiting for this answer before writing the next line.
      if (lines.available() == 0) {
        answers.flush();
      }
    }
    answers.flush();
    return exit;
  }

  private enum Ending { LINE, TOO_LONG, NO_LINE }

  /** Reads one line into {@code line}, without its end; a line too long is read past but not kept. */
  private static Ending readLine(InputStream in, ByteArrayOutputStream line) throws IOException {
    line.reset();
    int next = in.read();
    if (next < 0) {
      return Ending.NO_LINE;
    }
    boolean tooLong = false;
    for (; next >= 0 && next != '\n'; next = in.read()) {
      if (line.size() < LONGEST_LINE) {
        line.write(next);
      } else {
        tooLong = true;
      }
    }
    return tooLong ? Ending.TOO_LONG : Ending.LINE;
  }

  private static JsonNode object(Ending ending, ByteArrayOutputStream line, boolean first) {
    if (ending == Ending.TOO_LONG) {
      throw new Unusable("the line is longer than " + LONGEST_LINE + " bytes; one JSON object a line was expected;"
          + " end each with a line break");
    }
    JsonNode node = Json.read(text(line, first));
    if (!node.isObject()) {
      throw new Unusable("the line is not an object; one JSON object a line was expected; put the fields in { }");
    }
    return node;
  }

  private static String text(ByteArrayOutputStream line, boolean first) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(line.toByteArray())).toString();
      return first && text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new Unusable("the line is not UTF-8; save the file as UTF-8");
    }
  }
}
