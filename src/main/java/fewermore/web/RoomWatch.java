package fewermore.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.Classroom;
import fewermore.classroom.Room;
import fewermore.classroom.RoomFacts;
import fewermore.classroom.RoomFacts.Sent;
import fewermore.classroom.Seat;
import fewermore.classroom.SentItem;
import fewermore.classroom.Sitting;
import fewermore.json.Json;
import fewermore.marking.Part;
import fewermore.marking.Work;
import fewermore.store.NotOnDisk;
import fewermore.store.disk.StoreState;
import fewermore.web.teacher.RoomPage;
import fewermore.web.teacher.SeatTile;
import io.javalin.http.sse.SseClient;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * The room as it is now, and what changes in it. The store is read again only after a change; what time alone brings
 * about (quiet, stuck) is found every second from what was read. Each change goes out once, to all who watch.
 */
final class RoomWatch implements AutoCloseable {
  static final String STUCK_MINUTES = "room stuck minutes";
  private static final Logger LOG = System.getLogger(RoomWatch.class.getName());
  private static final long LOOK_MILLIS = 250;
  private static final int LOOKS_A_SECOND = 4;

  private final Services services;
  private final Map<Long, Kept> kept = new ConcurrentHashMap<>();
  private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(task -> {
    Thread thread = new Thread(task, "room");
    thread.setDaemon(true);
    return thread;
  });
  private boolean started;

  /** What was read and sent of one class. */
  private static final class Kept {
    private final Classroom classroom;
    private volatile boolean dirty = true;
    private RoomFacts facts;
    private LocalDate day;
    private Map<String, String> voices = Map.of();
    private final Map<List<Long>, Work> before = new HashMap<>();
    private final Map<List<Long>, Part> changed = new HashMap<>();
    private final Map<Long, SeatTile> sent = new HashMap<>();
    private String head = "";
    private int looks;

    private Kept(Classroom classroom) {
      this.classroom = classroom;
    }
  }

  RoomWatch(Services services) {
    this.services = services;
    services.live.alsoTell(classroom -> {
      Kept room = kept.get(classroom);
      if (room != null) {
        room.dirty = true;
      }
    });
  }

  /** The room of a class as a page. */
  RoomPage page(Classroom classroom) {
    Kept room = kept.computeIfAbsent(classroom.id(), id -> new Kept(classroom));
    synchronized (room) {
      room.dirty = true;
      return look(room);
    }
  }

  RoomFacts facts(Classroom classroom) {
    return services.rooms.facts(classroom, services.today(classroom), stuckAfter());
  }

  /** Who is where by these facts, with what is known of the tablets. */
  List<Seat> seats(Classroom classroom, RoomFacts facts) {
    Kept room = kept.computeIfAbsent(classroom.id(), id -> new Kept(classroom));
    synchronized (room) {
      room.voices = services.voices.said(classroom.id());
      return Room.seats(facts, tablets(room), services.now());
    }
  }

  Duration stuckAfter() {
    return services.teachers.setting(STUCK_MINUTES).flatMap(TabletHandlers::number).map(Duration::ofMinutes)
        .orElse(RoomFacts.USUAL_STUCK_AFTER);
  }

  /** Watches a class: the whole room first, then what changes. */
  void watch(SseClient client, Classroom classroom) {
    start();
    kept.computeIfAbsent(classroom.id(), id -> new Kept(classroom));
    services.live.watch(client, Set.of(topic(classroom.id())), () -> json(page(classroom)));
  }

  private synchronized void start() {
    if (!started) {
      started = true;
      clock.scheduleWithFixedDelay(this::lookAtAll, LOOK_MILLIS, LOOK_MILLIS, TimeUnit.MILLISECONDS);
    }
  }

  private static String topic(long classroom) {
    return "room-" + classroom;
  }

  private void lookAtAll() {
    for (Kept room : kept.values()) {
      try {
        if (services.live.watched(topic(room.classroom.id()))) {
          synchronized (room) {
            room.looks++;
            if (room.dirty || room.looks % LOOKS_A_SECOND == 0) {
              tell(room);
            }
          }
        }
      } catch (NotOnDisk e) {
        LOG.log(Level.DEBUG, "the room can't be read at present, which was said");
      } catch (RuntimeException e) {
        LOG.log(Level.WARNING, "the room could not be looked at", e);
      }
    }
  }

