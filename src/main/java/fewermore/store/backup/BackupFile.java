package fewermore.store.backup;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import fewermore.store.backup.Dump.Sum;
import fewermore.store.backup.Dump.Without;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * One backup on disk, as its first line says.
 *
 * @param made when, by the laptop's clock
 * @param data the version of the tables
 * @param rows how many rows of tables it was made from
 * @param pieces how many pieces of work were handed in, invented classes aside
 * @param why what it was made for: {@code day}, {@code asked}, {@code before-update}, {@code before-restore}
 * @param salt of the passphrase, in hex; null when it is not locked
 */
public record BackupFile(
    Path path, Instant made, String data, long rows, long pieces, String why, String salt, String nonce, long bytes) {
  private static final String MAGIC = "FEWERMORE-BACKUP ";
  private static final int LONGEST_HEAD = 2000;

  public boolean locked() {
    return salt != null;
  }

  private static String head(Instant made, String data, long rows, long pieces, String why, String salt, String nonce) {
    ObjectNode head = Json.object().put("made", made.toString()).put("data", data).put("rows", rows)
        .put("pieces", pieces).put("why", why).put("lock", salt).put("nonce", nonce);
    return MAGIC + Json.write(head) + "\n";
  }

  /** Writes all of a database to a file, forced to disk; the file is not verified yet. */
  static Sum write(Connection connection, Path to, Instant made, String data, String why, Key key,
      List<Without> without, Progress progress) throws IOException, SQLException {
    Dump.Count count = Dump.count(connection);
    byte[] file = new byte[8];
    new SecureRandom().nextBytes(file);
    String head = head(made, data, count.rows(), count.pieces(), why,
        key == null ? null : HexFormat.of().formatHex(key.salt()), key == null ? null : HexFormat.of().formatHex(file));
    byte[] headBytes = head.getBytes(StandardCharsets.UTF_8);
    Sum sum;
    try (OutputStream raw = new BufferedOutputStream(Files.newOutputStream(to), 1 << 16)) {
      raw.write(headBytes);
      OutputStream inner = key == null ? raw : LockedStreams.locking(raw, key, file, headBytes);
      try (OutputStream zipped = new GZIPOutputStream(inner, 1 << 15)) {
        sum = Dump.write(connection, zipped, without, count.rows(), progress);
      }
    }
    try (FileChannel channel = FileChannel.open(to, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    return sum;
  }

  /** Reads the first line. @throws BackupProblem when this is no backup of Fewermore */
  public static BackupFile of(Path path) throws BackupProblem {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(path))) {
      String line = new String(firstLine(in), StandardCharsets.UTF_8);
      if (!line.startsWith(MAGIC)) {
        throw new BackupProblem(path + " is not a backup of Fewermore. Choose a file that ends in " + Backups.ENDING + ".");
      }
      JsonNode head = Json.read(line.substring(MAGIC.length()));
      return new BackupFile(path, Instant.parse(head.path("made").asText()), head.path("data").asText(),
          head.path("rows").asLong(), head.path("pieces").asLong(), head.path("why").asText(),
          head.path("lock").isTextual() ? head.get("lock").asText() : null,
          head.path("nonce").isTextual() ? head.get("nonce").asText() : null, Files.size(path));
    } catch (IOException e) {
      throw new BackupProblem("The file " + path + " can't be read. Look whether it is there and may be read.", e);
    } catch (Json.Unusable | DateTimeException e) {
      throw new BackupProblem(Dump.NOT_WHOLE, e);
    }
  }

  private static byte[] firstLine(InputStream in) throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int next = in.read(); next >= 0 && line.size() < LONGEST_HEAD; next = in.read()) {
      line.write(next);
      if (next == '\n') {
        break;
      }
    }
    return line.toByteArray();
  }

  /** The key a passphrase gives for this backup; null when it is not locked. */
  public Key key(String passphrase) throws BackupProblem {
    if (!locked()) {
      return null;
    }
    if (passphrase == null || passphrase.isEmpty()) {
      throw new BackupProblem("This backup is locked. Type the passphrase it was made with.");
    }
    try {
      return Key.of(passphrase, HexFormat.of().parseHex(salt));
    } catch (IllegalArgumentException e) {
      throw new BackupProblem(Dump.NOT_WHOLE, e);
    }
  }

  /** Reads all rows. @throws BackupProblem for a wrong key and for a file that is not whole */
  Sum read(Key key, Dump.Rows into) throws BackupProblem, SQLException {
    try (InputStream raw = new BufferedInputStream(Files.newInputStream(path), 1 << 16)) {
      byte[] head = firstLine(raw);
      InputStream inner = locked() ? LockedStreams.opening(raw, key, HexFormat.of().parseHex(nonce), head) : raw;
      try (InputStream lines = new GZIPInputStream(inner, 1 << 15)) {
        return Dump.read(lines, into);
      }
    } catch (LockedStreams.WrongKey e) {
      throw new BackupProblem("That passphrase does not open this backup (or the file was changed since). "
          + "Nothing was changed; look at capital letters and try again.", e);
    } catch (IOException | IllegalArgumentException e) {
      throw new BackupProblem(Dump.NOT_WHOLE, e);
    }
  }
}
