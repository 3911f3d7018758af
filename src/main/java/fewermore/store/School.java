package fewermore.store;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A PostgreSQL that the laptops of a school share, and how to sign in to it. Its text never holds the password.
 *
 * @param url as JDBC takes it: {@code jdbc:postgresql://db.school.example/fewermore}
 * @param user may be empty: then as the URL or the driver's defaults say
 */
public record School(String url, String user, String password) {
  private static final Pattern URL =
      Pattern.compile("jdbc:postgresql://(?<hosts>[A-Za-z0-9.,:_\\[\\]-]+)/(?<database>[^?/]+)(\\?(?<options>.*))?");
  private static final String EXPECTED =
      "An address such as jdbc:postgresql://db.school.example/fewermore was expected for the school's database";

  /** @throws CannotOpen when the address is none, or holds what everybody could read there */
  public School {
    if (user == null) {
      user = "";
    }
    if (password == null) {
      password = "";
    }
    Matcher read = URL.matcher(url == null ? "" : url);
    if (!read.matches()) {
      throw new CannotOpen(EXPECTED + ". Ask whoever looks after the database for its host and name.");
    }
    String options = read.group("options");
    if (options != null && options.toLowerCase(Locale.ROOT).matches("(.*&)?(user|password)=.*")) {
      throw new CannotOpen("User and password don't belong in the address: other programs of this laptop can read it there."
          + " Put them into FEWERMORE_SCHOOL_USER and FEWERMORE_SCHOOL_PASSWORD, or into a file for --school-file.");
    }
  }

  /**
   * Reads a file with the lines {@code url=}, {@code user=} and {@code password=}.
   *
   * @throws CannotOpen when it can't be read or lacks the address
   */
  public static School read(Path file) {
    Properties lines = new Properties();
    try (Reader reader = Files.newBufferedReader(file)) {
      lines.load(reader);
    } catch (IOException | IllegalArgumentException e) {
      throw new CannotOpen("The file " + file + " can't be read. Lines such as url=…, user=… and password=… were expected.");
    }
    return new School(lines.getProperty("url", "").strip(), lines.getProperty("user", "").strip(),
        lines.getProperty("password", ""));
  }

  /** Host and database, for sentences. */
  public String name() {
    Matcher read = URL.matcher(url);
    return read.matches() ? read.group("hosts") + "/" + read.group("database") : "";
  }

  @Override
  public String toString() {
    return name();
  }
}
