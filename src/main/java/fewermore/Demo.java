package fewermore;

import fewermore.web.Settings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** The invented class in a folder of its own that is removed at the end. */
final class Demo {
  /** What is run on the settings of the demo. */
  interface Serving {
    int serve(Settings settings) throws InterruptedException;
  }

  private Demo() {}

  static int run(Settings settings, int children, Serving serving) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("fewermore-demo");
    Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(folder), "remove the demo"));
    return serving.serve(new Settings(
        folder, settings.port(), settings.teacherPort(), settings.host(), settings.publicAddress()));
  }

  private static void remove(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
        Files.deleteIfExists(each);
      }
    } catch (IOException e) {
      System.err.println("The demo's folder could not be removed: " + folder);
    }
  }
}
