package fewermore.store;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.HandIn;
import fewermore.classroom.Overrule;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.SentItem;
import fewermore.json.Json;
import fewermore.json.StoryJson;
import fewermore.json.WorkJson;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import fewermore.wording.TeachersSpanish;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongConsumer;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** What children sent, the marks it got, and what the teacher overruled. */
public final class WorkStore {
  private static final Logger LOG = System.getLogger(WorkStore.class.getName());

  /** What became of an item a tablet sent. */
  public enum Fate {
    TOOK,
    UNKNOWN
  }

  /** How far a work is: what the page of a sitting is filled from. */
  public record State(
      Work newest, Instant newestAt, boolean newestHandedIn, int handedIn, HandIn lastHandIn) {}

  private record Place(String sitting, long child, Comparison story, Instant started, boolean tellLater,
      ZoneId zone, Instant ended, long teacher) {}

  record Key(String work, String page, int seq) {}

  private static final Instant FIRST_DAY = Instant.EPOCH;

  private final Database database;
  private final Object keeping = new Object();
  private KeptPieces kept;

  public WorkStore(Database database) {
    this.database = database;
  }

  /**
   * Keeps what a sitting sent, and marks what was handed in. When this returns it is on disk. The same item
   * again changes nothing; the first copy is kept.
   *
   * @return what became of each item, in order
   * @throws NotOnDisk when it may not be on disk: acknowledge nothing
   */
  public List<Fate> keep(String sitting, List<SentItem> items, Instant arrived) {
    return database.write(works(items), handle -> keep(handle, sitting, items, arrived, true));
  }

  /** {@link #keep} for work typed from paper: the child saw no sign on it, so none is noted as told. */
  public List<Fate> keepTyped(String sitting, List<SentItem> items, Instant arrived) {
    return database.write(works(items), handle -> keep(handle, sitting, items, arrived, false));
  }

  private static Set<String> works(List<SentItem> items) {
    return items.stream().map(SentItem::work).collect(Collectors.toSet());
  }

  /** {@link #keep} for many sittings at once: one trip to the disk for all. */
  public void keepAll(Map<String, List<SentItem>> bySitting) {
    database.change(handle -> bySitting.forEach((sitting, items) -> items.forEach(item ->
        keep(handle, sitting, List.of(item), item.written(), true))));
  }

  private static List<Fate> keep(
      Handle handle, String sitting, List<SentItem> items, Instant arrived, boolean seesSigns) {
    List<Fate> fates = new ArrayList<>();
    for (SentItem item : items) {
      Optional<Place> place = place(handle, item.work()).filter(found -> found.sitting.equals(sitting));
      fates.add(place.isPresent() ? Fate.TOOK : Fate.UNKNOWN);
      place.ifPresent(found -> keep(handle, found, item, arrived, seesSigns));
    }
    return fates;
  }

  private static void keep(Handle handle, Place place, SentItem item, Instant arrived, boolean seesSigns) {
    if (item.kind() == SentItem.Kind.DRAFT && newerIsThere(handle, item)) {
      return;
    }
    Marks marks = item.kind() == SentItem.Kind.HANDED_IN ? Marker.mark(place.story, item.parts(), SpanishStore.of(handle, place.teacher)) : null;
    boolean prompted = seesSigns && marks != null && Signs.of(marks, place.tellLater).containsValue(Sign.LOOK_AGAIN);
    String parts = Json.write(WorkJson.write(item.parts()));
    Instant written = afterEarlierOnItsPage(handle, item);
    // The day is the clock's; the order is kept even where the clock was set back.
    LocalDate day = (item.written().isAfter(arrived) ? arrived : item.written()).atZone(place.zone).toLocalDate();
    boolean late = day.isAfter(place.started.atZone(place.zone).toLocalDate()) || place.ended != null && arrived.isAfter(place.ended);
    int added = handle
        .createUpdate("""
            INSERT INTO revision (work_id, page, seq, kind, parts, written_at, arrived_at, work_day,
                                  approximate, late, told_at)
            VALUES (:work, :page, :seq, :kind, :parts, :written, :arrived, :day, :approximate, :late, :told)
                ON CONFLICT DO NOTHING""")
        .bind("work", item.work())
        .bind("page", item.page())
        .bind("seq", item.seq())
        .bind("kind", item.kind().id())
        .bind("parts", parts)
        .bind("written", Database.utc(written))
        .bind("arrived", Database.utc(arrived))
        .bind("day", day)
        .bind("approximate", item.approximate())
        .bind("late", late)
        .bind("told", prompted ? Database.utc(arrived) : null)
        .execute();
    if (added == 0) {
      sayIfOther(handle, item, parts);
      return;
    }
    if (item.kind() == SentItem.Kind.DRAFT) {
      forgetOlderDrafts(handle, item);
    }
    if (marks != null) {
      keepMarks(handle, new Key(item.work(), item.page(), item.seq()), marks);
    }
  }

