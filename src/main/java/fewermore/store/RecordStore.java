package fewermore.store;

import fewermore.classroom.OverruledMark;
import fewermore.marking.Part;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/** What the teacher adds to a child's record, and all that is kept about one child. */
public final class RecordStore {
  public static final int LONGEST_NOTE = 2000;

  public record Note(long id, LocalDate day, String content) {}

  /** A sentence of a conference page as the teacher wrote it, in the language she wrote it in. */
  public record OwnSentence(String language, String content) {}

  /** One line of all that is kept about a child. @param what the kind of thing; @param about which one; @param content it */
  public record Kept(String what, Instant at, String about, String content) {}

  private final Database database;

  public RecordStore(Database database) {
    this.database = database;
  }

  // ---- notes ----

  /** The teacher's notes on a child, the newest first. */
  public List<Note> notes(long child) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, note_day, content
              FROM note
             WHERE child_id = :child
             ORDER BY note_day DESC, id DESC""")
        .bind("child", child)
        .map((row, at) -> new Note(row.getLong("id"), Rows.day(row, "note_day"), row.getString("content")))
        .list());
  }

  public void note(long child, LocalDate day, String content, Instant now) {
    database.change(handle -> handle
        .createUpdate("""
            INSERT INTO note (child_id, note_day, content, made_at)
            VALUES (:child, :day, :content, :now)""")
        .bind("child", child)
        .bind("day", day)
        .bind("content", content)
        .bind("now", Database.utc(now))
        .execute());
  }

  public void removeNote(long child, long note) {
    database.change(handle -> handle
        .createUpdate("""
            DELETE FROM note
             WHERE id = :note
               AND child_id = :child""")
        .bind("note", note)
        .bind("child", child)
        .execute());
  }

  // ---- chosen work, work with help ----

  /** The problems whose work the teacher chose for a child's conference page, the latest choice first. */
  public List<Long> chosen(long child) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT problem_id
              FROM chosen_work
             WHERE child_id = :child
             ORDER BY made_at DESC, problem_id""")
        .bind("child", child)
        .mapTo(Long.class)
        .list());
  }

  public void choose(long child, long problem, boolean chosen, Instant now) {
    database.change(handle -> {
      handle
          .createUpdate("DELETE FROM chosen_work WHERE child_id = :child AND problem_id = :problem")
          .bind("child", child)
          .bind("problem", problem)
          .execute();
      if (chosen) {
        handle
            .createUpdate("""
                INSERT INTO chosen_work (child_id, problem_id, made_at)
                VALUES (:child, :problem, :now)""")
            .bind("child", child)
            .bind("problem", problem)
            .bind("now", Database.utc(now))
            .execute();
      }
    });
  }

  /** Says that a child's work on a problem was done with help, or that it was not. */
  public void withHelp(long child, long problem, boolean help) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE work
               SET with_help = :help
             WHERE child_id = :child
               AND problem_id = :problem""")
        .bind("help", help)
        .bind("child", child)
        .bind("problem", problem)
        .execute());
  }

  /**
   * Says so of one child of a class, or of all.
   *
   * @param child 0 for every child of the class
   * @return false when there is no such work; then nothing changes
   */
  public boolean withHelp(long classroom, long child, long problem, boolean help) {
    return database.write(handle -> handle
        .createUpdate("""
            UPDATE work
               SET with_help = :help
             WHERE problem_id = :problem
               AND child_id IN (SELECT id FROM child WHERE classroom_id = :classroom AND (:child = 0 OR id = :child))""")
        .bind("help", help)
        .bind("problem", problem)
        .bind("classroom", classroom)
        .bind("child", child)
        .execute()) > 0;
  }

  // ---- conference ----

  /** The teacher's own sentences of a child's conference page, by place. */
  public Map<String, OwnSentence> sentences(long child) {
    return database.read(handle -> {
      Map<String, OwnSentence> sentences = new LinkedHashMap<>();
      handle
          .createQuery("""
              SELECT place, language, content
                FROM conference_sentence
               WHERE child_id = :child
               ORDER BY place""")
          .bind("child", child)
          .map((row, at) -> Map.entry(row.getString("place"),
              new OwnSentence(row.getString("language"), row.getString("content"))))
          .forEach(entry -> sentences.put(entry.getKey(), entry.getValue()));
      return sentences;
    });
  }

  /** Keeps the teacher's sentences; those of {@code removed} are the app's own again. One trip to the disk. */
  public void sentences(long child, Map<String, OwnSentence> own, Set<String> removed, Instant now) {
    database.change(handle -> {
      Set<String> gone = new HashSet<>(removed);
      gone.addAll(own.keySet());
      gone.forEach(place -> handle
          .createUpdate("DELETE FROM conference_sentence WHERE child_id = :child AND place = :place")
          .bind("child", child)
          .bind("place", place)
          .execute());
      own.forEach((place, sentence) -> handle
          .createUpdate("""
              INSERT INTO conference_sentence (child_id, place, language, content, made_at)
              VALUES (:child, :place, :language, :content, :now)""")
          .bind("child", child)
          .bind("place", place)
          .bind("language", sentence.language)
          .bind("content", sentence.content)
          .bind("now", Database.utc(now))
          .execute());
    });
  }

  // ---- a class's days ----

  /** The days each child of a class was there, and those she was marked absent. */
  public DaysThere daysThere(long classroom, ZoneId zone) {
    return database.read(handle -> DaysThere.of(handle, classroom, zone));
  }

  /** How many problems the class was given on each day. */
  public Map<LocalDate, Integer> given(long classroom) {
    return database.read(handle -> {
      Map<LocalDate, Integer> given = new TreeMap<>();
      handle
          .createQuery("""
              SELECT s.work_day, COUNT(*) AS problems
                FROM problem_set s
                JOIN set_problem sp ON sp.set_id = s.id
               WHERE s.classroom_id = :classroom
                 AND s.given = TRUE
                 AND s.only_child IS NULL
               GROUP BY s.work_day
               ORDER BY s.work_day""")
          .bind("classroom", classroom)
          .map((row, at) -> Map.entry(Rows.day(row, "work_day"), row.getInt("problems")))
          .forEach(entry -> given.put(entry.getKey(), entry.getValue()));
      return given;
    });
  }

  /** Every mark the teacher set aside in a class, oldest first. */
  public List<OverruledMark> overruled(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT w.child_id, c.name, r.work_day, w.problem_id, o.part, o.was, o.verdict, o.note, o.made_at
              FROM overrule o
              JOIN revision r ON r.work_id = o.work_id AND r.page = o.page AND r.seq = o.seq
              JOIN work w ON w.id = o.work_id
              JOIN child c ON c.id = w.child_id
             WHERE c.classroom_id = :classroom
             ORDER BY o.id""")
        .bind("classroom", classroom)
        .map((row, at) -> new OverruledMark(row.getLong("child_id"), row.getString("name"), Rows.day(row, "work_day"),
            row.getLong("problem_id"), Part.of(row.getString("part")).orElseThrow(), row.getString("was"),
            row.getString("verdict"), row.getString("note"), Rows.instant(row, "made_at")))
        .list());
  }

  // ---- a family's request ----

  /** Since when a family's request is open, or nothing. */
  public Optional<LocalDate> request(long child) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT request_on
              FROM child
             WHERE id = :child
               AND request_on IS NOT NULL""")
        .bind("child", child)
        .mapTo(LocalDate.class)
        .findOne());
  }

  /** @param since null closes it */
  public void request(long child, LocalDate since) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE child
               SET request_on = :since
             WHERE id = :child""")
        .bind("since", since)
        .bind("child", child)
        .execute());
  }

  /** All that is kept about one child, in order of kind and time; nothing of another child. */
  public List<Kept> everything(long child) {
    return database.read(handle -> {
      List<Kept> kept = new ArrayList<>();
      add(handle, kept, child, "child", """
          SELECT made_at AS at, name AS about, 'picture ' || picture || ', language ' || language AS content
            FROM child
           WHERE id = :child
           ORDER BY id""");
      add(handle, kept, child, "sitting", """
          SELECT s.started_at AS at, t.name AS about, COALESCE(s.ended_why, 'open') AS content
            FROM sitting s
            JOIN tablet t ON t.id = s.tablet_id
           WHERE s.child_id = :child
           ORDER BY s.started_at, s.id""");
      add(handle, kept, child, "work", """
          SELECT r.written_at AS at, r.kind || ', problem ' || CAST(w.problem_id AS VARCHAR(20)) AS about,
                 r.parts AS content
            FROM revision r
            JOIN work w ON w.id = r.work_id
           WHERE w.child_id = :child
           ORDER BY r.written_at, r.work_id, r.page, r.seq""");
      add(handle, kept, child, "problem", """
          SELECT p.made_at AS at, 'problem ' || CAST(p.id AS VARCHAR(20)) AS about, p.text_en AS content
            FROM problem p
           WHERE p.id IN (SELECT problem_id FROM work WHERE child_id = :child)
           ORDER BY p.id""");
      add(handle, kept, child, "mark", """
          SELECT r.written_at AS at, m.part || ', problem ' || CAST(w.problem_id AS VARCHAR(20)) AS about,
                 m.verdict || ' ' || m.notes AS content
            FROM mark m
            JOIN revision r ON r.work_id = m.work_id AND r.page = m.page AND r.seq = m.seq
            JOIN work w ON w.id = m.work_id
           WHERE w.child_id = :child
           ORDER BY r.written_at, m.work_id, m.page, m.seq, m.part""");
      add(handle, kept, child, "with help", """
          SELECT MIN(w.made_at) AS at, 'problem ' || CAST(w.problem_id AS VARCHAR(20)) AS about, 'yes' AS content
            FROM work w
           WHERE w.child_id = :child
             AND w.with_help = TRUE
           GROUP BY w.problem_id
           ORDER BY w.problem_id""");
      add(handle, kept, child, "mark overruled by the teacher", """
          SELECT o.made_at AS at, o.part || ', problem ' || CAST(w.problem_id AS VARCHAR(20)) AS about,
                 o.was || ' became ' || o.verdict || ' ' || o.note AS content
            FROM overrule o
            JOIN work w ON w.id = o.work_id
           WHERE w.child_id = :child
           ORDER BY o.id""");
      add(handle, kept, child, "note", """
          SELECT made_at AS at, CAST(note_day AS VARCHAR(10)) AS about, content
            FROM note
           WHERE child_id = :child
           ORDER BY note_day, id""");
      add(handle, kept, child, "chosen for the conference", """
          SELECT made_at AS at, 'problem ' || CAST(problem_id AS VARCHAR(20)) AS about, 'yes' AS content
            FROM chosen_work
           WHERE child_id = :child
           ORDER BY made_at, problem_id""");
      add(handle, kept, child, "conference sentence of the teacher", """
          SELECT made_at AS at, place AS about, content
            FROM conference_sentence
           WHERE child_id = :child
           ORDER BY place""");
      return kept;
    });
  }

  private static void add(Handle handle, List<Kept> kept, long child, String what, String query) {
    kept.addAll(handle.createQuery(query).bind("child", child)
        .map((row, at) -> new Kept(what, Rows.instant(row, "at"), row.getString("about"), row.getString("content")))
        .list());
  }
}
