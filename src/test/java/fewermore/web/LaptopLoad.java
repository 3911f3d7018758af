package fewermore.web;

import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import fewermore.problem.NumberRange;
import fewermore.problem.ProblemWriter;
import fewermore.problem.ProposedMix;
import fewermore.problem.Regrouping;
import fewermore.store.ProblemStore.NewProblem;
import io.javalin.Javalin;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.ToDoubleFunction;

/**
 * The load of one laptop: the program as it is started, in a process of its own, beside a bare handler in another that
 * reads the same requests and answers 200. First pages that watch the room while one tile changes every second. Then
 * five rounds of both, one after the other: keep-alive clients as fast as it goes, each item a save that is forced, every
 * fifth a hand-in that is marked. Then, with half the heap, a class at ten saves a second and thirty tablets at ten each.
 *
 * <p>All of it on loopback, for as long as is said and no longer. Processor time and resident memory are read from
 * {@code /proc}: Linux only. Run by {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test
 * -Dmain.class=fewermore.web.LaptopLoad "-Djvm.flags=-Xmx512m" -Dargs="5 5 600"}: rounds, seconds each, watchers.
 */
public final class LaptopLoad {
  private static final int MOST_ROUNDS = 9;
  private static final int MOST_SECONDS = 60;
  private static final int MOST_WATCHERS = 600;
  private static final int PROBLEMS = 12;
  private static final int HAND_IN = 5;
  private static final int TABLETS = 30;
  private static final int MOST_ITEMS = 4_000_000;
  private static final String USUAL = "-Xmx128m";
  private static final String HALF = "-Xmx64m";

