package fewermore.web.teacher;

import fewermore.store.backup.BackupFile;
import java.nio.file.Path;
import java.time.ZoneId;

/**
 * One backup and the way back to it. {@code pages/teacher/backup.html}.
 *
 * @param newer how many pieces it lacks; null when it is locked with another passphrase and nobody can tell
 * @param command what to type when Fewermore is stopped; null where the classes lie in a school's database
 * @param button whether it can be put back without stopping the program
 * @param ask whether its passphrase has to be typed
 * @param problem why it was not put back, or null
 */
public record BackupPage(
    BackupsPage.Line line, Long newer, String command, boolean button, boolean ask, String problem) {
  /** @param data the folder it would be put back into, or null when the classes lie in a school's database */
  public static BackupPage of(BackupFile backup, Long newer, ZoneId zone, Path data, boolean button, boolean keyKnown,
      String problem) {
    return new BackupPage(BackupsPage.line(backup, zone), newer, data == null ? null : "java -jar fewermore.jar restore \"" + backup.path()
        + "\" --data \"" + data + "\"" + (backup.locked() ? " --passphrase" : ""), button,
        backup.locked() && !keyKnown, problem);
  }
}
