package fewermore.store;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.ProblemSet;
import fewermore.json.Json;
import fewermore.json.StoryJson;
import fewermore.marking.Part;
import fewermore.problem.Problem;
import fewermore.story.Comparison;
import fewermore.wording.Sentence;
import fewermore.wording.WrittenText;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Problems and the sets they are given in. A problem is written once and never changed. */
public final class ProblemStore {
  /** A problem to be kept: all but its id. */
  public record NewProblem(
      Comparison story, String scenario, long seed, List<String> sentences, List<String> spanish,
      List<String> spoken, List<String> spokenSpanish) {

    /** A problem that is read aloud as it is written. */
    public NewProblem(
        Comparison story, String scenario, long seed, List<String> sentences, List<String> spanish) {
      this(story, scenario, seed, sentences, spanish, sentences, spanish);
    }

    public static NewProblem of(Problem problem) {
      return new NewProblem(problem.story(), problem.scenario() == null ? "" : problem.scenario(), problem.seed(),
          texts(problem.english(), Sentence::text), texts(problem.spanish(), Sentence::text),
          texts(problem.english(), Sentence::forSpeech), texts(problem.spanish(), Sentence::forSpeech));
    }

    /** The same problem once more. */
    static NewProblem of(AssignedProblem problem) {
      return new NewProblem(problem.story(), problem.scenario(), problem.seed(), problem.sentences(),
          problem.spanish(), problem.spoken(), problem.spokenSpanish());
    }

    private static List<String> texts(WrittenText text, Function<Sentence, String> of) {
      return text == null ? List.of() : text.sentences().stream().map(of).toList();
    }
  }

  private record SetRow(
      long id, LocalDate day, boolean given, int tries, boolean tellLater, Set<Part> asks) {}

  private static final RowMapper<SetRow> SET = (row, at) -> new SetRow(
      row.getLong("id"), Rows.day(row, "work_day"), row.getBoolean("given"), row.getInt("tries"),
      row.getBoolean("tell_later"), parts(row.getString("asks")));

  static final RowMapper<AssignedProblem> PROBLEM = (row, at) -> new AssignedProblem(
      row.getLong("problem_id"), StoryJson.read(Json.read(row.getString("story"))), row.getString("scenario"),
      row.getLong("seed"), lines(row.getString("text_en")), lines(row.getString("text_es")), lines(row.getString("spoken_en")),
      lines(row.getString("spoken_es")));

  private final Database database;

  public ProblemStore(Database database) {
    this.database = database;
  }

  /** Keeps a new set with its problems in this order. */
  public ProblemSet addSet(
      long classroom, LocalDate day, boolean given, int tries, boolean tellLater, Set<Part> asks,
      List<NewProblem> problems, Instant now) {
    return database.write(handle -> {
      long set = addEmptySet(handle, classroom, day, given, tries, tellLater, asks, now);
      for (int place = 1; place <= problems.size(); place++) {
        long problem = addProblem(handle, classroom, problems.get(place - 1), now);
        handle
            .createUpdate("""
                INSERT INTO set_problem (set_id, place, problem_id)
                VALUES (:set, :place, :problem)""")
            .bind("set", set)
            .bind("place", place)
            .bind("problem", problem)
            .execute();
      }
      return new ProblemSet(set, classroom, day, given, tries, tellLater, asks, problemsOf(handle, set));
    });
  }

  static long addEmptySet(Handle handle, long classroom, LocalDate day, boolean given, int tries, boolean tellLater,
      Set<Part> asks, Instant now) {
    return handle
        .createUpdate("""
            INSERT INTO problem_set (classroom_id, work_day, given, tries, tell_later, asks, made_at)
            VALUES (:classroom, :day, :given, :tries, :later, :asks, :now)""")
        .bind("classroom", classroom)
        .bind("day", day)
        .bind("given", given)
        .bind("tries", tries)
        .bind("later", tellLater)
        .bind("asks", ids(asks))
        .bind("now", Database.utc(now))
        .executeAndReturnGeneratedKeys("id")
        .mapTo(Long.class)
        .one();
  }

