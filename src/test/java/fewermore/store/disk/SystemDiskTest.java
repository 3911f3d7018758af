package fewermore.store.disk;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.BufferPoolMXBean;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SystemDiskTest {
  private static final int MEGABYTE = 1 << 20;

  @TempDir Path folder;

  private static long outsideTheHeap() {
    return ManagementFactory.getPlatformMXBeans(BufferPoolMXBean.class).stream()
        .filter(pool -> pool.getName().equals("direct")).mapToLong(BufferPoolMXBean::getMemoryUsed).sum();
  }

  @Test
  void whatIsWrittenInOneGoIsReadInOneGoHoweverLarge() throws Exception {
    byte[] written = new byte[3 * MEGABYTE + 17];
    new Random(5).nextBytes(written);
    try (Disk.OpenFile file = new SystemDisk().open(folder.resolve("file"))) {
      ByteBuffer from = ByteBuffer.wrap(written);
      file.write(from, 1000);
      assertEquals(0, from.remaining());
      ByteBuffer into = ByteBuffer.allocate(written.length + 50);
      assertEquals(written.length, file.read(into, 1000), "as far as the file goes");
      assertEquals(written.length, into.position());
      byte[] read = new byte[written.length];
      into.flip().get(read);
      assertArrayEquals(written, read);
      assertEquals(-1, file.read(ByteBuffer.allocate(1), 1000 + written.length));
    }
  }

  @Test
  void aThreadThatOnceWroteMuchKeepsLittleMemoryOutsideTheHeap() throws Exception {
    int threads = 16;
    CountDownLatch written = new CountDownLatch(threads);
    CountDownLatch looked = new CountDownLatch(1);
    List<Thread> all = new ArrayList<>();
    long before = outsideTheHeap();
    try (Disk.OpenFile file = new SystemDisk().open(folder.resolve("file"))) {
      for (int at = 0; at < threads; at++) {
        Thread thread = new Thread(() -> {
          try {
            file.write(ByteBuffer.allocate(2 * MEGABYTE), 0);
            file.read(ByteBuffer.allocate(2 * MEGABYTE), 0);
            written.countDown();
            looked.await();
          } catch (Exception e) {
            throw new IllegalStateException(e);
          }
        });
        thread.start();
        all.add(thread);
      }
      written.await();
      assertTrue(outsideTheHeap() - before < 4L * MEGABYTE, (outsideTheHeap() - before) + " bytes for " + threads + " threads");
    } finally {
      looked.countDown();
      for (Thread thread : all) {
        thread.join();
      }
    }
  }
}
