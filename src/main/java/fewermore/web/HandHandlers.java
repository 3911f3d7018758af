package fewermore.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.SentItem;
import fewermore.classroom.Sitting;
import fewermore.json.Json;
import fewermore.json.Json.Unusable;
import fewermore.marking.Work;
import fewermore.store.HandStore;
import fewermore.store.SittingStore.AssignedWork;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A child's hand on the tablet: whether it is still up. It goes up and down by way of the work. */
final class HandHandlers {
  private final Services services;
  private final TabletHandlers tablet;

  HandHandlers(Services services, TabletHandlers tablet) {
    this.services = services;
    this.tablet = tablet;
  }

  /**
   * Takes {@code {"sitting","key"}} and answers {@code {"fewermore":1,"up":[work …]}}. The key is the sitting's; no
   * cookie is read.
   */
  void areUp(Context request) {
    Optional<Said> said = Said.of(services, request);
    if (said.isEmpty()) {
      return;
    }
    Sitting sitting = said.get().sitting();
    List<AssignedWork> works = tablet.works(sitting);
    ObjectNode reply = Json.object().put("fewermore", 1);
    ArrayNode up = reply.putArray("up");
    works.stream().filter(work -> services.hands.up(sitting.child().id(), work.problem().id()))
        .forEach(work -> up.add(work.id()));
    request.contentType("application/json").result(Json.write(reply));
  }

  /** The button of a page without script: up when it is down, down when it is up. */
  void raiseOrLower(Context request) {
    Sitting sitting = tablet.openSitting(request);
    AssignedWork work = tablet.works(sitting).stream().filter(each -> each.id().equals(request.pathParam("work")))
        .findFirst().orElseThrow(Refusal::notFound);
    Instant now = services.now();
    if (services.hands.up(sitting.child().id(), work.problem().id())) {
      services.hands.down(sitting.child().id(), work.problem().id(), HandStore.Who.CHILD, now);
    } else {
      services.works.keep(sitting.id(), List.of(new SentItem(work.id(), services.tokens.id().substring(0, 16), 1,
          SentItem.Kind.HELP, Work.NOT_ASKED, now, false)), now);
    }
    services.live.changed(sitting.child().classroom());
    request.redirect("/mine/" + work.id(), HttpStatus.SEE_OTHER);
  }

  /** What a page said of itself with its sitting's key. */
  record Said(Sitting sitting, JsonNode body) {
    private static final int MOST_BYTES = 8 * 1024;

    /** Empty when the key does not fit: then the answer is given. */
    static Optional<Said> of(Services services, Context request) {
      try {
        if (request.contentLength() <= MOST_BYTES) {
          JsonNode body = Json.read(request.body());
          String id = body.path("sitting").asText();
          if (Tokens.same(services.tokens.keyOf(id), body.path("key").asText())) {
            Optional<Said> said = services.sittings.find(id).map(sitting -> new Said(sitting, body));
            if (said.isPresent()) {
              return said;
            }
          }
        }
      } catch (Unusable e) {
        // answered below: whoever holds no key learns nothing of why
      }
      request.status(403).json(Map.of("problem", "this key says nothing for this sitting"));
      return Optional.empty();
    }
  }
}
