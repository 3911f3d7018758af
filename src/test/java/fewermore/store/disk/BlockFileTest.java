package fewermore.store.disk;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import fewermore.store.disk.RecordingDisk.Unforced;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BlockFileTest {
  @TempDir Path folder;

  private record Flushed(int asked, int done, byte[] content) {}

  /** Writes, cuts and flushes by lot, on small journals; the same changes are made to an array beside. */
  private List<Flushed> work(RecordingDisk disk, Path path, Random random, int steps) throws IOException {
    List<Flushed> flushed = new ArrayList<>();
    byte[] model = new byte[0];
    try (BlockFile file = BlockFile.open(path, disk, 100_000)) {
      flushed.add(new Flushed(0, disk.moment(), model));
      for (int step = 0; step < steps; step++) {
        int kind = random.nextInt(10);
        if (kind < 6) {
          int at = random.nextInt(model.length + 9000);
          byte[] bytes = new byte[1 + random.nextInt(12_000)];
          random.nextBytes(bytes);
          file.write(ByteBuffer.wrap(bytes), at);
          model = Arrays.copyOf(model, Math.max(model.length, at + bytes.length));
          System.arraycopy(bytes, 0, model, at, bytes.length);
        } else if (kind == 6 && random.nextInt(3) == 0) {
          int to = random.nextInt(model.length + 1);
          file.cut(to);
          model = Arrays.copyOf(model, to);
        } else {
          int asked = disk.moment();
          file.flush();
          flushed.add(new Flushed(asked, disk.moment(), model.clone()));
        }
        if (random.nextInt(20) == 0) {
          assertArrayEquals(model, all(file));
        }
      }
      flushed.add(new Flushed(disk.moment(), Integer.MAX_VALUE, model.clone()));
    }
    return flushed;
  }

  private static byte[] all(BlockFile file) throws IOException {
    ByteBuffer all = ByteBuffer.allocate((int) file.size());
    file.read(all, 0);
    return all.array();
  }

  @Test
  void afterAPowerCutTheFileIsAsAfterSomeFlushAndNoOlderThanTheLastThatReturned() throws IOException {
    for (int run = 0; run < 40; run++) {
      long seed = 1000 + run;
      Random random = new Random(seed);
      RecordingDisk disk = new RecordingDisk();
      Path work = Files.createDirectory(folder.resolve("work" + run));
      Path path = work.resolve("data");
      List<Flushed> flushed = work(disk, path, random, 150);
      for (int cut = 0; cut < 30; cut++) {
        Unforced how = Unforced.values()[cut % 2];
        int moment = flushed.get(0).done + random.nextInt(disk.moment() - flushed.get(0).done + 1);
        Path left = Files.createDirectory(folder.resolve("left" + run + "-" + cut));
        disk.cutPowerAt(moment, how, random.nextLong(), work, left);
        byte[] found;
        try (BlockFile file = BlockFile.open(left.resolve("data"), new SystemDisk())) {
          found = all(file);
        } catch (IOException e) {
          fail("seed " + seed + ", cut " + cut + " at " + moment + " " + how, e);
          return;
        }
        boolean one = false;
        for (int state = 0; state < flushed.size() && !one; state++) {
          boolean newEnough = state + 1 >= flushed.size() || flushed.get(state + 1).done > moment;
          one = newEnough && flushed.get(state).asked <= moment && Arrays.equals(found, flushed.get(state).content);
        }
        assertTrue(one, "seed " + seed + ", cut " + cut + " at " + moment + " " + how);
      }
    }
  }

  private Path written() throws IOException {
    Path path = folder.resolve("data");
    byte[] bytes = new byte[100_000];
    new Random(1).nextBytes(bytes);
    try (BlockFile file = BlockFile.open(path, new SystemDisk())) {
      file.write(ByteBuffer.wrap(bytes), 0);
    }
    return path;
  }

  @Test
  void aChangedBlockIsNoticedAndNothingIsChanged() throws IOException {
    Path path = written();
    byte[] bytes = Files.readAllBytes(path);
    bytes[50_000] ^= 4;
    Files.write(path, bytes);
    Damaged damaged = assertThrows(Damaged.class, () -> BlockFile.open(path, new SystemDisk()));
    assertEquals(1, damaged.blocks());
    assertArrayEquals(bytes, Files.readAllBytes(path));
    try (BlockFile file = BlockFile.openDamaged(path, new SystemDisk())) {
      assertEquals(4096, file.read(ByteBuffer.allocate(4096), 0));
      assertThrows(Damaged.class, () -> file.read(ByteBuffer.allocate(10), 50_000));
    }
  }

  @Test
  void aFileThatIsGoneIsNoticed() throws IOException {
    Path path = written();
    Files.delete(path);
    assertThrows(Damaged.class, () -> BlockFile.open(path, new SystemDisk()));
  }

  @Test
  void aFileFromBeforeThereWereChecksumsIsTaken() throws IOException {
    Path path = Files.write(folder.resolve("old"), new byte[] {1, 2, 3});
    try (BlockFile file = BlockFile.open(path, new SystemDisk())) {
      assertArrayEquals(new byte[] {1, 2, 3}, all(file));
    }
  }

  @Test
  void aFullDiskIsTriedAgainAndLosesNothing() throws IOException {
    FailingDisk disk = new FailingDisk();
    Path path = folder.resolve("data");
    BlockFile file = BlockFile.open(path, disk);
    file.write(ByteBuffer.wrap(new byte[] {1, 2, 3}), 0);
    file.flush();
    disk.full = true;
    file.write(ByteBuffer.wrap(new byte[] {7}), 1);
    assertThrows(NotTaken.class, file::flush);
    file.write(ByteBuffer.wrap(new byte[] {9}), 20_000);
    assertThrows(NotTaken.class, file::flush);
    assertEquals(7, all(file)[1], "reading goes on");
    // What a kill leaves now is what was flushed before.
    Path copy = Files.createDirectory(folder.resolve("copy"));
    for (String name : List.of("data", "data.sums", "data.journal1")) {
      Files.copy(folder.resolve(name), copy.resolve(name));
    }
    try (BlockFile killed = BlockFile.open(copy.resolve("data"), new SystemDisk())) {
      assertArrayEquals(new byte[] {1, 2, 3}, all(killed));
    }
    disk.full = false;
    file.flush();
    file.close();
    try (BlockFile again = BlockFile.open(path, new SystemDisk())) {
      assertEquals(20_001, again.size());
      assertEquals(7, all(again)[1]);
      assertEquals(9, all(again)[20_000]);
    }
  }

  @Test
  void afterAFailedForceNothingIsKeptAnyMore() throws IOException {
    FailingDisk disk = new FailingDisk();
    BlockFile file = BlockFile.open(folder.resolve("data"), disk);
    file.write(ByteBuffer.wrap(new byte[] {1}), 0);
    disk.forceFails = true;
    assertThrows(ForceFailed.class, file::flush);
    disk.forceFails = false;
    assertThrows(ForceFailed.class, file::flush);
    assertEquals(1, all(file)[0], "reading goes on");
    file.close();
  }
}
