package fewermore.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json.Unusable;
import fewermore.marking.Bars;
import fewermore.marking.Reading;
import fewermore.marking.Work;
import java.util.ArrayList;
import java.util.List;

/** A child's work as JSON: the same form on the wire, in the store and in the commands. */
public final class WorkJson {
  private static final int MOST_KNOWN = 20;

  private WorkJson() {}

  public static ObjectNode write(Work work) {
    ObjectNode node = Json.object();
    put(node, "equation", work.equation());
    put(node, "answer", work.answer());
    put(node, "label", work.label());
    if (work.bars() != null) {
      node.putObject("bars")
          .put("longer", work.bars().longer())
          .put("longerBar", work.bars().longerBar())
          .put("shorterBar", work.bars().shorterBar())
          .put("gap", work.bars().gap());
    }
    put(node, "estimate", work.estimate());
    if (work.strategy() != null) {
      node.set("strategy", StrategyJson.write(work.strategy()));
    }
    if (work.reading() != null) {
      ObjectNode reading = node.putObject("reading").put("question", work.reading().question());
      ArrayNode known = reading.putArray("known");
      work.reading().known().forEach(known::add);
    }
    return node;
  }

  /** Unknown fields are ignored. @throws Unusable saying which field, what was expected and one thing to try */
  public static Work read(JsonNode node) {
    if (node == null || !node.isObject()) {
      throw new Unusable("work: an object was expected; put the parts in { }");
    }
    return new Work(text(node, "equation"), text(node, "answer"), text(node, "label"), bars(node.path("bars")),
        text(node, "estimate"), reading(node.path("reading")),
        StrategyJson.read(node.path("strategy")));
  }

  private static Reading reading(JsonNode node) {
    if (node.isMissingNode() || node.isNull()) {
      return null;
    }
    if (!node.isObject()) {
      throw new Unusable("work.reading: an object was expected; give question and known");
    }
    List<String> known = new ArrayList<>();
    for (JsonNode number : node.path("known")) {
      if (!number.isTextual() || known.size() == MOST_KNOWN) {
        throw new Unusable("work.reading.known: at most " + MOST_KNOWN + " numbers in quotes were expected");
      }
      known.add(number.asText());
    }
    return new Reading(text(node, "question"), known);
  }

  private static Bars bars(JsonNode node) {
    if (node.isMissingNode() || node.isNull()) {
      return null;
    }
    if (!node.isObject()) {
      throw new Unusable("work.bars: an object was expected; give longer, longerBar, shorterBar and gap");
    }
    return new Bars(text(node, "longer"), text(node, "longerBar"), text(node, "shorterBar"), text(node, "gap"));
  }

  private static String text(JsonNode node, String field) {
    JsonNode value = node.path(field);
    if (value.isMissingNode() || value.isNull()) {
      return null;
    }
    if (!value.isTextual()) {
      throw new Unusable("work." + field + ": text in quotes was expected, found " + value.getNodeType()
          + "; write \"38\" rather than 38");
    }
    return value.asText();
  }

  private static void put(ObjectNode node, String field, String value) {
    if (value != null) {
      node.put(field, value);
    }
  }
}
