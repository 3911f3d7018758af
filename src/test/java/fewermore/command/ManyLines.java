package fewermore.command;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** A pipe of many lines that is never held whole, and a count of the lines that come out. */
final class ManyLines {
  private final byte[] line;
  private final int lines;
  private long written;

  ManyLines(String line, int lines) {
    this.line = (line + "\n").getBytes(StandardCharsets.UTF_8);
    this.lines = lines;
  }

  InputStream in() {
    return new InputStream() {
      private int left = lines;
      private int at;

      @Override
      public int read() {
        if (at == line.length) {
          at = 0;
          left--;
        }
        return left == 0 ? -1 : line[at++];
      }
    };
  }

  OutputStream out() {
    return new OutputStream() {
      @Override
      public void write(int b) {
        written += b == '\n' ? 1 : 0;
      }
    };
  }

  long written() {
    return written;
  }
}
