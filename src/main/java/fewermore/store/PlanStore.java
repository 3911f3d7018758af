package fewermore.store;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.PlannedSet;
import fewermore.classroom.ProblemSet;
import fewermore.json.Json;
import fewermore.json.StoryJson;
import fewermore.marking.Part;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.story.Comparison;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/** What the teacher does with sets before and after children have them. A set that was given keeps its problems. */
public final class PlanStore {
  /** Most problems in a set, and for one child on one day: what one page of a tablet can hold. */
  public static final int MOST = 10;

  private final Database database;

  public PlanStore(Database database) {
    this.database = database;
  }

  /** The sets of a day, oldest first. */
  public List<PlannedSet> sets(long classroom, LocalDate day) {
    return database.read(handle -> ProblemStore.setsOf(handle, classroom, day).stream()
        .map(set -> planned(handle, set)).toList());
  }

  /** A set of this class. */
  public Optional<PlannedSet> set(long classroom, long set) {
    return database.read(handle -> find(handle, classroom, set));
  }

  /** The sets she keeps and, after them, the newest given ones; newest first. */
  public List<PlannedSet> shelf(long classroom, int most) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id
              FROM problem_set
             WHERE classroom_id = :classroom
               AND (kept = TRUE OR given = TRUE)
             ORDER BY kept DESC, work_day DESC, id DESC
             LIMIT :most""")
        .bind("classroom", classroom)
        .bind("most", most)
        .mapTo(Long.class)
        .list()
        .stream()
        .flatMap(id -> find(handle, classroom, id).stream())
        .toList());
  }

  private static Optional<PlannedSet> find(Handle handle, long classroom, long set) {
    return ProblemStore.setOf(handle, classroom, set).map(found -> planned(handle, found));
  }

  private static PlannedSet planned(Handle handle, ProblemSet set) {
    Map<String, Object> row = handle
        .createQuery("""
            SELECT name, kept
              FROM problem_set
             WHERE id = :set""")
        .bind("set", set.id())
        .map((found, at) -> Map.<String, Object>of("name", found.getString("name"), "kept", found.getBoolean("kept")))
        .one();
    return new PlannedSet(set, (String) row.get("name"), (Boolean) row.get("kept"), childrenOf(handle, set.id()));
  }

  static Set<Long> childrenOf(Handle handle, long set) {
    return new HashSet<>(handle
        .createQuery("""
            SELECT child_id
              FROM set_child
             WHERE set_id = :set
             ORDER BY child_id""")
        .bind("set", set)
        .mapTo(Long.class)
        .list());
  }

  /** Adds problems at the end of a set that is not given. False when there is no room for all or it was given. */
  public boolean add(long classroom, long set, List<NewProblem> problems, Instant now) {
    return database.write(handle -> {
      Optional<PlannedSet> open = open(handle, classroom, set);
      if (open.isEmpty() || open.get().set().problems().size() + problems.size() > MOST) {
        return false;
      }
      int place = nextPlace(handle, set);
      for (NewProblem problem : problems) {
        put(handle, set, place++, ProblemStore.addProblem(handle, classroom, problem, now));
      }
      return true;
    });
  }

  private static Optional<PlannedSet> open(Handle handle, long classroom, long set) {
    return find(handle, classroom, set).filter(found -> !found.given());
  }

  private static int nextPlace(Handle handle, long set) {
    return 1 + handle
        .createQuery("""
            SELECT COALESCE(MAX(place), 0)
              FROM set_problem
             WHERE set_id = :set""")
        .bind("set", set)
        .mapTo(Integer.class)
        .one();
  }

  private static void put(Handle handle, long set, int place, long problem) {
    handle
        .createUpdate("""
            INSERT INTO set_problem (set_id, place, problem_id)
            VALUES (:set, :place, :problem)""")
        .bind("set", set)
        .bind("place", place)
        .bind("problem", problem)
        .execute();
  }

  /** Takes a problem out of a set that is not given. True when it was there. */
  public boolean remove(long classroom, long set, long problem) {
    return database.write(handle -> open(handle, classroom, set).isPresent() && handle
        .createUpdate("""
            DELETE FROM set_problem
             WHERE set_id = :set
               AND problem_id = :problem""")
        .bind("set", set)
        .bind("problem", problem)
        .execute() == 1);
  }

  /** Moves a problem by so many places; it stops at the ends. True when it was there and the set is not given. */
  public boolean move(long classroom, long set, long problem, int by) {
    return database.write(handle -> {
      List<Long> order = open(handle, classroom, set).map(found -> new ArrayList<>(
          found.set().problems().stream().map(AssignedProblem::id).toList())).orElseGet(ArrayList::new);
      int from = order.indexOf(problem);
      if (from < 0) {
        return false;
      }
      order.remove(from);
      order.add(Math.max(0, Math.min(order.size(), from + by)), problem);
      handle.createUpdate("DELETE FROM set_problem WHERE set_id = :set").bind("set", set).execute();
      for (int place = 1; place <= order.size(); place++) {
        put(handle, set, place, order.get(place - 1));
      }
      return true;
    });
  }

  /**
   * What holds for a set: its day, whom it is for, how many tries, what is asked. The day and the children of a set
   * that was given stay.
   *
   * @param children by id, only those of this class count; empty for the whole class
   * @param tries from 1
   */
  public boolean settle(long classroom, long set, LocalDate day, Collection<Long> children, int tries,
      boolean tellLater, Set<Part> asks) {
    return database.write(handle -> {
      Optional<PlannedSet> found = find(handle, classroom, set);
      if (found.isEmpty()) {
        return false;
      }
      boolean given = found.get().given();
      handle
          .createUpdate("""
              UPDATE problem_set
                 SET tries = :tries, tell_later = :later, asks = :asks, work_day = :day
               WHERE id = :set""")
          .bind("tries", tries)
          .bind("later", tellLater)
          .bind("asks", ProblemStore.ids(asks))
          .bind("day", given ? found.get().set().day() : day)
          .bind("set", set)
          .execute();
      if (!given) {
        handle.createUpdate("DELETE FROM set_child WHERE set_id = :set").bind("set", set).execute();
        new HashSet<>(children).forEach(child -> handle
            .createUpdate("""
                INSERT INTO set_child (set_id, child_id)
                SELECT CAST(:set AS BIGINT), id
                  FROM child
                 WHERE id = :child
                   AND classroom_id = :classroom""")
            .bind("set", set)
            .bind("child", child)
            .bind("classroom", classroom)
            .execute());
      }
      return true;
    });
  }

  /** Puts a set among those she keeps, under a name, or takes it from there. */
  public boolean keep(long classroom, long set, boolean kept, String name) {
    return database.write(handle -> handle
        .createUpdate("""
            UPDATE problem_set
               SET kept = :kept, name = :name
             WHERE id = :set
               AND classroom_id = :classroom""")
        .bind("kept", kept)
        .bind("name", name)
        .bind("set", set)
        .bind("classroom", classroom)
        .execute() == 1);
  }

  /**
   * A new set for another day with the same problems, as problems of their own: work on the one is no work on the
   * other.
   *
   * @return the new set's id; empty when there is no such set
   */
  public Optional<Long> copy(long classroom, long set, LocalDate day, Instant now) {
    return database.write(handle -> find(handle, classroom, set).map(from -> {
      long made = ProblemStore.addEmptySet(handle, classroom, day, false, from.set().tries(), from.set().tellLater(),
          from.set().asks(), now);
      int place = 1;
      for (AssignedProblem problem : from.set().problems()) {
        put(handle, made, place++, ProblemStore.addProblem(handle, classroom, NewProblem.of(problem), now));
      }
      return made;
    }));
  }

  /** How many children have handed something in on a problem. */
  public int childrenWithWork(long classroom, long problem) {
    return database.read(handle -> childrenWithWork(handle, classroom, problem));
  }

  private static int childrenWithWork(Handle handle, long classroom, long problem) {
    return handle
        .createQuery("""
            SELECT COUNT(DISTINCT w.child_id)
              FROM work w
              JOIN revision r ON r.work_id = w.id
              JOIN problem p ON p.id = w.problem_id
             WHERE p.id = :problem
               AND p.classroom_id = :classroom
               AND r.kind = 'handed-in'""")
        .bind("problem", problem)
        .bind("classroom", classroom)
        .mapTo(Integer.class)
        .one();
  }

  /** Children with anything on a problem, a draft included: for them it must not change. */
  private static boolean untouched(Handle handle, long problem) {
    return handle
        .createQuery("""
            SELECT COUNT(*)
              FROM work w
              JOIN revision r ON r.work_id = w.id
             WHERE w.problem_id = :problem""")
        .bind("problem", problem)
        .mapTo(Integer.class)
        .one() == 0;
  }

  /**
   * Puts a new version in the place of a problem, given or not. A version with work on it stays, with its work; the
   * children who have worked on it go on seeing it.
   *
   * @return the new version's id; empty when the set has no such problem
   */
  public Optional<Long> newVersion(long classroom, long set, long problem, NewProblem version, Instant now) {
    return database.write(handle -> {
      boolean there = find(handle, classroom, set).stream().flatMap(found -> found.set().problems().stream())
          .anyMatch(each -> each.id() == problem);
      if (!there) {
        return Optional.empty();
      }
      long made = ProblemStore.addProblem(handle, classroom, version, now);
      handle
          .createUpdate("""
              UPDATE problem
                 SET version_of = :problem
               WHERE id = :made""")
          .bind("problem", problem)
          .bind("made", made)
          .execute();
      handle
          .createUpdate("""
              UPDATE set_problem
                 SET problem_id = :made
               WHERE set_id = :set
                 AND problem_id = :problem""")
          .bind("made", made)
          .bind("set", set)
          .bind("problem", problem)
          .execute();
      if (untouched(handle, problem)) {
        handle
            .createUpdate("""
                DELETE FROM work
                 WHERE set_id = :set
                   AND problem_id = :problem""")
            .bind("set", set)
            .bind("problem", problem)
            .execute();
      }
      return Optional.of(made);
    });
  }

  /** The problem as it stands, of this class. */
  public Optional<AssignedProblem> problem(long classroom, long problem) {
    return database.read(handle -> ProblemStore.find(handle, classroom, problem));
  }

  /** The earlier versions of a problem, newest first. */
  public List<AssignedProblem> earlier(long classroom, long problem) {
    return database.read(handle -> {
      List<AssignedProblem> earlier = new ArrayList<>();
      Optional<Long> before = versionBefore(handle, problem);
      while (before.isPresent()) {
        ProblemStore.find(handle, classroom, before.get()).ifPresent(earlier::add);
        before = versionBefore(handle, before.get());
      }
      return earlier;
    });
  }

  static Optional<Long> versionBefore(Handle handle, long problem) {
    return handle
        .createQuery("""
            SELECT version_of
              FROM problem
             WHERE id = :problem
               AND version_of IS NOT NULL""")
        .bind("problem", problem)
        .mapTo(Long.class)
        .findOne();
  }

  /**
   * Takes the text of a problem to mean another story: the same text and numbers, other roles. What was taken before
   * is kept. Marks are not touched here: {@link WorkStore#markProblemAgain} gives them anew.
   *
   * @return false when there is no such problem, or the stories do not have the same numbers
   */
  public boolean setRoles(long classroom, long problem, Comparison story, long teacher, Instant now) {
    return database.write(handle -> {
      Optional<AssignedProblem> there = ProblemStore.find(handle, classroom, problem);
      if (there.isEmpty() || !numbers(there.get().story()).equals(numbers(story))) {
        return false;
      }
      handle
          .createUpdate("""
              INSERT INTO role_change (problem_id, teacher_id, was, made_at)
              VALUES (:problem, :teacher, :was, :now)""")
          .bind("problem", problem)
          .bind("teacher", teacher)
          .bind("was", Json.write(StoryJson.write(there.get().story())))
          .bind("now", Database.utc(now))
          .execute();
      handle
          .createUpdate("""
              UPDATE problem
                 SET story = :story
               WHERE id = :problem""")
          .bind("story", Json.write(StoryJson.write(story)))
          .bind("problem", problem)
          .execute();
      return true;
    });
  }

  /** Every number a text gives, whatever it stands for. */
  private static Map<Integer, Integer> numbers(Comparison story) {
    Map<Integer, Integer> numbers = new HashMap<>();
    story.given().forEach(role -> numbers.merge(story.value(role), 1, Integer::sum));
    story.extras().forEach(extra -> numbers.merge(extra, 1, Integer::sum));
    return numbers;
  }
}
