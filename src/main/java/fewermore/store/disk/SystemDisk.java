package fewermore.store.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** The disk of this machine. */
public final class SystemDisk implements Disk {
  /**
   * Java copies what it writes or reads into memory outside the heap, and each thread keeps its largest such copy for
   * good: two hundred threads with a copy of a whole chunk used up what there is. So it goes by pieces.
   */
  private static final int PIECE = 64 << 10;

  private record Channel(FileChannel channel) implements OpenFile {
    @Override
    public int read(ByteBuffer into, long at) throws IOException {
      int read = 0;
      while (into.hasRemaining()) {
        ByteBuffer piece = piece(into);
        int more = channel.read(piece, at + read);
        if (more < 0) {
          return read == 0 ? -1 : read;
        }
        into.position(into.position() + more);
        read += more;
      }
      return read;
    }

    @Override
    public void write(ByteBuffer from, long at) throws IOException {
      long place = at;
      while (from.hasRemaining()) {
        int written = channel.write(piece(from), place);
        from.position(from.position() + written);
        place += written;
      }
    }

    private static ByteBuffer piece(ByteBuffer of) {
      return of.slice(of.position(), Math.min(PIECE, of.remaining()));
    }

    @Override
    public long size() throws IOException {
      return channel.size();
    }

    @Override
    public void cut(long size) throws IOException {
      channel.truncate(size);
    }

    @Override
    public void force() throws IOException {
      channel.force(true);
    }

    @Override
    public void close() throws IOException {
      channel.close();
    }
  }

  @Override
  public OpenFile open(Path file) throws IOException {
    return new Channel(FileChannel.open(file,
        StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE));
  }

  @Override
  public boolean exists(Path file) {
    return Files.exists(file);
  }

  @Override
  public void delete(Path file) throws IOException {
    Files.deleteIfExists(file);
  }

  @Override
  public void replace(Path by, Path file) throws IOException {
    Files.move(by, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Some systems do not open folders as files (Windows among them); there a name is kept with its content. */
  @Override
  public void forceFolder(Path folder) throws IOException {
    FileChannel channel;
    try {
      channel = FileChannel.open(folder, StandardOpenOption.READ);
    } catch (IOException e) {
      return;
    }
    try (channel) {
      channel.force(true);
    }
  }
}
