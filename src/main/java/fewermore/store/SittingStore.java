package fewermore.store;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.Door;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.Sitting;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Doors, tablets, and who sits at which tablet with which work. */
public final class SittingStore {
  /** The work of a sitting on one problem, with the set it belongs to. */
  public record AssignedWork(String id, ProblemSet set, AssignedProblem problem) {}

  private static final String INVENTED_TABLET = "invented-";

  /** A child coming in on a tablet: all that {@link #start} takes. */
  public record Coming(String id, long child, String tablet, String cookie, Instant at) {}

  /**
   * A tablet's id that no cookie's hash can be, for a class that has no real tablets. It goes when the class is
   * thrown away, and gives no real tablet its number.
   */
  public static String inventedTablet(long classroom, int number) {
    return INVENTED_TABLET + classroom + "-" + number;
  }

  /** Every invented tablet of a class, for LIKE. */
  static String inventedTablets(long classroom) {
    return INVENTED_TABLET + classroom + "-%";
  }

  static final RowMapper<Sitting> SITTING = (row, at) -> new Sitting(
      row.getString("id"),
      new Child(row.getLong("child_id"), row.getLong("classroom_id"), row.getString("name"),
          row.getString("picture"), row.getString("ground"), row.getString("language")),
      row.getString("tablet_id"), row.getString("tablet_name"),
      Rows.instant(row, "started_at"), Rows.instant(row, "ended_at"));

  static final String SELECT_SITTING = """
      SELECT s.id, s.child_id, c.classroom_id, c.name, c.picture, c.ground, c.language,
             s.tablet_id, t.name AS tablet_name, s.started_at, s.ended_at
        FROM sitting s
        JOIN child c ON c.id = s.child_id
        JOIN tablet t ON t.id = s.tablet_id
      """;

  private final Database database;

  public SittingStore(Database database) {
    this.database = database;
  }

  /**
   * The class's door of the day; makes it when there is none yet. One at a time: of two doors made in the same moment
   * only the newer would open, and the Board might show the other.
   */
  public synchronized Door door(long classroom, LocalDate day, Supplier<Door> another, Instant now) {
    Optional<Door> there = newestDoor(classroom, day);
    return there.isPresent() ? there.get() : changeDoor(another.get(), now);
  }

  /** Opens a new door: the one before lets nobody in any more. */
  public Door changeDoor(Door door, Instant now) {
    database.change(handle -> handle
        .createUpdate("""
            INSERT INTO door (classroom_id, work_day, token, pictures, made_at)
            VALUES (:classroom, :day, :token, :pictures, :now)""")
        .bind("classroom", door.classroom())
        .bind("day", door.day())
        .bind("token", door.token())
        .bind("pictures", String.join(" ", door.pictures()))
        .bind("now", Database.utc(now))
        .execute());
    return door;
  }

