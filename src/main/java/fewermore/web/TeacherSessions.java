package fewermore.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Who is signed in on the teacher's side. Kept in memory: starting the app again asks for the passphrase.
 * Wrong tries make the next one wait, longer each time, never for good.
 */
final class TeacherSessions {
  private static final Duration LONGEST = Duration.ofHours(12);
  private static final Duration LONGEST_WAIT = Duration.ofSeconds(60);

  /**
   * Who is signed in and the class she looks at; the class may be null.
   *
   * @param substitute signed in with the substitute's passphrase of {@code classroom}: that class and no other
   */
  record Session(long teacher, Long classroom, boolean substitute, Instant since) {}

  private final Clock clock;
  private final Tokens tokens;
  private final Map<String, Session> sessions = new ConcurrentHashMap<>();
  private int wrongTries;
  private Instant nextTry = Instant.MIN;

  TeacherSessions(Clock clock, Tokens tokens) {
    this.clock = clock;
    this.tokens = tokens;
  }

  /** A new session under a new id; returns the cookie. */
  String start(long teacher) {
    return start(new Session(teacher, null, false, clock.instant()));
  }

  /** A new session of a substitute, bound to one class of that teacher. */
  String startSubstitute(long teacher, long classroom) {
    return start(new Session(teacher, classroom, true, clock.instant()));
  }

  private String start(Session session) {
    String cookie = tokens.id();
    sessions.put(Tokens.hash(cookie), session);
    return cookie;
  }

  /** Ends every session the rule names, for example when a passphrase is taken back. */
  void endWhere(java.util.function.Predicate<Session> rule) {
    sessions.values().removeIf(rule);
  }

  Optional<Session> of(String cookie) {
    if (cookie == null) {
      return Optional.empty();
    }
    Session session = sessions.get(Tokens.hash(cookie));
    if (session != null && session.since.plus(LONGEST).isBefore(clock.instant())) {
      end(cookie);
      return Optional.empty();
    }
    return Optional.ofNullable(session);
  }

  void look(String cookie, Long classroom) {
    sessions.computeIfPresent(Tokens.hash(cookie),
        (key, session) -> session.substitute ? session
            : new Session(session.teacher, classroom, false, session.since));
  }

  void end(String cookie) {
    if (cookie != null) {
      sessions.remove(Tokens.hash(cookie));
    }
  }

  /** How long until another passphrase may be tried; zero when at once. */
  synchronized Duration untilNextTry() {
    Duration left = Duration.between(clock.instant(), nextTry.equals(Instant.MIN) ? clock.instant() : nextTry);
    if (left.compareTo(LONGEST_WAIT) > 0) {
      // The clock was set back meanwhile.
      nextTry = clock.instant().plus(LONGEST_WAIT);
      return LONGEST_WAIT;
    }
    return left.isNegative() ? Duration.ZERO : left;
  }

  synchronized void wrong() {
    wrongTries++;
    long seconds = wrongTries < 3 ? 0 : Math.min(LONGEST_WAIT.toSeconds(), 1L << Math.min(6, wrongTries - 3));
    nextTry = clock.instant().plusSeconds(seconds);
  }

  synchronized void right() {
    wrongTries = 0;
    nextTry = Instant.MIN;
  }
}
