package fewermore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.Database;
import fewermore.store.Postgres;
import fewermore.store.SchoolDay;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program itself on a school's database. */
class SchoolCommandTest {
  @TempDir Path temp;

  private record Ended(int code, String said) {}

  private static Process begin(String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx128m", "-XX:TieredStopAtLevel=1",
        "-classpath", System.getProperty("java.class.path"), "fewermore.Main"));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectErrorStream(true).start();
  }

  private static Ended run(String input, String... arguments) throws Exception {
    Process program = begin(arguments);
    program.getOutputStream().write(input.getBytes(StandardCharsets.UTF_8));
    program.getOutputStream().close();
    String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(program.waitFor(120, TimeUnit.SECONDS), said);
    return new Ended(program.exitValue(), said);
  }

  private String school(String url) throws Exception {
    return Files.writeString(temp.resolve("school"), "url=" + url + "\nuser=postgres\npassword=a quiet tide pool\n").toString();
  }

  @Test
  void aLaptopsClassesMoveToTheSchoolsDatabaseAndAreServedFromThere() throws Exception {
    try (Database laptop = Database.open(temp.resolve("laptop"))) {
      new SchoolDay(laptop, 2, false, "moves").handInMany(0, "page", 20);
    }
    String backup = temp.resolve("laptop.fewermore").toString();
    assertEquals(0, run("", "backup", backup, "--data", temp.resolve("laptop").toString()).code);
    String data = temp.resolve("in school").toString();
    String school = school(Postgres.school().url());
    Ended moved = run("", "restore", backup, "--data", data, "--school-file", school);
    assertEquals(0, moved.code, moved.said);
    assertTrue(moved.said.contains("\"pieces\":20"), moved.said);
    Ended again = run("", "restore", backup, "--data", data, "--school-file", school);
    assertEquals(3, again.code, again.said);
    assertTrue(again.said.contains("already"), again.said);
    Ended passphrase = run("a pail of tide water\n", "passphrase", "--data", data, "--school-file", school);
    assertEquals(0, passphrase.code, passphrase.said);

    Process serving = begin("--port", "0", "--teacher-port", "0", "--host", "127.0.0.1", "--data", data, "--school-file",
        school);
    StringBuilder said = new StringBuilder();
    try (var reader = serving.inputReader()) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        said.append(line).append('\n');
        if (line.contains("The data lie in:")) {
          break;
        }
      }
    } finally {
      serving.destroy();
      assertTrue(serving.waitFor(60, TimeUnit.SECONDS));
    }
    assertTrue(said.toString().contains("/postgres, fewermore_"), said.toString());
    assertFalse(said.toString().contains("tide pool"), said.toString());
  }

  @Test
  void whyItCantStartIsOneSentence() throws Exception {
    Ended away = run("", "--port", "0", "--teacher-port", "0", "--data", temp.resolve("away").toString(), "--school-file",
        school("jdbc:postgresql://127.0.0.1:1/school"));
    assertEquals(1, away.code, away.said);
    assertEquals(1, away.said.lines().count(), away.said);
    assertTrue(away.said.contains("127.0.0.1:1/school can't be reached"), away.said);
    Ended word = run("", "--data", temp.resolve("away").toString(), "--school",
        "jdbc:postgresql://127.0.0.1:1/school?user=a&password=b");
    assertTrue(word.code == 1 && word.said.contains("FEWERMORE_SCHOOL_PASSWORD"), word.said);
  }
}
