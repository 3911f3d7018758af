package fewermore.store.backup;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import fewermore.store.Database;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;

/** A backup into a file that somebody named, and what is said of it: by the command, and by the app it asks. */
public final class AskedBackup {
  private AskedBackup() {}

  /** Makes a backup of an open database as a file of its own; says what it made. */
  public static ObjectNode make(
      Database database, Path data, Path to, String passphrase, Instant now, Progress progress) throws BackupProblem {
    Key key = passphrase == null || passphrase.isEmpty() ? null : Key.fresh(passphrase);
    if (to.getParent() == null || !Files.isDirectory(to.getParent())) {
      throw new BackupProblem("The folder " + to.getParent() + " is not there. Make it, or name another one.");
    }
    BackupFile made = database.readWhole(
        source -> new Backups(data).make(source, database.version(), to, "asked", key, now, progress));
    return Json.object().put("backup", to.toString()).put("pieces", made.pieces()).put("bytes", made.bytes())
        .put("locked", made.locked()).put("verified", true);
  }
}
