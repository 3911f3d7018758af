package fewermore.store;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.SentItem;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import fewermore.store.ClassStore.NewChild;
import fewermore.web.Stories;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/** A class at work, straight on the store: each child has a sitting and hands in as often as is asked. */
public final class SchoolDay {
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final Instant START = Instant.parse("2026-11-25T15:00:00Z");

  /** The place a child works at. */
  public record Seat(String sitting, String work) {}

  public final Database database;
  public final Classroom classroom;
  public final List<Seat> seats = new ArrayList<>();
  private final WorkStore works;

  public SchoolDay(Database database, int children, boolean invented, String prefix) {
    this.database = database;
    this.works = new WorkStore(database);
    TeacherStore teachers = new TeacherStore(database);
    long teacher = teachers.first().map(TeacherStore.Teacher::id)
        .orElseGet(() -> teachers.add("Teacher", "hash", true, START).orElseThrow().id());
    ClassStore classes = new ClassStore(database);
    List<NewChild> list = new ArrayList<>();
    for (int child = 0; child < children; child++) {
      list.add(new NewChild(prefix + child, "kite", "sand", "en"));
    }
    this.classroom = classes.add(teacher, "Room " + prefix, ZONE, invented, list, START);
    new ProblemStore(database).addSet(classroom.id(), LocalDate.of(2026, 11, 25), true, 3, false,
        ProblemSet.USUAL_PARTS, List.of(Stories.SHELLS), START);
    SittingStore sittings = new SittingStore(database);
    AtomicInteger ids = new AtomicInteger();
    int number = 0;
    for (Child child : classes.children(classroom.id())) {
      String id = prefix + "s" + number++;
      String tablet = invented ? SittingStore.inventedTablet(classroom.id(), number) : prefix + "t" + number;
      sittings.meetTablet(tablet, "tablet", START);
      var all = sittings.startAll(List.of(new SittingStore.Coming(id, child.id(), tablet, prefix + "c" + number, START)),
          LocalDate.of(2026, 11, 25), () -> prefix + "w" + ids.incrementAndGet());
      seats.add(new Seat(id, all.get(id).get(0).id()));
    }
  }

  public static SentItem item(Seat seat, String page, int seq, String answer, Instant at) {
    return new SentItem(seat.work, page, seq, SentItem.Kind.HANDED_IN,
        new Work("52 + 14 = x", answer, "shells", new Bars("Tomas", "52", "x", "14"), null), at, false);
  }

  /** Hands in and returns when it is on disk; the name of what was handed in. */
  public String handIn(int child, String page, int seq) {
    Seat seat = seats.get(child % seats.size());
    works.keep(seat.sitting, List.of(item(seat, page, seq, page + "-" + seq, START.plusSeconds(seq))),
        START.plusSeconds(seq));
    return seat.work + "/" + page + "/" + seq;
  }

  /** Many pieces of one child in one go. */
  public void handInMany(int child, String page, int count) {
    Seat seat = seats.get(child % seats.size());
    Map<String, List<SentItem>> all = new HashMap<>();
    List<SentItem> items = new ArrayList<>();
    for (int seq = 1; seq <= count; seq++) {
      items.add(item(seat, page, seq, page + "-" + seq, START.plusSeconds(seq)));
    }
    all.put(seat.sitting, items);
    works.keepAll(all);
  }

  /** All that is there: what was answered, by the name of the hand-in. */
  public static Map<String, String> there(Database database) {
    Map<String, String> there = new HashMap<>();
    database.read(handle -> {
      handle.createQuery("SELECT work_id, page, seq, parts FROM revision ORDER BY work_id, page, seq")
          .map((row, at) -> Map.entry(row.getString(1) + "/" + row.getString(2) + "/" + row.getInt(3),
              fewermore.json.WorkJson.read(fewermore.json.Json.read(row.getString(4))).answer()))
          .forEach(each -> there.put(each.getKey(), each.getValue()));
      return null;
    });
    return there;
  }
}
