package fewermore.store.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.CRC32C;

/**
 * A checksum for each block of a file, as of the moment a journal was begun. CRC-32C (RFC 3720, appendix B.4)
 * finds every change of one bit, of two bits and of any run of up to 32 bits in a block.
 *
 * <p>Kept twice in one file, so that one damaged place in it harms nothing.
 */
final class Sums {
  private static final int MAGIC = 0x46574d53;
  private static final int HEAD = 4 + 4 + 8 + 8 + 4;

  /** The first journal that has to be read after these sums. */
  final long journal;
  /** Bytes of the file. */
  final long size;
  private int[] sums;
  private int count;

  Sums(long journal, long size) {
    this(journal, size, new int[16], 0);
  }

  private Sums(long journal, long size, int[] sums, int count) {
    this.journal = journal;
    this.size = size;
    this.sums = sums;
    this.count = count;
  }

  /** The same sums, to be kept as of the beginning of another journal. */
  Sums copy(long forJournal, long forSize) {
    int blocks = (int) BlockFile.blocks(forSize);
    int[] copied = Arrays.copyOf(sums, Math.max(blocks, 16));
    for (int block = count; block < blocks; block++) {
      copied[block] = EMPTY;
    }
    return new Sums(forJournal, forSize, copied, blocks);
  }

  static final int EMPTY = of(new byte[BlockFile.BLOCK]);

  static int of(byte[] block) {
    CRC32C crc = new CRC32C();
    crc.update(block, 0, block.length);
    return (int) crc.getValue();
  }

  int blocks() {
    return count;
  }

  /** The sum of a block; of one that was never written, the sum of nothing but zeros. */
  int get(long block) {
    return block < count ? sums[(int) block] : EMPTY;
  }

  void set(long block, int sum) {
    int at = Math.toIntExact(block);
    if (at >= sums.length) {
      sums = Arrays.copyOf(sums, Math.max(at + 1, sums.length * 2));
    }
    for (int gap = count; gap < at; gap++) {
      sums[gap] = EMPTY;
    }
    sums[at] = sum;
    count = Math.max(count, at + 1);
  }

  /** The file got shorter: what comes after is written anew, if at all. */
  void cut(long blocks) {
    count = (int) Math.min(count, blocks);
  }

  /** Writes them beside the file and puts them in its place at once. */
  void write(Disk disk, Path file) throws IOException {
    ByteBuffer copy = ByteBuffer.allocate(HEAD + 4 * count + 4);
    copy.putInt(MAGIC).putInt(1).putLong(journal).putLong(size).putInt(count);
    for (int block = 0; block < count; block++) {
      copy.putInt(sums[block]);
    }
    copy.putInt(of(Arrays.copyOf(copy.array(), copy.position())));
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    try (Disk.OpenFile out = disk.open(beside)) {
      out.cut(0);
      out.write(copy.flip(), 0);
      long length = copy.limit();
      out.write(copy.rewind(), length);
      out.force();
    }
    disk.replace(beside, file);
    disk.forceFolder(file.getParent());
  }

  /** Reads them; null when neither copy is whole. */
  static Sums read(Disk disk, Path file) throws IOException {
    byte[] all;
    try (Disk.OpenFile in = disk.open(file)) {
      all = new byte[Math.toIntExact(in.size())];
      in.read(ByteBuffer.wrap(all), 0);
    }
    Sums first = read(all, 0);
    if (first != null) {
      return first;
    }
    for (int start = all.length / 2; start > 0 && start >= all.length / 2 - 1; start--) {
      Sums second = read(all, start);
      if (second != null) {
        return second;
      }
    }
    return null;
  }

  private static Sums read(byte[] all, int start) {
    if (all.length - start < HEAD + 4) {
      return null;
    }
    ByteBuffer from = ByteBuffer.wrap(all, start, all.length - start);
    int magic = from.getInt();
    int version = from.getInt();
    long journal = from.getLong();
    long size = from.getLong();
    int count = from.getInt();
    long length = HEAD + 4L * count;
    if (magic != MAGIC || version != 1 || count < 0 || start + length + 4 > all.length) {
      return null;
    }
    int[] sums = new int[Math.max(count, 16)];
    for (int block = 0; block < count; block++) {
      sums[block] = from.getInt();
    }
    int written = from.getInt();
    return written == of(Arrays.copyOfRange(all, start, start + (int) length)) ? new Sums(journal, size, sums, count) : null;
  }
}
