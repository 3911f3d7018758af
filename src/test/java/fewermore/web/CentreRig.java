package fewermore.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.Child;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A centre: tablets that work, stop, ask for help, lose the Wi-Fi for a while and come back; a teacher who goes to raised
 * hands and once pauses all; and a page of the room that listens. Each tablet keeps its own log of what it did and what
 * reached the laptop, and says from it alone what its tile should say; while a request is on its way it may say what was or what will be. Every
 * quarter of a second each tile is compared with the log: wrong is what the log did not say at any time in the last two
 * seconds.
 *
 * <pre>mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.web.CentreRig -Dargs="20 30"</pre>
 *
 * <p>The first argument is the minutes (20), the second the number of tablets (30, at most 30). It prints what was
 * compared, what was wrong, and how long changes took to be seen; it exits with 1 when a tile was wrong.
 */
public final class CentreRig {
  private static final int STUCK_MINUTES = 2;
  private static final Duration AWAY = Duration.ofMinutes(2);
  private static final Duration ALLOWED = Duration.ofSeconds(2);
  /** What fits each of the two problems: nothing to look at again. */
  private static final List<Work> ALL = List.of(
      new Work("52 - 14 = x", "38", "shells", new Bars("Tomas", "52", "x", "14"), null),
      new Work("15 + 19 = x", "34", "beads", new Bars("Theo", "x", "15", "19"), null));

  private final Rig rig;
  private final List<Client> clients = new ArrayList<>();
  private final Map<Long, Instant> visited = new ConcurrentHashMap<>();
  /** Visits on their way to the disk: the tile may show them or not. */
  private final Map<Long, Instant> visiting = new ConcurrentHashMap<>();
  private volatile Instant pausedFrom;
  private volatile Instant pausedTo;
  private volatile boolean over;

  private CentreRig(Rig rig) {
    this.rig = rig;
  }

  public static void main(String[] args) throws Exception {
    int minutes = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    int tablets = Math.min(30, args.length > 1 ? Integer.parseInt(args[1]) : 30);
    boolean right;
    try (Rig rig = Rig.start()) {
      right = new CentreRig(rig).run(minutes, tablets);
    }
    System.exit(right ? 0 : 1);
  }

  private boolean run(int minutes, int tablets) throws Exception {
    List<String> names = new ArrayList<>();
    for (int at = 3; at < tablets; at++) {
      names.add("Child" + (char) ('A' + at % 26) + (char) ('a' + at / 26));
    }
    if (!names.isEmpty()) {
      rig.services.classes.addChildren(rig.classroom.id(), Rig.children(names.toArray(String[]::new)), rig.now());
    }
    rig.services.teachers.set(RoomWatch.STUCK_MINUTES, Integer.toString(STUCK_MINUTES));
    List<Child> children = rig.services.classes.children(rig.classroom.id());
    rig.door();
    try (Listener room = new Listener(RouteTableTest.signedInTo(rig), "/live/room")) {
      for (int at = 0; at < tablets; at++) {
        clients.add(new Client(children.get(at), new Random(at)));
      }
      clients.forEach(client -> {
        Thread thread = new Thread(client, "tablet");
        thread.setDaemon(true);
        thread.start();
      });
      Thread teacher = new Thread(() -> teach(minutes), "teacher");
      teacher.setDaemon(true);
      teacher.start();
      return watch(room, minutes);
    }
  }

  /** Goes to raised hands after a while, and pauses all for half a minute in the middle. */
  private void teach(int minutes) {
    Random random = new Random(7);
    Instant middle = Instant.now().plus(Duration.ofSeconds(minutes * 30L));
    while (!over) {
      sleep(1000);
      for (Client client : clients) {
        if (client.handUp() && random.nextInt(25) == 0) {
          Instant now = rig.now();
          visiting.put(client.child.id(), now);
          rig.services.rooms.visit(rig.classroom.id(), client.child.id(), now);
          rig.services.live.changed(rig.classroom.id());
          visited.put(client.child.id(), now);
          visiting.remove(client.child.id());
        }
      }
      if (pausedFrom == null && Instant.now().isAfter(middle)) {
        Instant now = rig.now();
        pausedFrom = now;
        rig.services.pauses.pause(rig.classroom.id(), now);
        rig.services.live.changed(rig.classroom.id());
      } else if (pausedFrom != null && pausedTo == null && Instant.now().isAfter(pausedFrom.plusSeconds(30))) {
        Instant now = rig.now();
        rig.services.pauses.goOn(rig.classroom.id(), now);
        pausedTo = now;
        rig.services.live.changed(rig.classroom.id());
      }
    }
  }

