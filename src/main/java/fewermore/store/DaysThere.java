package fewermore.store;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;

/**
 * The days each child of a class was there, and those she was marked absent, by the class's clock. A child was there
 * when she sat at a tablet after she was marked absent, or handed something in: a sitting that was open when the teacher
 * marked her absent was not hers.
 *
 * @param there by child
 * @param absent days the teacher marked a child absent and she neither came in later nor handed anything in, by child
 */
public record DaysThere(Map<Long, Set<LocalDate>> there, Map<Long, Set<LocalDate>> absent) {
  public DaysThere {
    there = Map.copyOf(there);
    absent = Map.copyOf(absent);
  }

  private record Seated(long child, Instant from) {}

  private record Marked(long child, LocalDate day, Instant at) {}

  private record Worked(long child, LocalDate day) {}

  static DaysThere of(Handle handle, long classroom, ZoneId zone) {
    List<Seated> seated = handle
        .createQuery("""
            SELECT s.child_id, s.started_at
              FROM sitting s
              JOIN child c ON c.id = s.child_id
             WHERE c.classroom_id = :classroom
             ORDER BY s.started_at, s.id""")
        .bind("classroom", classroom)
        .map((row, at) -> new Seated(row.getLong("child_id"), Rows.instant(row, "started_at")))
        .list();
    List<Marked> marked = handle
        .createQuery("""
            SELECT a.child_id, a.work_day, a.made_at
              FROM absence a
              JOIN child c ON c.id = a.child_id
             WHERE c.classroom_id = :classroom
             ORDER BY a.child_id, a.work_day""")
        .bind("classroom", classroom)
        .map((row, at) -> new Marked(row.getLong("child_id"), Rows.day(row, "work_day"), Rows.instant(row, "made_at")))
        .list();
    Set<Worked> worked = marked.isEmpty() ? Set.of() : new HashSet<>(handle
        .createQuery("""
            SELECT DISTINCT w.child_id, r.work_day
              FROM revision r
              JOIN work w ON w.id = r.work_id
              JOIN child c ON c.id = w.child_id
             WHERE c.classroom_id = :classroom
               AND r.kind = 'handed-in'
             ORDER BY w.child_id, r.work_day""")
        .bind("classroom", classroom)
        .map((row, at) -> new Worked(row.getLong("child_id"), Rows.day(row, "work_day")))
        .list());
    return of(seated, marked, worked, zone);
  }

  private static DaysThere of(List<Seated> seated, List<Marked> marked, Set<Worked> worked, ZoneId zone) {
    Map<Long, Set<LocalDate>> there = new HashMap<>();
    seated.forEach(each -> there.computeIfAbsent(each.child, none -> new TreeSet<>()).add(each.from.atZone(zone).toLocalDate()));
    Map<Long, Set<LocalDate>> absent = new HashMap<>();
    for (Marked mark : marked) {
      boolean cameInSince = seated.stream().anyMatch(each -> each.child == mark.child && each.from.isAfter(mark.at)
          && each.from.atZone(zone).toLocalDate().equals(mark.day));
      if (!cameInSince && !worked.contains(new Worked(mark.child, mark.day))) {
        there.getOrDefault(mark.child, new TreeSet<>()).remove(mark.day);
        absent.computeIfAbsent(mark.child, none -> new TreeSet<>()).add(mark.day);
      }
    }
    return new DaysThere(there, absent);
  }

  /** Was that child there on that day? */
  public boolean there(long child, LocalDate day) {
    return there.getOrDefault(child, Set.of()).contains(day);
  }

  /** Was she marked absent on that day, and not there? */
  public boolean absent(long child, LocalDate day) {
    return absent.getOrDefault(child, Set.of()).contains(day);
  }
}
