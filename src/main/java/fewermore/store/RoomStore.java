package fewermore.store;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.Room;
import fewermore.classroom.RoomFacts;
import fewermore.classroom.RoomFacts.Late;
import fewermore.classroom.RoomFacts.Pause;
import fewermore.classroom.RoomFacts.Sat;
import fewermore.classroom.RoomFacts.Sent;
import fewermore.classroom.SentItem;
import fewermore.json.Json;
import fewermore.json.WorkJson;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.marking.Work;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** What happens in the room on a day: what is read from it, and what the teacher does there. */
public final class RoomStore {
  private final Database database;

  public RoomStore(Database database) {
    this.database = database;
  }

  /** All that the room of a class shows of a day. */
  public RoomFacts facts(Classroom classroom, LocalDate day, Duration stuckAfter) {
    Instant from = day.atStartOfDay(classroom.zone()).toInstant();
    return database.read(handle -> {
      List<Child> children = ClassStore.children(handle, classroom.id());
      List<ProblemSet> sets =
          ProblemStore.setsOf(handle, classroom.id(), day).stream().filter(ProblemSet::given).toList();
      return new RoomFacts(children, sets, sittings(handle, classroom.id(), from), sent(handle, classroom.id(), day),
          late(handle, classroom.id(), from), absent(handle, classroom.id(), day),
          visited(handle, classroom.id(), from), pauses(handle, classroom.id(), from), stuckAfter,
          onlyFor(handle, sets), earlier(handle, classroom.id()));
    });
  }

  private static Map<Long, Set<Long>> onlyFor(Handle handle, List<ProblemSet> sets) {
    Map<Long, Set<Long>> onlyFor = new HashMap<>();
    for (ProblemSet set : sets) {
      Set<Long> children = PlanStore.childrenOf(handle, set.id());
      if (!children.isEmpty()) {
        onlyFor.put(set.id(), children);
      }
    }
    return onlyFor;
  }

  private static Map<Long, Long> earlier(Handle handle, long classroom) {
    Map<Long, Long> earlier = new HashMap<>();
    handle
        .createQuery("""
            SELECT p.id, p.version_of
              FROM problem p
             WHERE p.classroom_id = :classroom
               AND p.version_of IS NOT NULL
             ORDER BY p.id""")
        .bind("classroom", classroom)
        .map((row, at) -> Map.entry(row.getLong("id"), row.getLong("version_of")))
        .forEach(entry -> earlier.put(entry.getKey(), entry.getValue()));
    return earlier;
  }

  private static List<Sat> sittings(Handle handle, long classroom, Instant from) {
    Set<String> fresh = Set.copyOf(handle
        .createQuery("""
            SELECT t.id
              FROM tablet t
             WHERE t.made_at >= :from
               AND EXISTS (SELECT 1
                             FROM sitting s
                             JOIN child c ON c.id = s.child_id
                            WHERE c.classroom_id = :classroom
                              AND s.started_at < :from)""")
        .bind("from", Database.utc(from))
        .bind("classroom", classroom)
        .mapTo(String.class)
        .list());
    return handle
        .createQuery(SittingStore.SELECT_SITTING
            + " WHERE c.classroom_id = :classroom AND s.started_at >= :from ORDER BY s.started_at, s.id")
        .bind("classroom", classroom)
        .bind("from", Database.utc(from))
        .map(SittingStore.SITTING)
        .list()
        .stream()
        .map(sitting -> new Sat(sitting, fresh.contains(sitting.tablet())))
        .toList();
  }

  private static final RowMapper<Sent> SENT = (row, at) -> new Sent(
      row.getLong("child_id"), row.getLong("problem_id"), row.getString("work_id"), row.getString("page"),
      row.getInt("seq"), SentItem.Kind.of(row.getString("kind")).orElseThrow(),
      WorkJson.read(Json.read(row.getString("parts"))), Rows.instant(row, "written_at"),
      Rows.instant(row, "told_at") != null, Rows.instant(row, "taken_at") != null, row.getString("sitting_id"));

