package fewermore.store;

import fewermore.classroom.PutAside;
import fewermore.classroom.SeatedPair;
import fewermore.classroom.TakenOut;
import fewermore.classroom.TeacherWord;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.GroupPlace;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the teacher says beside the evidence of a class: work that is none, ways put aside, who sits with whom. */
public final class ReasoningStore {
  private final Database database;

  public ReasoningStore(Database database) {
    this.database = database;
  }

  /** What holds now: what was put back or taken back is left out. */
  public TeacherWord word(long classroom) {
    return database.read(handle -> new TeacherWord(
        handle
            .createQuery("""
                SELECT id, child_id, problem_id, why, work_day
                  FROM taken_out
                 WHERE classroom_id = :classroom
                   AND back_at IS NULL
                 ORDER BY id DESC""")
            .bind("classroom", classroom)
            .map((row, at) -> new TakenOut(row.getLong("id"), row.getLong("child_id"), row.getLong("problem_id"),
                TakenOut.Why.of(row.getString("why")).orElse(TakenOut.Why.WITH_HELP), Rows.day(row, "work_day")))
            .list(),
        handle
            .createQuery("""
                SELECT id, child_id, way, note, work_day
                  FROM put_aside
                 WHERE classroom_id = :classroom
                   AND back_at IS NULL
                 ORDER BY id DESC""")
            .bind("classroom", classroom)
            .map((row, at) -> new PutAside(row.getLong("id"), row.getLong("child_id"),
                WayOfReasoning.of(row.getString("way")).orElse(WayOfReasoning.NO_STEADY_WAY), row.getString("note"),
                Rows.day(row, "work_day")))
            .list()));
  }

  /**
   * Takes work out of the evidence.
   *
   * @param child 0 for every child of the class
   * @return false when this class has no such problem or child; then nothing changes
   */
  public boolean takeOut(long classroom, long child, long problem, TakenOut.Why why, LocalDate day, Instant now) {
    return database.write(handle -> handle
        .createUpdate("""
            INSERT INTO taken_out (classroom_id, child_id, problem_id, why, work_day, made_at)
            SELECT p.classroom_id, NULLIF(CAST(:child AS BIGINT), 0), p.id, :why, :day, :now
              FROM problem p
             WHERE p.id = :problem
               AND p.classroom_id = :classroom
               AND (:child = 0 OR EXISTS (SELECT 1 FROM child c WHERE c.id = :child AND c.classroom_id = :classroom))""")
        .bind("classroom", classroom)
        .bind("child", child)
        .bind("problem", problem)
        .bind("why", why.id())
        .bind("day", day)
        .bind("now", Database.utc(now))
        .execute()) > 0;
  }

  /** Puts work back among the evidence; false when nothing of the sort is out. */
  public boolean putBack(long classroom, long id, Instant now) {
    return back("taken_out", classroom, id, now);
  }

  /** Puts a way aside for a child; false when this class has no such child. */
  public boolean putAside(long classroom, long child, WayOfReasoning way, String note, LocalDate day, Instant now) {
    return database.write(handle -> handle
        .createUpdate("""
            INSERT INTO put_aside (classroom_id, child_id, way, note, work_day, made_at)
            SELECT c.classroom_id, c.id, :way, :note, :day, :now
              FROM child c
             WHERE c.id = :child
               AND c.classroom_id = :classroom""")
        .bind("classroom", classroom)
        .bind("child", child)
        .bind("way", way.id())
        .bind("note", note)
        .bind("day", day)
        .bind("now", Database.utc(now))
        .execute()) > 0;
  }

  /** Takes back that a way was put aside; false when nothing of the sort is. */
  public boolean noLongerAside(long classroom, long id, Instant now) {
    return back("put_aside", classroom, id, now);
  }

  /** Marks a row of a table that keeps {@code back_at} as taken back. */
  private boolean back(String table, long classroom, long id, Instant now) {
    return database.write(handle -> handle
        .createUpdate("UPDATE " + table + """
               SET back_at = :now
             WHERE id = :id
               AND classroom_id = :classroom
               AND back_at IS NULL""")
        .bind("id", id)
        .bind("classroom", classroom)
        .bind("now", Database.utc(now))
        .execute()) > 0;
  }

