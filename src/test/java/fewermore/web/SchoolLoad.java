package fewermore.web;

import fewermore.classroom.Picture;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import fewermore.store.ClassStore.NewChild;
import fewermore.store.Database;
import fewermore.store.Postgres;
import fewermore.store.School;
import fewermore.store.SchoolDay;
import io.javalin.Javalin;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A whole school at work on one PostgreSQL: as many apps as there are classrooms, each on its own part of it, each with
 * its tablets, an open Room and a teacher who looks at Findings. First at a school's pace, each child an item every ten
 * seconds, every fifth of them handed in; then as fast as it goes, the same requests against the apps and against a bare
 * server that answers 200. At the end every acknowledged hand-in must be in its own app and nothing else.
 *
 * <p>All of it runs in this one program and on this machine, on loopback, for as long as is said and no longer. Run by
 * {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.web.SchoolLoad
 * "-Djvm.flags=-Xmx2g" -Dargs="24 25 60"}: apps, children in each, seconds at a school's pace.
 */
public final class SchoolLoad {
  private static final int MOST_APPS = 24;
  private static final int MOST_CHILDREN = 40;
  private static final int MOST_SECONDS = 600;
  private static final Duration EVERY = Duration.ofSeconds(10);
  private static final int HAND_IN = 5;
  private static final int LOOK_SECONDS = 20;
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  /** Requests of one phase: how long each took from the moment it was due, in nanoseconds, sorted. */
  public record Took(long[] nanos, double seconds) {
    static Took of(Iterable<Long> all, double seconds) {
      List<Long> list = new ArrayList<>();
      all.forEach(list::add);
      long[] nanos = list.stream().mapToLong(Long::longValue).sorted().toArray();
      return new Took(nanos, seconds);
    }

    public double millis(double part) {
      return nanos.length == 0 ? 0 : nanos[(int) Math.min(nanos.length - 1, Math.floor(part * nanos.length))] / 1e6;
    }