  private static Instant afterEarlierOnItsPage(Handle handle, SentItem item) {
    return handle
        .createQuery("""
            SELECT MAX(written_at) AS at
              FROM revision
             WHERE work_id = :work
               AND page = :page
               AND seq < :seq""")
        .bind("work", item.work())
        .bind("page", item.page())
        .bind("seq", item.seq())
        .map((row, at) -> Optional.ofNullable(Rows.instant(row, "at")))
        .one()
        .filter(before -> !item.written().isAfter(before))
        .map(before -> before.plusMillis(1))
        .orElse(item.written());
  }

  private static Optional<Place> place(Handle handle, String work) {
    return handle
        .createQuery("""
            SELECT w.sitting_id, w.child_id, p.story, si.started_at, s.tell_later, k.time_zone, si.ended_at, k.teacher_id
              FROM work w
              JOIN problem p ON p.id = w.problem_id
              JOIN problem_set s ON s.id = w.set_id
              JOIN classroom k ON k.id = s.classroom_id
              JOIN sitting si ON si.id = w.sitting_id
             WHERE w.id = :work""")
        .bind("work", work)
        .map((row, at) -> new Place(row.getString("sitting_id"), row.getLong("child_id"),
            StoryJson.read(Json.read(row.getString("story"))), Rows.instant(row, "started_at"),
            row.getBoolean("tell_later"), ZoneId.of(row.getString("time_zone")), Rows.instant(row, "ended_at"),
            row.getLong("teacher_id")))
        .findOne();
  }

  private static boolean newerIsThere(Handle handle, SentItem item) {
    return handle
        .createQuery("""
            SELECT COUNT(*)
              FROM revision
             WHERE work_id = :work
               AND page = :page
               AND seq > :seq
               AND kind IN ('draft', 'handed-in')""")
        .bind("work", item.work())
        .bind("page", item.page())
        .bind("seq", item.seq())
        .mapTo(Long.class)
        .one() > 0;
  }

  private static void forgetOlderDrafts(Handle handle, SentItem item) {
    handle
        .createUpdate("""
            DELETE FROM revision
             WHERE work_id = :work
               AND page = :page
               AND seq < :seq
               AND kind = 'draft'""")
        .bind("work", item.work())
        .bind("page", item.page())
        .bind("seq", item.seq())
        .execute();
  }

  private static void sayIfOther(Handle handle, SentItem item, String parts) {
    boolean same = handle
        .createQuery("""
            SELECT parts
              FROM revision
             WHERE work_id = :work
               AND page = :page
               AND seq = :seq""")
        .bind("work", item.work())
        .bind("page", item.page())
        .bind("seq", item.seq())
        .mapTo(String.class)
        .findOne()
        .filter(parts::equals)
        .isPresent();
    if (!same) {
      LOG.log(Level.WARNING, "a tablet used one number for two different pieces of work; the first is kept");
    }
  }

