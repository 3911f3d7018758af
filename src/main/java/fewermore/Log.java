package fewermore;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.logging.ConsoleHandler;
import java.util.logging.FileHandler;
import java.util.logging.Formatter;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/**
 * Where the program writes what goes wrong: the console, and at most five files of 1 MB beside the data.
 * What is logged holds no names of children, no tokens and no work: of a failure only its kind and the
 * places it passed are written, never its message, which a library may have filled with data.
 */
final class Log {
  private static final int FILE_BYTES = 1_000_000;
  private static final int FILES = 5;

  private Log() {}

  /** A line a record; of a failure its class and its path through the program. */
  static final class Lines extends Formatter {
    @Override
    public String format(LogRecord entry) {
      StringBuilder line = new StringBuilder()
          .append(Instant.ofEpochMilli(entry.getMillis()).truncatedTo(ChronoUnit.SECONDS)).append(' ')
          .append(entry.getLevel().getName()).append(' ')
          .append(formatMessage(entry)).append(System.lineSeparator());
      for (Throwable problem = entry.getThrown(); problem != null; problem = problem.getCause()) {
        line.append("  ").append(problem.getClass().getName()).append(System.lineSeparator());
        for (StackTraceElement place : problem.getStackTrace()) {
          if (place.getClassName().startsWith("fewermore")) {
            line.append("    at ").append(place).append(System.lineSeparator());
          }
        }
      }
      return line.toString();
    }
  }

  static void toTheConsole() {
    Logger root = Logger.getLogger("");
    for (Handler handler : root.getHandlers()) {
      root.removeHandler(handler);
    }
    ConsoleHandler console = new ConsoleHandler();
    console.setLevel(Level.WARNING);
    console.setFormatter(new Lines());
    root.addHandler(console);
    root.setLevel(Level.WARNING);
    Logger.getLogger("fewermore").setLevel(Level.INFO);
    // Says every failed page a second time, with what the page held.
    Logger.getLogger("org.thymeleaf").setLevel(Level.OFF);
  }

  /** Without a file the program still runs: it says so once on the console. */
  static void toAFile(Path folder) {
    try {
      FileHandler file = new FileHandler(
          folder.toAbsolutePath().resolve("fewermore.%g.log").toString().replace('\\', '/'), FILE_BYTES, FILES, true);
      file.setFormatter(new Lines());
      file.setEncoding("UTF-8");
      Logger.getLogger("").addHandler(file);
    } catch (IOException e) {
      Logger.getLogger("fewermore").log(Level.WARNING, "no log file can be written in the data folder");
    }
  }
}
