package fewermore.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.backup.BackupFile;
import fewermore.store.backup.Backups;
import fewermore.store.backup.Progress;
import fewermore.store.backup.Restore;
import fewermore.store.disk.BlockFile;
import fewermore.store.disk.Damaged;
import fewermore.store.disk.SystemDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Stores that something cut, zeroed or changed: each is noticed at the start, or holds what it held. */
@OneLossIsALoss
class DamageTest {
  private static final Instant NOW = Instant.parse("2026-11-25T21:30:00Z");

  @TempDir static Path temp;
  private static Path closed;
  private static Path killed;
  private static Map<String, String> all;
  private static BackupFile backup;

  @BeforeAll
  static void aStoreThatWasClosedAndOneThatWasKilled() throws Exception {
    closed = temp.resolve("closed");
    killed = Files.createDirectory(temp.resolve("killed"));
    try (Database database = Database.open(closed)) {
      SchoolDay day = new SchoolDay(database, 4, false, "d");
      for (int child = 0; child < 4; child++) {
        day.handInMany(child, "page" + child, 150);
      }
      backup = new Backups(closed).make(database, "asked", null, NOW, Progress.NONE);
      for (int child = 0; child < 4; child++) {
        day.handInMany(child, "later" + child, 150);
      }
      all = SchoolDay.there(database);
      copy(closed, killed);
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.createDirectories(to);
    try (Stream<Path> files = Files.list(from)) {
      for (Path file : files.filter(Database::isDatabaseFile).toList()) {
        Files.copy(file, to.resolve(file.getFileName()));
      }
    }
  }

  private interface Harm {
    byte[] to(byte[] bytes, Random random);
  }

  /** Harms one file in each of 50 copies; says which were neither noticed nor harmless. */
  private static List<String> silent(String name, Path store, Harm harm) throws IOException {
    byte[] whole = content(store, "whole-" + name);
    List<String> silent = new ArrayList<>();
    int noticed = 0;
    for (int round = 0; round < 50; round++) {
      Random random = new Random(round);
      Path copy = temp.resolve(name + round);
      copy(store, copy);
      List<Path> files;
      try (Stream<Path> listed = Files.list(copy)) {
        files = listed.filter(file -> file.toFile().length() > 0).sorted().toList();
      }
      // Mostly the file itself; the checksums and the journal too.
      Path file = random.nextInt(3) == 0 ? files.get(random.nextInt(files.size())) : Database.dataFile(copy);
      Files.write(file, harm.to(Files.readAllBytes(file), random));
      try (BlockFile opened = BlockFile.open(Database.dataFile(copy), new SystemDisk())) {
        ByteBuffer found = ByteBuffer.allocate((int) opened.size());
        opened.read(found, 0);
        if (!Arrays.equals(whole, found.array())) {
          silent.add(name + " " + round + " in " + file.getFileName());
        }
      } catch (Damaged e) {
        noticed++;
      }
      PowerCuts.remove(copy);
    }
    // Of a killed store most blocks stand in the journal too, and are mended from it.
    assertTrue(noticed >= (store.equals(closed) ? 25 : 3), name + ": only " + noticed + " noticed");
    return silent;
  }

  private static byte[] content(Path store, String name) throws IOException {
    Path copy = temp.resolve(name);
    copy(store, copy);
    try (BlockFile opened = BlockFile.open(Database.dataFile(copy), new SystemDisk())) {
      ByteBuffer all = ByteBuffer.allocate((int) opened.size());
      opened.read(all, 0);
      return all.array();
    }
  }

  private static byte[] cut(byte[] bytes, Random random) {
    return Arrays.copyOf(bytes, random.nextInt(bytes.length));
  }

  private static byte[] flip(byte[] bytes, Random random) {
    bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    return bytes;
  }

  private static byte[] zero(byte[] bytes, Random random) {
    int from = random.nextInt(bytes.length);
    Arrays.fill(bytes, from, Math.min(bytes.length, from + 4096), (byte) 0);
    return bytes;
  }

  @Test
  void fiftyCutFiftyFlippedAndFiftyZeroedStoresAreNoticedOrHarmless() throws IOException {
    List<String> silent = new ArrayList<>();
    silent.addAll(silent("cut", closed, DamageTest::cut));
    silent.addAll(silent("flipped", closed, DamageTest::flip));
    silent.addAll(silent("zeroed", closed, DamageTest::zero));
    assertEquals(List.of(), silent);
  }

  @Test
  void theSameOfStoresThatWereKilled() throws IOException {
    List<String> silent = new ArrayList<>();
    silent.addAll(silent("killed-cut", killed, DamageTest::cut));
    silent.addAll(silent("killed-flipped", killed, DamageTest::flip));
    assertEquals(List.of(), silent);
  }

  @Test
  void damageIsSaidInASentenceAndMendedFromTheBackupAndWhatIsIntact() throws Exception {
    long most = 0;
    for (int round = 0; round < 4; round++) {
      Path data = temp.resolve("data" + round);
      copy(closed, data);
      Files.createDirectories(data.resolve("backups"));
      Files.copy(backup.path(), data.resolve("backups").resolve(backup.path().getFileName()));
      Path file = Database.dataFile(data);
      byte[] bytes = Files.readAllBytes(file);
      bytes[8192 + (bytes.length - 8192) / 5 * (round + 1)] ^= 16;
      Files.write(file, bytes);
      DamagedData damaged = assertThrows(DamagedData.class, () -> Database.open(data));
      assertTrue(damaged.getMessage().contains("are damaged") && damaged.getMessage().contains("Nothing was changed"),
          damaged.getMessage());
      assertEquals(-1, Arrays.mismatch(bytes, Files.readAllBytes(file)));
      BackupFile newest = Restore.newestWhole(data).orElseThrow();
      Restore.Done done = Restore.mend(data, newest, null, NOW, Progress.NONE);
      assertTrue(done.pieces() >= 600 && done.pieces() <= 1200, done.toString());
      assertEquals(-1, Arrays.mismatch(bytes, Files.readAllBytes(Database.dataFile(done.beside()))), "kept as it was");
      try (Database mended = Database.open(data)) {
        Map<String, String> there = SchoolDay.there(mended);
        assertEquals(done.pieces(), there.size());
        there.forEach((name, answer) -> assertEquals(all.get(name), answer, name));
      }
      most = Math.max(most, done.saved());
    }
    // Where the damage hits what all else hangs on, nothing newer can be read; not in all four places.
    assertTrue(most > 300, "of 600 newer pieces only " + most + " were saved at best");
  }

  @Test
  void withoutAnyBackupWhatIsIntactIsKept() throws Exception {
    Path data = temp.resolve("alone");
    copy(closed, data);
    byte[] bytes = Files.readAllBytes(Database.dataFile(data));
    bytes[bytes.length / 2] ^= 1;
    Files.write(Database.dataFile(data), bytes);
    assertThrows(DamagedData.class, () -> Database.open(data));
    assertTrue(Restore.newestWhole(data).isEmpty());
    Restore.Done done = Restore.mend(data, null, null, NOW, Progress.NONE);
    try (Database mended = Database.open(data)) {
      Map<String, String> there = SchoolDay.there(mended);
      there.forEach((name, answer) -> assertEquals(all.get(name), answer, name));
      assertEquals(done.pieces(), there.size());
    }
  }
}