  static void keepMarks(Handle handle, Key key, Marks marks) {
    for (MarkRows.Row row : MarkRows.of(marks)) {
      handle
          .createUpdate("""
              INSERT INTO mark (work_id, page, seq, part, verdict, notes, rules)
              VALUES (:work, :page, :seq, :part, :verdict, :notes, :rules)""")
          .bind("work", key.work)
          .bind("page", key.page)
          .bind("seq", key.seq)
          .bind("part", row.part().id())
          .bind("verdict", row.verdict())
          .bind("notes", row.notes())
          .bind("rules", Marker.VERSION)
          .execute();
    }
  }

  /** One hand-in with all that is needed to tell the tablet about it. */
  public record Receipt(
      Comparison story, Work parts, Marks marks, int triesLeft, boolean tellLater, String language, long classroom) {}

  /** What was handed in under a number: the copy that was kept. */
  public Optional<Receipt> receipt(String work, String page, int seq) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT p.story, r.parts, s.tries, s.tell_later, c.language, c.classroom_id, k.teacher_id,
                   (SELECT COUNT(*)
                      FROM revision r2
                      JOIN work w2 ON w2.id = r2.work_id
                     WHERE w2.child_id = w.child_id
                       AND w2.problem_id = w.problem_id
                       AND r2.kind = 'handed-in') AS handed_in
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN problem p ON p.id = w.problem_id
              JOIN problem_set s ON s.id = w.set_id
              JOIN child c ON c.id = w.child_id
              JOIN classroom k ON k.id = c.classroom_id
             WHERE r.work_id = :work
               AND r.page = :page
               AND r.seq = :seq
               AND r.kind = 'handed-in'""")
        .bind("work", work)
        .bind("page", page)
        .bind("seq", seq)
        .map((row, at) -> {
          Comparison story = StoryJson.read(Json.read(row.getString("story")));
          Work parts = work(row);
          return new Receipt(story, parts, Marker.mark(story, parts, SpanishStore.of(handle, row.getLong("teacher_id"))),
              Math.max(0, row.getInt("tries") - row.getInt("handed_in")), row.getBoolean("tell_later"),
              row.getString("language"), row.getLong("classroom_id"));
        })
        .findOne());
  }

  /** The newest hand-in of each work of a sitting, as (work, page, seq). */
  public List<SentName> newestHandIns(String sitting) {
    Map<String, SentName> newest = new LinkedHashMap<>();
    database.read(handle -> handle
        .createQuery("""
            SELECT r.work_id, r.page, r.seq
              FROM revision r
              JOIN work w ON w.id = r.work_id
             WHERE w.sitting_id = :sitting
               AND r.kind = 'handed-in'
             ORDER BY r.written_at, r.arrived_at, r.page, r.seq""")
        .bind("sitting", sitting)
        .map((row, at) -> new SentName(row.getString("work_id"), row.getString("page"), row.getInt("seq")))
        .list()).forEach(name -> newest.put(name.work(), name));
    return List.copyOf(newest.values());
  }

  /** What names an item for ever. */
  public record SentName(String work, String page, int seq) {}

  /** How far a child is on a problem of a set, from all her sittings; empty parts where nothing was sent. */
  public State state(long child, long problem) {
    return database.read(handle -> {
      List<HandIn> handIns = handIns(handle, """
           WHERE w.child_id = :child
             AND w.problem_id = :problem
          """, Map.of("child", child, "problem", problem)).values().stream().flatMap(List::stream).toList();
      Optional<Map.Entry<Instant, Work>> draft = handle
          .createQuery("""
              SELECT r.written_at, r.parts
                FROM revision r
                JOIN work w ON w.id = r.work_id
               WHERE w.child_id = :child
                 AND w.problem_id = :problem
                 AND r.kind = 'draft'
               ORDER BY r.written_at DESC, r.arrived_at DESC, r.seq DESC
               LIMIT 1""")
          .bind("child", child)
          .bind("problem", problem)
          .map((row, at) -> Map.entry(Rows.instant(row, "written_at"), work(row)))
          .findOne();
      HandIn last = handIns.isEmpty() ? null : handIns.get(handIns.size() - 1);
      boolean draftIsNewer = draft.isPresent() && (last == null || draft.get().getKey().isAfter(last.at()));
      Work newest = draftIsNewer ? draft.get().getValue() : last == null ? null : last.parts();
      Instant newestAt = draftIsNewer ? draft.get().getKey() : last == null ? null : last.at();
      return new State(newest, newestAt, !draftIsNewer && last != null, handIns.size(), last);
    });
  }

  /** Moved work is no evidence before the teacher has said that it is right. */
  private static final String COUNTS = """
       WHERE w.child_id = :child
         AND w.made_at >= :since
         AND NOT EXISTS (SELECT 1
                           FROM moved mv
                          WHERE mv.work_id = w.id
                            AND mv.state = 'waiting')
      """;

  /**
   * All hand-ins of a class, by child and problem, children in the order of the list; without moved work that waits
   * for the teacher's word.
   */
  public List<PieceOfWork> pieces(long classroom) {
    return read(new KeptPieces(classroom, FIRST_DAY), database.changes().now());
  }

  /**
   * The same, of works begun at that moment or later. What was read last is kept: after a hand-in only that child's work
   * is read again, after anything else all.
   */
  public List<PieceOfWork> pieces(long classroom, Instant since) {
    synchronized (keeping) {
      if (kept == null || kept.classroom != classroom || !kept.since.equals(since)) {
        kept = new KeptPieces(classroom, since);
      }
      return read(kept, database.changes().now());
    }
  }

  /** All hand-ins of one child of a class, as {@link #pieces(long)} gives them. */
  public List<PieceOfWork> pieces(long classroom, Child child) {
    return database.read(handle -> pieces(handle, child, FIRST_DAY, problems(handle, classroom)));
  }

  /** What was read of a class, and as of which change. */
  private static final class KeptPieces {
    private final long classroom;
    private final Instant since;
    private final Map<Child, List<PieceOfWork>> byChild = new LinkedHashMap<>();
    private Map<Long, AssignedProblem> problems = Map.of();
    private long asOf = -1;

    private KeptPieces(long classroom, Instant since) {
      this.classroom = classroom;
      this.since = since;
    }

    private List<PieceOfWork> all() {
      return byChild.values().stream().flatMap(List::stream).toList();
    }
  }

  private List<PieceOfWork> read(KeptPieces of, long now) {
    Optional<Set<String>> touched = of.asOf < 0 ? Optional.empty() : database.changes().since(of.asOf);
    database.read(handle -> {
      if (touched.isEmpty()) {
        of.byChild.clear();
        of.problems = problems(handle, of.classroom);
        ClassStore.children(handle, of.classroom).forEach(child -> of.byChild.put(child, List.of()));
      }
      Set<Long> again = touched.map(works -> childrenOf(handle, works)).orElse(Set.of());
      of.byChild.replaceAll((child, pieces) -> touched.isEmpty() || again.contains(child.id())
          ? pieces(handle, child, of.since, of.problems) : pieces);
      return null;
    });
    of.asOf = now;
    return of.all();
  }

  private static Set<Long> childrenOf(Handle handle, Set<String> works) {
    return works.isEmpty() ? Set.of() : handle
        .createQuery("SELECT DISTINCT child_id FROM work WHERE id IN (<works>) ORDER BY child_id")
        .bindList("works", List.copyOf(works))
        .mapTo(Long.class)
        .collect(Collectors.toSet());
  }

  private static List<PieceOfWork> pieces(
      Handle handle, Child child, Instant since, Map<Long, AssignedProblem> problems) {
    Set<List<Long>> helped = helped(handle, child.id());
    List<PieceOfWork> pieces = new ArrayList<>();
    handIns(handle, COUNTS, Map.of("child", child.id(), "since", Database.utc(since))).forEach((key, tries) ->
        pieces.add(new PieceOfWork(child, problems.get(key.get(1)), tries, helped.contains(key))));
    return List.copyOf(pieces);
  }

  /** All that a child of this class handed in on the problem a work belongs to. */
  public Optional<PieceOfWork> piece(long classroom, String work) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT w.child_id, w.problem_id
              FROM work w
              JOIN child c ON c.id = w.child_id
             WHERE w.id = :work
               AND c.classroom_id = :classroom""")
        .bind("work", work)
        .bind("classroom", classroom)
        .map((row, at) -> List.of(row.getLong("child_id"), row.getLong("problem_id")))
        .findOne()
        .flatMap(key -> {
          List<HandIn> tries = handIns(handle, """
               WHERE w.child_id = :child
                 AND w.problem_id = :problem
              """, Map.of("child", key.get(0), "problem", key.get(1))).getOrDefault(key, List.of());
          Optional<Child> child = ClassStore.children(handle, classroom).stream()
              .filter(each -> each.id() == key.get(0)).findFirst();
          return tries.isEmpty() ? Optional.empty()
              : child.map(each -> new PieceOfWork(each, problems(handle, classroom).get(key.get(1)), tries,
                  helped(handle, key.get(0)).contains(key)));
        }));
  }

  /** All that one child handed in, there or gone from the class. */
  public List<PieceOfWork> piecesOf(Child child) {
    return database.read(handle -> {
      Map<Long, AssignedProblem> problems = problems(handle, child.classroom());
      Set<List<Long>> helped = helped(handle, child.id());
      List<PieceOfWork> pieces = new ArrayList<>();
      handIns(handle, " WHERE w.child_id = :child\n", Map.of("child", child.id())).forEach((key, tries) ->
          pieces.add(new PieceOfWork(child, problems.get(key.get(1)), tries, helped.contains(key))));
      return pieces;
    });
  }

  /** (child, problem) of the work that a child did with help. */
  private static Set<List<Long>> helped(Handle handle, long child) {
    return new HashSet<>(handle
        .createQuery("""
            SELECT DISTINCT w.child_id, w.problem_id
              FROM work w
             WHERE w.child_id = :child
               AND w.with_help = TRUE
             ORDER BY w.child_id, w.problem_id""")
        .bind("child", child)
        .map((row, at) -> List.of(row.getLong("child_id"), row.getLong("problem_id")))
        .list());
  }

  private static Map<Long, AssignedProblem> problems(Handle handle, long classroom) {
    Map<Long, AssignedProblem> problems = new HashMap<>();
    handle
        .createQuery("""
            SELECT id AS problem_id, story, scenario, seed, text_en, text_es, spoken_en, spoken_es
              FROM problem
             WHERE classroom_id = :classroom
             ORDER BY id""")
        .bind("classroom", classroom)
        .map(ProblemStore.PROBLEM)
        .forEach(problem -> problems.put(problem.id(), problem));
    return problems;
  }

  /** Hand-ins by (child, problem), in the order they were written. */
  private static Map<List<Long>, List<HandIn>> handIns(Handle handle, String where, Map<String, ?> ids) {
    Map<Key, List<MarkRows.Row>> marks = new HashMap<>();
    handle
        .createQuery("""
            SELECT m.work_id, m.page, m.seq, m.part, m.verdict, m.notes
              FROM mark m
              JOIN work w ON w.id = m.work_id
            """ + where)
        .bindMap(ids)
        .map((row, at) -> Map.entry(key(row), new MarkRows.Row(
            Part.of(row.getString("part")).orElseThrow(), row.getString("verdict"), row.getString("notes"))))
        .forEach(entry -> marks.computeIfAbsent(entry.getKey(), key -> new ArrayList<>()).add(entry.getValue()));
    Map<Key, Map<Part, String>> overruled = new HashMap<>();
    handle
        .createQuery("""
            SELECT o.work_id, o.page, o.seq, o.part, o.verdict
              FROM overrule o
              JOIN work w ON w.id = o.work_id
            """ + where + " ORDER BY o.id")
        .bindMap(ids)
        .map((row, at) -> Map.entry(key(row),
            Map.entry(Part.of(row.getString("part")).orElseThrow(), row.getString("verdict"))))
        .forEach(entry -> overruled.computeIfAbsent(entry.getKey(), key -> new EnumMap<>(Part.class))
            .put(entry.getValue().getKey(), entry.getValue().getValue()));
    Map<List<Long>, List<HandIn>> handIns = new LinkedHashMap<>();
    handle
        .createQuery("""
            SELECT r.work_id, r.page, r.seq, r.parts, r.written_at, r.work_day, r.late, r.told_at,
                   w.child_id, w.problem_id, w.sitting_id, t.name AS tablet_name
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN sitting s ON s.id = w.sitting_id
              JOIN tablet t ON t.id = s.tablet_id
            """ + where + """
               AND r.kind = 'handed-in'
             ORDER BY r.written_at, r.arrived_at, r.page, r.seq, r.work_id""")
        .bindMap(ids)
        .map((row, at) -> {
          Key key = key(row);
          Work parts = work(row);
          return Map.entry(List.of(row.getLong("child_id"), row.getLong("problem_id")),
              new HandIn(key.work, key.page, key.seq, Rows.instant(row, "written_at"), Rows.day(row, "work_day"),
                  row.getString("sitting_id"), row.getString("tablet_name"), row.getBoolean("late"),
                  Rows.instant(row, "told_at"), parts,
                  MarkRows.marks(marks.getOrDefault(key, List.of()), overruled.getOrDefault(key, Map.of()),
                      parts.equation())));
        })
        .forEach(entry -> handIns.computeIfAbsent(entry.getKey(), key -> new ArrayList<>()).add(entry.getValue()));
    handIns.replaceAll((key, tries) -> inOrder(tries));
    return handIns;
  }

  /**
   * Inside a page the numbers say the order, between pages the time. A request that stuck on its way makes its work seem
   * later than it was: what has a higher number is never before it.
   */
  private static List<HandIn> inOrder(List<HandIn> byTime) {
    if (byTime.size() < 2) {
      return byTime;
    }
    List<HandIn> byNumber = new ArrayList<>(byTime);
    byNumber.sort(Comparator.comparing(HandIn::work).thenComparing(HandIn::page).thenComparingInt(HandIn::seq));
    Map<HandIn, Instant> notBefore = new IdentityHashMap<>();
    HandIn before = null;
    for (HandIn each : byNumber) {
      boolean samePage = before != null && before.work().equals(each.work()) && before.page().equals(each.page());
      Instant earliest = samePage ? notBefore.get(before) : each.at();
      notBefore.put(each, each.at().isBefore(earliest) ? earliest : each.at());
      before = each;
    }
    List<HandIn> ordered = new ArrayList<>(byNumber);
    Map<HandIn, Integer> place = new IdentityHashMap<>();
    byTime.forEach(each -> place.put(each, place.size()));
    ordered.sort(Comparator.comparing((HandIn each) -> notBefore.get(each)).thenComparing((one, other) ->
        one.work().equals(other.work()) && one.page().equals(other.page())
            ? Integer.compare(one.seq(), other.seq()) : Integer.compare(place.get(one), place.get(other))));
    return ordered;
  }

  private static Key key(ResultSet row) throws SQLException {
    return new Key(row.getString("work_id"), row.getString("page"), row.getInt("seq"));
  }

  private static Work work(ResultSet row) throws SQLException {
    return WorkJson.read(Json.read(row.getString("parts")));
  }

  /**
   * Sets a mark aside. The app's own stays in its row; the latest of the teacher's counts.
   *
   * @return false when this class has no such hand-in or it has no mark for that part
   */
  public boolean overrule(
      long classroom, long teacher, String work, String page, int seq, Part part, String verdict, String note,
      Instant now) {
    return database.write(handle -> {
      Optional<String> was = handle
          .createQuery("""
              SELECT m.verdict
                FROM mark m
                JOIN work w ON w.id = m.work_id
                JOIN child c ON c.id = w.child_id
               WHERE m.work_id = :work
                 AND m.page = :page
                 AND m.seq = :seq
                 AND m.part = :part
                 AND c.classroom_id = :classroom""")
          .bind("work", work)
          .bind("page", page)
          .bind("seq", seq)
          .bind("part", part.id())
          .bind("classroom", classroom)
          .mapTo(String.class)
          .findOne();
      was.ifPresent(own -> handle
          .createUpdate("""
              INSERT INTO overrule (work_id, page, seq, part, teacher_id, was, verdict, note, made_at)
              VALUES (:work, :page, :seq, :part, :teacher, :was, :verdict, :note, :now)""")
          .bind("work", work)
          .bind("page", page)
          .bind("seq", seq)
          .bind("part", part.id())
          .bind("teacher", teacher)
          .bind("was", own)
          .bind("verdict", verdict)
          .bind("note", note)
          .bind("now", Database.utc(now))
          .execute());
      return was.isPresent();
    });
  }

  /** What the teacher overruled of a hand-in, oldest first. */
  public List<Overrule> overrules(String work, String page, int seq) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT part, was, verdict, note, made_at
              FROM overrule
             WHERE work_id = :work
               AND page = :page
               AND seq = :seq
             ORDER BY id""")
        .bind("work", work)
        .bind("page", page)
        .bind("seq", seq)
        .map((row, at) -> new Overrule(Part.of(row.getString("part")).orElseThrow(), row.getString("was"),
            row.getString("verdict"), row.getString("note"), Rows.instant(row, "made_at")))
        .list());
  }

  /** How many marks of a class the teacher set aside. */
  public int overruled(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT COUNT(*)
              FROM overrule o
              JOIN work w ON w.id = o.work_id
              JOIN child c ON c.id = w.child_id
             WHERE c.classroom_id = :classroom""")
        .bind("classroom", classroom)
        .mapTo(Integer.class)
        .one());
  }

  /** How many marks were given anew, and how many of them are other than before. */
  public record MarkedAgain(long marks, long changed) {}

  private static final int AT_ONCE = 500;

  /**
   * Marks all stored work again that was marked by older rules, or not at all. Raw work is the truth: what the
   * teacher overruled stays overruled. Goes chunk by chunk, so that it goes on where it was stopped.
   *
   * @param progress is told how many hand-ins are done so far
   */
  public MarkedAgain markAgain(LongConsumer progress) {
    long marks = 0;
    long changed = 0;
    long done = 0;
    Key after = new Key("", "", 0);
    while (true) {
      Key from = after;
      List<Old> old = database.read(handle -> markedByOlderRules(handle, from));
      if (old.isEmpty()) {
        return new MarkedAgain(marks, changed);
      }
      after = old.get(old.size() - 1).key;
      for (Old each : old) {
        Map<Part, String> before = new EnumMap<>(Part.class);
        each.rows.forEach(row -> before.put(row.part(), row.verdict() + " " + row.notes()));
        for (MarkRows.Row row : MarkRows.of(each.marks)) {
          marks++;
          String was = before.get(row.part());
          changed += was == null || was.equals(row.verdict() + " " + row.notes()) ? 0 : 1;
        }
      }
      database.change(handle -> old.forEach(each -> {
        handle
            .createUpdate("""
                DELETE FROM mark
                 WHERE work_id = :work
                   AND page = :page
                   AND seq = :seq""")
            .bind("work", each.key.work)
            .bind("page", each.key.page)
            .bind("seq", each.key.seq)
            .execute();
        keepMarks(handle, each.key, each.marks);
      }));
      done += old.size();
      progress.accept(done);
    }
  }

  /** Gives the marks of all work on one problem anew, after its roles were set right. Overruled marks stay. */
  public void markProblemAgain(long classroom, long problem) {
    Map<Long, TeachersSpanish> spanish = new HashMap<>();
    database.change(handle -> handle
        .createQuery("""
            SELECT r.work_id, r.page, r.seq, r.parts, p.story, k.teacher_id
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN problem p ON p.id = w.problem_id
              JOIN classroom k ON k.id = p.classroom_id
             WHERE r.kind = 'handed-in'
               AND p.id = :problem
               AND p.classroom_id = :classroom
             ORDER BY r.work_id, r.page, r.seq""")
        .bind("problem", problem)
        .bind("classroom", classroom)
        .map((row, at) -> Map.entry(key(row), Marker.mark(StoryJson.read(Json.read(row.getString("story"))), work(row),
            spanish.computeIfAbsent(row.getLong("teacher_id"), teacher -> SpanishStore.of(handle, teacher)))))
        .list()
        .forEach(each -> {
          handle
              .createUpdate("""
                  DELETE FROM mark
                   WHERE work_id = :work
                     AND page = :page
                     AND seq = :seq""")
              .bind("work", each.getKey().work)
              .bind("page", each.getKey().page)
              .bind("seq", each.getKey().seq)
              .execute();
          keepMarks(handle, each.getKey(), each.getValue());
        }));
  }

  private record Old(Key key, Marks marks, List<MarkRows.Row> rows) {}

  /** The next hand-ins in the order of their names: what lies before {@code after} is done. */
  private static List<Old> markedByOlderRules(Handle handle, Key after) {
    Map<Long, TeachersSpanish> spanish = new HashMap<>();
    List<Map.Entry<Key, Marks>> work = handle
        .createQuery("""
            SELECT r.work_id, r.page, r.seq, r.parts, p.story, k.teacher_id
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN problem p ON p.id = w.problem_id
              JOIN classroom k ON k.id = p.classroom_id
             WHERE r.kind = 'handed-in'
               AND r.work_id >= :work
               AND NOT (r.work_id = :work AND (r.page < :page OR r.page = :page AND r.seq <= :seq))
               AND NOT EXISTS (SELECT 1
                                 FROM mark m
                                WHERE m.work_id = r.work_id
                                  AND m.page = r.page
                                  AND m.seq = r.seq
                                  AND m.rules >= :rules)
             ORDER BY r.work_id, r.page, r.seq
             LIMIT :most""")
        .bind("work", after.work)
        .bind("page", after.page)
        .bind("seq", after.seq)
        .bind("rules", Marker.VERSION)
        .bind("most", AT_ONCE)
        .map((row, at) -> Map.entry(key(row), Marker.mark(StoryJson.read(Json.read(row.getString("story"))), work(row),
            spanish.computeIfAbsent(row.getLong("teacher_id"), teacher -> SpanishStore.of(handle, teacher)))))
        .list();
    return work.stream()
        .map(each -> new Old(each.getKey(), each.getValue(), handle
            .createQuery("""
                SELECT part, verdict, notes
                  FROM mark
                 WHERE work_id = :work
                   AND page = :page
                   AND seq = :seq
                 ORDER BY part""")
            .bind("work", each.getKey().work)
            .bind("page", each.getKey().page)
            .bind("seq", each.getKey().seq)
            .map((row, at) -> new MarkRows.Row(
                Part.of(row.getString("part")).orElseThrow(), row.getString("verdict"), row.getString("notes")))
            .list()))
        .toList();
  }

  /** {@link #handIns} of real classes: what a backup holds. */
  public long realHandIns() {
    return database.read(handle -> handle
        .createQuery("""
            SELECT COUNT(*)
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN child c ON c.id = w.child_id
              JOIN classroom k ON k.id = c.classroom_id
             WHERE r.kind = 'handed-in'
               AND k.invented = FALSE""")
        .mapTo(Long.class)
        .one());
  }

  /** How many pieces have been acknowledged in all: hand-ins and drafts as they stand. */
  public long handIns() {
    return database.read(handle -> handle
        .createQuery("SELECT COUNT(*) FROM revision WHERE kind = 'handed-in'")
        .mapTo(Long.class)
        .one());
  }
}
