package fewermore.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.marking.EquationMark;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.marking.Prompts;
import fewermore.marking.Remarks;
import fewermore.marking.StrategyMark;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import java.util.Locale;
import java.util.Map;

/**
 * The marks of one piece of work as JSON: the id of each mark, the teacher's sentence ({@code says}) and
 * what a tablet may be told ({@code prompt}), by part. A part that was not asked is missing.
 */
public final class MarksJson {
  private MarksJson() {}

  /** @param language of the prompts; the teacher's sentences are English */
  public static ObjectNode write(Comparison story, Work work, Marks marks, Locale language) {
    ObjectNode node = Json.object();
    if (marks.equation() != null) {
      equation(node, marks.equation());
    }
    if (marks.answer() != null) {
      node.put("answer", marks.answer().verdict().id());
      if (marks.answer().repeats() != null) {
        node.put("repeats", marks.answer().repeats().id());
      }
      var slips = node.putArray("slips");
      marks.answer().slips().forEach(slip -> slips.add(slip.id()));
    }
    if (marks.label() != null) {
      node.put("label", marks.label().id());
    }
    if (marks.bars() != null) {
      node.put("bars", marks.bars().id());
    }
    if (marks.estimate() != null) {
      node.put("estimate", marks.estimate().id());
    }
    if (marks.strategy() != null) {
      strategy(node, marks.strategy());
    }
    node.set("says", byPart(Remarks.of(story, work, marks)));
    node.set("prompt", byPart(Prompts.of(story, work, marks, false, language)));
    return node;
  }

  private static void equation(ObjectNode node, EquationMark mark) {
    node.put("equation", mark.reason().id());
    node.put("solvedForm", mark.solvedForm());
    node.put("cueLed", mark.cueLed());
    node.put("equalsChain", mark.equalsChain());
    node.put("notTrue", mark.notTrue());
    node.put("expression", mark.expression() == null ? null : mark.expression().id());
  }

  private static void strategy(ObjectNode node, StrategyMark mark) {
    node.put("strategy", mark.verdict().id());
    var slips = node.putArray("strategySlips");
    mark.slips().forEach(slip -> slips.add(slip.id()));
    node.put("way", mark.way() == null ? null : mark.way().id());
    node.put("firstWrong", mark.firstWrong() < 0 ? null : mark.firstWrong());
    node.put("agrees", mark.agrees());
  }

  private static ObjectNode byPart(Map<Part, String> texts) {
    ObjectNode node = Json.object();
    texts.forEach((part, text) -> node.put(part.id(), text));
    return node;
  }
}
