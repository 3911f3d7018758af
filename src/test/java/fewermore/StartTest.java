package fewermore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.Database;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as a process: what it says and how it ends. */
class StartTest {
  @TempDir Path folder;

  private record Ended(int code, String said) {}

  private Process start(String... arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx128m", "-XX:TieredStopAtLevel=1",
        "-classpath", System.getProperty("java.class.path"), "fewermore.Main"));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectErrorStream(true).start();
  }

  private Ended end(Process program) throws Exception {
    boolean ended = program.waitFor(40, TimeUnit.SECONDS);
    if (!ended) {
      program.destroyForcibly();
    }
    String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(ended, "the program did not end: " + said);
    return new Ended(program.exitValue(), said);
  }

  private static void isASentence(Ended ended, String part) {
    assertNotEquals(0, ended.code, ended.said);
    assertTrue(ended.said.contains(part), ended.said);
    assertFalse(ended.said.contains("\tat ") || ended.said.contains("Exception"), ended.said);
  }

  @Test
  void aTakenPortGetsASentence() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
      String port = Integer.toString(taken.getLocalPort());
      isASentence(end(start("--data", folder.toString(), "--host", "127.0.0.1", "--port", port,
          "--teacher-port", "0")), "Port " + port + " is taken");
      isASentence(end(start("--data", folder.toString(), "--host", "127.0.0.1", "--port", "0",
          "--teacher-port", port)), "Port " + port + " is taken");
    }
  }

  @Test
  void aFolderThatCannotBeWrittenGetsASentence() throws Exception {
    Path file = Files.writeString(folder.resolve("a-file"), "x");
    isASentence(end(start("--data", file.resolve("inside").toString(), "--host", "127.0.0.1", "--port", "0",
        "--teacher-port", "0")), "can't write in the folder");
  }

  @Test
  void aSecondStartOnTheSameDataIsRefused() throws Exception {
    try (Database running = Database.open(folder)) {
      isASentence(end(start("--data", folder.toString(), "--host", "127.0.0.1", "--port", "0",
          "--teacher-port", "0")), "already running");
      running.change(handle -> handle.execute("SELECT 1"));
    }
  }

  @Test
  void anUnknownOptionAndHelpSayWhatThereIs() throws Exception {
    Ended unknown = end(start("--prot", "8500"));
    assertEquals(2, unknown.code);
    assertTrue(unknown.said.contains("--port"), unknown.said);
    Ended help = end(start("--help"));
    assertEquals(0, help.code);
    for (String option : List.of("--data", "--port", "--teacher-port", "--host", "--demo", "--version")) {
      assertTrue(help.said.contains(option), option);
    }
    assertEquals(0, end(start("--version")).code);
  }

  @Test
  void stoppedInGoodOrderTheDataOpenAgain() throws Exception {
    Process program = start("--data", folder.toString(), "--host", "127.0.0.1", "--port", "0", "--teacher-port", "0");
    StringBuilder said = new StringBuilder();
    var reader = program.inputReader(StandardCharsets.UTF_8);
    String line;
    while ((line = reader.readLine()) != null) {
      said.append(line).append('\n');
      if (line.contains("Stop with Ctrl-C")) {
        break;
      }
    }
    assertTrue(said.toString().contains("You, on this laptop:   http://localhost:"), said.toString());
    assertTrue(said.toString().contains("Tablets, on the Wi-Fi: http://127.0.0.1:"), said.toString());
    assertTrue(said.toString().contains(folder.toString()), said.toString());
    // What Ctrl-C sends is SIGINT; SIGTERM, which Java can send, runs the same closing.
    program.destroy();
    assertTrue(program.waitFor(20, TimeUnit.SECONDS));
    Database.open(folder).close();
    assertTrue(Files.exists(folder.resolve("fewermore.0.log")), "there is a log file");
  }

  @Test
  void aDemoOfNoClassGetsASentence() throws Exception {
    for (String children : List.of("0", "4", "61", "many", "-7", "", "99999999999")) {
      assertTrue(Demo.children(children).isEmpty(), children);
    }
    assertEquals(5, Demo.children("5").orElseThrow());
    assertEquals(60, Demo.children("60").orElseThrow());
    for (String children : List.of("4", "many")) {
      Ended ended = end(start("--demo=" + children, "--host", "127.0.0.1", "--port", "0", "--teacher-port", "0"));
      assertEquals(2, ended.code, ended.said);
      isASentence(ended, "a class of 5 to 60 children was expected");
    }
  }

  @Test
  void aDemoSaysItsPassphraseAndLeavesNoFolder() throws Exception {
    Process program = start("--demo=6", "--data", folder.resolve("mine").toString(), "--host", "127.0.0.1",
        "--port", "0", "--teacher-port", "0");
    StringBuilder said = new StringBuilder();
    var reader = program.inputReader(StandardCharsets.UTF_8);
    Path demo = null;
    String line;
    while ((line = reader.readLine()) != null && !line.contains("Stop with Ctrl-C")) {
      said.append(line).append('\n');
      if (line.contains("The data lie in:")) {
        demo = Path.of(line.substring(line.indexOf(':') + 1).strip());
      }
    }
    assertTrue(said.toString().contains("Your passphrase:       look around"), said.toString());
    assertTrue(demo != null && Files.exists(demo.resolve("fewermore.mv.db")), said.toString());
    program.destroy();
    assertTrue(program.waitFor(20, TimeUnit.SECONDS));
    assertFalse(Files.exists(demo), "the demo's folder is removed");
    assertFalse(Files.exists(folder.resolve("mine")), "--data is not touched");
  }
}
