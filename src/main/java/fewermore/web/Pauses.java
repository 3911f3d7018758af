package fewermore.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.Sitting;
import fewermore.store.RoomStore;
import fewermore.web.child.ChildTexts;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Which classes are paused: asked with every answer to a tablet, so kept in memory beside the store. */
final class Pauses {
  private final RoomStore rooms;
  private final Map<Long, Boolean> paused = new ConcurrentHashMap<>();

  Pauses(RoomStore rooms) {
    this.rooms = rooms;
  }

  boolean paused(long classroom) {
    return paused.computeIfAbsent(classroom, rooms::paused);
  }

  void pause(long classroom, Instant now) {
    rooms.pause(classroom, now);
    paused.put(classroom, true);
  }

  void goOn(long classroom, Instant now) {
    rooms.goOn(classroom, now);
    paused.put(classroom, false);
  }

  /** Adds to what a tablet is answered whether it is paused, with the sentence it then shows. */
  void tell(Sitting sitting, ObjectNode reply) {
    boolean now = sitting.open() && paused(sitting.child().classroom());
    reply.put("paused", now);
    if (now) {
      reply.put("pause", ChildTexts.in(sitting.child().language()).of("pause.say"));
    }
  }
}
