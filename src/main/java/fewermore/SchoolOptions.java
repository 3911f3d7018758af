package fewermore;

import fewermore.store.Database;
import fewermore.store.School;
import fewermore.store.backup.Backups;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/**
 * Where a school's database is, if the app works on one. User and password are never said on the command line, where
 * other programs could read them.
 */
final class SchoolOptions {
  @Option(names = "--school", paramLabel = "URL",
      description = "keep the classes in the school's PostgreSQL, jdbc:postgresql://HOST/DATABASE, which many laptops share. "
          + "User and password: environment variables FEWERMORE_SCHOOL_USER and FEWERMORE_SCHOOL_PASSWORD")
  String url = System.getenv("FEWERMORE_SCHOOL");

  @Option(names = "--school-file", paramLabel = "FILE",
      description = "the same from a file with the lines url=…, user=… and password=…")
  Path file;

  /** Null when the data lie in a folder. @throws fewermore.store.CannotOpen with a sentence when it can't be used */
  School school() {
    if (file != null) {
      return School.read(file);
    }
    return url == null || url.isBlank() ? null
        : new School(url, System.getenv("FEWERMORE_SCHOOL_USER"), System.getenv("FEWERMORE_SCHOOL_PASSWORD"));
  }

  /** Opens the data of a folder, or its part of the school's database, brought up to date. */
  static Database open(Path data, School school) {
    return school == null ? Backups.openAfterBackup(data) : Backups.openAfterBackup(data, school);
  }
}
