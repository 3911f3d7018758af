package fewermore.web.teacher;

import fewermore.store.backup.BackupFile;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * All backups of this laptop. {@code pages/teacher/backups.html}.
 *
 * @param percent how far the one being made is; 0 while nobody knows
 * @param failed what went wrong with the last one, or null
 * @param other the folder copies go to, as typed; empty for none
 * @param days how long backups stay, as typed
 * @param locked whether new ones are locked
 * @param problem what is wrong with the form, or null
 * @param putBack what became of the backup that was put back last, or null
 */
public record BackupsPage(List<Line> lines, String folder, boolean running, int percent, String failed, String other,
    String days, boolean locked, String problem, String putBack) {
  public record Line(String name, String when, String why, long pieces, String size, boolean locked) {}

  private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("EEE, MMM d, uuuu, h:mm a", Locale.US);

  public static BackupsPage of(List<BackupFile> backups, String folder, ZoneId zone, boolean running, int percent,
      String failed, String other, String days, boolean locked, String problem,
      String putBack) {
    return new BackupsPage(backups.stream().map(each -> line(each, zone)).toList(), folder, running, percent, failed,
        other, days, locked, problem, putBack);
  }

  static Line line(BackupFile backup, ZoneId zone) {
    return new Line(backup.path().getFileName().toString(), WHEN.format(backup.made().atZone(zone)), why(backup.why()),
        backup.pieces(), size(backup.bytes()), backup.locked());
  }

  private static String why(String why) {
    return switch (why) {
      case "day" -> "after a day with work";
      case "before-update" -> "before an update";
      case "before-restore" -> "before a restore";
      default -> "asked for";
    };
  }

  private static String size(long bytes) {
    return bytes < 1_000_000 ? Math.max(1, bytes / 1000) + " KB" : String.format(Locale.US, "%.1f MB", bytes / 1e6);
  }
}