  // Groups

  public List<SeatedPair> pairs(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT one_child, other_child, together
              FROM sits_with
             WHERE classroom_id = :classroom
             ORDER BY one_child, other_child""")
        .bind("classroom", classroom)
        .map((row, at) -> new SeatedPair(row.getLong("one_child"), row.getLong("other_child"), row.getBoolean("together")))
        .list());
  }

  /** Keeps two children apart or together; false when they are not two of this class. */
  public boolean keep(long classroom, SeatedPair pair) {
    return database.write(handle -> {
      long there = handle
          .createQuery("""
              SELECT COUNT(*)
                FROM child
               WHERE classroom_id = :classroom
                 AND id IN (:one, :other)""")
          .bind("classroom", classroom)
          .bind("one", pair.one())
          .bind("other", pair.other())
          .mapTo(Long.class)
          .one();
      if (there != 2) {
        return false;
      }
      handle
          .createUpdate("""
              DELETE FROM sits_with
               WHERE one_child = :one
                 AND other_child = :other""")
          .bind("one", pair.one())
          .bind("other", pair.other())
          .execute();
      handle
          .createUpdate("""
              INSERT INTO sits_with (classroom_id, one_child, other_child, together)
              VALUES (:classroom, :one, :other, :together)""")
          .bind("classroom", classroom)
          .bind("one", pair.one())
          .bind("other", pair.other())
          .bind("together", pair.together())
          .execute();
      return true;
    });
  }

  /** Keeps them neither apart nor together any more. */
  public boolean forget(long classroom, long one, long other) {
    return database.write(handle -> handle
        .createUpdate("""
            DELETE FROM sits_with
             WHERE classroom_id = :classroom
               AND one_child = :one
               AND other_child = :other""")
        .bind("classroom", classroom)
        .bind("one", Math.min(one, other))
        .bind("other", Math.max(one, other))
        .execute()) > 0;
  }

  /** A child's place in the groups of a day. */
  public record Kept(GroupPlace place, boolean byHand) {}

  /** The groups of a day as kept, by child; empty when the proposal stands. */
  public Map<Long, Kept> kept(long classroom, LocalDate day) {
    return database.read(handle -> {
      Map<Long, Kept> kept = new LinkedHashMap<>();
      handle
          .createQuery("""
              SELECT child_id, focus, by_hand
                FROM day_group
               WHERE classroom_id = :classroom
                 AND work_day = :day
               ORDER BY child_id""")
          .bind("classroom", classroom)
          .bind("day", day)
          .map((row, at) -> Map.entry(row.getLong("child_id"), new Kept(
              GroupPlace.of(row.getString("focus")).orElse(GroupPlace.ON_THEIR_OWN), row.getBoolean("by_hand"))))
          .forEach(entry -> kept.put(entry.getKey(), entry.getValue()));
      return kept;
    });
  }

  /** The last day before this one whose groups were kept. */
  public Optional<LocalDate> lastKept(long classroom, LocalDate before) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT MAX(work_day) AS work_day
              FROM day_group
             WHERE classroom_id = :classroom
               AND work_day < :before""")
        .bind("classroom", classroom)
        .bind("before", before)
        .map((row, at) -> Optional.ofNullable(Rows.day(row, "work_day")))
        .one());
  }

  /** Keeps the groups of a day, in place of those kept before; with none, the proposal stands again. */
  public void keep(long classroom, LocalDate day, Map<Long, Kept> groups) {
    database.write(handle -> {
      handle
          .createUpdate("""
              DELETE FROM day_group
               WHERE classroom_id = :classroom
                 AND work_day = :day""")
          .bind("classroom", classroom)
          .bind("day", day)
          .execute();
      groups.forEach((child, kept) -> handle
          .createUpdate("""
              INSERT INTO day_group (classroom_id, work_day, child_id, focus, by_hand)
              VALUES (:classroom, :day, :child, :focus, :byHand)""")
          .bind("classroom", classroom)
          .bind("day", day)
          .bind("child", child)
          .bind("focus", kept.place().id())
          .bind("byHand", kept.byHand())
          .execute());
      return groups.size();
    });
  }
}