  private static List<Sent> sent(Handle handle, long classroom, LocalDate day) {
    return handle
        .createQuery("""
            SELECT w.child_id, w.problem_id, r.work_id, r.page, r.seq, r.kind, r.parts, r.written_at, r.told_at,
                   r.taken_at, w.sitting_id
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN problem_set s ON s.id = w.set_id
             WHERE s.classroom_id = :classroom
               AND s.work_day = :day
               AND s.given = TRUE
               AND r.kind IN ('draft', 'handed-in', 'help')
               AND NOT (r.kind = 'help' AND EXISTS (SELECT 1
                                                      FROM hand_down d
                                                     WHERE d.child_id = w.child_id
                                                       AND d.problem_id = w.problem_id
                                                       AND d.went_down_at >= r.written_at))
             ORDER BY r.written_at, r.arrived_at, r.page, r.seq, r.work_id""")
        .bind("classroom", classroom)
        .bind("day", day)
        .map(SENT)
        .list();
  }

  private static Map<Long, List<Late>> late(Handle handle, long classroom, Instant from) {
    Map<Long, List<Late>> late = new LinkedHashMap<>();
    handle
        .createQuery("""
            SELECT w.child_id, r.work_id, r.page, r.seq, r.arrived_at
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN child c ON c.id = w.child_id
             WHERE c.classroom_id = :classroom
               AND r.kind = 'handed-in'
               AND r.late = TRUE
               AND r.arrived_at >= :from
             ORDER BY r.arrived_at, r.work_id, r.page, r.seq""")
        .bind("classroom", classroom)
        .bind("from", Database.utc(from))
        .map((row, at) -> Map.entry(row.getLong("child_id"), new Late(row.getString("work_id"),
            row.getString("page"), row.getInt("seq"), Rows.instant(row, "arrived_at"))))
        .forEach(entry -> late.computeIfAbsent(entry.getKey(), none -> new ArrayList<>()).add(entry.getValue()));
    return late;
  }

  private static Map<Long, Instant> absent(Handle handle, long classroom, LocalDate day) {
    return instants(handle
        .createQuery("""
            SELECT a.child_id, a.made_at
              FROM absence a
              JOIN child c ON c.id = a.child_id
             WHERE c.classroom_id = :classroom
               AND a.work_day = :day
             ORDER BY a.child_id""")
        .bind("classroom", classroom)
        .bind("day", day));
  }

  private static Map<Long, Instant> visited(Handle handle, long classroom, Instant from) {
    return instants(handle
        .createQuery("""
            SELECT v.child_id, MAX(v.made_at) AS made_at
              FROM visit v
              JOIN child c ON c.id = v.child_id
             WHERE c.classroom_id = :classroom
               AND v.made_at >= :from
             GROUP BY v.child_id
             ORDER BY v.child_id""")
        .bind("classroom", classroom)
        .bind("from", Database.utc(from)));
  }

  private static Map<Long, Instant> instants(org.jdbi.v3.core.statement.Query query) {
    Map<Long, Instant> instants = new HashMap<>();
    query.map((row, at) -> Map.entry(row.getLong("child_id"), Rows.instant(row, "made_at")))
        .forEach(entry -> instants.put(entry.getKey(), entry.getValue()));
    return instants;
  }

  private static List<Pause> pauses(Handle handle, long classroom, Instant from) {
    return handle
        .createQuery("""
            SELECT started_at, ended_at
              FROM pause
             WHERE classroom_id = :classroom
               AND (ended_at IS NULL OR ended_at >= :from)
             ORDER BY started_at, id""")
        .bind("classroom", classroom)
        .bind("from", Database.utc(from))
        .map((row, at) -> new Pause(Rows.instant(row, "started_at"), Rows.instant(row, "ended_at")))
        .list();
  }

  // ---- what the teacher does ----

  /** Marks a child of this class absent for a day. Harmless when she is. */
  public void markAbsent(long classroom, long child, LocalDate day, Instant now) {
    database.change(handle -> {
      takeBackAbsent(handle, classroom, child, day);
      handle
          .createUpdate("""
              INSERT INTO absence (child_id, work_day, made_at)
              SELECT id, :day, :now
                FROM child
               WHERE id = :child
                 AND classroom_id = :classroom""")
          .bind("child", child)
          .bind("classroom", classroom)
          .bind("day", day)
          .bind("now", Database.utc(now))
          .execute();
    });
  }

  /** She is here after all. */
  public void takeBackAbsent(long classroom, long child, LocalDate day) {
    database.change(handle -> takeBackAbsent(handle, classroom, child, day));
  }

  private static void takeBackAbsent(Handle handle, long classroom, long child, LocalDate day) {
    handle
        .createUpdate("""
            DELETE FROM absence
             WHERE child_id = :child
               AND work_day = :day
               AND child_id IN (SELECT id FROM child WHERE classroom_id = :classroom)""")
        .bind("child", child)
        .bind("classroom", classroom)
        .bind("day", day)
        .execute();
  }

