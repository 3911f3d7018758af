package fewermore.command;

import fewermore.json.Json;
import fewermore.store.CannotOpen;
import fewermore.store.Database;
import fewermore.store.School;
import fewermore.store.backup.AskedBackup;
import fewermore.store.backup.BackupProblem;
import fewermore.store.backup.Backups;
import fewermore.store.backup.Progress;
import fewermore.store.backup.RunningApp;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;

/**
 * {@code backup FILE}: all of the data in one verified file, also while the app serves.
 *
 * <pre>
 * {"backup":"/media/stick/room12.fewermore","pieces":412,"bytes":20411,"locked":false,"verified":true}
 * </pre>
 */
public final class BackupCommand {
  /** The backup is there. */
  public static final int DONE = 0;
  /** There is none; {@code problem} says why. */
  public static final int NOT_DONE = 3;

  private BackupCommand() {}

  /**
   * @param school where the data lie, or null when they lie in the folder
   * @param passphrase locks the backup; null for none
   */
  public static int run(Path data, School school, Path file, String passphrase, Instant now, PrintStream out, PrintStream progress)
      throws IOException, InterruptedException {
    Path to = file.toAbsolutePath().normalize();
    if (school == null && !Database.inUse(data) && !Files.exists(Database.dataFile(data))) {
      return problem(out, "There are no data in " + data.toAbsolutePath().normalize()
          + ". Name the folder they lie in with --data.");
    }
    if (Database.inUse(data)) {
      RunningApp app = RunningApp.of(data).orElse(null);
      if (app == null) {
        return problem(out, "Fewermore runs on these data but does not say where. Wait until it has started, then try again.");
      }
      String answer;
      try {
        answer = app.backup(to, passphrase);
      } catch (IOException e) {
        return problem(out, "Fewermore runs on these data but does not answer. Try again, or stop it first.");
      }
      out.println(answer);
      return answer.contains("\"verified\":true") ? DONE : NOT_DONE;
    }
    try (Database database = school == null ? Database.open(data) : Backups.openAfterBackup(data, school)) {
      out.println(Json.write(AskedBackup.make(database, data, to, passphrase, now, toTerminal(progress))));
      return DONE;
    } catch (BackupProblem | CannotOpen e) {
      return problem(out, e.getMessage());
    }
  }

  static int problem(PrintStream out, String says) {
    out.println(Json.write(Json.object().put("problem", says)));
    return NOT_DONE;
  }

  /** A line now and then, so that a long wait is seen to go on. */
  static Progress toTerminal(PrintStream out) {
    long[] next = {System.nanoTime() + 2_000_000_000L};
    return (done, of) -> {
      if (System.nanoTime() > next[0]) {
        next[0] = System.nanoTime() + 2_000_000_000L;
        out.println(of > 0 ? done + " of about " + of + " rows" : done + " rows");
      }
    };
  }
}
