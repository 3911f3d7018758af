package fewermore.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

class MarkCommandTest {
  private static final String STORY = """
      {"persons":{"larger":"Tomas","smaller":"Ines"},"thing":["shell","shells"],"otherThing":null,"wider":[],
      "numbers":[{"role":"larger","value":52},{"role":"difference","value":14}],"unknown":"smaller","wording":"fewer"}
      """.replace("\n", "");

  private static String line(String id, String work) {
    return "{\"id\":\"" + id + "\",\"story\":" + STORY + ",\"work\":" + work + "}";
  }

  private record Run(int exit, List<JsonNode> lines) {}

  private static Run run(String in) throws IOException {
    return run(in.getBytes(StandardCharsets.UTF_8));
  }

  private static Run run(byte[] in) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int exit = MarkCommand.run(new ByteArrayInputStream(in), out);
    return new Run(exit, out.toString(StandardCharsets.UTF_8).lines().map(Json::read).toList());
  }

  @Test
  void aPieceOfWorkIsMarked() throws IOException {
    Run run = run(line("e1", """
        {"equation":"52 - 14 = x","answer":"38","label":"shells",\
        "bars":{"longer":"Tomas","longerBar":"52","shorterBar":"x","gap":"14"}}\
        """) + "\n");
    assertEquals(0, run.exit());
    JsonNode marks = run.lines().get(0);
    assertEquals("""
        {"id":"e1","equation":"fits","solvedForm":false,"cueLed":false,"equalsChain":false,"notTrue":false,\
        "expression":null,"answer":"right","slips":[],"label":"names-it","bars":"fits","says":""",
        marks.toString().substring(0, marks.toString().indexOf("\"says\":") + 7));
    assertEquals(List.of("bars", "equation", "answer", "label"), names(marks.get("says")));
    assertEquals("{}", marks.get("prompt").toString());
  }

  @Test
  void aPartThatWasNotAskedIsMissingAndAnEmptyOneIsBlank() throws IOException {
    JsonNode marks = run(line("e1", "{\"label\":\"\",\"estimate\":\"40\"}")).lines().get(0);
    assertEquals(List.of("id", "label", "estimate", "says", "prompt"), names(marks));
    assertEquals("blank", marks.get("label").asText());
    assertEquals("fits", marks.get("estimate").asText());
  }

  @Test
  void slipsAndTheNumberRepeatedAreNamed() throws IOException {
    Run run = run(line("a", "{\"answer\":\"42\"}") + "\n" + line("b", "{\"answer\":\"14\"}"));
    assertEquals("[\"smaller-from-larger\",\"tens-only\"]", run.lines().get(0).get("slips").toString());
    assertEquals("difference", run.lines().get(1).get("repeats").asText());
  }

  @Test
  void aBadLineInTheMiddleIsAnsweredInItsPlaceAndTheRestGoOn() throws IOException {
    String good = line("good", "{\"answer\":\"38\"}");
    Run run = run(String.join("\n", good, "{\"id\":7,\"story\":{}}", "not json", "[1]", "",
        "{\"id\":\"w\",\"story\":" + STORY + "}",
        line("n", "{\"answer\":38}"), good));
    assertEquals(3, run.exit());
    assertEquals(8, run.lines().size());
    assertEquals("right", run.lines().get(0).get("answer").asText());
    assertEquals("right", run.lines().get(7).get("answer").asText());
    assertEquals("7", run.lines().get(1).get("id").toString());
    assertEquals("story.unknown: larger, smaller or difference was expected; name the quantity that is asked",
        run.lines().get(1).get("problem").asText());
    for (int i = 1; i < 7; i++) {
      assertEquals(List.of("id", "problem"), names(run.lines().get(i)), run.lines().get(i)::toString);
    }
    assertTrue(run.lines().get(2).get("id").isNull());
    assertEquals("w", run.lines().get(5).get("id").asText());
    assertTrue(run.lines().get(6).get("problem").asText().startsWith("work.answer:"), run.lines().get(6)::toString);
  }

  @Test
  void noInputIsNoOutput() throws IOException {
    assertEquals(new Run(0, List.of()), run(""));
  }

  @Test
  void lineEndsAndAByteOrderMarkOfOtherSystemsAreRead() throws IOException {
    Run run = run("\uFEFF" + line("a", "{\"answer\":\"38\"}") + "\r\n" + line("b", "{\"answer\":\"38\"}") + "\r\n");
    assertEquals(0, run.exit());
    assertEquals(List.of("a", "b"), run.lines().stream().map(line -> line.get("id").asText()).toList());
  }

  @Test
  void bytesThatAreNoUtf8AreAProblemOfTheirLineAlone() throws IOException {
    byte[] bad = line("a", "{\"label\":\"#\"}").getBytes(StandardCharsets.UTF_8);
    for (int i = 0; i < bad.length; i++) {
      bad[i] = bad[i] == '#' ? (byte) 0xFF : bad[i];
    }
    ByteArrayOutputStream in = new ByteArrayOutputStream();
    in.writeBytes(bad);
    in.write('\n');
    in.writeBytes(line("b", "{\"label\":\"piñatas ★\"}").getBytes(StandardCharsets.UTF_8));
    Run run = run(in.toByteArray());
    assertEquals(3, run.exit());
    assertEquals("the line is not UTF-8; save the file as UTF-8", run.lines().get(0).get("problem").asText());
    assertEquals("not-recognised", run.lines().get(1).get("label").asText());
  }

  @Test
  void aLineOfManyMegabytesIsAProblemAndIsNotKept() throws IOException {
    String longLine = line("a", "{\"label\":\"" + "x".repeat(3 << 20) + "\"}");
    Run run = run(longLine + "\n" + line("b", "{\"answer\":\"38\"}"));
    assertEquals(3, run.exit());
    assertTrue(run.lines().get(0).get("problem").asText().startsWith("the line is longer than"));
    assertEquals("right", run.lines().get(1).get("answer").asText());
  }

  @Test
  void deepNestingIsAProblemOfItsLine() throws IOException {
    Run run = run("[".repeat(100_000) + "\n" + line("b", "{\"answer\":\"38\"}"));
    assertEquals(3, run.exit());
    assertEquals("right", run.lines().get(1).get("answer").asText());
  }

  @Test
  void anAnswerComesBeforeTheNextLineIsWritten() {
    Assertions.assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
      PipedOutputStream asks = new PipedOutputStream();
      PipedInputStream in = new PipedInputStream(asks, 1 << 16);
      PipedOutputStream out = new PipedOutputStream();
      PipedInputStream answers = new PipedInputStream(out, 1 << 16);
      Thread marking = new Thread(() -> {
        try {
          MarkCommand.run(in, out);
          out.close();
        } catch (IOException e) {
          throw new java.io.UncheckedIOException(e);
        }
      });
      marking.start();
      for (String id : List.of("a", "b", "c")) {
        asks.write((line(id, "{\"answer\":\"38\"}") + "\n").getBytes(StandardCharsets.UTF_8));
        asks.flush();
        ByteArrayOutputStream answer = new ByteArrayOutputStream();
        for (int next = answers.read(); next != '\n'; next = answers.read()) {
          answer.write(next);
        }
        assertEquals(id, Json.read(answer.toString(StandardCharsets.UTF_8)).get("id").asText());
      }
      asks.close();
      marking.join();
    });
  }

  /** 60,000 lines, 25 MB in and more out, are never held: used memory stays within a few megabytes of the start. */
  @Test
  void manyLinesTakeNoMoreMemoryThanFew() throws IOException {
    byte[] line = (line("m", "{\"equation\":\"52 + 14 = x\",\"answer\":\"66\",\"label\":\"shels\"}")
        + "\n").getBytes(StandardCharsets.UTF_8);
    MarkCommand.run(new Repeated(line, 500), OutputStream.nullOutputStream());
    long before = used();
    Repeated many = new Repeated(line, 60_000);
    Counted out = new Counted();
    assertEquals(0, MarkCommand.run(many, out));
    assertEquals(60_000, out.lines);
    long grown = used() - before;
    assertTrue(grown < 8 << 20, grown + " bytes more in use");
    // Beside what the tests before it left in this process.
    assertTrue(out.mostHeld - before < 32 << 20, out.mostHeld - before + " bytes more at most");
  }

  private static long used() {
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    return runtime.totalMemory() - runtime.freeMemory();
  }

  private static List<String> names(JsonNode node) {
    List<String> names = new java.util.ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  /** The same bytes again and again, never held together. */
  private static final class Repeated extends InputStream {
    private final byte[] bytes;
    private long left;
    private int at;

    Repeated(byte[] bytes, int times) {
      this.bytes = bytes;
      this.left = (long) bytes.length * times;
    }

    @Override public int read() {
      if (left == 0) {
        return -1;
      }
      left--;
      int next = bytes[at] & 0xFF;
      at = (at + 1) % bytes.length;
      return next;
    }

    @Override public int available() {
      return left > 0 ? 1 : 0;
    }
  }

  /** Counts lines, and every 10,000 of them what is in use after a collection. */
  private static final class Counted extends OutputStream {
    private int lines;
    private long mostHeld;

    @Override public void write(int b) {
      if (b == '\n' && ++lines % 20_000 == 0) {
        mostHeld = Math.max(mostHeld, used());
      }
    }
  }
}
