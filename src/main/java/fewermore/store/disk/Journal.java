package fewermore.store.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.CRC32C;

/**
 * Groups of written blocks, one after the other in a file of their own. A group starts at a multiple of a block
 * and is believed only when its checksum is right.
 *
 * <pre>
 * magic 4 | blocks 4 | journal 8 | number of the group 8 | size of the file 8 | CRC-32C of all else 4 | groups of the journal before 4
 * then for each block: its number 8 | its 4,096 bytes
 * </pre>
 */
final class Journal implements AutoCloseable {
  private static final int MAGIC = 0x46574d4a;
  private static final int HEAD = 40;
  private static final int ENTRY = 8 + BlockFile.BLOCK;

  /** What one flush wrote: blocks by their number, and how long the file then is. */
  record Group(Map<Long, byte[]> blocks, long size) {}

  private record Read(Group group, int groupsBefore) {}

  /** What a journal holds. {@code groups} counts those that are whole, {@code longest} is the longest size named. */
  static final class Content {
    final Map<Long, byte[]> blocks = new TreeMap<>();
    long groups;
    long size = -1;
    long longest;
    private int groupsOfLast = -1;
    boolean broken;
  }

  final long number;
  final Path path;
  private final Disk.OpenFile file;
  private final int groupsBefore;
  private long end;
  private int groups;
  private int appended;

  private Journal(long number, Path path, Disk.OpenFile file, int groupsBefore) {
    this.number = number;
    this.path = path;
    this.file = file;
    this.groupsBefore = groupsBefore;
  }

  static Path path(Path of, long number) {
    return of.resolveSibling(of.getFileName() + ".journal" + number);
  }

  /**
   * Begins an empty journal; its name is on disk when this returns.
   *
   * @param groupsBefore how many groups the journal before it has, so that a loss at its end is noticed
   */
  static Journal begin(Disk disk, Path of, long number, int groupsBefore) throws IOException {
    Path path = path(of, number);
    Disk.OpenFile file = disk.open(path);
    try {
      file.cut(0);
      file.force();
      disk.forceFolder(path.getParent());
    } catch (IOException e) {
      try (file) {
        disk.delete(path);
      } catch (IOException also) {
        e.addSuppressed(also);
      }
      throw e;
    }
    return new Journal(number, path, file, groupsBefore);
  }

  /** Writes a group after those before; the same place is written again when it did not succeed. */
  void append(Group group) throws IOException {
    int length = HEAD + group.blocks.size() * ENTRY;
    int whole = Math.toIntExact(BlockFile.blocks(length) * BlockFile.BLOCK);
    ByteBuffer bytes = ByteBuffer.allocate(whole);
    bytes.putInt(MAGIC).putInt(group.blocks.size()).putLong(number).putLong(groups).putLong(group.size)
        .putInt(0).putInt(groupsBefore);
    group.blocks.forEach((block, content) -> bytes.putLong(block).put(content));
    bytes.putInt(32, sum(bytes.array(), 0, length));
    bytes.rewind();
    file.write(bytes, end);
    appended = whole;
  }

  /** Brings the group appended last to disk: it counts from now on. */
  void force() throws IOException {
    file.force();
    end += appended;
    groups++;
  }

  long size() {
    return end;
  }

  int groups() {
    return groups;
  }

  private static int sum(byte[] bytes, int from, int length) {
    CRC32C crc = new CRC32C();
    crc.update(bytes, from, 32);
    crc.update(bytes, from + 36, length - 36);
    return (int) crc.getValue();
  }

  /**
   * Reads all whole groups from the start. A group that is not whole ends the reading: it is what a power cut left
   * of a group that nobody was told about. Where a whole group comes after it, it was damaged later: {@code broken}.
   */
  static void read(Disk disk, Path path, long number, Content into) throws IOException {
    try (Disk.OpenFile file = disk.open(path)) {
      long at = 0;
      int groups = 0;
      long size = file.size();
      for (Read read = group(file, at, size, number, groups); read != null;
          read = group(file, at, size, number, groups)) {
        Group group = read.group;
        into.broken |= into.groupsOfLast >= 0 && read.groupsBefore != into.groupsOfLast;
        into.blocks.putAll(group.blocks);
        into.blocks.keySet().removeIf(block -> block >= BlockFile.blocks(group.size));
        into.size = group.size;
        into.longest = Math.max(into.longest, group.size);
        into.groups++;
        groups++;
        at += BlockFile.blocks(HEAD + (long) group.blocks.size() * ENTRY) * BlockFile.BLOCK;
      }
      for (long later = at + BlockFile.BLOCK; later + HEAD <= size && !into.broken; later += BlockFile.BLOCK) {
        into.broken = group(file, later, size, number, -1) != null;
      }
      into.groupsOfLast = groups;
    }
  }

  /** The whole group at a place, or null. {@code expected} is its number, or -1 for any. */
  private static Read group(Disk.OpenFile file, long at, long size, long number, long expected) throws IOException {
    if (at + HEAD > size) {
      return null;
    }
    ByteBuffer head = ByteBuffer.allocate(HEAD);
    file.read(head, at);
    head.flip();
    if (head.remaining() < HEAD || head.getInt(0) != MAGIC || head.getLong(8) != number) {
      return null;
    }
    long blocks = head.getInt(4);
    long length = HEAD + blocks * ENTRY;
    if (blocks < 0 || at + length > size || length > Integer.MAX_VALUE
        || expected >= 0 && head.getLong(16) != expected) {
      return null;
    }
    ByteBuffer all = ByteBuffer.allocate((int) length);
    if (file.read(all, at) < length || all.getInt(32) != sum(all.array(), 0, (int) length)) {
      return null;
    }
    all.position(HEAD);
    Map<Long, byte[]> content = new TreeMap<>();
    for (int entry = 0; entry < blocks; entry++) {
      long block = all.getLong();
      byte[] bytes = new byte[BlockFile.BLOCK];
      all.get(bytes);
      content.put(block, bytes);
    }
    return new Read(new Group(content, head.getLong(24)), head.getInt(36));
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
