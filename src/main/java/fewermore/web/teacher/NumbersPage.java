package fewermore.web.teacher;

import fewermore.reasoning.ReasoningTable;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every number the estimate uses, with its source: {@code pages/teacher/numbers.html}, {@code GET /findings/numbers}.
 */
public record NumbersPage(List<Section> sections) {
  /** The numbers that belong together, in the order of the file. */
  public record Section(String heading, List<ReasoningTable.Constant> numbers) {}

  private static final Map<String, String> HEADINGS = new LinkedHashMap<>();

  static {
    HEADINGS.put("share", "Before any work: how many reason so");
    HEADINGS.put("between-days", "Between two days with work");
    HEADINGS.put("chance", "What each way does, problem by problem");
    HEADINGS.put("work", "What a piece of work says");
    HEADINGS.put("say", "What may be said");
    HEADINGS.put("suits", "How well a group’s topic suits each way");
    HEADINGS.put("groups", "Groups");
  }

  public static NumbersPage of(ReasoningTable table) {
    List<Section> sections = new ArrayList<>();
    HEADINGS.forEach((prefix, heading) -> sections.add(new Section(heading,
        table.constants().stream().filter(each -> each.name().startsWith(prefix + "/")).toList())));
    return new NumbersPage(sections);
  }

  /** 0.8 rather than 0.80000. */
  public String written(double value) {
    return value == Math.rint(value) ? Long.toString((long) value)
        : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
