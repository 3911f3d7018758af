package fewermore.command;

import fewermore.json.Json;
import fewermore.store.CannotOpen;
import fewermore.store.DamagedData;
import fewermore.store.Database;
import fewermore.store.School;
import fewermore.store.backup.BackupFile;
import fewermore.store.backup.BackupProblem;
import fewermore.store.backup.Backups;
import fewermore.store.backup.Restore;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/**
 * {@code restore FILE}: puts a backup in the place of the present data, which stay beside it; and mending of damaged
 * data. Never while the app serves.
 *
 * <pre>
 * {"newer":5,"says":"5 pieces of work are newer than this backup. They stay in the folder beside."}
 * {"restored":"/media/stick/room12.fewermore","pieces":412,"beside":"/home/…/before-restore-2026-11-25-213000"}
 * </pre>
 */
public final class RestoreCommand {
  private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, h:mm a", Locale.US);

  private RestoreCommand() {}

  /** @param passphrase of a locked backup; null for none */
  public static int run(Path data, Path file, String passphrase, Instant now, PrintStream out, PrintStream progress) {
    try {
      BackupFile backup = BackupFile.of(file.toAbsolutePath().normalize());
      Restore.Done done = Restore.run(data, backup, backup.key(passphrase), now, newer -> {
        out.println(Json.write(Json.object().put("newer", newer).put("says", says(newer))));
        out.flush();
      }, BackupCommand.toTerminal(progress));
      out.println(Json.write(Json.object().put("restored", backup.path().toString()).put("pieces", done.pieces())
          .put("beside", done.beside() == null ? null : done.beside().toString())));
      return BackupCommand.DONE;
    } catch (BackupProblem e) {
      return BackupCommand.problem(out, e.getMessage());
    }
  }

  /**
   * Puts a backup into this folder's part of a school's database, where no class is yet: so a laptop's classes move there.
   *
   * @param passphrase of a locked backup; null for none
   */
  public static int intoSchool(Path data, School school, Path file, String passphrase, PrintStream out,
      PrintStream progress) {
    try (Database database = Backups.openAfterBackup(data, school)) {
      BackupFile backup = BackupFile.of(file.toAbsolutePath().normalize());
      Restore.Done done = Restore.intoSchool(database, backup, backup.key(passphrase), BackupCommand.toTerminal(progress));
      out.println(Json.write(Json.object().put("restored", backup.path().toString()).put("pieces", done.pieces())
          .put("school", database.where())));
      return BackupCommand.DONE;
    } catch (BackupProblem | CannotOpen e) {
      return BackupCommand.problem(out, e.getMessage());
    }
  }

  /** How much newer work a backup lacks, in a sentence. */
  public static String says(long newer) {
    return newer == 0 ? "Nothing is newer than this backup."
        : newer + (newer == 1 ? " piece of work is" : " pieces of work are")
            + " newer than this backup. After restoring, they are only in the folder beside.";
  }

  /** What a teacher can do about damaged data, for the terminal. */
  public static String offer(Path data, ZoneId zone) {
    Optional<BackupFile> newest = Restore.newestWhole(data.toAbsolutePath().normalize());
    String backup = newest.map(each -> "The newest whole backup is of " + MOMENT.format(each.made().atZone(zone)) + ", with "
        + each.pieces() + " pieces of work. Start once with --mend: it takes that backup and adds every newer piece that "
        + "is intact.").orElse("There is no whole backup without a passphrase in the folder backups. Start once with --mend: it "
        + "keeps every piece that is intact. Or restore a backup of yours first: fewermore restore FILE.");
    return backup + " The damaged files are kept beside.";
  }

  /** {@code --mend}: the newest whole backup and what is intact of newer work. */
  public static int mend(Path data, Instant now, PrintStream out) {
    Path folder = data.toAbsolutePath().normalize();
    try (Database whole = Database.open(folder)) {
      out.println("The data in " + whole.folder() + " are as they were written: nothing to mend.");
      return BackupCommand.DONE;
    } catch (DamagedData e) {
      out.println(e.getMessage());
    }
    try {
      BackupFile newest = Restore.newestWhole(folder).orElse(null);
      Restore.Done done = Restore.mend(folder, newest, null, now, (rows, of) -> { });
      out.println("Mended: " + done.pieces() + " pieces of work are there, " + done.saved() + " of them "
          + (newest == null ? "from the damaged files." : "newer than the backup and intact.")
          + " The damaged files are kept in " + done.beside() + ".");
      return BackupCommand.DONE;
    } catch (BackupProblem e) {
      out.println(e.getMessage());
      return BackupCommand.NOT_DONE;
    }
  }
}
