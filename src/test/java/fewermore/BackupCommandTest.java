package fewermore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import fewermore.store.Database;
import fewermore.store.SchoolDay;
import fewermore.web.Rig;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands backup and restore as processes of their own. */
class BackupCommandTest {
  /** What a machine set up otherwise would change; the systems themselves were not tried. */
  private static final List<String> ELSEWHERE = List.of("-Dfile.encoding=ISO-8859-1", "-Dsun.jnu.encoding=UTF-8",
      "-Duser.timezone=Pacific/Auckland", "-Dline.separator=\r\n", "-Duser.language=tr", "-Duser.country=TR");

  @TempDir Path temp;

  private record Ended(int code, List<JsonNode> lines, String said) {}

  private static Ended run(List<String> flags, String input, String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx128m", "-XX:TieredStopAtLevel=1"));
    command.addAll(flags);
    command.addAll(List.of("-classpath", System.getProperty("java.class.path"), "fewermore.Main"));
    command.addAll(List.of(arguments));
    Path errors = Files.createTempFile("fewermore", "err");
    Process program = new ProcessBuilder(command).redirectError(errors.toFile()).start();
    program.getOutputStream().write(input.getBytes(StandardCharsets.UTF_8));
    program.getOutputStream().close();
    String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(program.waitFor(120, TimeUnit.SECONDS), said);
    String all = said + Files.readString(errors, StandardCharsets.ISO_8859_1);
    List<JsonNode> lines = new ArrayList<>();
    for (String line : said.lines().filter(each -> !each.isBlank()).toList()) {
      assertTrue(line.startsWith("{"), all);
      lines.add(Json.read(line));
    }
    return new Ended(program.exitValue(), lines, all);
  }

  @Test
  void aBackupIsRestoredOnAMachineWithOtherSettingsInAFolderWithASpaceAndAnAccent() throws Exception {
    Path data = temp.resolve("data");
    Map<String, String> before;
    try (Database database = Database.open(data)) {
      SchoolDay day = new SchoolDay(database, 2, false, "José Núñez ");
      day.handInMany(0, "page", 20);
      before = SchoolDay.there(database);
    }
    Path file = temp.resolve("room 12.fewermore");
    Ended backup = run(List.of(), "a pail of tide wáter\n", "backup", file.toString(), "--data", data.toString(),
        "--passphrase");
    assertEquals(0, backup.code, backup.said);
    assertEquals(20, backup.lines.get(0).path("pieces").asInt(), backup.said);
    assertTrue(backup.lines.get(0).path("verified").asBoolean() && backup.lines.get(0).path("locked").asBoolean());

    Path elsewhere = Files.createDirectory(temp.resolve("mis datos é"));
    Ended wrong = run(ELSEWHERE, "another\n", "restore", file.toString(), "--data", elsewhere.toString(), "--passphrase");
    assertEquals(3, wrong.code, wrong.said);
    assertTrue(wrong.lines.get(0).path("problem").asText().contains("does not open"), wrong.said);
    Ended restored = run(ELSEWHERE, "a pail of tide wáter\n", "restore", file.toString(), "--data", elsewhere.toString(),
        "--passphrase");
    assertEquals(0, restored.code, restored.said);
    try (Database database = Database.open(elsewhere)) {
      assertEquals(before, SchoolDay.there(database));
      assertEquals(List.of("José Núñez 0", "José Núñez 1"), database.read(handle -> handle
          .createQuery("SELECT name FROM child ORDER BY id").mapTo(String.class).list()));
      assertEquals("2026-11-25", database.read(handle -> handle
          .createQuery("SELECT MIN(work_day) FROM revision").mapTo(String.class).one()));
    }
  }

  @Test
  void whileTheAppServesABackupIsMadeAndARestoreIsRefused() throws Exception {
    try (Rig rig = Rig.start()) {
      Path file = temp.resolve("running.fewermore");
      Ended backup = run(List.of(), "", "backup", file.toString(), "--data", rig.folder.toString());
      assertEquals(0, backup.code, backup.said);
      assertTrue(Files.exists(file), backup.said);
      Ended refused = run(List.of(), "", "restore", file.toString(), "--data", rig.folder.toString());
      assertEquals(3, refused.code, refused.said);
      assertTrue(refused.lines.get(0).path("problem").asText().contains("Stop it first"), refused.said);
    }
  }
}
