package fewermore.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Whose hand is up, since when, and when the teacher has been there. */
public final class HandStore {
  /** Who put a hand down. */
  public enum Who {
    /** The child needs nobody any more. */
    CHILD("child"),
    /** The teacher has been there. */
    TEACHER("teacher");

    private final String id;

    Who(String id) {
      this.id = id;
    }
  }

  /**
   * A hand that is up.
   *
   * @param work one of the child's works on that problem, for a link
   * @param since when it went up, by the laptop's clock
   */
  public record Raised(long child, long problem, String work, Instant since) {}

  private final Database database;

  public HandStore(Database database) {
    this.database = database;
  }

  /** The hands that went up on a day and are up, in the order they went up. */
  public List<Raised> raised(long classroom, LocalDate day) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT w.child_id, w.problem_id, MAX(w.id) AS work_id, MIN(r.written_at) AS since
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN child c ON c.id = w.child_id
             WHERE r.kind = 'help'
               AND r.work_day = :day
               AND c.classroom_id = :classroom
               AND NOT EXISTS (SELECT 1
                                 FROM hand_down d
                                WHERE d.child_id = w.child_id
                                  AND d.problem_id = w.problem_id
                                  AND d.went_down_at >= r.written_at)
             GROUP BY w.child_id, w.problem_id
             ORDER BY since, w.child_id, w.problem_id""")
        .bind("classroom", classroom)
        .bind("day", day)
        .map((row, at) -> new Raised(row.getLong("child_id"), row.getLong("problem_id"), row.getString("work_id"),
            Rows.instant(row, "since")))
        .list());
  }

  /** Whether a child's hand is up on a problem. */
  public boolean up(long child, long problem) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT COUNT(*)
              FROM revision r
              JOIN work w ON w.id = r.work_id
             WHERE r.kind = 'help'
               AND w.child_id = :child
               AND w.problem_id = :problem
               AND NOT EXISTS (SELECT 1
                                 FROM hand_down d
                                WHERE d.child_id = w.child_id
                                  AND d.problem_id = w.problem_id
                                  AND d.went_down_at >= r.written_at)""")
        .bind("child", child)
        .bind("problem", problem)
        .mapTo(Long.class)
        .one() > 0);
  }

  /**
   * Puts a hand down. A hand that goes up later is up again; one that was raised before and arrives late is not.
   *
   * @param at when, by the laptop's clock
   */
  public void down(long child, long problem, Who who, Instant at) {
    database.change(handle -> handle
        .createUpdate("""
            INSERT INTO hand_down (child_id, problem_id, who, went_down_at)
            VALUES (:child, :problem, :who, :at)""")
        .bind("child", child)
        .bind("problem", problem)
        .bind("who", who.id)
        .bind("at", Database.utc(at))
        .execute());
  }

  /**
   * Puts down the hand of one of a sitting's works, as its child asked. Sent twice it is down all the same.
   *
   * @param at when, by the laptop's clock
   * @return false when the sitting has no such work; then nothing is done
   * @throws NotOnDisk when it may not be on disk: acknowledge nothing
   */
  public boolean down(String sitting, String work, Instant at) {
    return database.write(handle -> handle
        .createUpdate("""
            INSERT INTO hand_down (child_id, problem_id, who, went_down_at)
            SELECT w.child_id, w.problem_id, :who, CAST(:at AS TIMESTAMP WITH TIME ZONE)
              FROM work w
             WHERE w.id = :work
               AND w.sitting_id = :sitting""")
        .bind("work", work)
        .bind("sitting", sitting)
        .bind("who", Who.CHILD.id)
        .bind("at", Database.utc(at))
        .execute()) > 0;
  }

  /** When the teacher was last with a child on a problem because of a raised hand. */
  public Optional<Instant> teacherWasThere(long child, long problem) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT MAX(went_down_at) AS went_down_at
              FROM hand_down
             WHERE child_id = :child
               AND problem_id = :problem
               AND who = 'teacher'""")
        .bind("child", child)
        .bind("problem", problem)
        .map((row, at) -> Optional.ofNullable(Rows.instant(row, "went_down_at")))
        .one());
  }
}
