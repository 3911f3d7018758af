package fewermore.store.disk;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/** The few things that are asked of a disk. Tests put one that fails, or that forgets, in its place. */
public interface Disk {
  /** One open file. */
  interface OpenFile extends Closeable {
    /** Fills {@code into} from a place in the file; fewer bytes, or -1, where the file ends. */
    int read(ByteBuffer into, long at) throws IOException;

    /** Writes all that remains in {@code from}. */
    void write(ByteBuffer from, long at) throws IOException;

    long size() throws IOException;

    void cut(long size) throws IOException;

    /** Returns when content and length are on the disk. */
    void force() throws IOException;
  }

  /** Opens a file, and makes it where there is none. */
  OpenFile open(Path file) throws IOException;

  boolean exists(Path file);

  void delete(Path file) throws IOException;

  /** Puts one file in the place of another, at once. */
  void replace(Path by, Path file) throws IOException;

  /** Returns when the names in a folder are on the disk. */
  void forceFolder(Path folder) throws IOException;
}
