package fewermore.store.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * A disk that writes down everything asked of it, so that what a power cut would have left can be built for any
 * moment: of each file what was forced, and of the rest nothing, or half of each write.
 */
public final class RecordingDisk implements Disk {
  /** What happens to writes that were not forced. */
  public enum Unforced {
    GONE,
    TORN
  }

  private enum Kind {
    MAKE,
    WRITE,
    CUT,
    FORCE,
    DELETE,
    REPLACE,
    FORCE_FOLDER
  }

  /** {@code inode} stays the same when a file gets another name. */
  private record Event(Kind kind, int inode, Path path, Path other, byte[] bytes, long at) {}

  private final Disk disk = new SystemDisk();
  private final List<Event> events = new ArrayList<>();
  private final Map<Path, Integer> inodes = new HashMap<>();
  private int next;

  private synchronized void note(Kind kind, int inode, Path path, Path other, byte[] bytes, long at) {
    events.add(new Event(kind, inode, path, other, bytes, at));
  }

  /** How many things were asked so far. */
  public synchronized int moment() {
    return events.size();
  }

  public synchronized long count(boolean forces) {
    return events.stream().filter(each -> each.kind == (forces ? Kind.FORCE : Kind.WRITE)).count();
  }

  @Override
  public OpenFile open(Path path) throws IOException {
    OpenFile file = disk.open(path);
    int inode;
    synchronized (this) {
      Integer known = inodes.get(path);
      inode = known == null ? next++ : known;
      if (known == null) {
        inodes.put(path, inode);
        note(Kind.MAKE, inode, path, null, null, 0);
      }
    }
    return new OpenFile() {
      @Override
      public int read(ByteBuffer into, long at) throws IOException {
        return file.read(into, at);
      }

      @Override
      public void write(ByteBuffer from, long at) throws IOException {
        byte[] bytes = new byte[from.remaining()];
        from.duplicate().get(bytes);
        note(Kind.WRITE, inode, path, null, bytes, at);
        file.write(from, at);
      }

      @Override
      public long size() throws IOException {
        return file.size();
      }

      @Override
      public void cut(long size) throws IOException {
        note(Kind.CUT, inode, path, null, null, size);
        file.cut(size);
      }

      @Override
      public void force() {
        // The disk beneath is never built from: it need not be forced.
        note(Kind.FORCE, inode, path, null, null, 0);
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
  public synchronized void delete(Path file) throws IOException {
    disk.delete(file);
    if (inodes.remove(file) != null) {
      note(Kind.DELETE, -1, file, null, null, 0);
    }
  }

  @Override
  public synchronized void replace(Path by, Path file) throws IOException {
    disk.replace(by, file);
    inodes.put(file, inodes.remove(by));
    note(Kind.REPLACE, -1, by, file, null, 0);
  }

  @Override
  public void forceFolder(Path folder) {
    note(Kind.FORCE_FOLDER, -1, folder, null, null, 0);
  }

  /** One file as far as the disk has it, and what was asked since its last force. */
  private static final class Content {
    private byte[] bytes = new byte[1 << 16];
    private int length;
    private final List<Event> unforced = new ArrayList<>();

    private byte[] all() {
      return Arrays.copyOf(bytes, length);
    }

    /** What is cut off reads as zeros when the file grows again. */
    private void resize(int to) {
      if (to > bytes.length) {
        bytes = Arrays.copyOf(bytes, Math.max(to, bytes.length * 2));
      } else if (to < length) {
        Arrays.fill(bytes, to, length, (byte) 0);
      }
      length = to;
    }

    private void apply(Event event, Unforced how, Random random) {
      if (event.kind == Kind.CUT) {
        if (how == null || random.nextBoolean()) {
          resize((int) event.at);
        }
        return;
      }
      int from = 0;
      int to = event.bytes.length;
      if (how == Unforced.TORN) {
        // Half of the sectors of a write, from its start, from its end, or here and there.
        switch (random.nextInt(3)) {
          case 0 -> to /= 2;
          case 1 -> from = to / 2;
          default -> {
            for (int sector = 0; sector < event.bytes.length; sector += 512) {
              if (random.nextBoolean()) {
                put(event, sector, Math.min(sector + 512, event.bytes.length));
              }
            }
            return;
          }
        }
      }
      put(event, from, to);
    }

    private void put(Event event, int from, int to) {
      if (to > from) {
        if (length < event.at + to) {
          resize((int) event.at + to);
        }
        System.arraycopy(event.bytes, from, bytes, (int) event.at + from, to - from);
      }
    }
  }

  /** Builds in a folder what lay in the folder of {@code from} at a moment, had the power gone then. */
  public synchronized void cutPowerAt(int moment, Unforced how, long seed, Path from, Path folder) throws IOException {
    Random random = new Random(seed);
    Map<Integer, Content> contents = new HashMap<>();
    Map<Path, Integer> names = new HashMap<>();
    List<Event> unforcedNames = new ArrayList<>();
    for (Event event : events.subList(0, moment)) {
      switch (event.kind) {
        case MAKE -> {
          contents.put(event.inode, new Content());
          unforcedNames.add(event);
        }
        case DELETE, REPLACE -> unforcedNames.add(event);
        case WRITE, CUT -> contents.get(event.inode).unforced.add(event);
        case FORCE -> {
          Content content = contents.get(event.inode);
          content.unforced.forEach(each -> content.apply(each, null, random));
          content.unforced.clear();
        }
        case FORCE_FOLDER -> {
          unforcedNames.forEach(each -> name(each, names));
          unforcedNames.clear();
        }
        default -> throw new IllegalStateException(event.toString());
      }
    }
    // A journaling file system keeps the order of names; how far it came is left to chance.
    int kept = unforcedNames.isEmpty() || how == Unforced.GONE ? 0 : random.nextInt(unforcedNames.size() + 1);
    unforcedNames.subList(0, kept).forEach(each -> name(each, names));
    for (Map.Entry<Path, Integer> each : names.entrySet()) {
      Content content = contents.get(each.getValue());
      if (how == Unforced.TORN) {
        content.unforced.forEach(event -> content.apply(event, how, random));
      }
      Files.write(folder.resolve(from.relativize(each.getKey()).toString()), content.all());
    }
  }

  private static void name(Event event, Map<Path, Integer> names) {
    switch (event.kind) {
      case MAKE -> names.put(event.path, event.inode);
      case DELETE -> names.remove(event.path);
      case REPLACE -> {
        Integer inode = names.remove(event.path);
        if (inode != null) {
          names.put(event.other, inode);
        }
      }
      default -> throw new IllegalStateException(event.toString());
    }
  }
}
