package fewermore.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.SentItem;
import fewermore.classroom.Sitting;
import fewermore.json.Json;
import fewermore.json.Json.Unusable;
import fewermore.json.WorkJson;
import fewermore.marking.Prompts;
import fewermore.marking.Signs;
import fewermore.marking.Work;
import fewermore.store.SittingStore;
import fewermore.store.WorkStore;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.regex.Pattern;

/**
 * How a tablet's work is taken: one request a sitting, named items, the same item again is harmless. An item
 * stands in {@code took} only when it is on disk. The key in the body is what lets work in; no cookie is read.
 */
final class WorkProtocol {
  /** Items a request may hold. */
  static final int MOST_ITEMS = 20;

  /** Bytes a request may hold: browsers stop keep-alive requests and beacons at 64 KiB. */
  static final int MOST_BYTES = 60 * 1024;

  /** Characters the parts of one item may hold as JSON. */
  static final int MOST_PARTS = 8_000;

  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9_-]{1,32}");
  private static final Duration APPROXIMATE = Duration.ofSeconds(60);

  /** What to answer: a status of HTTP and a JSON body. */
  record Reply(int status, ObjectNode body) {}

  private record Named(String work, String page, int seq) {
    ArrayNode json() {
      return Json.array().add(work).add(page).add(seq);
    }
  }

  private final SittingStore sittings;
  private final WorkStore works;
  private final Tokens tokens;
  private final LongConsumer changed;

  /** @param changed is told the class whose work changed */
  WorkProtocol(SittingStore sittings, WorkStore works, Tokens tokens, LongConsumer changed) {
    this.sittings = sittings;
    this.works = works;
    this.tokens = tokens;
    this.changed = changed;
  }

  /** @throws fewermore.store.NotOnDisk when nothing may be acknowledged */
  Reply receive(String body, Instant arrived) {
    JsonNode request;
    try {
      request = Json.read(body);
    } catch (Unusable e) {
      return refusal(400, e.getMessage());
    }
    String id = request.path("sitting").asText();
    if (!NAME.matcher(id).matches() || !Tokens.same(tokens.keyOf(id), request.path("key").asText())) {
      return refusal(403, "this key adds no work to this sitting");
    }
    Optional<Sitting> sitting = sittings.find(id);
    if (sitting.isEmpty()) {
      return refusal(403, "this sitting is not known here");
    }
    JsonNode items = request.path("items");
    if (!items.isArray() || items.size() > MOST_ITEMS) {
      return refusal(400, "items: a list of at most " + MOST_ITEMS + " was expected");
    }
    return take(sitting.get(), items, arrived);
  }

  private Reply take(Sitting sitting, JsonNode items, Instant arrived) {
    ObjectNode reply = Json.object().put("fewermore", 1);
    ArrayNode took = reply.putArray("took");
    ArrayNode refused = reply.putArray("refused");
    ArrayNode told = reply.putArray("told");
    List<SentItem> usable = new ArrayList<>();
    boolean leaving = false;
    for (JsonNode item : items) {
      Named named = named(item);
      if (named == null) {
        return refusal(400, "items: work, page and seq were expected in each");
      }
      Optional<SentItem.Kind> kind = SentItem.Kind.of(item.path("kind").asText());
      try {
        JsonNode parts = item.path("parts");
        Work work = parts.isMissingNode() || parts.isNull() ? Work.NOT_ASKED : WorkJson.read(parts);
        if (kind.isEmpty() || Json.write(WorkJson.write(work)).length() > MOST_PARTS) {
          refused.add(named.json().add(kind.isEmpty() ? "unknown" : "too-big"));
          continue;
        }
        usable.add(sent(named, kind.get(), work, item, sitting, arrived));
        leaving |= kind.get() == SentItem.Kind.LEAVE;
      } catch (Unusable e) {
        refused.add(named.json().add("unknown"));
      }
    }
    List<WorkStore.Fate> fates = usable.isEmpty() ? List.of() : works.keep(sitting.id(), usable, arrived);
    for (int at = 0; at < usable.size(); at++) {
      SentItem item = usable.get(at);
      ArrayNode name = new Named(item.work(), item.page(), item.seq()).json();
      if (fates.get(at) == WorkStore.Fate.TOOK) {
        took.add(name);
        if (item.kind() == SentItem.Kind.HANDED_IN) {
          tell(item, told);
        }
      } else {
        refused.add(name.add("unknown"));
      }
    }
    if (leaving && sitting.open()) {
      sittings.end(sitting.id(), "done", arrived);
    }
    if (!took.isEmpty()) {
      changed.accept(sitting.child().classroom());
    }
    reply.put("sitting", sitting.open() && !leaving ? "open" : "ended");
    reply.putNull("say");
    return new Reply(200, reply);
  }

  private static Named named(JsonNode item) {
    String work = item.path("work").asText();
    String page = item.path("page").asText();
    JsonNode seq = item.path("seq");
    boolean right = NAME.matcher(work).matches() && NAME.matcher(page).matches()
        && seq.isIntegralNumber() && seq.canConvertToInt() && seq.asInt() > 0;
    return right ? new Named(work, page, seq.asInt()) : null;
  }

  /** The tablet's clock is not believed: it says how long ago, and that is kept between coming in and now. */
  private static SentItem sent(
      Named named, SentItem.Kind kind, Work work, JsonNode item, Sitting sitting, Instant arrived) {
    long age = Math.max(0, Math.min(item.path("age").asLong(0), Duration.ofDays(400).toMillis()));
    Instant written = arrived.minusMillis(age);
    if (written.isBefore(sitting.startedAt())) {
      written = sitting.startedAt();
    }
    return new SentItem(named.work, named.page, named.seq, kind, work, written,
        age > APPROXIMATE.toMillis());
  }

  private void tell(SentItem item, ArrayNode told) {
    works.receipt(item.work(), item.page(), item.seq()).ifPresent(receipt -> {
      ObjectNode node = told.addObject();
      node.put("work", item.work());
      node.put("page", item.page());
      node.put("seq", item.seq());
      node.put("triesLeft", receipt.triesLeft());
      ObjectNode prompts = node.putObject("prompts");
      Prompts.of(receipt.story(), receipt.parts(), receipt.marks(), receipt.tellLater(),
          Locale.forLanguageTag(receipt.language())).forEach((part, prompt) -> prompts.put(part.id(), prompt));
      ObjectNode signs = node.putObject("signs");
      Signs.of(receipt.marks(), receipt.tellLater()).forEach((part, sign) -> signs.put(part.id(), sign.id()));
    });
  }

  private static Reply refusal(int status, String why) {
    return new Reply(status, Json.object().put("problem", why));
  }
}
