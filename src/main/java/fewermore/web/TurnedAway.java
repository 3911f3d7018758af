package fewermore.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;

/** How many requests of tablets were refused since the start; of whom is not kept. */
final class TurnedAway {
  private final AtomicLong notTheirs = new AtomicLong();
  private final AtomicLong nothingThere = new AtomicLong();
  private final AtomicLong otherName = new AtomicLong();
  private final AtomicLong unreadable = new AtomicLong();

  /** @param status what was answered */
  void count(int status) {
    switch (status) {
      case 401, 403 -> notTheirs.incrementAndGet();
      case 404 -> nothingThere.incrementAndGet();
      case 421 -> otherName.incrementAndGet();
      case 400, 413, 422 -> unreadable.incrementAndGet();
      default -> { }
    }
  }

  /** In a sentence for the teacher; empty while nothing was refused. */
  Optional<String> sentence() {
    List<String> counts = new ArrayList<>();
    add(counts, notTheirs, "for something that is not theirs");
    add(counts, nothingThere, "at an address where nothing is");
    add(counts, otherName, "under a name that is not this laptop’s");
    add(counts, unreadable, "that could not be read");
    return counts.isEmpty() ? Optional.empty()
        : Optional.of("Turned away since Fewermore was started: " + String.join(", ", counts)
            + ". A few are ordinary: an old card, a page left open since yesterday, a mistyped address.");
  }

  private static void add(List<String> counts, AtomicLong count, String what) {
    if (count.get() > 0) {
      counts.add(count.get() + (count.get() == 1 ? " request " : " requests ") + what);
    }
  }
}
