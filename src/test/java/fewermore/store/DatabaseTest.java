package fewermore.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DatabaseTest {
  @TempDir Path folder;

  @Test
  void anOlderProgramStopsOnNewerData() {
    try (Database database = Stores.open(folder)) {
      database.change(handle -> handle.execute("""
          INSERT INTO "flyway_schema_history" ("installed_rank", "version", "description", "type", "script",
                 "checksum", "installed_by", "installed_on", "execution_time", "success")
          VALUES (999, '999', 'from the future', 'SQL', 'V999__from_the_future.sql', 1, 'sa',
                 CURRENT_TIMESTAMP, 1, TRUE)"""));
    }
    CannotOpen refused = assertThrows(CannotOpen.class, () -> Stores.open(folder));
    assertTrue(refused.getMessage().contains("newer Fewermore"), refused.getMessage());
  }

  @Test
  void aFolderThatIsAFileIsRefusedInASentence() throws IOException {
    Path file = Files.writeString(folder.resolve("note.txt"), "not a folder");
    CannotOpen refused = assertThrows(CannotOpen.class, () -> Database.open(file));
    assertTrue(refused.getMessage().contains("can't write"), refused.getMessage());
  }

  @OfTheFile("its checksums")
  @Test
  void dataWithADamagedFileAreNotTouched() throws IOException {
    Stores.open(folder).close();
    Path data = folder.resolve("fewermore.mv.db");
    Files.writeString(data, "this is no database at all");
    CannotOpen refused = assertThrows(CannotOpen.class, () -> Stores.open(folder));
    assertTrue(refused.getMessage().contains("are damaged"), refused.getMessage());
    assertEquals("this is no database at all", Files.readString(data));
  }

  @OfTheFile("its forces")
  @Test
  void everyWriteIsForcedBeforeItReturnsAndManyShareAForce() throws InterruptedException {
    try (Database database = Stores.open(folder)) {
      TeacherStore teachers = new TeacherStore(database);
      long before = database.forces();
      for (int i = 0; i < 5; i++) {
        teachers.set("one", Integer.toString(i));
      }
      assertEquals(5, database.forces() - before, "one writer: a force a write");
      before = database.forces();
      List<Thread> writers = new ArrayList<>();
      CountDownLatch go = new CountDownLatch(1);
      for (int writer = 0; writer < 30; writer++) {
        String name = "writer" + writer;
        Thread thread = new Thread(() -> {
          try {
            go.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
          for (int i = 0; i < 10; i++) {
            teachers.set(name, Integer.toString(i));
          }
        });
        thread.start();
        writers.add(thread);
      }
      go.countDown();
      for (Thread writer : writers) {
        writer.join();
      }
      long forces = database.forces() - before;
      assertTrue(forces >= 1 && forces < 300, forces + " forces for 300 writes");
    }
  }

  @Test
  void aForceThatBeganBeforeTheWriteDoesNotCount() throws InterruptedException {
    AtomicInteger running = new AtomicInteger();
    CountDownLatch firstInside = new CountDownLatch(1);
    CountDownLatch release = new CountDownLatch(1);
    GroupedForce force = new GroupedForce(() -> {
      if (running.incrementAndGet() == 1) {
        firstInside.countDown();
        release.await();
      }
    });
    Thread first = new Thread(force::await);
    first.start();
    firstInside.await();
    Thread second = new Thread(force::await);
    second.start();
    Thread.sleep(50);
    release.countDown();
    first.join();
    second.join();
    assertEquals(2, running.get(), "the second writer waits for a force of its own");
  }

  @Test
  void afterAFailedForceNothingIsAcknowledgedAnyMore() {
    AtomicInteger tries = new AtomicInteger();
    GroupedForce force = new GroupedForce(() -> {
      if (tries.incrementAndGet() == 1) {
        throw new IOException("no space left on device");
      }
    });
    assertThrows(NotOnDisk.class, force::await);
    assertThrows(NotOnDisk.class, force::await);
    assertEquals(1, tries.get());
  }

  @Test
  void whatWasWrittenIsThereAfterClosingAndOpening() {
    try (Database database = Stores.open(folder)) {
      new TeacherStore(database).add("Teacher", "hash", true, Instant.parse("2026-11-25T15:00:00Z"));
    }
    try (Database database = Stores.open(folder)) {
      assertEquals("Teacher", new TeacherStore(database).first().orElseThrow().name());
    }
  }
}