  private boolean watch(Listener room, int minutes) {
    Instant end = Instant.now().plus(Duration.ofMinutes(minutes));
    Map<String, Integer> seen = new TreeMap<>();
    Map<String, Integer> wrong = new TreeMap<>();
    List<Long> waits = new ArrayList<>();
    Map<Long, Instant> differsSince = new LinkedHashMap<>();
    int compared = 0;
    while (Instant.now().isBefore(end)) {
      sleep(250);
      Instant now = Instant.now();
      for (Client client : clients) {
        long id = client.child.id();
        Set<String> says = client.write(now);
        String tile = room.status(id);
        if (tile.isEmpty()) {
          continue;
        }
        compared++;
        seen.merge(tile, 1, Integer::sum);
        if (says.contains(tile)) {
          Instant since = differsSince.remove(id);
          if (since != null) {
            waits.add(Duration.between(since, now).toMillis());
          }
        } else {
          differsSince.putIfAbsent(id, now);
          if (!client.saidLately(tile)) {
            wrong.merge("the tile says " + tile + ", the log " + says, 1, Integer::sum);
            System.out.println(now + " " + client.child.name() + ": " + tile + " (" + room.where(id) + "), log: "
                + client.story(now));
          }
        }
      }
    }
    over = true;
    waits.sort(null);
    System.out.println(clients.size() + " tablets, " + minutes + " minutes, " + clients.stream().mapToLong(each ->
        each.cuts.get()).sum() + " cuts of the Wi-Fi, " + visited.size() + " children visited");
    System.out.println("tiles compared: " + compared + " " + seen);
    System.out.println("wrong: " + wrong.values().stream().mapToInt(Integer::intValue).sum() + " " + wrong);
    if (!waits.isEmpty()) {
      System.out.println("changes seen: " + waits.size() + ", half within " + waits.get(waits.size() / 2)
          + " ms, all within " + waits.get(waits.size() - 1) + " ms");
    }
    return wrong.isEmpty() && compared > 0;
  }

