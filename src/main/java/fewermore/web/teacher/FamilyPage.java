package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.store.RecordStore.Kept;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All that is kept about one child, to be read or printed. {@code pages/teacher/family.html}.
 *
 * @param groups by kind of thing
 * @param until until when the class is kept, in words, or null
 * @param request since when a family's request is open, or null
 */
public record FamilyPage(
    ShownChild child, String className, String today, Map<String, List<Line>> groups, String until, String request) {
  public record Line(String when, String about, String content) {}

  public static FamilyPage of(
      Child child, String className, Collection<Kept> kept, LocalDate today, LocalDate until, LocalDate request,
      ZoneId zone) {
    Map<String, List<Line>> groups = new LinkedHashMap<>();
    kept.forEach(each -> groups.computeIfAbsent(each.what(), none -> new java.util.ArrayList<>())
        .add(new Line(AmericanDates.moment(each.at(), zone), each.about(), each.content())));
    return new FamilyPage(ShownChild.of(child), className, AmericanDates.longDay(today) + ", " + today.getYear(), groups,
        until == null ? null : AmericanDates.longDay(until) + ", " + until.getYear(),
        request == null ? null : AmericanDates.longDay(request));
  }
}
