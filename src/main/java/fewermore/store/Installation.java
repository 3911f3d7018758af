package fewermore.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.regex.Pattern;

/**
 * Which app this is among those that share a school's database: 64 random bits in the file {@code school-id} of its data
 * folder. They name the schema its tables lie in. Whoever has the file in another folder goes on with the same classes.
 */
record Installation(String id) {
  static final String FILE = "school-id";
  private static final Pattern ID = Pattern.compile("[0-9a-f]{16}");

  /** Reads the folder's own, or makes one. @throws CannotOpen when it can't be read, written, or is none */
  static Installation of(Path folder) {
    Path file = folder.resolve(FILE);
    try {
      if (!Files.exists(file)) {
        write(folder, file, HexFormat.of().formatHex(random()));
      }
      String id = Files.readString(file).strip();
      if (!ID.matcher(id).matches()) {
        throw new CannotOpen("The file " + file + " does not hold the sixteen digits and letters that say which classes of"
            + " the school's database are this laptop's. Copy it from a backup of the folder.");
      }
      return new Installation(id);
    } catch (IOException e) {
      throw new CannotOpen("The file " + file + " can't be read or written. Allow it, or choose another folder with --data.");
    }
  }

  /** Whole and on disk before anything is written under it: classes would be lost with it. */
  private static void write(Path folder, Path file, String id) throws IOException {
    Path made = Files.writeString(folder.resolve(FILE + ".new"), id + "\n");
    try (FileChannel channel = FileChannel.open(made, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(made, file, StandardCopyOption.ATOMIC_MOVE);
  }

  private static byte[] random() {
    byte[] bytes = new byte[8];
    new SecureRandom().nextBytes(bytes);
    return bytes;
  }

  /** The schema all tables of this app lie in. */
  String schema() {
    return "fewermore_" + id;
  }

  /** What this app locks while it works on its schema. */
  long lock() {
    return Long.parseUnsignedLong(id, 16);
  }
}