  private static void sleep(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A tablet with its log. */
  private final class Client implements Runnable {
    private final Child child;
    private final Random random;
    private final AtomicLong cuts = new AtomicLong();
    private Tablet tablet;
    private final List<ObjectNode> waiting = new ArrayList<>();
    private final List<Long> writtenAt = new ArrayList<>();
    private int seq;

    /** What reached the laptop, by this tablet's own log; two while a request is on its way. */
    private volatile List<Known> known = List.of(Known.NOTHING);
    /** What it said the tile should say, at each look and whenever something reached the laptop. */
    private final Deque<Map.Entry<Instant, Set<String>>> log = new ArrayDeque<>();
    /** When it asked to come in; it came in some time between then and {@link Known#in}. */
    private volatile Instant knocked;

    Client(Child child, Random random) {
      this.child = child;
      this.random = random;
    }

    @Override
    public void run() {
      sleep(random.nextInt(8000));
      Instant before = rig.now();
      know(Known.NOTHING, Known.NOTHING.cameIn(before));
      tablet = Tablet.comeIn(rig, child);
      knocked = before;
      know(Known.NOTHING.cameIn(rig.now()));
      long nextPulse = System.currentTimeMillis() + 12_000 + random.nextInt(6000);
      long cutUntil = 0;
      long idleUntil = 0;
      int problem = 0;
      while (!over && !known.get(0).left) {
        sleep(200 + random.nextInt(300));
        long now = System.currentTimeMillis();
        boolean paused = pausedFrom != null && pausedTo == null;
        if (now > idleUntil && !paused) {
          int chance = random.nextInt(100);
          if (chance < 20) {
            add(problem, "draft", new Work("52 - 14 = " + random.nextInt(100), "", "", Bars.EMPTY, null));
          } else if (chance == 20) {
            add(problem, "help", null);
          } else if (chance == 21) {
            add(problem, "handed-in", ALL.get(problem));
            problem = Math.min(1, problem + 1);
          } else if (chance == 22) {
            idleUntil = now + random.nextInt(200_000);
          } else if (chance == 23 && known.get(0).handedIn[0] && random.nextInt(4) == 0) {
            add(problem, "leave", null);
          }
        }
        if (now > cutUntil && random.nextInt(500) == 0) {
          cutUntil = now + 10_000 + random.nextInt(200_000);
          cuts.incrementAndGet();
        }
        if (now < cutUntil) {
          continue;
        }
        if (!waiting.isEmpty()) {
          send();
        } else if (now > nextPulse) {
          nextPulse = now + 12_000 + random.nextInt(6000);
          know(known.get(0), known.get(0).heard(rig.now()));
          tablet.browser.get("/pulse");
          know(known.get(0).heard(rig.now()));
        }
      }
    }

    private void add(int problem, String kind, Work parts) {
      waiting.add(tablet.item(tablet.work(problem + 1), ++seq, kind, parts));
      writtenAt.add(System.currentTimeMillis());
    }

    private void send() {
      int many = Math.min(waiting.size(), 20);
      long now = System.currentTimeMillis();
      for (int at = 0; at < many; at++) {
        waiting.get(at).put("age", now - writtenAt.get(at));
      }
      List<ObjectNode> sent = new ArrayList<>(waiting.subList(0, many));
      Known after = known.get(0).heard(rig.now());
      for (int at = 0; at < many; at++) {
        int problem = sent.get(at).path("work").asText().equals(tablet.work(1)) ? 0 : 1;
        after = after.sent(sent.get(at).path("kind").asText(), problem, Instant.ofEpochMilli(writtenAt.get(at)));
      }
      know(known.get(0), after);
      Json.read(tablet.send(sent.toArray(ObjectNode[]::new)).body());
      know(after.heard(rig.now()));
      waiting.subList(0, many).clear();
      writtenAt.subList(0, many).clear();
    }

    private void know(Known... now) {
      known = List.of(now);
      write(Instant.now());
    }

    /** Writes down what the tile may say now: a state that lasts less than a quarter of a second is in the log as well. */
    Set<String> write(Instant now) {
      Set<String> says = says(now);
      synchronized (log) {
        log.addLast(Map.entry(now, says));
        while (log.size() > 1 && log.peekFirst().getKey().isBefore(now.minus(ALLOWED).minusMillis(300))) {
          log.removeFirst();
        }
      }
      return says;
    }

    boolean saidLately(String tile) {
      synchronized (log) {
        return log.stream().anyMatch(entry -> entry.getValue().contains(tile));
      }
    }

    boolean handUp() {
      return known.get(0).handUp(visited.get(child.id()));
    }

    /** What the tile may say, from this log alone. */
    Set<String> says(Instant now) {
      Set<String> says = new TreeSet<>();
      Instant visit = visited.get(child.id());
      Instant coming = visiting.get(child.id());
      for (Known each : known) {
        Known early = each.in == null || knocked == null ? each : each.in(knocked);
        for (Known one : List.of(each, early)) {
          says.add(says(one, visit, now));
          if (coming != null) {
            says.add(says(one, coming, now));
          }
        }
      }
      return says;
    }

    private String says(Known log, Instant visit, Instant now) {
      if (log.in == null) {
        return "waiting";
      }
      boolean all = log.handedIn[0] && log.handedIn[1];
      if (log.left) {
        return all ? "done" : "waiting";
      }
      if (log.handUp(visit)) {
        return "stuck";
      }
      if (all && !log.draftSince[0] && !log.draftSince[1]) {
        return "done";
      }
      if (Duration.between(log.heard, now).compareTo(AWAY) >= 0) {
        return "waiting";
      }
      Instant since = log.changed == null || log.changed.isBefore(log.in) ? log.in : log.changed;
      since = visit != null && visit.isAfter(since) ? visit : since;
      Duration still = Duration.between(since, now);
      if (pausedFrom != null) {
        Instant from = pausedFrom.isAfter(since) ? pausedFrom : since;
        Instant to = pausedTo == null ? now : pausedTo;
        still = to.isAfter(from) ? still.minus(Duration.between(from, to)) : still;
      }
      return still.compareTo(Duration.ofMinutes(STUCK_MINUTES)) >= 0 ? "stuck" : "working";
    }

    String story(Instant now) {
      return says(now) + " " + known + " visited " + visited.get(child.id());
    }
  }

  /** What reached the laptop of one tablet. */
  private record Known(Instant in, Instant heard, Instant changed, Instant raised, boolean[] handedIn, boolean[] draftSince,
      boolean left) {
    static final Known NOTHING = new Known(null, null, null, null, new boolean[2], new boolean[2], false);

    Known in(Instant at) {
      return new Known(at, heard, changed, raised, handedIn, draftSince, left);
    }

    Known cameIn(Instant now) {
      return new Known(now, now, changed, raised, handedIn, draftSince, left);
    }

    Known heard(Instant now) {
      return new Known(in, now, changed, raised, handedIn, draftSince, left);
    }

    Known sent(String kind, int problem, Instant written) {
      boolean[] handed = handedIn.clone();
      boolean[] drafts = draftSince.clone();
      Instant up = raised;
      Instant change = changed;
      boolean gone = left;
      switch (kind) {
        case "help" -> up = written;
        case "leave" -> gone = true;
        case "handed-in" -> {
          handed[problem] = true;
          drafts[problem] = false;
          change = written;
        }
        default -> {
          drafts[problem] = handed[problem];
          change = written;
        }
      }
      return new Known(in, heard, change, up, handed, drafts, gone);
    }

    boolean handUp(Instant visit) {
      return raised != null && !left && (visit == null || raised.isAfter(visit));
    }
  }
}
