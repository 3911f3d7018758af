package fewermore.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.disk.Disk;
import fewermore.store.disk.SystemDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The data file is written anew, and a crash comes at any step of it. */
class RewriteTest {
  @TempDir Path temp;

  /** Keeps a copy of the folder as it is before each thing asked of the disk. */
  private static final class Copying implements Disk {
    private final Disk disk = new SystemDisk();
    private final Path folder;
    private final Path copies;
    private final List<Path> steps = new ArrayList<>();
    private boolean on;
    private boolean full;

    private Copying(Path folder, Path copies) {
      this.folder = folder;
      this.copies = copies;
    }

    private void copy() throws IOException {
      if (on) {
        Path to = Files.createDirectories(copies.resolve("step" + steps.size()));
        try (Stream<Path> files = Files.list(folder)) {
          for (Path each : files.filter(Database::isDatabaseFile).toList()) {
            Files.copy(each, to.resolve(each.getFileName()));
          }
        }
        steps.add(to);
      }
    }

    @Override
    public OpenFile open(Path path) throws IOException {
      copy();
      if (full && path.toString().endsWith(".anew")) {
        throw new IOException("No space left on device");
      }
      OpenFile file = disk.open(path);
      return new OpenFile() {
        @Override
        public int read(ByteBuffer into, long at) throws IOException {
          return file.read(into, at);
        }

        @Override
        public void write(ByteBuffer from, long at) throws IOException {
          copy();
          file.write(from, at);
        }

        @Override
        public long size() throws IOException {
          return file.size();
        }

        @Override
        public void cut(long size) throws IOException {
          copy();
          file.cut(size);
        }

        @Override
        public void force() throws IOException {
          copy();
          file.force();
        }

        @Override
        public void close() throws IOException {
          file.close();
        }
      };
    }

    @Override
    public boolean exists(Path file) {
      return disk.exists(file);
    }

    @Override
    public void delete(Path file) throws IOException {
      copy();
      disk.delete(file);
    }

    @Override
    public void replace(Path by, Path file) throws IOException {
      copy();
      disk.replace(by, file);
    }

    @Override
    public void forceFolder(Path folder) throws IOException {
      copy();
      disk.forceFolder(folder);
    }
  }

  private static boolean holds(Path folder, String text) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(Database::isDatabaseFile).toList()) {
        if (new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains(text)) {
          return true;
        }
      }
    }
    return false;
  }

  @Test
  void aFileThatGrewIsPutInOrderWithAllThatWasHandedInAndSavesGoOn() throws Exception {
    Path data = temp.resolve("grown");
    try (Database database = Database.open(data)) {
      SchoolDay day = new SchoolDay(database, 2, false, "g");
      for (int at = 0; at < 60; at++) {
        day.handInMany(0, "page" + at, 3);
      }
      Map<String, String> before = SchoolDay.there(database);
      long grown = Files.size(Database.dataFile(data));
      database.putInOrder();
      long inOrder = Files.size(Database.dataFile(data));
      assertTrue(inOrder * 2 < grown, grown + " bytes became " + inOrder);
      assertEquals(before, SchoolDay.there(database));
      day.handInMany(0, "afterwards", 3);
      assertEquals(before.size() + 3, SchoolDay.there(database).size());
    }
  }

  @Test
  void whileABackupReadsTheFileStaysAsItIsAndSavesGoOn() throws Exception {
    try (Database database = Database.open(temp.resolve("read"))) {
      SchoolDay day = new SchoolDay(database, 2, false, "b");
      for (int at = 0; at < 20; at++) {
        day.handInMany(0, "page" + at, 3);
      }
      long before = Files.size(Database.dataFile(temp.resolve("read")));
      database.readWhole(source -> {
        Thread other = new Thread(database::putInOrder);
        other.start();
        other.join();
        day.handInMany(0, "meanwhile", 1);
        return null;
      });
      assertTrue(Files.size(Database.dataFile(temp.resolve("read"))) >= before);
    }
  }

  @Test
  void aCrashAtAnyStepLeavesAllThatWasThereAndNothingOfTheCopy() throws IOException {
    Path data = temp.resolve("data");
    Copying disk = new Copying(data, temp);
    Map<String, String> before;
    try (Database database = Database.open(data, disk, (source, from) -> { })) {
      SchoolDay day = new SchoolDay(database, 2, false, "r");
      day.handInMany(0, "page", 20);
      TeacherStore teachers = new TeacherStore(database);
      teachers.set("secret", "zorblaxes");
      teachers.set("secret", "gone");
      before = SchoolDay.there(database);
      assertTrue(holds(data, "zorblaxes"), "before, what was overwritten must be found by this very search");
      disk.on = true;
      assertTrue(database.rewrite());
      disk.on = false;
      assertFalse(holds(data, "zorblaxes"), "what was overwritten is in no file");
      assertEquals(before, SchoolDay.there(database));
      day.handIn(1, "after", 1);
      assertEquals(21, SchoolDay.there(database).size());
    }
    assertTrue(disk.steps.size() >= 8, "only " + disk.steps.size() + " steps were seen");
    assertTrue(disk.steps.stream().anyMatch(step -> Files.exists(step.resolve("fewermore.mv.db.anew"))),
        "a step with the copy beside");
    // The copies themselves differ only in what stands beside the file; of equal ones one is opened.
    String last = "";
    for (Path step : disk.steps) {
      String now = sizes(step);
      if (!now.equals(last)) {
        try (Database database = Database.open(step)) {
          assertEquals(before, SchoolDay.there(database), step.toString());
        }
        assertFalse(Files.exists(step.resolve("fewermore.mv.db.anew")), step.toString());
      }
      last = now;
    }
  }

  private static String sizes(Path step) throws IOException {
    StringBuilder all = new StringBuilder();
    try (Stream<Path> files = Files.list(step)) {
      for (Path file : files.sorted().toList()) {
        all.append(file.getFileName()).append(java.util.Arrays.hashCode(Files.readAllBytes(file))).append(' ');
      }
    }
    return all.toString();
  }

  @Test
  void withoutRoomForTheCopyTheOldFileGoesOn() throws IOException {
    Path data = temp.resolve("data");
    Copying disk = new Copying(data, temp);
    try (Database database = Database.open(data, disk, (source, from) -> { })) {
      TeacherStore teachers = new TeacherStore(database);
      teachers.set("word", "one");
      disk.full = true;
      assertFalse(database.rewrite(), "it says that the file is the old one");
      assertEquals("one", teachers.setting("word").orElseThrow());
      teachers.set("word", "two");
      disk.full = false;
      assertTrue(database.rewrite());
      assertEquals("two", teachers.setting("word").orElseThrow());
    }
    try (Database again = Database.open(data)) {
      assertEquals("two", new TeacherStore(again).setting("word").orElseThrow());
    }
  }
}