  /** The teacher has been with a child of this class: a hand raised before is lowered. */
  public void visit(long classroom, long child, Instant now) {
    database.change(handle -> {
      handle
          .createUpdate("""
              INSERT INTO visit (child_id, made_at)
              SELECT id, :now
                FROM child
               WHERE id = :child
                 AND classroom_id = :classroom""")
          .bind("child", child)
          .bind("classroom", classroom)
          .bind("now", Database.utc(now))
          .execute();
      handle
          .createUpdate("""
              INSERT INTO hand_down (child_id, problem_id, who, went_down_at)
              SELECT DISTINCT w.child_id, w.problem_id, 'teacher', CAST(:now AS TIMESTAMP WITH TIME ZONE)
                FROM revision r
                JOIN work w ON w.id = r.work_id
                JOIN child c ON c.id = w.child_id
               WHERE r.kind = 'help'
                 AND w.child_id = :child
                 AND c.classroom_id = :classroom""")
          .bind("child", child)
          .bind("classroom", classroom)
          .bind("now", Database.utc(now))
          .execute();
    });
  }

  /** Pauses the class. Harmless when it is paused. */
  public void pause(long classroom, Instant now) {
    if (!paused(classroom)) {
      database.change(handle -> handle
          .createUpdate("""
              INSERT INTO pause (classroom_id, started_at)
              VALUES (:classroom, :now)""")
          .bind("classroom", classroom)
          .bind("now", Database.utc(now))
          .execute());
    }
  }

  public void goOn(long classroom, Instant now) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE pause
               SET ended_at = :now
             WHERE classroom_id = :classroom
               AND ended_at IS NULL""")
        .bind("classroom", classroom)
        .bind("now", Database.utc(now))
        .execute());
  }

  public boolean paused(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT COUNT(*)
              FROM pause
             WHERE classroom_id = :classroom
               AND ended_at IS NULL""")
        .bind("classroom", classroom)
        .mapTo(Long.class)
        .one()) > 0;
  }

  /**
   * Takes what a class has not handed in as handed in: for each child and problem of the day without a hand-in the
   * newest draft that is not empty, dated when it was written, marked like any other.
   *
   * @param child only this child's, or null for all
   * @return how many pieces of work
   */
  public int takeAsHandedIn(long classroom, LocalDate day, Long child, Instant now) {
    return database.write(handle -> {
      Map<Long, ProblemSet> setOf = new HashMap<>();
      Map<Long, AssignedProblem> problems = new HashMap<>();
      ProblemStore.setsOf(handle, classroom, day).forEach(set -> set.problems().forEach(problem -> {
        setOf.put(problem.id(), set);
        problems.put(problem.id(), problem);
      }));
      Map<List<Long>, Sent> newest = new LinkedHashMap<>();
      List<List<Long>> handedIn = new ArrayList<>();
      for (Sent item : sent(handle, classroom, day)) {
        List<Long> key = List.of(item.child(), item.problem());
        if (item.kind() == SentItem.Kind.HANDED_IN) {
          handedIn.add(key);
        } else if (item.kind() == SentItem.Kind.DRAFT) {
          newest.put(key, item);
        }
      }
      newest.keySet().removeAll(handedIn);
      newest.values().removeIf(item -> child != null && item.child() != child
          || problems.get(item.problem()) == null
          || Room.blank(item.parts()));
      newest.values().forEach(item ->
          take(handle, item, problems.get(item.problem()), setOf.get(item.problem()), now));
      return newest.size();
    });
  }

  private static void take(Handle handle, Sent item, AssignedProblem problem, ProblemSet set, Instant now) {
    Work parts = item.parts();
    Marks marks = Marker.mark(problem.story(), parts);
    boolean prompted = Signs.of(marks, set.tellLater()).containsValue(Sign.LOOK_AGAIN);
    int changed = handle
        .createUpdate("""
            UPDATE revision
               SET kind = 'handed-in',
                   taken_at = :now,
                   told_at = :told
             WHERE work_id = :work
               AND page = :page
               AND seq = :seq
               AND kind = 'draft'""")
        .bind("now", Database.utc(now))
        .bind("told", prompted ? Database.utc(now) : null)
        .bind("work", item.work())
        .bind("page", item.page())
        .bind("seq", item.seq())
        .execute();
    if (changed == 1) {
      WorkStore.keepMarks(handle, new WorkStore.Key(item.work(), item.page(), item.seq()), marks);
    }
  }
}
