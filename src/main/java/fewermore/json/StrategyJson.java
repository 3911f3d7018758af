package fewermore.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.calculation.Piece;
import fewermore.calculation.Step;
import fewermore.calculation.Step.Break;
import fewermore.calculation.Step.Combine;
import fewermore.calculation.Step.CrossOut;
import fewermore.calculation.Step.Join;
import fewermore.calculation.Step.Jump;
import fewermore.calculation.Step.Place;
import fewermore.calculation.Step.Put;
import fewermore.calculation.Step.PutBack;
import fewermore.calculation.Step.Regroup;
import fewermore.calculation.Step.Row;
import fewermore.calculation.Step.Start;
import fewermore.calculation.Step.Trade;
import fewermore.calculation.Step.Write;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Working;
import fewermore.json.Json.Unusable;
import fewermore.marking.StrategyWork;
import java.util.ArrayList;
import java.util.List;

/**
 * A strategy as JSON: {@code {"kind":"pieces|line|expanded","steps":[…],"check":{…}}}, where {@code check} may be
 * missing. A step names itself: {@code {"do":"jump","by":-10,"to":42}}.
 */
public final class StrategyJson {
  private StrategyJson() {}

  public static ObjectNode write(StrategyWork work) {
    ObjectNode node = Json.object();
    node.put("kind", work.kind() == null ? "" : work.kind().id());
    var steps = node.putArray("steps");
    Writer writer = new Writer();
    work.steps().forEach(step -> steps.add(step.tell(writer)));
    if (work.check() != null) {
      node.set("check", write(work.check()));
    }
    return node;
  }

  private static final class Writer implements Step.Cases<ObjectNode> {
    private static ObjectNode step(String name) {
      return Json.object().put("do", name);
    }

    @Override
    public ObjectNode put(Put step) {
      return step("put").put("pile", step.pile()).put("piece", step.piece().id()).put("count", step.count());
    }

    @Override
    public ObjectNode putBack(PutBack step) {
      return step("put-back").put("pile", step.pile()).put("piece", step.piece().id()).put("count", step.count());
    }

    @Override
    public ObjectNode trade(Trade step) {
      return step("trade").put("give", step.give().id()).put("get", step.get().id());
    }

    @Override
    public ObjectNode crossOut(CrossOut step) {
      return step("cross-out").put("piece", step.piece().id()).put("count", step.count());
    }

    @Override
    public ObjectNode join(Join step) {
      return step("join");
    }

    @Override
    public ObjectNode start(Start step) {
      return step("start").put("at", step.at());
    }

    @Override
    public ObjectNode jump(Jump step) {
      return step("jump").put("by", step.by()).put("to", step.to());
    }

    @Override
    public ObjectNode breakUp(Break step) {
      return step("break").put("row", step.row().id()).put("number", step.number()).put("tens", step.tens())
          .put("ones", step.ones());
    }

    @Override
    public ObjectNode regroup(Regroup step) {
      return step("regroup").put("row", step.row().id()).put("tens", step.tens()).put("ones", step.ones());
    }

    @Override
    public ObjectNode combine(Combine step) {
      return step("combine").put("place", step.place().id()).put("to", step.to());
    }

    @Override
    public ObjectNode write(Write step) {
      return step("write").put("number", step.number());
    }
  }

  /** @throws Unusable saying which field, what was expected and one thing to try */
  static StrategyWork read(JsonNode node) {
    if (node.isMissingNode() || node.isNull()) {
      return null;
    }
    StrategyWork work = one(node, "work.strategy");
    JsonNode check = node.path("check");
    return check.isMissingNode() || check.isNull() ? work
        : new StrategyWork(work.kind(), work.steps(), one(check, "work.strategy.check"));
  }

  private static StrategyWork one(JsonNode node, String where) {
    if (!node.isObject()) {
      throw new Unusable(where + ": an object was expected; give kind and steps");
    }
    String kind = node.path("kind").asText();
    JsonNode steps = node.path("steps");
    if (!steps.isArray() || steps.size() > Working.MOST) {
      throw new Unusable(where + ".steps: a list of at most " + Working.MOST + " steps was expected");
    }
    if (kind.isEmpty()) {
      return StrategyWork.EMPTY;
    }
    StrategyKind found = StrategyKind.of(kind).orElseThrow(() -> new Unusable(
        where + ".kind: pieces, line or expanded was expected, found \"" + kind + "\"; name one of them"));
    List<Step> read = new ArrayList<>();
    for (JsonNode step : steps) {
      read.add(step(step, where + ".steps[" + read.size() + "]"));
    }
    return new StrategyWork(found, read, null);
  }

  private static Step step(JsonNode node, String where) {
    String name = node.path("do").asText();
    return switch (name) {
      case "put" -> new Put(pile(node, where), piece(node, "piece", where), number(node, "count", 0, where));
      case "put-back" -> new PutBack(pile(node, where), piece(node, "piece", where), number(node, "count", 0, where));
      case "trade" -> new Trade(piece(node, "give", where), piece(node, "get", where));
      case "cross-out" -> new CrossOut(piece(node, "piece", where), number(node, "count", 0, where));
      case "join" -> new Join();
      case "start" -> new Start(number(node, "at", 0, where));
      case "jump" -> new Jump(number(node, "by", -Step.LARGEST, where), number(node, "to", 0, where));
      case "break" -> new Break(row(node, where), number(node, "number", 0, where), number(node, "tens", 0, where),
          number(node, "ones", 0, where));
      case "regroup" -> new Regroup(row(node, where), number(node, "tens", 0, where), number(node, "ones", 0, where));
      case "combine" -> new Combine(place(node, where), number(node, "to", 0, where));
      case "write" -> new Write(number(node, "number", 0, where));
      default -> throw new Unusable(where + ".do: put, put-back, trade, cross-out, join, start, jump, break, regroup, "
          + "combine or write was expected, found \"" + name + "\"; name the step");
    };
  }

  private static int number(JsonNode node, String field, int least, String where) {
    JsonNode number = node.path(field);
    if (!number.isIntegralNumber() || !number.canConvertToInt() || number.asInt() < least
        || number.asInt() > Step.LARGEST) {
      throw new Unusable(where + "." + field + ": a whole number from " + least + " to " + Step.LARGEST
          + " was expected, found " + number + "; write it in digits, without quotes");
    }
    return number.asInt();
  }

  private static int pile(JsonNode node, String where) {
    int pile = number(node, "pile", 1, where);
    if (pile > 2) {
      throw new Unusable(where + ".pile: 1 or 2 was expected, found " + pile + "; there are two piles");
    }
    return pile;
  }

  private static Piece piece(JsonNode node, String field, String where) {
    return Piece.of(node.path(field).asText()).orElseThrow(() -> new Unusable(
        where + "." + field + ": hundred, ten or one was expected; name the piece"));
  }

  private static Row row(JsonNode node, String where) {
    for (Row row : Row.values()) {
      if (row.id().equals(node.path("row").asText())) {
        return row;
      }
    }
    throw new Unusable(where + ".row: first, second or result was expected; name the row");
  }

  private static Place place(JsonNode node, String where) {
    for (Place place : Place.values()) {
      if (place.id().equals(node.path("place").asText())) {
        return place;
      }
    }
    throw new Unusable(where + ".place: tens or ones was expected; name the place");
  }
}
