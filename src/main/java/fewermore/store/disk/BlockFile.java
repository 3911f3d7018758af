package fewermore.store.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * A file of blocks that is, after a crash or a power cut, as it was after some {@link #flush} that is no older than
 * the last one that returned; and that notices by itself when it is not as it was written.
 *
 * <p>Steps of a flush: (1) all blocks written since the last flush go into the journal as one group; (2) the journal
 * is forced: from now on the group counts; (3) the blocks go into the file itself, not forced; (4) when the journal
 * is long, another is begun, the file is forced, the checksums of all blocks are put down, and the old journal goes.
 *
 * <p>At opening: every block must have the checksum put down in step 4, or stand in a journal that is read again.
 * A block that is neither is damaged. So is a cut file, and a file that something else has written to. After the last
 * flush of a crash, the journal's end may be missing (nobody was told); if it was lost <em>later</em>, step 3 has
 * left blocks that nothing explains, and these are noticed.
 *
 * <p>Safe for many threads.
 */
public final class BlockFile implements AutoCloseable {
  /** Bytes of a block: H2 writes in multiples of it. */
  public static final int BLOCK = 4096;

  /** A journal as long as this is followed by another. */
  static final long LONG_JOURNAL = 8L << 20;
  /** More than this is not held in memory: it is flushed before anybody asks. */
  private static final int MOST_WAITING = 2048;
  /**
   * H2 writes a chunk of pages first and then, at the beginning of the file, where the newest one is. What is flushed
   * unasked is flushed before a chunk is begun, so that no chunk is on disk that the beginning does not lead to.
   */
  private static final int BEGINNING = 2 * BLOCK;
  /** With a disk that takes nothing, more than this is refused. */
  private static final int MOST_HELD = 8192;

  private final Disk disk;
  private final Path path;
  private final long longJournal;
  private final Disk.OpenFile file;

  /** Guards all that readers and writers see; held only while memory or the unforced file is touched. */
  private final Object lock = new Object();
  /** One flush at a time; taken before {@link #lock}. */
  private final Object flushing = new Object();

  /** Written since the last {@link #seal}. */
  private Map<Long, byte[]> waiting = new HashMap<>();
  /** Sealed, not yet in the journal. */
  private Map<Long, byte[]> sealed = new HashMap<>();
  private long sealedSize;
  private boolean isSealed;
  /** In the journal or on the way there, not yet in the file. */
  private Map<Long, byte[]> journaled = Map.of();
  private long journaledSize;
  private long appliedSize;
  private boolean sizeWaiting;
  private long size;
  private Sums sums;
  private Journal journal;
  private final List<Journal> oldJournals = new ArrayList<>();
  private boolean unapplied;
  private ForceFailed failed;
  private volatile long forces;
  private Set<Long> bad = Set.of();

  private BlockFile(Disk disk, Path path, long longJournal, Disk.OpenFile file) {
    this.disk = disk;
    this.path = path;
    this.longJournal = longJournal;
    this.file = file;
  }

  static long blocks(long bytes) {
    return (bytes + BLOCK - 1) / BLOCK;
  }

  private static Path sumsPath(Path file) {
    return file.resolveSibling(file.getFileName() + ".sums");
  }

  /** Whether a file in the same folder belongs to this one: its checksums and its journals. */
  public static boolean belongs(Path file, Path other) {
    return other.getFileName().toString().startsWith(file.getFileName() + ".");
  }

  /**
   * Opens a file, or makes it. Only one program may have it open: the caller sees to that.
   *
   * @throws Damaged when it is not as it was written; then nothing was changed
   * @throws IOException when the disk does not take what opening has to write
   */
  public static BlockFile open(Path path, Disk disk) throws IOException {
    return open(path, disk, LONG_JOURNAL, false);
  }

  /** {@link #open(Path, Disk)} with another length at which a journal is followed by the next. */
  static BlockFile open(Path path, Disk disk, long longJournal) throws IOException {
    return open(path, disk, longJournal, false);
  }

  /**
   * Takes from a closed file what stands beside it, so that the next opening takes it as it is: for a file that is
   * going to be written anew by something else. First the journals go, which a closed file does not need; then the
   * checksums.
   *
   * @throws IOException when one of them could not be deleted; the file can then be opened as before
   */
  public static void forget(Path path, Disk disk) throws IOException {
    Sums written = disk.exists(sumsPath(path)) ? Sums.read(disk, sumsPath(path)) : null;
    if (written != null) {
      for (long number = Math.max(1, written.journal - 1); disk.exists(Journal.path(path, number)); number++) {
        disk.delete(Journal.path(path, number));
      }
      disk.delete(sumsPath(path));
      disk.forceFolder(path.getParent());
    }
  }

  /**
   * Opens a damaged file, best a copy of it, so that what is whole in it can be read: reading a damaged block throws
   * {@link Damaged}.
   */
  public static BlockFile openDamaged(Path path, Disk disk) throws IOException {
    return open(path, disk, LONG_JOURNAL, true);
  }

  private static BlockFile open(Path path, Disk disk, long longJournal, boolean tolerant) throws IOException {
    boolean there = disk.exists(path);
    boolean summed = disk.exists(sumsPath(path));
    if (summed && !there && !tolerant) {
      throw new Damaged("the file is gone and what belongs to it is there", 0, 0);
    }
    BlockFile opened = new BlockFile(disk, path, longJournal, disk.open(path));
    try {
      opened.recover(summed, tolerant);
    } catch (IOException | RuntimeException e) {
      opened.file.close();
      throw e;
    }
    return opened;
  }

  private void recover(boolean summed, boolean tolerant) throws IOException {
    long length = file.size();
    Sums written = summed ? Sums.read(disk, sumsPath(path)) : null;
    if (summed && written == null && !tolerant) {
      throw new Damaged("the checksums themselves are damaged", 0, 0);
    }
    if (written == null) {
      // A file from before there were checksums, or a new one: taken as it is.
      written = sumsOf(length);
    }
    Journal.Content journals = new Journal.Content();
    long number = written.journal;
    for (; disk.exists(Journal.path(path, number)); number++) {
      Journal.read(disk, Journal.path(path, number), number, journals);
    }
    if (!summed && journals.groups > 0 && !tolerant) {
      throw new Damaged("the checksums are gone", 0, 0);
    }
    size = journals.size < 0 ? written.size : journals.size;
    Set<Long> wrong = wrongBlocks(written, journals, length);
    if (!tolerant && (journals.broken || !wrong.isEmpty())) {
      throw new Damaged(wrong.isEmpty() ? "the journal is damaged" : wrong.size() + " blocks are not as written",
          Math.max(1, wrong.size()), blocks(size));
    }
    bad = wrong;
    sums = written.copy(number, size);
    journaled = journals.blocks;
    journaledSize = size;
    applyJournaled();
    file.force();
    journal = Journal.begin(disk, path, number, 0);
    sums.write(disk, sumsPath(path));
    for (long old = Math.max(1, written.journal - 1); old < number; old++) {
      disk.delete(Journal.path(path, old));
    }
  }

  private Sums sumsOf(long length) throws IOException {
    Sums all = new Sums(1, length);
    for (long block = 0; block < blocks(length); block++) {
      all.set(block, Sums.of(readBlock(block)));
    }
    return all;
  }

  private Set<Long> wrongBlocks(Sums written, Journal.Content journals, long length) throws IOException {
    Set<Long> wrong = new HashSet<>();
    long end = blocks(size);
    for (long block = 0; block < end; block++) {
      if (!journals.blocks.containsKey(block) && Sums.of(readBlock(block)) != written.get(block)) {
        wrong.add(block);
      }
    }
    if (length < size && !journals.blocks.containsKey(end - 1)) {
      wrong.add(end - 1);
    }
    for (long block = blocks(Math.max(written.size, journals.longest)); block < blocks(length); block++) {
      wrong.add(block);
    }
    return wrong;
  }

  /** A block of the file itself; zeros where the file is shorter. */
  private byte[] readBlock(long block) throws IOException {
    byte[] content = new byte[BLOCK];
    file.read(ByteBuffer.wrap(content), block * BLOCK);
    return content;
  }

  public long size() {
    synchronized (lock) {
      return size;
    }
  }

  /** Fills {@code into} from a place; -1 at the end. @throws Damaged when the disk gives back something else than was written */
  public int read(ByteBuffer into, long at) throws IOException {
    synchronized (lock) {
      if (at >= size) {
        return -1;
      }
      int length = (int) Math.min(into.remaining(), size - at);
      int done = 0;
      while (done < length) {
        long place = at + done;
        byte[] content = content(place / BLOCK);
        int from = (int) (place % BLOCK);
        int part = Math.min(BLOCK - from, length - done);
        into.put(content, from, part);
        done += part;
      }
      return length;
    }
  }

  private byte[] content(long block) throws IOException {
    byte[] content = waiting.get(block);
    if (content == null) {
      content = sealed.get(block);
    }
    if (content == null) {
      content = journaled.get(block);
    }
    if (content == null) {
      content = readBlock(block);
      if (bad.contains(block) || Sums.of(content) != sums.get(block)) {
        throw new Damaged("a block is not as it was written", 1, blocks(size));
      }
    }
    return content;
  }

  /** Writes all that remains in {@code from}; readers see it at once, the disk at the next {@link #flush}. */
  public int write(ByteBuffer from, long at) throws IOException {
    int length = from.remaining();
    boolean full;
    synchronized (lock) {
      full = at >= BEGINNING && waiting.size() > MOST_WAITING;
    }
    if (full) {
      try {
        flush();
      } catch (NotTaken | ForceFailed e) {
        // Held in memory, so that reading goes on; whoever waits for the next flush is told.
        full = false;
      }
    }
    synchronized (lock) {
      if (waiting.size() + sealed.size() > MOST_HELD) {
        throw new IOException("the disk takes nothing and no more can be held");
      }
      // Every block up to the end is written, so that each has its checksum.
      for (long gap = blocks(size); gap < at / BLOCK; gap++) {
        waiting.put(gap, new byte[BLOCK]);
      }
      int done = 0;
      while (done < length) {
        long place = at + done;
        long block = place / BLOCK;
        int to = (int) (place % BLOCK);
        int part = Math.min(BLOCK - to, length - done);
        byte[] content = new byte[BLOCK];
        if (part < BLOCK && block < blocks(size)) {
          System.arraycopy(content(block), 0, content, 0, BLOCK);
        }
        from.get(content, to, part);
        waiting.put(block, content);
        done += part;
      }
      if (at + length > size) {
        size = at + length;
        sizeWaiting = true;
      }
    }
    return length;
  }

  public void cut(long to) throws IOException {
    synchronized (lock) {
      if (to < size) {
        long end = blocks(to);
        int rest = (int) (to % BLOCK);
        if (rest > 0) {
          byte[] last = content(end - 1).clone();
          java.util.Arrays.fill(last, rest, BLOCK, (byte) 0);
          waiting.put(end - 1, last);
        }
        waiting.keySet().removeIf(block -> block >= end);
        size = to;
        sizeWaiting = true;
      }
    }
  }

  /** How many times a journal was forced: one for each {@link #flush} that had something to bring to disk. */
  public long forces() {
    return forces;
  }

  /**
   * Draws a line under what was written so far: {@link #flushSealed} brings what is above it to disk and nothing of what
   * is written meanwhile. For a writer that knows when what it has written belongs together.
   */
  public void seal() {
    synchronized (lock) {
      if (waiting.isEmpty() && !sizeWaiting) {
        return;
      }
      sealed.keySet().removeIf(block -> block >= blocks(size));
      sealed.putAll(waiting);
      sealedSize = size;
      isSealed = true;
      waiting = new HashMap<>();
      sizeWaiting = false;
    }
  }

  /**
   * Returns when all that was written before is on disk.
   *
   * @throws NotTaken when the disk takes nothing now; all is held, and the next flush tries again
   * @throws ForceFailed when it may not have reached the disk; then for good
   */
  public void flush() throws NotTaken, ForceFailed {
    seal();
    flushSealed();
  }

  /** {@link #flush} of what was written before the last {@link #seal}. */
  public void flushSealed() throws NotTaken, ForceFailed {
    synchronized (flushing) {
      Journal.Group group;
      synchronized (lock) {
        if (failed != null) {
          throw failed;
        }
        if (unapplied) {
          try {
            applyJournaled();
          } catch (IOException e) {
            throw new NotTaken(e);
          }
        }
        if (!isSealed) {
          return;
        }
        group = new Journal.Group(new TreeMap<>(sealed), sealedSize);
        journaled = sealed;
        journaledSize = sealedSize;
        sealed = new HashMap<>();
        isSealed = false;
      }
      try {
        if (journal.size() >= longJournal) {
          followJournal();
        }
        journal.append(group);
      } catch (IOException e) {
        takeBack();
        if (e instanceof ForceFailed) {
          throw giveUp(e);
        }
        throw new NotTaken(e);
      }
      try {
        journal.force();
      } catch (IOException e) {
        throw giveUp(e);
      }
      synchronized (lock) {
        forces++;
        unapplied = true;
        try {
          applyJournaled();
        } catch (IOException e) {
          // It is in the journal, so it is on disk; the file itself gets it before the next group.
          return;
        }
      }
    }
  }

  private void takeBack() {
    synchronized (lock) {
      long end = isSealed ? sealedSize : journaledSize;
      Map<Long, byte[]> all = new HashMap<>(journaled);
      all.keySet().removeIf(block -> block >= blocks(end));
      all.putAll(sealed);
      sealed = all;
      sealedSize = end;
      isSealed = true;
      journaled = Map.of();
    }
  }

  private ForceFailed giveUp(IOException cause) {
    synchronized (lock) {
      failed = new ForceFailed(cause);
      return failed;
    }
  }

  private void applyJournaled() throws IOException {
    apply(journaled, journaledSize);
    appliedSize = journaledSize;
    journaled = Map.of();
    unapplied = false;
  }

  private void apply(Map<Long, byte[]> blocks, long newSize) throws IOException {
    Map<Long, byte[]> inOrder = new TreeMap<>(blocks);
    ByteBuffer run = ByteBuffer.allocate(64 * BLOCK);
    long start = -1;
    for (Map.Entry<Long, byte[]> entry : inOrder.entrySet()) {
      long block = entry.getKey();
      if (start < 0 || block != start + run.position() / BLOCK || !run.hasRemaining()) {
        writeRun(run, start);
        start = block;
      }
      run.put(entry.getValue());
    }
    writeRun(run, start);
    inOrder.forEach((block, content) -> sums.set(block, Sums.of(content)));
    if (file.size() > newSize) {
      file.cut(newSize);
      sums.cut(blocks(newSize));
    }
  }

  private void writeRun(ByteBuffer run, long start) throws IOException {
    if (run.position() > 0) {
      file.write(run.flip(), start * BLOCK);
      run.clear();
    }
  }

  /** Begins another journal; those before go when the file itself and its checksums are on disk. */
  private void followJournal() throws IOException {
    Journal next = Journal.begin(disk, path, journal.number + 1, journal.groups());
    Sums asOf;
    synchronized (lock) {
      asOf = sums.copy(next.number, appliedSize);
    }
    oldJournals.add(journal);
    journal = next;
    try {
      file.force();
    } catch (IOException e) {
      throw new ForceFailed(e);
    }
    asOf.write(disk, sumsPath(path));
    for (Journal old : oldJournals) {
      old.close();
      disk.delete(old.path);
    }
    oldJournals.clear();
  }

  /** Flushes, puts everything in its place and closes. */
  @Override
  public void close() throws IOException {
    synchronized (flushing) {
      try {
        if (failed == null) {
          flush();
          followJournal();
        }
      } finally {
        for (Journal old : oldJournals) {
          old.close();
        }
        journal.close();
        file.close();
      }
    }
  }
}
