package fewermore.web.teacher;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.classroom.Child;
import fewermore.json.Json;
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
        .add(new Line(AmericanDates.moment(each.at(), zone), each.about(), plain(each.content()))));
    return new FamilyPage(ShownChild.of(child), className, AmericanDates.longDay(today) + ", " + today.getYear(), groups,
        until == null ? null : AmericanDates.longDay(until) + ", " + until.getYear(),
        request == null ? null : AmericanDates.longDay(request));
  }

  /** What is kept as JSON, in a line a family can read: "equation: 39 − 26 = □; answer: 13". Other text as it is. */
  static String plain(String content) {
    if (content == null || !content.startsWith("{")) {
      return content;
    }
    try {
      StringBuilder line = new StringBuilder();
      plain("", Json.read(content), line);
      return line.toString();
    } catch (Json.Unusable notJson) {
      return content;
    }
  }

  private static void plain(String name, JsonNode node, StringBuilder line) {
    node.fields().forEachRemaining(field -> plain(field.getKey(), field.getValue(), line));
    for (JsonNode each : node.isArray() ? node : List.<JsonNode>of()) {
      plain(name, each, line);
    }
    if (node.isValueNode() && !node.isNull() && !node.asText().isBlank()) {
      line.append(line.isEmpty() ? "" : "; ").append(WORDS.getOrDefault(name, name)).append(name.isEmpty() ? "" : ": ").append(node.asText());
    }
  }

  private static final Map<String, String> WORDS = Map.of("longer", "who has the longer bar", "longerBar", "longer bar",
      "shorterBar", "shorter bar", "known", "tapped as known", "question", "tapped as the question");
}