  static long addProblem(Handle handle, long classroom, NewProblem problem, Instant now) {
    return handle
        .createUpdate("""
            INSERT INTO problem (classroom_id, story, scenario, seed, text_en, text_es, spoken_en, spoken_es, made_at)
            VALUES (:classroom, :story, :scenario, :seed, :en, :es, :spokenEn, :spokenEs, :now)""")
        .bind("classroom", classroom)
        .bind("story", Json.write(StoryJson.write(problem.story())))
        .bind("scenario", problem.scenario())
        .bind("seed", problem.seed())
        .bind("en", String.join("\n", problem.sentences()))
        .bind("es", String.join("\n", problem.spanish()))
        .bind("spokenEn", String.join("\n", problem.spoken()))
        .bind("spokenEs", String.join("\n", problem.spokenSpanish()))
        .bind("now", Database.utc(now))
        .executeAndReturnGeneratedKeys("id")
        .mapTo(Long.class)
        .one();
  }

  /** The sets of a day, given or not, oldest first. */
  public List<ProblemSet> sets(long classroom, LocalDate day) {
    return database.read(handle -> setsOf(handle, classroom, day));
  }

  /** The sets of a day that children see. */
  public List<ProblemSet> given(long classroom, LocalDate day) {
    return sets(classroom, day).stream().filter(ProblemSet::given).toList();
  }

  /** A set of this class. */
  public Optional<ProblemSet> set(long classroom, long set) {
    return database.read(handle -> setOf(handle, classroom, set));
  }

  static Optional<ProblemSet> setOf(Handle handle, long classroom, long set) {
    return handle
        .createQuery("""
            SELECT id, work_day, given, tries, tell_later, asks
              FROM problem_set
             WHERE classroom_id = :classroom
               AND id = :set""")
        .bind("classroom", classroom)
        .bind("set", set)
        .map(SET)
        .findOne()
        .map(row -> whole(handle, classroom, row));
  }

  /** A problem of this class. */
  static Optional<AssignedProblem> find(Handle handle, long classroom, long problem) {
    return handle
        .createQuery("""
            SELECT p.id AS problem_id, p.story, p.scenario, p.seed, p.text_en, p.text_es,
                   p.spoken_en, p.spoken_es
              FROM problem p
             WHERE p.id = :problem
               AND p.classroom_id = :classroom""")
        .bind("problem", problem)
        .bind("classroom", classroom)
        .map(PROBLEM)
        .findOne();
  }

  static List<ProblemSet> setsOf(Handle handle, long classroom, LocalDate day) {
    return handle
        .createQuery("""
            SELECT id, work_day, given, tries, tell_later, asks
              FROM problem_set
             WHERE classroom_id = :classroom
               AND work_day = :day
               AND only_child IS NULL
             ORDER BY id""")
        .bind("classroom", classroom)
        .bind("day", day)
        .map(SET)
        .list()
        .stream()
        .map(row -> whole(handle, classroom, row))
        .toList();
  }

  /** The problems one child took on that day beyond what was given to all, oldest first. */
  static List<ProblemSet> moreOf(Handle handle, long classroom, long child, LocalDate day) {
    return handle
        .createQuery("""
            SELECT id, work_day, given, tries, tell_later, asks
              FROM problem_set
             WHERE classroom_id = :classroom
               AND work_day = :day
               AND only_child = :child
             ORDER BY id""")
        .bind("classroom", classroom)
        .bind("day", day)
        .bind("child", child)
        .map(SET)
        .list()
        .stream()
        .map(row -> whole(handle, classroom, row))
        .toList();
  }

  /** The problems one child took on that day beyond what was given to all. */
  public List<ProblemSet> more(long classroom, long child, LocalDate day) {
    return database.read(handle -> moreOf(handle, classroom, child, day));
  }

  /** Gives one child one problem more. */
  public void addForOne(
      long classroom, long child, LocalDate day, int tries, boolean tellLater, Set<Part> asks, NewProblem problem,
      Instant now) {
    database.change(handle -> {
      long set = handle
          .createUpdate("""
              INSERT INTO problem_set (classroom_id, work_day, given, tries, tell_later, asks, made_at, only_child)
              VALUES (:classroom, :day, TRUE, :tries, :later, :asks, :now, :child)""")
          .bind("classroom", classroom)
          .bind("day", day)
          .bind("tries", tries)
          .bind("later", tellLater)
          .bind("asks", ids(asks))
          .bind("now", Database.utc(now))
          .bind("child", child)
          .executeAndReturnGeneratedKeys("id")
          .mapTo(Long.class)
          .one();
      handle
          .createUpdate("""
              INSERT INTO set_problem (set_id, place, problem_id)
              VALUES (:set, 1, :problem)""")
          .bind("set", set)
          .bind("problem", addProblem(handle, classroom, problem, now))
          .execute();
    });
  }

