package fewermore;

import fewermore.classroom.InventedClass;
import fewermore.web.App;
import fewermore.web.Network;
import fewermore.web.Settings;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** The invented class in a folder of its own that is removed at the end. */
final class Demo {
  static final String PASSPHRASE = "look around";

  static final String WHAT_IS_EXPECTED = "--demo: a class of " + InventedClass.FEWEST + " to " + InventedClass.MOST
      + " children was expected. Say for example --demo=30, or --demo alone for " + InventedClass.USUAL + ".";

  private Demo() {}

  /** The number of children as written after {@code --demo=}; empty when it is none that a class can have. */
  static OptionalInt children(String written) {
    if (!written.matches("[0-9]{1,3}")) {
      return OptionalInt.empty();
    }
    int children = Integer.parseInt(written);
    return children < InventedClass.FEWEST || children > InventedClass.MOST
        ? OptionalInt.empty() : OptionalInt.of(children);
  }

  static int run(Settings asked, int children, Greeting greeting) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("fewermore-demo");
    Settings settings = new Settings(folder, asked.port(), asked.teacherPort(), asked.host(), asked.publicAddress(),
        asked.teacherHost());
    try {
      return Main.serve(settings, null, greeting, () -> remove(folder), database -> App.startDemo(
          settings, database, Network.ofThisMachine(), Clock.systemUTC(), PASSPHRASE, children));
    } catch (RuntimeException e) {
      remove(folder);
      throw e;
    }
  }

  private static void remove(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      List<Path> deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
      for (Path each : deepestFirst) {
        Files.deleteIfExists(each);
      }
    } catch (IOException | UncheckedIOException e) {
      System.err.println("The demo's folder could not be removed: " + folder);
    }
  }
}