    public double aSecond() {
      return nanos.length / seconds;
    }

    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%d requests, %.0f a second; half within %.1f ms, 95 %% within %.1f ms, 99 %% within"
          + " %.1f ms, the longest %.1f ms", nanos.length, aSecond(), millis(0.5), millis(0.95), millis(0.99), millis(1));
    }
  }

  /** What a run found. */
  public record Outcome(int apps, int children, double startSeconds, double comeInSeconds, Took paced, Took findings,
      Took fast, Took bare, int connections, long refused, long acknowledged, long missing, long foreign) {
    public boolean right() {
      return refused == 0 && missing == 0 && foreign == 0;
    }

    @Override
    public String toString() {
      return String.format(Locale.ROOT, """
          %d apps, %d children in each, on one PostgreSQL: started in %.1f s, all came in within %.1f s, %d connections
          at a school's pace: %s
          Findings meanwhile: %s
          as fast as it goes: %s
          a bare server, same requests: %s; of its throughput %.2f, of its 95 %% %.1f times
          refused %d, hand-ins acknowledged %d, missing %d, in another app %d""", apps, children, startSeconds,
          comeInSeconds, connections, paced, findings, fast, bare, fast.aSecond() / bare.aSecond(),
          fast.millis(0.95) / Math.max(0.001, bare.millis(0.95)), refused, acknowledged, missing, foreign);
    }
  }

  /** One child's tablet, known by its app. */
  private static final class Seat {
    private final int app;
    private final Tablet tablet;
    private int seq;

    private Seat(int app, Tablet tablet) {
      this.app = app;
      this.tablet = tablet;
    }
  }

  private final List<Rig> rigs = new ArrayList<>();
  private final List<Seat> seats = new ArrayList<>();
  private final Map<Integer, Set<String>> acknowledged = new ConcurrentHashMap<>();
  private final AtomicLong refused = new AtomicLong();
  private final HttpClient client = HttpClient.newHttpClient();

  private SchoolLoad() {}

  public static void main(String[] arguments) throws Exception {
    int apps = number(arguments, 0, 24, 1, MOST_APPS);
    int children = number(arguments, 1, 25, 1, MOST_CHILDREN);
    int seconds = number(arguments, 2, 60, 5, MOST_SECONDS);
    Outcome outcome = run(apps, children, seconds, Math.max(2, seconds / 4));
    System.out.println(outcome);
    System.exit(outcome.right() ? 0 : 1);
  }

  /** An argument of a command that measures. @throws IllegalArgumentException when it is out of bounds */
  static int number(String[] arguments, int at, int usual, int least, int most) {
    int number = arguments.length > at ? Integer.parseInt(arguments[at]) : usual;
    if (number < least || number > most) {
      throw new IllegalArgumentException("from " + least + " to " + most + " was expected, found " + number);
    }
    return number;
  }

  /** @param fastSeconds how long each of the two phases lasts that go as fast as it goes */
  public static Outcome run(int apps, int children, int seconds, int fastSeconds) throws Exception {
    SchoolLoad load = new SchoolLoad();
    try (EmbeddedPostgres server = Postgres.start()) {
      try {
        return load.measure(Postgres.schoolOf(server.getPort()), apps, children, seconds, fastSeconds);
      } finally {
        load.rigs.forEach(Rig::close);
      }
    }
  }

  private Outcome measure(School school, int apps, int children, int seconds, int fastSeconds) throws Exception {
    long began = System.nanoTime();
    for (int app = 0; app < apps; app++) {
      Path folder = Files.createTempDirectory("fewermore-load");
      Rig rig = Rig.startOn(folder, Database.open(folder, school, (data, from) -> { }));
      rig.services.classes.addChildren(rig.classroom.id(), more(children), rig.now());
      rigs.add(rig);
      acknowledged.put(app, ConcurrentHashMap.newKeySet());
    }
    double startSeconds = since(began);
    began = System.nanoTime();
    comeIn(children);
    double comeInSeconds = since(began);
    List<Listener> rooms = new ArrayList<>();
    List<Browser> teachers = new ArrayList<>();
    for (Rig rig : rigs) {
      Browser teacher = RouteTableTest.signedInTo(rig);
      teachers.add(teacher);
      rooms.add(new Listener(teacher, "/live/room"));
    }
    ConcurrentLinkedQueue<Long> findings = new ConcurrentLinkedQueue<>();
    Took paced = paced(seconds, teachers, findings);
    int connections = connections();
    Took fast = fast(fastSeconds, this::send);
    Took bare;
    Javalin server = Javalin.create(config -> {
      config.startup.showJavalinBanner = false;
      config.jetty.host = "127.0.0.1";
      config.jetty.port = 0;
      config.routes.post("/work", request -> {
        request.body();
        request.json(Map.of("took", 1));
      });
    }).start();
    try {
      bare = fast(fastSeconds, (seat, due, took) -> post("http://127.0.0.1:" + server.port(), body(seat), due, took, () -> { }));
    } finally {
      server.stop();
    }
    for (Listener room : rooms) {
      room.close();
    }
    long missing = 0;
    long foreign = 0;
    for (int app = 0; app < rigs.size(); app++) {
      Set<String> there = SchoolDay.there(rigs.get(app).services.database).keySet();
      missing += acknowledged.get(app).stream().filter(name -> !there.contains(name)).count();
      for (int other = 0; other < rigs.size(); other++) {
        foreign += other == app ? 0 : acknowledged.get(other).stream().filter(there::contains).count();
      }
    }
    return new Outcome(apps, children, startSeconds, comeInSeconds, paced, Took.of(findings, seconds), fast, bare,
        connections, refused.get(), acknowledged.values().stream().mapToLong(Set::size).sum(), missing, foreign);
  }

  private static double since(long began) {
    return (System.nanoTime() - began) / 1e9;
  }

  /** As many children as are wanted, the three of every rig among them. */
  static List<NewChild> more(int children) {
    List<NewChild> more = new ArrayList<>();
    for (int child = 3; child < children; child++) {
      Picture picture = Picture.ALL.get(child % Picture.ALL.size());
      more.add(new NewChild("Child" + (char) ('A' + child % 26) + child / 26, picture.id(), picture.ground(), "en"));
    }
    return more;
  }

  /** Every class comes in at once, each class one child after the other. */
  private void comeIn(int children) throws InterruptedException {
    List<Thread> classes = new ArrayList<>();
    for (int app = 0; app < rigs.size(); app++) {
      int at = app;
      Thread thread = new Thread(() -> {
        Rig rig = rigs.get(at);
        rig.services.classes.children(rig.classroom.id()).stream().limit(children).forEach(child -> {
          Seat seat = new Seat(at, Tablet.comeIn(rig, child));
          synchronized (seats) {
            seats.add(seat);
          }
        });
      });
      thread.start();
      classes.add(thread);
    }
    for (Thread thread : classes) {
      thread.join();
    }
    if (seats.size() != rigs.size() * children) {
      throw new IllegalStateException(seats.size() + " came in");
    }
  }

  /** Something that is sent, and when it was due. */
  private interface Sending {
    CompletableFuture<?> send(Seat seat, long due, ConcurrentLinkedQueue<Long> took);
  }

  private Took paced(int seconds, List<Browser> teachers, ConcurrentLinkedQueue<Long> findings) throws Exception {
    ConcurrentLinkedQueue<Long> took = new ConcurrentLinkedQueue<>();
    ScheduledExecutorService clock = Executors.newScheduledThreadPool(2);
    ScheduledExecutorService looks = Executors.newScheduledThreadPool(4);
    Semaphore underWay = new Semaphore(0);
    long begin = System.nanoTime() + 100_000_000L;
    int sent = 0;
    for (int at = 0; at < seats.size(); at++) {
      Seat seat = seats.get(at);
      long first = begin + EVERY.toNanos() * at / seats.size();
      for (long due = first; due < begin + seconds * 1_000_000_000L; due += EVERY.toNanos()) {
        long when = due;
        clock.schedule(() -> send(seat, when, took).whenComplete((done, problem) -> underWay.release()),
            due - System.nanoTime(), TimeUnit.NANOSECONDS);
        sent++;
      }
    }
    for (int at = 0; at < teachers.size(); at++) {
      Browser teacher = teachers.get(at);
      looks.scheduleAtFixedRate(() -> {
        long asked = System.nanoTime();
        if (teacher.get("/findings").statusCode() != 200) {
          refused.incrementAndGet();
        }
        findings.add(System.nanoTime() - asked);
      }, LOOK_SECONDS * 1000L * at / teachers.size(), LOOK_SECONDS * 1000L, TimeUnit.MILLISECONDS);
    }
    boolean all = underWay.tryAcquire(sent, seconds + PATIENCE.toSeconds(), TimeUnit.SECONDS);
    clock.shutdownNow();
    looks.shutdown();
    looks.awaitTermination(30, TimeUnit.SECONDS);
    if (!all) {
      throw new IllegalStateException("not all came back");
    }
    return Took.of(took, seconds);
  }

  /** Each seat sends its next as soon as the one before is answered. */
  private Took fast(int seconds, Sending sending) throws InterruptedException {
    ConcurrentLinkedQueue<Long> took = new ConcurrentLinkedQueue<>();
    long end = System.nanoTime() + seconds * 1_000_000_000L;
    Semaphore over = new Semaphore(0);
    seats.forEach(seat -> next(seat, end, sending, took, over));
    if (!over.tryAcquire(seats.size(), seconds + PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
      throw new IllegalStateException("not all came back");
    }
    return Took.of(took, seconds);
  }

  private void next(Seat seat, long end, Sending sending, ConcurrentLinkedQueue<Long> took, Semaphore over) {
    if (System.nanoTime() >= end) {
      over.release();
      return;
    }
    sending.send(seat, System.nanoTime(), took).whenCompleteAsync((done, problem) -> next(seat, end, sending, took, over));
  }

  private String body(Seat seat) {
    seat.seq++;
    return seat.tablet.body(List.of(seat.tablet.item(seat.tablet.work(1), seat.seq, kind(seat), new Work(
        "52 - 14 = x", Integer.toString(seat.seq), "shells", new Bars("Tomas", "52", "x", "14"), null))));
  }

  private static String kind(Seat seat) {
    return seat.seq % HAND_IN == 0 ? "handed-in" : "draft";
  }

  private CompletableFuture<?> send(Seat seat, long due, ConcurrentLinkedQueue<Long> took) {
    String body = body(seat);
    String name = kind(seat).equals("draft") ? null : seat.tablet.work(1) + "/" + seat.tablet.page + "/" + seat.seq;
    return post(rigs.get(seat.app).tabletAddress(), body, due, took, () -> {
      if (name != null) {
        acknowledged.get(seat.app).add(name);
      }
    });
  }

  private CompletableFuture<?> post(String to, String body, long due, ConcurrentLinkedQueue<Long> took,
      Runnable acknowledgedNow) {
    HttpRequest request = HttpRequest.newBuilder(URI.create(to + "/work")).timeout(PATIENCE)
        .header("Content-Type", "application/json").POST(HttpRequest.BodyPublishers.ofString(body)).build();
    return client.sendAsync(request, HttpResponse.BodyHandlers.ofString()).handle((answer, problem) -> {
      took.add(System.nanoTime() - due);
      if (problem != null || answer.statusCode() != 200 || Json.read(answer.body()).path("took").isMissingNode()) {
        refused.incrementAndGet();
      } else {
        acknowledgedNow.run();
      }
      return answer;
    });
  }

  private int connections() {
    return rigs.get(0).services.database.read(handle -> handle
        .createQuery("SELECT COUNT(*) FROM pg_stat_activity WHERE application_name LIKE 'fewermore %'")
        .mapTo(Integer.class).one());
  }
}
