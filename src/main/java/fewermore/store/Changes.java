package fewermore.store;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Iterator;
import java.util.Optional;
import java.util.Set;

/**
 * Counts what was committed since the start and remembers which works the newest of it touched, for those who keep what
 * they read. Whoever asks takes {@link #now} before reading: what comes between is then read once more, never missed.
 */
final class Changes {
  private static final int REMEMBERED = 2_000;
  private static final Optional<Set<String>> ANYTHING = Optional.empty();

  private final Deque<Optional<Set<String>>> newestFirst = new ArrayDeque<>();
  private long count;

  /** Something was committed that may concern anything. */
  void committed() {
    committed(ANYTHING);
  }

  /** @param works all that was touched, by the ids of works */
  void committed(Set<String> works) {
    committed(Optional.of(works));
  }

  private synchronized void committed(Optional<Set<String>> works) {
    count++;
    newestFirst.addFirst(works);
    if (newestFirst.size() > REMEMBERED) {
      newestFirst.removeLast();
    }
  }

  synchronized long now() {
    return count;
  }

  /** @return the works touched since then; empty when it is not known that nothing else was */
  synchronized Optional<Set<String>> since(long then) {
    Set<String> touched = new HashSet<>();
    Iterator<Optional<Set<String>>> newest = newestFirst.iterator();
    for (long at = count; at > then; at--) {
      Optional<Set<String>> works = newest.hasNext() ? newest.next() : ANYTHING;
      if (works.isEmpty()) {
        return Optional.empty();
      }
      touched.addAll(works.get());
    }
    return Optional.of(touched);
  }
}
