package fewermore.web;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What the teacher calls to a tablet: one of a few sentences, which reaches the tablet with the answer to its next post
 * or pulse, in the child's language. Kept in memory only: after ten minutes it is over.
 */
final class Calls {
  /** Keys of the sentences a teacher can choose from, in {@code messages/child*.properties}. */
  static final List<String> TEXTS = List.of("call.come", "call.board", "call.hand-in");

  private static final Duration LASTS = Duration.ofMinutes(10);

  /** @param id tells one call from the next: a page shows each once */
  record Call(String id, String text, Instant at) {}

  private final Map<String, Call> bySitting = new ConcurrentHashMap<>();
  private final AtomicLong count = new AtomicLong();

  /** @param text one of {@link #TEXTS} */
  void call(String sitting, String text, Instant now) {
    bySitting.values().removeIf(call -> over(call, now));
    bySitting.put(sitting, new Call(Long.toString(count.incrementAndGet()), text, now));
  }

  Optional<Call> of(String sitting, Instant now) {
    return Optional.ofNullable(bySitting.get(sitting)).filter(call -> !over(call, now));
  }

  private static boolean over(Call call, Instant now) {
    return call.at.plus(LASTS).isBefore(now);
  }
}
