package fewermore.store;

import fewermore.classroom.Child;
import fewermore.classroom.Moved;
import fewermore.classroom.Sitting;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Who sat where, and work that was moved to the right child. */
public final class MovingStore {
  /**
   * A sitting as the teacher looks back at it.
   *
   * @param why how it ended, or null while it is open
   * @param works ids of its works, in the order of the problems
   * @param handedIn hand-ins that came from it
   * @param onlyDrafts works of which a draft came and no hand-in
   * @param lastArrived when anything last came from it, or null
   */
  public record Seat(
      Sitting sitting, String why, List<String> works, int handedIn, int onlyDrafts, Instant lastArrived) {
    public Seat {
      works = List.copyOf(works);
    }
  }

  private record Came(int handIns, int drafts, Instant last) {}

  private static final RowMapper<Moved> MOVED = (row, at) -> new Moved(row.getLong("id"), row.getString("work_id"),
      new Child(row.getLong("from_child"), row.getLong("classroom_id"), row.getString("from_name"),
          row.getString("from_picture"), row.getString("from_ground"), row.getString("from_language")),
      new Child(row.getLong("to_child"), row.getLong("classroom_id"), row.getString("to_name"),
          row.getString("to_picture"), row.getString("to_ground"), row.getString("to_language")),
      row.getString("note"), Rows.instant(row, "made_at"),
      Moved.State.valueOf(row.getString("state").toUpperCase(java.util.Locale.ROOT)));

  private static final String SELECT_MOVED = """
      SELECT m.id, m.work_id, m.note, m.made_at, m.state, m.from_child, m.to_child, a.classroom_id,
             a.name AS from_name, a.picture AS from_picture, a.ground AS from_ground, a.language AS from_language,
             b.name AS to_name, b.picture AS to_picture, b.ground AS to_ground, b.language AS to_language
        FROM moved m
        JOIN child a ON a.id = m.from_child
        JOIN child b ON b.id = m.to_child
      """;

  private final Database database;

  public MovingStore(Database database) {
    this.database = database;
  }

  /** The sittings of a class that began at or after an instant, newest first. */
  public List<Seat> seats(long classroom, Instant since) {
    return database.read(handle -> {
      List<Sitting> sittings = handle
          .createQuery(SittingStore.SELECT_SITTING
              + " WHERE c.classroom_id = :classroom AND s.started_at >= :since ORDER BY s.started_at DESC, s.id")
          .bind("classroom", classroom)
          .bind("since", Database.utc(since))
          .map(SittingStore.SITTING)
          .list();
      return sittings.stream().map(sitting -> seat(handle, sitting)).toList();
    });
  }

  /** One sitting of a class. */
  public Optional<Seat> seat(long classroom, String sitting) {
    return database.read(handle -> handle
        .createQuery(SittingStore.SELECT_SITTING + " WHERE c.classroom_id = :classroom AND s.id = :sitting")
        .bind("classroom", classroom)
        .bind("sitting", sitting)
        .map(SittingStore.SITTING)
        .findOne()
        .map(found -> seat(handle, found)));
  }

  private static Seat seat(Handle handle, Sitting sitting) {
    String why = handle
        .createQuery("SELECT ended_why FROM sitting WHERE id = :sitting")
        .bind("sitting", sitting.id())
        .map((row, at) -> Optional.ofNullable(row.getString("ended_why")))
        .one().orElse(null);
    List<String> works = handle
        .createQuery("""
            SELECT w.id
              FROM work w
              JOIN set_problem p ON p.set_id = w.set_id AND p.problem_id = w.problem_id
             WHERE w.sitting_id = :sitting
             ORDER BY w.set_id, p.place""")
        .bind("sitting", sitting.id())
        .mapTo(String.class)
        .list();
    Map<String, Came> came = new HashMap<>();
    handle
        .createQuery("""
            SELECT r.work_id,
                   SUM(CASE WHEN r.kind = 'handed-in' THEN 1 ELSE 0 END) AS hand_ins,
                   SUM(CASE WHEN r.kind = 'draft' THEN 1 ELSE 0 END) AS drafts,
                   MAX(r.arrived_at) AS arrived_at
              FROM revision r
              JOIN work w ON w.id = r.work_id
             WHERE w.sitting_id = :sitting
             GROUP BY r.work_id""")
        .bind("sitting", sitting.id())
        .map((row, at) -> Map.entry(row.getString("work_id"),
            new Came(row.getInt("hand_ins"), row.getInt("drafts"), Rows.instant(row, "arrived_at"))))
        .forEach(entry -> came.put(entry.getKey(), entry.getValue()));
    return new Seat(sitting, why, works,
        came.values().stream().mapToInt(Came::handIns).sum(),
        (int) came.values().stream().filter(each -> each.handIns == 0 && each.drafts > 0).count(),
        came.values().stream().map(Came::last).max(Instant::compareTo).orElse(null));
  }