  private void tell(Kept room) {
    RoomPage page = look(room);
    ObjectNode change = head(page);
    String head = Json.write(change);
    ArrayNode seats = change.putArray("seats");
    for (SeatTile tile : page.tiles()) {
      if (!tile.equals(room.sent.put(tile.id(), tile))) {
        seats.add(json(tile));
      }
    }
    if (!seats.isEmpty() || !head.equals(room.head)) {
      room.head = head;
      services.live.publish(topic(room.classroom.id()), "change", Json.write(change));
    }
  }

  private RoomPage look(Kept room) {
    LocalDate today = services.today(room.classroom);
    if (room.dirty || !today.equals(room.day)) {
      read(room, today);
    }
    Instant now = services.now();
    List<Seat> seats = Room.seats(room.facts, tablets(room), now);
    return RoomPage.of(seats, room.facts, room.classroom.zone(), now, paused(room));
  }

  /** While the data can't be reached, what was read last stands, and the page says so. */
  private void read(Kept room, LocalDate today) {
    room.dirty = false;
    try {
      room.facts = services.rooms.facts(room.classroom, today, stuckAfter());
      room.voices = services.voices.said(room.classroom.id());
      room.day = today;
      seeChanges(room);
    } catch (NotOnDisk e) {
      room.dirty = true;
      if (room.facts == null) {
        throw e;
      }
    }
  }

  private Room.Tablets tablets(Kept room) {
    return new Room.Tablets() {
      @Override
      public Instant heard(Sitting sitting) {
        return services.presence.heard(sitting);
      }

      @Override
      public boolean noVoice(Sitting sitting) {
        return "none".equals(room.voices.get(sitting.id()));
      }

      @Override
      public Optional<Part> changed(long child, long problem) {
        return Optional.ofNullable(room.changed.get(List.of(child, problem)));
      }
    };
  }

  private static void seeChanges(Kept room) {
    Map<List<Long>, Work> now = new HashMap<>();
    for (Sent item : room.facts.sent()) {
      if (item.kind() != SentItem.Kind.HELP) {
        now.put(List.of(item.child(), item.problem()), item.parts());
      }
    }
    now.forEach((key, work) -> {
      Work before = room.before.get(key);
      if (before != null) {
        Room.changed(before, work).ifPresent(part -> room.changed.put(key, part));
      }
    });
    room.before.putAll(now);
  }

  /** How many of the tablets in use have been heard since the pause began, and so show it. */
  private RoomPage.Paused paused(Kept room) {
    Instant since = room.facts.pauses().stream().filter(pause -> pause.to() == null)
        .map(RoomFacts.Pause::from).findFirst().orElse(null);
    if (since == null) {
      return null;
    }
    List<Sitting> open = room.facts.sittings().stream().map(RoomFacts.Sat::sitting).filter(Sitting::open).toList();
    int heard = (int) open.stream().filter(sitting -> services.presence.heard(sitting).isAfter(since)).count();
    return new RoomPage.Paused(since, heard, open.size());
  }

  private String json(RoomPage page) {
    ObjectNode whole = head(page);
    ArrayNode seats = whole.putArray("seats");
    page.tiles().forEach(tile -> seats.add(json(tile)));
    return Json.write(whole);
  }

  private ObjectNode head(RoomPage page) {
    StoreState store = services.database.state();
    ObjectNode head = Json.object().put("title", page.title()).put("paused", page.pausedSays())
        .put("notSaved", store.running() ? null : store.says()).put("tryThis", store.tryThis());
    ArrayNode stuck = head.putArray("stuck");
    page.stuck().forEach(each -> stuck.addObject().put("id", each.id()).put("name", each.name()).put("why", each.why()));
    head.put("more", page.moreStuck());
    ArrayNode counts = head.putArray("counts");
    page.counts().forEach(count -> counts.addObject().put("status", count.status()).put("many", count.many()));
    return head;
  }

  private static ObjectNode json(SeatTile tile) {
    return Json.object().put("id", tile.id()).put("status", tile.status()).put("where", tile.where())
        .put("tablet", tile.tablet()).put("note", tile.note()).put("aloud", tile.aloud());
  }

  @Override
  public void close() {
    clock.shutdownNow();
  }
}
