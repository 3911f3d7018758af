package fewermore.web;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import fewermore.store.backup.AskedBackup;
import fewermore.store.backup.BackupFile;
import fewermore.store.backup.BackupProblem;
import fewermore.store.backup.Key;
import fewermore.store.backup.Progress;
import fewermore.store.backup.Restore;
import fewermore.store.backup.RunningApp;
import fewermore.web.teacher.BackupPage;
import fewermore.web.teacher.BackupsPage;
import fewermore.web.teacher.Place;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HexFormat;

/** Backups: made on a button, kept, looked at, and asked for from another window of this laptop. */
final class BackupHandlers {
  private static final String HERE = "/setup/backups";
  private static final int MOST_DAYS = 3650;

  private final TeacherHandlers teacher;

  BackupHandlers(TeacherHandlers teacher) {
    this.teacher = teacher;
  }

  private BackupDesk desk() {
    return teacher.services.backups;
  }

  void show(Context request) {
    show(request, null, desk().otherFolder().map(Path::toString).orElse(""), Integer.toString(desk().days()));
  }

  private void show(Context request, String problem, String folder, String days) {
    teacher.inClass(request, classroom -> {
      BackupDesk.Running running = desk().running();
      teacher.render(request, "teacher/backups", BackupsPage.of(desk().backups().list(),
          desk().backups().folder().toString(), classroom.zone(), running != null,
          running == null || running.of() == 0 ? 0 : (int) Math.min(99, 100 * running.done() / running.of()),
          desk().problem(), folder, days, desk().key().isPresent(), problem, desk().putBack()), teacher.frame(classroom, Place.SETUP));
    });
  }

  void make(Context request) {
    desk().begin("asked");
    request.redirect(HERE, HttpStatus.SEE_OTHER);
  }

  void stop(Context request) {
    desk().stop();
    request.redirect(HERE, HttpStatus.SEE_OTHER);
  }

  /** Where copies go, how long backups stay, and whether they are locked. */
  void keeping(Context request) {
    String folder = TeacherHandlers.form(request, "folder").strip();
    String days = TeacherHandlers.form(request, "days").strip();
    String passphrase = TeacherHandlers.form(request, "passphrase");
    String problem = problem(folder, days, passphrase, TeacherHandlers.form(request, "again"));
    if (problem != null) {
      request.status(422);
      show(request, problem, folder, days);
      return;
    }
    teacher.services.teachers.set(BackupDesk.FOLDER, folder);
    teacher.services.teachers.set(BackupDesk.DAYS, days);
    if (!passphrase.isEmpty()) {
      teacher.services.teachers.set(BackupDesk.KEY, Key.fresh(passphrase).kept());
    } else if (TeacherHandlers.form(request, "unlocked").equals("yes")) {
      teacher.services.teachers.set(BackupDesk.KEY, "");
    }
    request.redirect(HERE, HttpStatus.SEE_OTHER);
  }

  private static String problem(String folder, String days, String passphrase, String again) {
    if (!days.matches("[0-9]{1,4}") || Integer.parseInt(days) < 1 || Integer.parseInt(days) > MOST_DAYS) {
      return "Days: a number from 1 to " + MOST_DAYS + " was expected. Type for example " + BackupDesk.USUAL_DAYS + ".";
    }
    if (!folder.isEmpty() && !isFolder(folder)) {
      return "The folder " + folder + " is not there. Plug in the stick, or copy the folder’s whole address here.";
    }
    return passphrase.isEmpty() && again.isEmpty() ? null : Passphrases.problem(passphrase, again).orElse(null);
  }

  private static boolean isFolder(String folder) {
    try {
      Path path = Path.of(folder);
      return path.isAbsolute() && Files.isDirectory(path);
    } catch (InvalidPathException e) {
      return false;
    }
  }

  private BackupFile asked(Context request) {
    return desk().backups().find(request.pathParam("file")).orElseThrow(Refusal::notFound);
  }

  /** One backup: what is newer, and how to go back to it. */
  void one(Context request) {
    BackupFile backup = asked(request);
    Long newer = null;
    String problem = null;
    try {
      Key key = known(backup);
      newer = key == null && backup.locked() ? null : Restore.newer(teacher.services.database, backup, key);
    } catch (BackupProblem e) {
      problem = e.getMessage();
    }
    one(request, backup, newer, problem);
  }

  private void one(Context request, BackupFile backup, Long newer, String problem) {
    teacher.inClass(request, classroom -> teacher.render(request, "teacher/backup", BackupPage.of(backup, newer,
        classroom.zone(), teacher.services.database.inSchool() ? null : teacher.services.settings.data().toAbsolutePath()
            .normalize(), desk().puttingBack().isPresent(), known(backup) != null, problem), teacher.frame(classroom, Place.SETUP)));
  }

  /** The key that is kept for new backups, where this one was locked with it; else null. */
  private Key known(BackupFile backup) {
    return !backup.locked() ? null : desk().key()
        .filter(key -> HexFormat.of().formatHex(key.salt()).equals(backup.salt())).orElse(null);
  }

  /**
   * Goes back to a backup. It has to be whole, its passphrase right, and the number of newer pieces the one she was
   * shown: where it is another by now, she is asked again.
   */
  void restore(Context request) {
    BackupFile backup = asked(request);
    BackupDesk.PuttingBack by = desk().puttingBack().orElseThrow(Refusal::notFound);
    Long newer = null;
    String problem = null;
    Key key = known(backup);
    try {
      if (key == null) {
        key = backup.key(TeacherHandlers.form(request, "passphrase"));
      }
      newer = Restore.newer(teacher.services.database, backup, key);
      if (!TeacherHandlers.form(request, "newer").equals(newer.toString())) {
        problem = "Newer work is there than you were shown. Look at the number below and press again if you still want to.";
      } else if (desk().running() != null) {
        problem = "A backup is being made. Wait until it is done, then press again.";
      }
    } catch (BackupProblem e) {
      problem = e.getMessage();
    }
    if (problem != null) {
      request.status(422);
      one(request, backup, newer, problem);
      return;
    }
    by.putBack(backup, key);
    teacher.render(request, "teacher/putting-back", null, null);
  }

  void delete(Context request) {
    BackupFile backup = asked(request);
    try {
      desk().backups().delete(backup);
    } catch (IOException e) {
      throw new Refusal(409, "The file could not be removed. Close what has it open, then try again.");
    }
    request.redirect(HERE, HttpStatus.SEE_OTHER);
  }

  /** Asked by the command in another window: it has read the token from the data folder. */
  void byToken(Context request) {
    if (!desk().isToken(request.header(RunningApp.TOKEN))) {
      throw Refusal.forbidden();
    }
    String answer;
    try {
      JsonNode asked = Json.read(request.body());
      answer = Json.write(AskedBackup.make(teacher.services.database, teacher.services.settings.data(),
          Path.of(asked.path("file").asText()), asked.path("passphrase").isTextual()
              ? asked.path("passphrase").asText() : null, teacher.services.now(), Progress.NONE));
    } catch (BackupProblem | Json.Unusable | InvalidPathException e) {
      answer = Json.write(Json.object().put("problem", e.getMessage()));
    }
    request.contentType("application/json");
    request.result(answer);
  }
}
