package fewermore.store.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/** A disk that fails where it is told to. */
public final class FailingDisk implements Disk {
  private final SystemDisk disk = new SystemDisk();
  /** Takes half of a write and says that there is no room. */
  public volatile boolean full;
  /** Says that a force failed. */
  public volatile boolean forceFails;

  @Override
  public OpenFile open(Path path) throws IOException {
    OpenFile file = disk.open(path);
    return new OpenFile() {
      @Override
      public int read(ByteBuffer into, long at) throws IOException {
        return file.read(into, at);
      }

      @Override
      public void write(ByteBuffer from, long at) throws IOException {
        if (full) {
          ByteBuffer half = from.slice(from.position(), from.remaining() / 2);
          file.write(half, at);
          throw new IOException("No space left on device");
        }
        file.write(from, at);
      }

      @Override
      public long size() throws IOException {
        return file.size();
      }

      @Override
      public void cut(long size) throws IOException {
        file.cut(size);
      }

      @Override
      public void force() throws IOException {
        if (forceFails) {
          throw new IOException("Input/output error");
        }
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
    disk.delete(file);
  }

  @Override
  public void replace(Path by, Path file) throws IOException {
    disk.replace(by, file);
  }

  @Override
  public void forceFolder(Path of) throws IOException {
    disk.forceFolder(of);
  }
}
