package fewermore.web;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.classroom.Child;
import fewermore.classroom.HandIn;
import fewermore.classroom.PieceOfWork;
import fewermore.json.Json;
import fewermore.json.WorkJson;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;

/**
 * The real program in a process of its own, real HTTP clients on loopback, and kill -9: what was acknowledged
 * must be there afterwards, as it was sent; so must what the teacher changed meanwhile. Run whole by
 * {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.web.KillRig -Dargs=50}.
 */
public final class KillRig {
  private static final int CLIENTS = 16;
  private static final AtomicInteger NEXT_PORT = new AtomicInteger((int) ProcessHandle.current().pid() * 37);
  private static final HttpClient HTTP = HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(2)).build();

  /**
   * What a run found. {@code other} counts work that is there with other content than was acknowledged,
   * {@code changes} what the teacher was shown as done, {@code changesLost} what of it is missing.
   */
  public record Outcome(int rounds, long acknowledged, long lost, long other, long changes, long changesLost) {}

  private record Seat(String sitting, String key, String work) {}

  private KillRig() {}

  public static void main(String[] arguments) throws Exception {
    int rounds = arguments.length == 0 ? 50 : Integer.parseInt(arguments[0]);
    System.out.println(run(rounds, 20261125L, 1_600));
    System.exit(0);
  }

  /**
   * @param rounds how often the program is started and killed
   * @param millis how long a round hands in at least; up to 600 more are drawn by lot
   */
  public static Outcome run(int rounds, long seed, int millis) throws Exception {
    Path folder = Files.createTempDirectory("fewermore-kill");
    List<Seat> seats = new ArrayList<>();
    try (Rig rig = Rig.startAgain(folder, 0, 0, null)) {
      for (int client = 0; client < CLIENTS; client++) {
        Child child = rig.children.get(client % rig.children.size());
        Tablet tablet = Tablet.comeIn(rig, child);
        seats.add(new Seat(tablet.sitting, tablet.key, tablet.work(1)));
      }
    }
    Map<String, String> acknowledged = new ConcurrentHashMap<>();
    AtomicLong changes = new AtomicLong();
    Random random = new Random(seed);
    for (int round = 0; round < rounds; round++) {
      int port = freePort();
      int teacherPort = freePort();
      Process program = start(folder, port, teacherPort);
      try {
        waitUntilServing(port);
        Browser desk = signedIn(teacherPort);
        AtomicBoolean killed = new AtomicBoolean();
        List<Thread> clients = new ArrayList<>();
        for (int client = 0; client < CLIENTS; client++) {
          Seat seat = seats.get(client);
          String page = "r" + round + "c" + client;
          Thread thread = new Thread(() -> handIn(port, seat, page, killed, acknowledged));
          thread.start();
          clients.add(thread);
        }
        Thread teacher = new Thread(() -> change(desk, killed, changes));
        teacher.start();
        clients.add(teacher);
        Thread.sleep(millis + random.nextInt(600));
        program.destroyForcibly();
        killed.set(true);
        program.waitFor(10, TimeUnit.SECONDS);
        for (Thread thread : clients) {
          thread.join(10_000);
        }
      } finally {
        program.destroyForcibly();
      }
    }
    Outcome outcome = count(rounds, folder, acknowledged, changes.get());
    remove(folder);
    return outcome;
  }

  /** Signing in takes as long as its hash: before the round's time runs. */
  static Browser signedIn(int port) {
    Browser teacher = new Browser("http://127.0.0.1:" + port);
    teacher.get("/sign-in");
    teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    teacher.get("/setup");
    return teacher;
  }

  /** The teacher makes a new door over and over: each time she is shown the Board anew, it is there. */
  private static void change(Browser teacher, AtomicBoolean killed, AtomicLong changes) {
    try {
      while (!killed.get()) {
        if (teacher.post("/board/door", Map.of()).statusCode() == 303) {
          changes.incrementAndGet();
        }
      }
    } catch (java.io.UncheckedIOException e) {
      // Killed in the middle of an answer.
      return;
    }
  }

  private static Outcome count(int rounds, Path folder, Map<String, String> acknowledged, long changes) {
    long doors;
    Map<String, String> kept = new HashMap<>();
    try (Rig rig = Rig.startAgain(folder, 0, 0, null)) {
      doors = rig.services.database.read(handle ->
          handle.createQuery("SELECT COUNT(*) FROM door").mapTo(Long.class).one());
      for (PieceOfWork piece : rig.services.works.pieces(rig.classroom.id())) {
        for (HandIn each : piece.handIns()) {
          kept.put(each.work() + "/" + each.page() + "/" + each.seq(), each.parts().answer());
        }
      }
    }
    long lost = acknowledged.keySet().stream().filter(name -> !kept.containsKey(name)).count();
    long other = acknowledged.entrySet().stream()
        .filter(each -> kept.containsKey(each.getKey()) && !each.getValue().equals(kept.get(each.getKey()))).count();
    return new Outcome(rounds, acknowledged.size(), lost, other, changes, Math.max(0, changes - doors));
  }

  static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
        Files.deleteIfExists(each);
      }
    }
  }

  private static void handIn(
      int port, Seat seat, String page, AtomicBoolean killed, Map<String, String> acknowledged) {
    for (int seq = 1; seq < 5_000 && !killed.get(); seq++) {
      String answer = page + "-" + seq;
      var item = Json.object().put("work", seat.work).put("page", page).put("seq", seq).put("age", 0)
          .put("kind", "handed-in");
      item.set("parts", WorkJson.write(
          new Work("52 + 14 = x", answer, "shells", new Bars("Tomas", "52", "x", "14"), null)));
      var body = Json.object().put("sitting", seat.sitting).put("key", seat.key).put("page", page);
      body.putArray("items").add(item);
      try {
        HttpResponse<String> response = HTTP.send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/work"))
                .timeout(Duration.ofSeconds(10))
                .POST(HttpRequest.BodyPublishers.ofString(Json.write(body))).build(),
            HttpResponse.BodyHandlers.ofString());
        JsonNode reply = Json.read(response.body());
        for (JsonNode took : reply.path("took")) {
          acknowledged.put(took.get(0).asText() + "/" + took.get(1).asText() + "/" + took.get(2).asInt(), answer);
        }
      } catch (IOException e) {
        return;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  /** The program as the README starts it, on loopback. */
  static Process start(Path folder, int port, int teacherPort) throws IOException {
    return start(List.of("-Xmx128m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"), folder, port, teacherPort);
  }

  static Process start(List<String> flags, Path folder, int port, int teacherPort) throws IOException {
    return start(flags, "fewermore.Main", "--data", folder.toString(), "--host", "127.0.0.1",
        "--port", Integer.toString(port), "--teacher-port", Integer.toString(teacherPort));
  }

  /** A program of this class path in a process of its own; what it says is not kept. */
  static Process start(List<String> flags, String main, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(flags);
    command.addAll(List.of("-classpath", System.getProperty("java.class.path"), main));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
  }

  /** A free one below those that outgoing connections get: none can take it before the program does. */
  static int freePort() throws IOException {
    for (int tries = 0; tries < 500; tries++) {
      int port = 20_000 + Math.floorMod(NEXT_PORT.incrementAndGet(), 12_000);
      try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
        return socket.getLocalPort();
      } catch (BindException e) {
        // Somebody listens there: the next.
      }
    }
    throw new IOException("no free port on loopback");
  }

  static void waitUntilServing(int port) throws Exception {
    for (int tries = 0; tries < 1200; tries++) {
      try {
        HttpResponse<String> pulse = HTTP.send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/pulse")).timeout(Duration.ofSeconds(2))
                .build(), HttpResponse.BodyHandlers.ofString());
        if (pulse.statusCode() == 200) {
          return;
        }
      } catch (IOException e) {
        Thread.sleep(100);
      }
    }
    throw new IllegalStateException("the program did not start within two minutes");
  }
}
