package fewermore.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A data folder taken for one running Fewermore: nobody else reads or repairs the same files meanwhile. */
final class FolderLock implements AutoCloseable {
  private static final String LOCK = Database.FILE + ".lock";

  private final FileChannel channel;

  private FolderLock(FileChannel channel) {
    this.channel = channel;
  }

  /** Takes the folder, made where there is none. @throws CannotOpen when it is taken or can't be written in */
  static FolderLock take(Path data) {
    FileChannel channel = null;
    try {
      Files.createDirectories(data);
      channel = FileChannel.open(data.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (channel.tryLock() == null) {
        channel.close();
        throw taken(data);
      }
      return new FolderLock(channel);
    } catch (OverlappingFileLockException e) {
      Database.closeQuietly(channel);
      throw taken(data);
    } catch (IOException e) {
      Database.closeQuietly(channel);
      throw new CannotOpen("I can't write in the folder " + data
          + ". Choose another folder with --data, or allow writing there.");
    }
  }

  private static CannotOpen taken(Path data) {
    return new CannotOpen("Fewermore is already running on the data in " + data
        + ". Use the one that runs, or stop it first (Ctrl-C in its window).");
  }

  /** Whether a running Fewermore, this one or another, has the data of a folder open. */
  static boolean inUse(Path folder) {
    Path lock = folder.toAbsolutePath().normalize().resolve(LOCK);
    if (!Files.exists(lock)) {
      return false;
    }
    try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.WRITE)) {
      FileLock mine = channel.tryLock();
      return mine == null;
    } catch (OverlappingFileLockException e) {
      return true;
    } catch (IOException e) {
      return true;
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