  /** The days before {@code day}, {@code back} days at most, on which the class was given problems; newest first. */
  static List<LocalDate> daysGiven(Handle handle, long classroom, LocalDate day, int back) {
    return handle
        .createQuery("""
            SELECT DISTINCT work_day
              FROM problem_set
             WHERE classroom_id = :classroom
               AND given = TRUE
               AND only_child IS NULL
               AND work_day < :day
               AND work_day >= :from
             ORDER BY work_day DESC""")
        .bind("classroom", classroom)
        .bind("day", day)
        .bind("from", day.minusDays(back))
        .mapTo(LocalDate.class)
        .list();
  }

  private static ProblemSet whole(Handle handle, long classroom, SetRow row) {
    return new ProblemSet(row.id, classroom, row.day, row.given, row.tries, row.tellLater, row.asks,
        problemsOf(handle, row.id));
  }

  private static List<AssignedProblem> problemsOf(Handle handle, long set) {
    return handle
        .createQuery("""
            SELECT p.id AS problem_id, p.story, p.scenario, p.seed, p.text_en, p.text_es,
                   p.spoken_en, p.spoken_es
              FROM set_problem sp
              JOIN problem p ON p.id = sp.problem_id
             WHERE sp.set_id = :set
             ORDER BY sp.place""")
        .bind("set", set)
        .map(PROBLEM)
        .list();
  }

  /** Puts another problem in the place of one, in a set not yet given. True when it was there. */
  public boolean replace(long classroom, long set, long problem, NewProblem other, Instant now) {
    return database.write(handle -> {
      boolean open = handle
          .createQuery("""
              SELECT COUNT(*)
                FROM problem_set s
                JOIN set_problem sp ON sp.set_id = s.id
               WHERE s.id = :set
                 AND s.classroom_id = :classroom
                 AND s.given = FALSE
                 AND sp.problem_id = :problem""")
          .bind("set", set)
          .bind("classroom", classroom)
          .bind("problem", problem)
          .mapTo(Long.class)
          .one() == 1;
      if (open) {
        handle
            .createUpdate("""
                UPDATE set_problem
                   SET problem_id = :other
                 WHERE set_id = :set
                   AND problem_id = :problem""")
            .bind("other", addProblem(handle, classroom, other, now))
            .bind("set", set)
            .bind("problem", problem)
            .execute();
      }
      return open;
    });
  }

  /** Gives a set to the class. True when it was this class's and not given before. */
  public boolean give(long classroom, long set) {
    return database.write(handle -> handle
        .createUpdate("""
            UPDATE problem_set
               SET given = TRUE
             WHERE id = :set
               AND classroom_id = :classroom
               AND given = FALSE""")
        .bind("set", set)
        .bind("classroom", classroom)
        .execute() == 1);
  }

  /** Puts a set that was not given away. True when it was there. */
  public boolean putAway(long classroom, long set) {
    return database.write(handle -> {
      boolean open = handle
          .createQuery("""
              SELECT COUNT(*)
                FROM problem_set
               WHERE id = :set
                 AND classroom_id = :classroom
                 AND given = FALSE""")
          .bind("set", set)
          .bind("classroom", classroom)
          .mapTo(Long.class)
          .one() == 1;
      if (open) {
        handle.createUpdate("DELETE FROM set_problem WHERE set_id = :set").bind("set", set).execute();
        handle.createUpdate("DELETE FROM set_child WHERE set_id = :set").bind("set", set).execute();
        handle.createUpdate("DELETE FROM problem_set WHERE id = :set").bind("set", set).execute();
      }
      return open;
    });
  }

  static String ids(Set<Part> parts) {
    return parts.stream().sorted(Comparator.naturalOrder()).map(Part::id).collect(Collectors.joining(" "));
  }

  private static Set<Part> parts(String ids) {
    return Stream.of(ids.split(" ")).flatMap(id -> Part.of(id).stream()).collect(Collectors.toSet());
  }

  static List<String> lines(String text) {
    return text == null || text.isEmpty() ? List.of() : new ArrayList<>(List.of(text.split("\n")));
  }
}