  /**
   * Moves works to another child of the same class and leaves a note of each. What a tablet still sends for them goes
   * to that child too. Moved work is no evidence until {@link #confirm}; taken back to the child it was made for, it
   * is again what it was.
   *
   * @return how many were moved: those of this class that were not the child's already
   */
  public int move(long classroom, long teacher, List<String> works, long child, String note, Instant now) {
    return database.write(handle -> {
      boolean inClass = count(handle, "SELECT COUNT(*) FROM child WHERE id = :child AND classroom_id = :classroom",
          Map.of("child", child, "classroom", classroom)) == 1;
      int moved = 0;
      for (String work : inClass ? works : List.<String>of()) {
        moved += move(handle, classroom, teacher, work, child, note, now) ? 1 : 0;
      }
      return moved;
    });
  }

  private static boolean move(
      Handle handle, long classroom, long teacher, String work, long child, String note, Instant now) {
    Optional<Map.Entry<Long, Long>> whose = handle
        .createQuery("""
            SELECT w.child_id, s.child_id AS sitter
              FROM work w
              JOIN sitting s ON s.id = w.sitting_id
              JOIN child c ON c.id = w.child_id
             WHERE w.id = :work
               AND c.classroom_id = :classroom""")
        .bind("work", work)
        .bind("classroom", classroom)
        .map((row, at) -> Map.entry(row.getLong("child_id"), row.getLong("sitter")))
        .findOne()
        .filter(entry -> entry.getKey() != child);
    if (whose.isEmpty()) {
      return false;
    }
    handle
        .createUpdate("UPDATE moved SET state = 'undone', decided_at = :now WHERE work_id = :work AND state <> 'undone'")
        .bind("now", Database.utc(now))
        .bind("work", work)
        .execute();
    boolean back = whose.get().getValue() == child;
    handle
        .createUpdate("""
            INSERT INTO moved (work_id, from_child, to_child, teacher_id, note, state, made_at)
            VALUES (:work, :from, :to, :teacher, :note, :state, :now)""")
        .bind("work", work)
        .bind("from", whose.get().getKey())
        .bind("to", child)
        .bind("teacher", teacher)
        .bind("note", note)
        .bind("state", back ? "undone" : "waiting")
        .bind("now", Database.utc(now))
        .execute();
    handle
        .createUpdate("UPDATE work SET child_id = :child WHERE id = :work")
        .bind("child", child)
        .bind("work", work)
        .execute();
    return true;
  }

  private static long count(Handle handle, String query, Map<String, Long> values) {
    return handle.createQuery(query).bindMap(values).mapTo(Long.class).one();
  }

  /** Says that a moved work is where it belongs: from now on it is evidence. False when none of this class waits. */
  public boolean confirm(long classroom, String work, Instant now) {
    return database.write(handle -> handle
        .createUpdate("""
            UPDATE moved
               SET state = 'confirmed', decided_at = :now
             WHERE work_id = :work
               AND state = 'waiting'
               AND to_child IN (SELECT id FROM child WHERE classroom_id = :classroom)""")
        .bind("now", Database.utc(now))
        .bind("work", work)
        .bind("classroom", classroom)
        .execute()) > 0;
  }

  /** What was moved of a work, oldest first. */
  public List<Moved> of(String work) {
    return database.read(handle -> handle
        .createQuery(SELECT_MOVED + " WHERE m.work_id = :work ORDER BY m.id")
        .bind("work", work)
        .map(MOVED)
        .list());
  }

  /** All moved work of a class that waits for the teacher to say that it is right, oldest first. */
  public List<Moved> waiting(long classroom) {
    return database.read(handle -> handle
        .createQuery(SELECT_MOVED + " WHERE a.classroom_id = :classroom AND m.state = 'waiting' ORDER BY m.id")
        .bind("classroom", classroom)
        .map(MOVED)
        .list());
  }

  /** The newest hand-in of a work as {@code page/seq}; empty when it was never handed in. */
  public Optional<String> newestHandIn(String work) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT page, seq
              FROM revision
             WHERE work_id = :work
               AND kind = 'handed-in'
             ORDER BY written_at DESC, arrived_at DESC, seq DESC
             LIMIT 1""")
        .bind("work", work)
        .map((row, at) -> row.getString("page") + "/" + row.getInt("seq"))
        .findOne());
  }
}
