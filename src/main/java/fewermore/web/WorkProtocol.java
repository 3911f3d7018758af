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
import fewermore.store.HandStore;
import fewermore.store.SittingStore;
import fewermore.store.WorkStore;
import fewermore.web.child.ChildTexts;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiConsumer;
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
  /** What a tablet sends when a child needs nobody any more: no work, so it is kept with the hands. */
  private static final String HAND_DOWN = "hand-down";

  private static final String NAMES_EXPECTED = "items: work, page and seq were expected in each";
  private static final Duration APPROXIMATE = Duration.ofSeconds(60);

  /** What to answer: a status of HTTP and a JSON body. */
  record Reply(int status, ObjectNode body) {}

  private record Named(String work, String page, int seq) {
    ArrayNode json() {
      return Json.array().add(work).add(page).add(seq);
    }
  }

  /** A hand that went down, and when by the laptop's clock. */
  private record Lowered(Named name, Instant at) {}

  private final SittingStore sittings;
  private final WorkStore works;
  private final HandStore hands;
  private final Tokens tokens;
  private final Calls calls;
  private final LongConsumer changed;
  private BiConsumer<Sitting, ObjectNode> heard = (sitting, reply) -> { };

  /** @param changed is told the class whose work changed */
  WorkProtocol(SittingStore sittings, WorkStore works, HandStore hands, Tokens tokens, Calls calls,
      LongConsumer changed) {
    this.sittings = sittings;
    this.works = works;
    this.hands = hands;
    this.tokens = tokens;
    this.calls = calls;
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
    JsonNode items = request.path("items");
    if (!items.isArray() || items.size() > MOST_ITEMS) {
      return refusal(400, "items: a list of at most " + MOST_ITEMS + " was expected");
    }
    if (sitting.isEmpty()) {
      return sittings.erased(id) ? erased(items) : refusal(403, "this sitting is not known here");
    }
    return take(sitting.get(), items, arrived);
  }

  /** The child was erased here: what a tablet still holds of her may go there too. */
  private static Reply erased(JsonNode items) {
    ObjectNode reply = Json.object().put("fewermore", 1);
    reply.putArray("took");
    ArrayNode refused = reply.putArray("refused");
    reply.putArray("told");
    for (JsonNode item : items) {
      Named named = named(item);
      if (named == null) {
        return refusal(400, NAMES_EXPECTED);
      }
      refused.add(named.json().add("erased"));
    }
    return new Reply(200, reply.put("sitting", "ended").putNull("say"));
  }

  /**
   * What {@code GET /pulse} answers.
   *
   * @param sitting whose cookie came with the request
   * @param untold whether the page waits to be told of a hand-in
   */
  ObjectNode pulse(Optional<Sitting> sitting, boolean untold, Instant now) {
    Optional<Sitting> open = sitting.filter(Sitting::open);
    ObjectNode reply = Json.object().put("fewermore", 1)
        .put("sitting", open.isPresent() ? "open" : "ended")
        .put("id", sitting.map(Sitting::id).orElse(null));
    if (open.isPresent() && untold) {
      ArrayNode told = reply.putArray("told");
      works.newestHandIns(open.get().id()).forEach(name -> tell(name.work(), name.page(), name.seq(), told));
    }
    say(open, reply, now);
    return reply;
  }

  private void say(Optional<Sitting> open, ObjectNode reply, Instant now) {
    Optional<Calls.Call> call = open.flatMap(sitting -> calls.of(sitting.id(), now));
    if (call.isPresent()) {
      reply.putObject("say").put("id", call.get().id())
          .put("text", ChildTexts.in(open.get().child().language()).of(call.get().text()));
    } else {
      reply.putNull("say");
    }
  }

  private Reply take(Sitting sitting, JsonNode items, Instant arrived) {
    ObjectNode reply = Json.object().put("fewermore", 1);
    ArrayNode took = reply.putArray("took");
    ArrayNode refused = reply.putArray("refused");
    ArrayNode told = reply.putArray("told");
    List<SentItem> usable = new ArrayList<>();
    List<Lowered> lowered = new ArrayList<>();
    boolean leaving = false;
    for (JsonNode item : items) {
      Named named = named(item);
      if (named == null) {
        return refusal(400, NAMES_EXPECTED);
      }
      if (item.path("kind").asText().equals(HAND_DOWN)) {
        lowered.add(new Lowered(named, written(item, sitting, arrived)));
        continue;
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
          tell(item.work(), item.page(), item.seq(), told);
        }
      } else {
        refused.add(name.add("unknown"));
      }
    }
    // After what went up in the same request.
    for (Lowered hand : lowered) {
      boolean known = hands.down(sitting.id(), hand.name.work, hand.at);
      (known ? took : refused).add(known ? hand.name.json() : hand.name.json().add("unknown"));
    }
    if (leaving && sitting.open()) {
      sittings.end(sitting.id(), "done", arrived);
    }
    if (!took.isEmpty()) {
      changed.accept(sitting.child().classroom());
    }
    reply.put("sitting", sitting.open() && !leaving ? "open" : "ended");
    say(leaving ? Optional.empty() : Optional.of(sitting).filter(Sitting::open), reply, arrived);
    heard.accept(sitting, reply);
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
    return new SentItem(named.work, named.page, named.seq, kind, work, written(item, sitting, arrived),
        age(item) > APPROXIMATE.toMillis());
  }

  private static Instant written(JsonNode item, Sitting sitting, Instant arrived) {
    Instant written = arrived.minusMillis(age(item));
    return written.isBefore(sitting.startedAt()) ? sitting.startedAt() : written;
  }

  private static long age(JsonNode item) {
    return Math.max(0, Math.min(item.path("age").asLong(0), Duration.ofDays(400).toMillis()));
  }

  private void tell(String work, String page, int seq, ArrayNode told) {
    works.receipt(work, page, seq).ifPresent(receipt -> {
      ObjectNode node = told.addObject();
      node.put("work", work);
      node.put("page", page);
      node.put("seq", seq);
      node.put("triesLeft", receipt.triesLeft());
      ObjectNode prompts = node.putObject("prompts");
      Prompts.of(receipt.story(), receipt.parts(), receipt.marks(), receipt.tellLater(),
          Locale.forLanguageTag(receipt.language())).forEach((part, prompt) -> prompts.put(part.id(), prompt));
      ObjectNode signs = node.putObject("signs");
      Signs.of(receipt.marks(), receipt.tellLater()).forEach((part, sign) -> signs.put(part.id(), sign.id()));
    });
  }

  /** @param listener is told each sitting that sends something, with the reply it gets and may add to */
  void tellOf(BiConsumer<Sitting, ObjectNode> listener) {
    heard = listener;
  }

  private static Reply refusal(int status, String why) {
    return new Reply(status, Json.object().put("problem", why));
  }
}