  /** One phase: requests a second, and the time within which 95 of 100 were answered. */
  public record Phase(double aSecond, double median, double p95, long refused) {
    static Phase of(SchoolLoad.Took took, long refused) {
      return new Phase(took.aSecond(), took.millis(0.5), took.millis(0.95), refused);
    }

    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%.0f a second, half within %.1f ms, 95 %% within %.1f ms, refused %d", aSecond, median,
          p95, refused);
    }
  }

  /** The program beside the bare handler, the median round of each figure. */
  public record Against(int clients, Phase app, Phase bare, double throughput, double p95) {
    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%d clients: %s; bare: %s; medians of the rounds: %.2f of its throughput, its 95 %% %.1f"
          + " times", clients, app, bare, throughput, p95);
    }
  }

  /** @param cores of processor time meanwhile @param resident in MB */
  public record Watched(long heard, double cores, long resident) {}

  /** What a run found. @param resident in MB, with half the usual heap */
  public record Outcome(List<Against> full, Phase classroom, Phase hurried, long resident, int watchers, Watched watched) {
    public boolean right() {
      return full.stream().allMatch(each -> each.app.refused == 0) && classroom.refused == 0 && hurried.refused == 0
          && watched.heard >= watchers;
    }

    @Override
    public String toString() {
      StringBuilder text = new StringBuilder();
      full.forEach(each -> text.append(each).append('\n'));
      return text.append(String.format(Locale.ROOT, """
          %d watch the room, a tile changes every second: %d changes heard, %.2f of a core, %d MB resident
          half the usual heap, 30 tablets, 10 saves a second: %s
          half the usual heap, 30 tablets, 10 saves a second each: %s; %d MB resident""", watchers, watched.heard,
          watched.cores, watched.resident, classroom, hurried, resident)).toString();
    }
  }

  /** One tablet of the class with work in its hands. */
  private static final class Seat {
    private final Tablet tablet;
    private int sent;

    private Seat(Tablet tablet) {
      this.tablet = tablet;
    }

    /** A hand goes up: whatever was done before, the tile changes. */
    private String hand() {
      sent++;
      return tablet.body(List.of(tablet.item(tablet.work(1), sent, "help", null)));
    }

    private String next() {
      sent++;
      String kind = sent % HAND_IN == 0 ? "handed-in" : "draft";
      return tablet.body(List.of(tablet.item(tablet.work(1 + sent / HAND_IN % PROBLEMS), sent, kind, new Work("52 - 14 = x",
          Integer.toString(sent % 100), "shells", new Bars("Tomas", "52", "x", "14"), null))));
    }
  }

  /** A connection that is kept: the least a client can cost. */
  private static final class Wire implements AutoCloseable {
    private final Socket socket;
    private final InputStream in;
    private final String head;

    private Wire(int port) throws IOException {
      this.socket = new Socket(InetAddress.getByName("127.0.0.1"), port);
      socket.setTcpNoDelay(true);
      socket.setSoTimeout(30_000);
      this.in = new BufferedInputStream(socket.getInputStream());
      this.head = "POST /work HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nContent-Type: application/json\r\nContent-Length: ";
    }

    /** @return what was answered, empty where it was no 200 */
    private String post(String body) throws IOException {
      byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
      byte[] first = (head + bytes.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
      byte[] all = Arrays.copyOf(first, first.length + bytes.length);
      System.arraycopy(bytes, 0, all, first.length, bytes.length);
      socket.getOutputStream().write(all);
      String status = line();
      int length = 0;
      boolean chunked = false;
      for (String line = line(); !line.isEmpty(); line = line()) {
        String lower = line.toLowerCase(Locale.ROOT);
        if (lower.startsWith("content-length:")) {
          length = Integer.parseInt(lower.substring(15).strip());
        }
        chunked |= lower.startsWith("transfer-encoding:") && lower.contains("chunked");
      }
      String answer = chunked ? chunks() : read(length);
      return status.contains(" 200 ") ? answer : "";
    }

    private String chunks() throws IOException {
      StringBuilder all = new StringBuilder();
      for (int size = Integer.parseInt(line(), 16); size > 0; size = Integer.parseInt(line(), 16)) {
        all.append(read(size));
        line();
      }
      line();
      return all.toString();
    }

    private String read(int length) throws IOException {
      return new String(in.readNBytes(length), StandardCharsets.UTF_8);
    }

    private String line() throws IOException {
      StringBuilder line = new StringBuilder();
      for (int each = in.read(); each != '\n'; each = in.read()) {
        if (each < 0) {
          throw new IOException("the connection was closed");
        }
        if (each != '\r') {
          line.append((char) each);
        }
      }
      return line.toString();
    }

    @Override
    public void close() throws IOException {
      socket.close();
    }
  }

  /** The bare handler's own program: reads the request whole and answers 200. */
  public static final class Bare {
    private Bare() {}

    public static void main(String[] arguments) {
      Javalin.create(config -> {
        config.startup.showJavalinBanner = false;
        config.jetty.host = "127.0.0.1";
        config.jetty.port = Integer.parseInt(arguments[0]);
        config.routes.get("/pulse", request -> request.result("here"));
        config.routes.post("/work", request -> {
          request.body();
          request.json(Map.of("took", 1));
        });
      }).start();
    }
  }

  private final Path folder;
  private final List<Seat> seats = new ArrayList<>();

  private LaptopLoad(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] arguments) throws Exception {
    int rounds = SchoolLoad.number(arguments, 0, 5, 1, MOST_ROUNDS);
    int seconds = SchoolLoad.number(arguments, 1, 5, 1, MOST_SECONDS);
    int watchers = SchoolLoad.number(arguments, 2, MOST_WATCHERS, 1, MOST_WATCHERS);
    Outcome outcome = run(List.of(TABLETS, 10 * TABLETS), rounds, seconds, watchers);
    System.out.println(outcome);
    System.exit(outcome.right() ? 0 : 1);
  }

  /** @param clients how many at once, for each of the two or more sets of rounds */
  public static Outcome run(List<Integer> clients, int rounds, int seconds, int watchers) throws Exception {
    LaptopLoad load = new LaptopLoad(Files.createTempDirectory("fewermore-load"));
    try {
      load.fill(clients.stream().mapToInt(Integer::intValue).max().orElse(TABLETS));
      return load.measure(clients, rounds, seconds, watchers);
    } finally {
      KillRig.remove(load.folder);
    }
  }

  /** A class of thirty with a set of its own; the tablets come in again where there are more than children. */
  private void fill(int tablets) {
    try (Rig rig = Rig.startAgain(folder, 0, 0, null)) {
      rig.services.classes.addChildren(rig.classroom.id(), SchoolLoad.more(TABLETS), rig.now());
      rig.give(new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, Set.of()).writeSet(ProposedMix.of(PROBLEMS), 1)
          .problems().stream().map(NewProblem::of).toList());
      var children = rig.services.classes.children(rig.classroom.id());
      for (int at = 0; at < Math.max(tablets, TABLETS); at++) {
        seats.add(new Seat(Tablet.comeIn(rig, children.get(at % children.size()))));
      }
    }
  }

  private Outcome measure(List<Integer> clients, int rounds, int seconds, int watchers) throws Exception {
    int port = KillRig.freePort();
    int teacherPort = KillRig.freePort();
    int barePort = KillRig.freePort();
    List<Against> full = new ArrayList<>();
    Watched watched;
    Process bare = null;
    Process app = KillRig.start(flags(USUAL), folder, port, teacherPort);
    try {
      bare = KillRig.start(flags(USUAL), Bare.class.getName(), Integer.toString(barePort));
      KillRig.waitUntilServing(port);
      KillRig.waitUntilServing(barePort);
      // First: the rounds leave a day with more work than a school has in a year, which each page that opens reads.
      watched = watched(app, teacherPort, port, watchers, Math.max(seconds, 5));
      flat(port, TABLETS, seconds);
      flat(barePort, TABLETS, seconds);
      for (int each : clients) {
        full.add(against(port, barePort, each, rounds, seconds));
      }
    } finally {
      end(app);
      if (bare != null) {
        end(bare);
      }
    }
    Process small = KillRig.start(flags(HALF), folder, port, teacherPort);
    try {
      KillRig.waitUntilServing(port);
      Phase classroom = paced(port, Duration.ofMillis(1000L * TABLETS / 10), Math.max(seconds, 6));
      Phase hurried = paced(port, Duration.ofMillis(100), seconds);
      return new Outcome(full, classroom, hurried, resident(small), watchers, watched);
    } finally {
      end(small);
    }
  }

  private static List<String> flags(String heap) {
    return List.of(heap, "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:+ExitOnOutOfMemoryError");
  }

  private static void end(Process process) throws InterruptedException {
    process.destroy();
    if (!process.waitFor(20, TimeUnit.SECONDS)) {
      process.destroyForcibly();
    }
  }

  private Against against(int port, int barePort, int clients, int rounds, int seconds) throws Exception {
    List<Phase> app = new ArrayList<>();
    List<Phase> bare = new ArrayList<>();
    List<Double> throughput = new ArrayList<>();
    List<Double> p95 = new ArrayList<>();
    for (int round = 0; round < rounds; round++) {
      Phase least = flat(barePort, clients, seconds);
      Phase ours = flat(port, clients, seconds);
      bare.add(least);
      app.add(ours);
      throughput.add(ours.aSecond / least.aSecond);
      p95.add(ours.p95 / least.p95);
    }
    return new Against(clients, middle(app), middle(bare), median(throughput, ratio -> ratio), median(p95, ratio -> ratio));
  }

  private static Phase middle(List<Phase> rounds) {
    return new Phase(median(rounds, Phase::aSecond), median(rounds, Phase::median), median(rounds, Phase::p95),
        rounds.stream().mapToLong(Phase::refused).sum());
  }

  private static <T> double median(List<T> rounds, ToDoubleFunction<T> figure) {
    double[] sorted = rounds.stream().mapToDouble(figure).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  /** Each client sends its next as soon as the one before is answered. */
  private Phase flat(int port, int clients, int seconds) throws Exception {
    return all(port, clients, seconds, Duration.ZERO);
  }

  /** Thirty tablets, each once in a while; what is late is counted from when it was due. */
  private Phase paced(int port, Duration every, int seconds) throws Exception {
    return all(port, TABLETS, seconds, every);
  }

  private Phase all(int port, int clients, int seconds, Duration every) throws Exception {
    long begin = System.nanoTime() + 50_000_000L;
    long end = begin + seconds * 1_000_000_000L;
    AtomicLong refused = new AtomicLong();
    List<long[]> took = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    for (int client = 0; client < clients; client++) {
      Seat seat = seats.get(client);
      long first = begin + every.toNanos() * client / clients;
      Thread thread = new Thread(() -> {
        long[] mine = one(port, seat, first, end, every, refused);
        synchronized (took) {
          took.add(mine);
        }
      }, "tablet-" + client);
      thread.start();
      threads.add(thread);
    }
    for (Thread thread : threads) {
      thread.join();
    }
    long[] nanos = took.stream().flatMapToLong(Arrays::stream).sorted().toArray();
    return Phase.of(new SchoolLoad.Took(nanos, seconds), refused.get());
  }

  private static long[] one(int port, Seat seat, long first, long end, Duration every, AtomicLong refused) {
    long[] took = new long[1024];
    int count = 0;
    try (Wire wire = new Wire(port)) {
      long due = first;
      while (count < MOST_ITEMS && System.nanoTime() < end && due < end) {
        String body = seat.next();
        for (long wait = due - System.nanoTime(); wait > 0; wait = due - System.nanoTime()) {
          LockSupport.parkNanos(wait);
        }
        long from = every.isZero() ? System.nanoTime() : due;
        if (!wire.post(body).contains("\"took\"")) {
          refused.incrementAndGet();
        }
        took = count < took.length ? took : Arrays.copyOf(took, 2 * took.length);
        took[count] = System.nanoTime() - from;
        count++;
        due += every.toNanos();
      }
    } catch (IOException e) {
      refused.incrementAndGet();
    }
    return Arrays.copyOf(took, count);
  }

  private Watched watched(Process app, int teacherPort, int port, int watchers, int seconds) throws Exception {
    Browser teacher = KillRig.signedIn(teacherPort);
    String cookie = String.join("; ", teacher.cookies.entrySet().stream().map(each -> each.getKey() + "=" + each.getValue())
        .toList());
    AtomicLong heard = new AtomicLong();
    List<Socket> pages = new ArrayList<>();
    try {
      for (int page = 0; page < watchers; page++) {
        pages.add(watch(teacherPort, cookie, heard));
      }
      for (int tries = 0; tries < 600 && heard.get() < watchers; tries++) {
        Thread.sleep(50);
      }
      Thread.sleep(1_000);
      heard.set(0);
      long before = processorMillis(app);
      long began = System.nanoTime();
      try (Wire wire = new Wire(port)) {
        for (int second = 0; second < seconds; second++) {
          wire.post(seats.get(second % TABLETS).hand());
          Thread.sleep(1_000);
        }
      }
      double cores = (processorMillis(app) - before) / ((System.nanoTime() - began) / 1e6);
      return new Watched(heard.get(), cores, resident(app));
    } finally {
      for (Socket page : pages) {
        page.close();
      }
    }
  }

  private static Socket watch(int teacherPort, String cookie, AtomicLong heard) throws IOException {
    Socket page = new Socket(InetAddress.getByName("127.0.0.1"), teacherPort);
    page.getOutputStream().write(("GET /live/room HTTP/1.1\r\nHost: 127.0.0.1:" + teacherPort + "\r\nAccept: text/event-stream"
        + "\r\nCookie: " + cookie + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
    Thread reader = new Thread(() -> {
      try (var lines = new java.io.BufferedReader(new java.io.InputStreamReader(page.getInputStream(),
          StandardCharsets.UTF_8), 512)) {
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
          if (line.startsWith("event:") && !line.contains("beat")) {
            heard.incrementAndGet();
          }
        }
      } catch (IOException e) {
        // The page was closed.
      }
    }, "watcher");
    reader.setDaemon(true);
    reader.start();
    return page;
  }

  private static long processorMillis(Process process) {
    return process.info().totalCpuDuration().map(Duration::toMillis).orElse(0L);
  }

  /** In MB; 0 where the system doesn't tell. */
  private static long resident(Process process) throws IOException {
    Path status = Path.of("/proc", Long.toString(process.pid()), "status");
    if (!Files.isReadable(status)) {
      return 0;
    }
    return Files.readAllLines(status).stream().filter(line -> line.startsWith("VmRSS:"))
        .map(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024).findFirst().orElse(0L);
  }
}