  private Optional<Door> newestDoor(long classroom, LocalDate day) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT classroom_id, work_day, token, pictures
              FROM door
             WHERE classroom_id = :classroom
               AND work_day = :day
             ORDER BY id DESC
             LIMIT 1""")
        .bind("classroom", classroom)
        .bind("day", day)
        .map(DOOR)
        .findOne());
  }

  private static final RowMapper<Door> DOOR = (row, at) -> new Door(
      row.getLong("classroom_id"), Rows.day(row, "work_day"), row.getString("token"),
      List.of(row.getString("pictures").split(" ")));

  /** The door a token opens, if it is still the newest of its class and day. */
  public Optional<Door> doorOf(String token) {
    Optional<Door> door = database.read(handle -> handle
        .createQuery("""
            SELECT classroom_id, work_day, token, pictures
              FROM door
             WHERE token = :token""")
        .bind("token", token)
        .map(DOOR)
        .findOne());
    return door.filter(found -> newestDoor(found.classroom(), found.day()).equals(door));
  }

  /** The doors that are open on a day: the newest of each class. */
  public List<Door> doorsOpen(LocalDate day) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT classroom_id, work_day, token, pictures
              FROM door
             WHERE id IN (SELECT MAX(id) FROM door WHERE work_day = :day GROUP BY classroom_id)
             ORDER BY id""")
        .bind("day", day)
        .map(DOOR)
        .list());
  }

  /** Makes a tablet known, by the hash of its cookie. Harmless when it is known already. */
  public void meetTablet(String id, String name, Instant now) {
    meetTablets(Map.of(id, name), now);
  }

  /** {@link #meetTablet} for many at once, names by id. */
  public void meetTablets(Map<String, String> names, Instant now) {
    database.change(handle -> names.forEach((id, name) -> handle
        .createUpdate("""
            INSERT INTO tablet (id, name, made_at)
            VALUES (:id, :name, :now)
                ON CONFLICT DO NOTHING""")
        .bind("id", id)
        .bind("name", name)
        .bind("now", Database.utc(now))
        .execute()));
  }

  /** How many real tablets have been met. */
  public long tablets() {
    return database.read(handle -> handle
        .createQuery("SELECT COUNT(*) FROM tablet WHERE id NOT LIKE :invented")
        .bind("invented", INVENTED_TABLET + "%")
        .mapTo(Long.class)
        .one());
  }

  /** A child comes in on a tablet; whoever sat there before is ended. */
  public void start(String id, long child, String tablet, String cookie, Instant now) {
    database.change(handle -> start(handle, new Coming(id, child, tablet, cookie, now)));
  }

  /**
   * {@link #start} and {@link #works} for many children at once, in the order given: one trip to the disk for all.
   *
   * @return the work of each sitting for the given sets of that day, by the sitting's id
   */
  public Map<String, List<AssignedWork>> startAll(List<Coming> comings, LocalDate day, Supplier<String> ids) {
    return database.write(handle -> {
      Map<String, List<AssignedWork>> works = new LinkedHashMap<>();
      Map<Long, List<ProblemSet>> sets = new HashMap<>();
      for (Coming coming : comings) {
        start(handle, coming);
        Sitting sitting = find(handle, coming.id).orElseThrow();
        List<ProblemSet> given = seenBy(handle, sitting.child().id(),
            sets.computeIfAbsent(sitting.child().classroom(), of -> given(handle, of, day)));
        makeWorks(handle, sitting, given, ids, coming.at);
        works.put(coming.id, worksThere(handle, sitting, given));
      }
      return works;
    });
  }

  private static void start(Handle handle, Coming asked) {
    Coming coming = new Coming(asked.id, asked.child, asked.tablet, asked.cookie, afterAllBefore(handle, asked));
    handle
        .createUpdate("""
            UPDATE sitting
               SET ended_at = :now, ended_why = 'next child'
             WHERE tablet_id = :tablet
               AND ended_at IS NULL""")
        .bind("now", Database.utc(coming.at))
        .bind("tablet", coming.tablet)
        .execute();
    handle
        .createUpdate("""
            INSERT INTO sitting (id, child_id, tablet_id, cookie, started_at)
            VALUES (:id, :child, :tablet, :cookie, :now)""")
        .bind("id", coming.id)
        .bind("child", coming.child)
        .bind("tablet", coming.tablet)
        .bind("cookie", coming.cookie)
        .bind("now", Database.utc(coming.at))
        .execute();
  }

  /** A clock that was set back does not bring a child's new sitting before what she did already. */
  private static Instant afterAllBefore(Handle handle, Coming coming) {
    Optional<Instant> last = handle
        .createQuery("""
            SELECT MAX(at) AS at
              FROM (SELECT MAX(started_at) AS at
                      FROM sitting
                     WHERE child_id = :child
                     UNION ALL
                    SELECT MAX(r.written_at) AS at
                      FROM revision r
                      JOIN work w ON w.id = r.work_id
                     WHERE w.child_id = :child) before""")
        .bind("child", coming.child)
        .map((row, at) -> Optional.ofNullable(Rows.instant(row, "at")))
        .one();
    return last.filter(before -> !coming.at.isAfter(before)).map(before -> before.plusMillis(1)).orElse(coming.at);
  }

  public void end(String sitting, String why, Instant now) {
    endAll(Map.of(sitting, now), why);
  }

  /** {@link #end} for many sittings at once, by their ids. */
  public void endAll(Map<String, Instant> sittings, String why) {
    database.change(handle -> sittings.forEach((sitting, now) -> handle
        .createUpdate("""
            UPDATE sitting
               SET ended_at = :now, ended_why = :why
             WHERE id = :sitting
               AND ended_at IS NULL""")
        .bind("now", Database.utc(now))
        .bind("why", why)
        .bind("sitting", sitting)
        .execute()));
  }

  /** Ends what is still open of a class from before an instant, as of that instant: at night. @return how many */
  public int endBefore(long classroom, Instant midnight) {
    int open = database.read(handle -> handle
        .createQuery("SELECT COUNT(*) FROM sitting " + OPEN_BEFORE)
        .bind("midnight", Database.utc(midnight))
        .bind("classroom", classroom)
        .mapTo(Integer.class)
        .one());
    return open == 0 ? 0 : database.write(handle -> handle
        .createUpdate("UPDATE sitting SET ended_at = :midnight, ended_why = 'night' " + OPEN_BEFORE)
        .bind("midnight", Database.utc(midnight))
        .bind("classroom", classroom)
        .execute());
  }

  private static final String OPEN_BEFORE = """
      WHERE ended_at IS NULL
        AND started_at < :midnight
        AND child_id IN (SELECT id FROM child WHERE classroom_id = :classroom)""";

  /** Keeps in mind that sittings were erased, by the hash of their ids: what a tablet still holds of them may go. */
  static void rememberErased(Handle handle, List<String> hashes) {
    hashes.forEach(hash -> handle
        .createUpdate("INSERT INTO erased_sitting (id) VALUES (:hash) ON CONFLICT DO NOTHING")
        .bind("hash", hash)
        .execute());
  }

  /** The hashes of the ids of a class's sittings on real tablets. */
  static List<String> hashes(Handle handle, long classroom) {
    return handle
        .createQuery("""
            SELECT s.id
              FROM sitting s
              JOIN child c ON c.id = s.child_id
             WHERE c.classroom_id = :classroom
               AND s.tablet_id NOT LIKE :invented""")
        .bind("classroom", classroom)
        .bind("invented", INVENTED_TABLET + "%")
        .mapTo(String.class)
        .list()
        .stream().map(SittingStore::hash).toList();
  }

  /** SHA-256 of a sitting's id, in hex: what is left of a sitting that was erased. */
  static String hash(String sitting) {
    try {
      return HexFormat.of().formatHex(
          MessageDigest.getInstance("SHA-256").digest(sitting.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** Whether a sitting was erased. */
  public boolean erased(String sitting) {
    return database.read(handle -> handle
        .createQuery("SELECT COUNT(*) FROM erased_sitting WHERE id = :hash")
        .bind("hash", hash(sitting))
        .mapTo(Long.class)
        .one()) > 0;
  }

  /** The sitting a cookie belongs to, open or ended. */
  public Optional<Sitting> byCookie(String cookie) {
    return database.read(handle -> handle
        .createQuery(SELECT_SITTING + " WHERE s.cookie = :cookie")
        .bind("cookie", cookie)
        .map(SITTING)
        .findOne());
  }

  public Optional<Sitting> find(String sitting) {
    return database.read(handle -> find(handle, sitting));
  }

  private static Optional<Sitting> find(Handle handle, String sitting) {
    return handle
        .createQuery(SELECT_SITTING + " WHERE s.id = :sitting")
        .bind("sitting", sitting)
        .map(SITTING)
        .findOne();
  }

  /** The sittings of a class that are open, in the order of coming in. */
  public List<Sitting> open(long classroom) {
    return database.read(handle -> handle
        .createQuery(SELECT_SITTING + " WHERE c.classroom_id = :classroom AND s.ended_at IS NULL"
            + " ORDER BY s.started_at, s.id")
        .bind("classroom", classroom)
        .map(SITTING)
        .list());
  }

  /** The sitting's work for the given sets of its day, in order; what is missing is made. */
  public List<AssignedWork> works(Sitting sitting, LocalDate day, Supplier<String> ids, Instant now) {
    List<ProblemSet> sets = database.read(handle -> setsOf(handle, sitting, day));
    List<AssignedWork> there = database.read(handle -> worksThere(handle, sitting, sets));
    boolean complete = there.size() == sets.stream().mapToInt(set -> set.problems().size()).sum();
    return complete ? there : database.write(handle -> {
      makeWorks(handle, sitting, sets, ids, now);
      return worksThere(handle, sitting, sets);
    });
  }

  /** Days back for which problems of a day a child was away wait for her. Ours. */
  public static final int DAYS_WAITING = 7;
  /** What one page of a sitting can hold. */
  public static final int MOST_PROBLEMS = 10;

  /**
   * Today's sets, what she took beyond them, then those of days she was away, the newest first, while the page has
   * room. A day counts as away when she sat at no tablet on it, or
   * was marked absent and did nothing after.
   */
  private static List<ProblemSet> setsOf(Handle handle, Sitting sitting, LocalDate day) {
    Child child = sitting.child();
    List<ProblemSet> sets = new ArrayList<>(seenBy(handle, child.id(), given(handle, child.classroom(), day)));
    sets.addAll(ProblemStore.moreOf(handle, child.classroom(), child.id(), day));
    int problems = sets.stream().mapToInt(set -> set.problems().size()).sum();
    DaysThere days = DaysThere.of(handle, child.classroom(), zoneOf(handle, child.classroom()));
    for (LocalDate before : ProblemStore.daysGiven(handle, child.classroom(), day, DAYS_WAITING)) {
      List<ProblemSet> missed = days.there(child.id(), before) ? List.of()
          : seenBy(handle, child.id(), given(handle, child.classroom(), before));
      int more = missed.stream().mapToInt(set -> set.problems().size()).sum();
      if (problems + more > MOST_PROBLEMS) {
        break;
      }
      sets.addAll(missed);
      problems += more;
    }
    return sets;
  }

  private static ZoneId zoneOf(Handle handle, long classroom) {
    return handle
        .createQuery("""
            SELECT time_zone
              FROM classroom
             WHERE id = :classroom""")
        .bind("classroom", classroom)
        .map((row, at) -> ZoneId.of(row.getString("time_zone")))
        .one();
  }

  private static List<ProblemSet> given(Handle handle, long classroom, LocalDate day) {
    return ProblemStore.setsOf(handle, classroom, day).stream().filter(ProblemSet::given).toList();
  }

  /** Of given sets those that are for this child, each problem in the version she works on. */
  private static List<ProblemSet> seenBy(Handle handle, long child, List<ProblemSet> sets) {
    List<ProblemSet> seen = new ArrayList<>();
    for (ProblemSet set : sets) {
      Set<Long> children = PlanStore.childrenOf(handle, set.id());
      if (children.isEmpty() || children.contains(child)) {
        seen.add(hasVersions(handle, set.id()) ? inHerVersions(handle, child, set) : set);
      }
    }
    return seen;
  }

  private static boolean hasVersions(Handle handle, long set) {
    return handle
        .createQuery("""
            SELECT COUNT(*)
              FROM set_problem sp
              JOIN problem p ON p.id = sp.problem_id
             WHERE sp.set_id = :set
               AND p.version_of IS NOT NULL""")
        .bind("set", set)
        .mapTo(Integer.class)
        .one() > 0;
  }

  private static ProblemSet inHerVersions(Handle handle, long child, ProblemSet set) {
    List<AssignedProblem> problems = new ArrayList<>();
    for (AssignedProblem problem : set.problems()) {
      AssignedProblem hers = problem;
      Optional<Long> version = Optional.of(problem.id());
      while (version.isPresent()) {
        if (workedOn(handle, child, set.id(), version.get())) {
          hers = ProblemStore.find(handle, set.classroom(), version.get()).orElse(problem);
          break;
        }
        version = PlanStore.versionBefore(handle, version.get());
      }
      problems.add(hers);
    }
    return new ProblemSet(set.id(), set.classroom(), set.day(), set.given(), set.tries(), set.tellLater(), set.asks(),
        problems);
  }

  private static boolean workedOn(Handle handle, long child, long set, long problem) {
    return handle
        .createQuery("""
            SELECT COUNT(*)
              FROM work w
              JOIN revision r ON r.work_id = w.id
             WHERE w.child_id = :child
               AND w.set_id = :set
               AND w.problem_id = :problem""")
        .bind("child", child)
        .bind("set", set)
        .bind("problem", problem)
        .mapTo(Integer.class)
        .one() > 0;
  }

  private static void makeWorks(
      Handle handle, Sitting sitting, List<ProblemSet> sets, Supplier<String> ids, Instant now) {
    for (ProblemSet set : sets) {
      for (AssignedProblem problem : set.problems()) {
        handle
            .createUpdate("""
                INSERT INTO work (id, sitting_id, child_id, problem_id, set_id, made_at)
                VALUES (:id, :sitting, :child, :problem, :set, :now)
                    ON CONFLICT DO NOTHING""")
            .bind("id", ids.get())
            .bind("sitting", sitting.id())
            .bind("child", sitting.child().id())
            .bind("problem", problem.id())
            .bind("set", set.id())
            .bind("now", Database.utc(now))
            .execute();
      }
    }
  }

  private static List<AssignedWork> worksThere(Handle handle, Sitting sitting, List<ProblemSet> sets) {
    List<AssignedWork> works = new ArrayList<>();
    for (ProblemSet set : sets) {
      for (AssignedProblem problem : set.problems()) {
        handle
            .createQuery("""
                SELECT id
                  FROM work
                 WHERE sitting_id = :sitting
                   AND set_id = :set
                   AND problem_id = :problem""")
            .bind("sitting", sitting.id())
            .bind("set", set.id())
            .bind("problem", problem.id())
            .mapTo(String.class)
            .findOne()
            .ifPresent(id -> works.add(new AssignedWork(id, set, problem)));
      }
    }
    return works;
  }
}
