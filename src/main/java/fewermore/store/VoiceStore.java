package fewermore.store;

import fewermore.classroom.AssignedProblem;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The teacher's recordings of problems, and what each tablet can read aloud with. */
public final class VoiceStore {
  private final Database database;

  public VoiceStore(Database database) {
    this.database = database;
  }

  /** A problem of a class. */
  public Optional<AssignedProblem> problem(long classroom, long problem) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id AS problem_id, story, scenario, seed, text_en, text_es, spoken_en, spoken_es
              FROM problem
             WHERE classroom_id = :classroom
               AND id = :problem""")
        .bind("classroom", classroom)
        .bind("problem", problem)
        .map(ProblemStore.PROBLEM)
        .findOne());
  }

  /** Keeps a recording in the place of an older one. @param sound a whole WAV file */
  public void keep(long problem, String language, byte[] sound, Instant now) {
    database.change(handle -> {
      delete(handle, problem, language);
      handle
          .createUpdate("""
              INSERT INTO recording (problem_id, language, sound, made_at)
              VALUES (:problem, :language, :sound, :now)""")
          .bind("problem", problem)
          .bind("language", language)
          .bind("sound", sound)
          .bind("now", Database.utc(now))
          .execute();
    });
  }

  public void delete(long problem, String language) {
    database.change(handle -> delete(handle, problem, language));
  }

  private static void delete(org.jdbi.v3.core.Handle handle, long problem, String language) {
    handle
        .createUpdate("""
            DELETE FROM recording
             WHERE problem_id = :problem
               AND language = :language""")
        .bind("problem", problem)
        .bind("language", language)
        .execute();
  }

  /** The WAV file, if there is one. */
  public Optional<byte[]> recording(long problem, String language) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT sound
              FROM recording
             WHERE problem_id = :problem
               AND language = :language""")
        .bind("problem", problem)
        .bind("language", language)
        .map((row, at) -> row.getBytes("sound"))
        .findOne());
  }

  public boolean recorded(long problem, String language) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT COUNT(*)
              FROM recording
             WHERE problem_id = :problem
               AND language = :language""")
        .bind("problem", problem)
        .bind("language", language)
        .mapTo(Long.class)
        .one() > 0);
  }

  /** What a tablet says it reads aloud with: {@code local}, {@code recorded} or {@code none}. */
  public void say(String sitting, String voice) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE sitting
               SET voice = :voice
             WHERE id = :sitting""")
        .bind("voice", voice)
        .bind("sitting", sitting)
        .execute());
  }

  /** What the tablets of a class's open sittings said, by sitting; those that have not said are left out. */
  public Map<String, String> said(long classroom) {
    Map<String, String> said = new HashMap<>();
    database.read(handle -> handle
        .createQuery("""
            SELECT s.id, s.voice
              FROM sitting s
              JOIN child c ON c.id = s.child_id
             WHERE c.classroom_id = :classroom
               AND s.ended_at IS NULL
               AND s.voice IS NOT NULL
             ORDER BY s.id""")
        .bind("classroom", classroom)
        .map((row, at) -> said.put(row.getString("id"), row.getString("voice")))
        .list());
    return said;
  }
}
