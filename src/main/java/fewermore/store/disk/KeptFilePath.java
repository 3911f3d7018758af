package fewermore.store.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.h2.store.fs.FileBase;
import org.h2.store.fs.FilePath;
import org.h2.store.fs.FilePathWrapper;

/**
 * Lets H2 work on a {@link BlockFile}: {@code jdbc:h2:kept:/folder/name} uses the block file that was put under the
 * path {@code /folder/name.mv.db}. All other files go to the disk as they are.
 */
public final class KeptFilePath extends FilePathWrapper {
  /** What stands before a path in H2's URL. */
  public static final String PREFIX = "kept:";

  private static final Map<String, BlockFile> OPEN = new ConcurrentHashMap<>();

  static {
    FilePath.register(new KeptFilePath());
  }

  /** From now on H2 finds this block file under its path. */
  public static void put(Path path, BlockFile file) {
    if (OPEN.putIfAbsent(key(path.toString()), file) != null) {
      throw new IllegalStateException("open already: " + path);
    }
  }

  public static void remove(Path path) {
    OPEN.remove(key(path.toString()));
  }

  private static String key(String path) {
    return path.replace('\\', '/');
  }

  private BlockFile kept() {
    String path = name.substring(PREFIX.length());
    return OPEN.get(key(path));
  }

  @Override
  public String getScheme() {
    return "kept";
  }

  @Override
  public FileChannel open(String mode) throws IOException {
    BlockFile kept = kept();
    return kept == null ? super.open(mode) : new Channel(kept);
  }

  @Override
  public long size() {
    BlockFile kept = kept();
    return kept == null ? super.size() : kept.size();
  }

  private static final class Channel extends FileBase {
    private final BlockFile file;
    private long position;

    private Channel(BlockFile file) {
      this.file = file;
    }

    @Override
    public int read(ByteBuffer into, long at) throws IOException {
      return file.read(into, at);
    }

    @Override
    public int write(ByteBuffer from, long at) throws IOException {
      return file.write(from, at);
    }

    @Override
    public synchronized int read(ByteBuffer into) throws IOException {
      int read = file.read(into, position);
      position += Math.max(read, 0);
      return read;
    }

    @Override
    public synchronized int write(ByteBuffer from) throws IOException {
      int written = file.write(from, position);
      position += written;
      return written;
    }

    @Override
    public synchronized long position() {
      return position;
    }

    @Override
    public synchronized FileChannel position(long to) {
      position = to;
      return this;
    }

    @Override
    public long size() {
      return file.size();
    }

    @Override
    public FileChannel truncate(long to) throws IOException {
      file.cut(to);
      return this;
    }

    /** Order is kept by the block file in any case; who has to know that it is on disk flushes the block file. */
    @Override
    public void force(boolean withLength) {}

    /** Who opened the block file holds the lock. */
    @Override
    public FileLock tryLock(long from, long length, boolean shared) {
      return new FileLock(this, from, length, shared) {
        @Override
        public boolean isValid() {
          return true;
        }

        @Override
        public void release() {}
      };
    }
  }
}
