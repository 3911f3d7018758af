package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Picture;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import fewermore.store.ClassStore.NewChild;
import java.io.InputStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/**
 * A school day of eight hours at speed: in each hour thirty children come in, write, hand in, ask, look whether something
 * is said, and leave; Room, Findings and the Board are open and live. The app's clock jumps a minute at a time. What is
 * looked at is the heap after a forced collection, hour by hour. Run by {@code mvn -q test-compile exec:exec
 * -Dexec.classpathScope=test -Dmain.class=fewermore.web.LongDay}, with {@code -Dargs="3 10"} for fewer hours and children.
 */
public final class LongDay {
  private static final int PIECES_AN_HOUR = 10;
  private static final int DRAFTS_A_PIECE = 4;

  private static final class Jumping extends Clock {
    private volatile Instant now = Clock.systemUTC().instant().truncatedTo(java.time.temporal.ChronoUnit.DAYS).plus(Duration.ofHours(14));

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  private final Rig rig;
  private final Jumping clock;
  private final Random random = new Random(5);
  private long handedIn;

  private LongDay(Rig rig, Jumping clock) {
    this.rig = rig;
    this.clock = clock;
  }

  public static void main(String[] arguments) throws Exception {
    int hours = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 8;
    int children = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 30;
    List<Long> heaps = run(hours, children);
    System.out.printf(Locale.ROOT, "heap after each of %d hours, KB: %s; the last is %.2f of the first%n", hours,
        heaps.stream().map(bytes -> bytes >> 10).toList(), heaps.get(hours - 1) / (double) heaps.get(0));
    System.exit(0);
  }

  /** @return the heap after a forced collection at the end of each hour, in bytes */
  public static List<Long> run(int hours, int children) throws Exception {
    Jumping clock = new Jumping();
    try (Rig rig = Rig.start(clock)) {
      LongDay day = new LongDay(rig, clock);
      rig.services.classes.addChildren(rig.classroom.id(), more(children), rig.now());
      Browser teacher = new Browser(rig.teacherAddress());
      teacher.get("/sign-in");
      teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
      List<Thread> streams = List.of(listen(teacher, "/live/room"), listen(teacher, "/live"), listen(teacher, "/live/board"));
      List<Long> heaps = new ArrayList<>();
      for (int hour = 0; hour < hours; hour++) {
        day.hour(teacher, rig.services.classes.children(rig.classroom.id()));
        // What a class's pause of two minutes brings about; here no time passes.
        rig.services.database.putInOrder();
        heaps.add(heap());
      }
      if (rig.services.works.handIns() != day.handedIn) {
        throw new IllegalStateException("handed in " + day.handedIn + ", kept " + rig.services.works.handIns());
      }
      streams.forEach(Thread::interrupt);
      return heaps;
    }
  }

  private static List<NewChild> more(int children) {
    List<NewChild> more = new ArrayList<>();
    for (int child = 3; child < children; child++) {
      Picture picture = Picture.ALL.get(child);
      more.add(new NewChild("Child" + (char) ('A' + child % 26) + (child / 26), picture.id(), picture.ground(), "en"));
    }
    return more;
  }

  private void hour(Browser teacher, List<Child> children) {
    List<Tablet> tablets = new ArrayList<>();
    children.forEach(child -> tablets.add(Tablet.comeIn(rig, child)));
    for (int piece = 1; piece <= PIECES_AN_HOUR; piece++) {
      for (Tablet tablet : tablets) {
        int seq = piece * (DRAFTS_A_PIECE + 1);
        for (int draft = DRAFTS_A_PIECE; draft > 0; draft--) {
          tablet.send(tablet.item(tablet.work(1), seq - draft, "draft", written()));
        }
        tablet.send(tablet.item(tablet.work(1), seq, "handed-in", written()));
        handedIn++;
        tablet.browser.get("/pulse");
      }
      clock.now = clock.now.plus(Duration.ofMinutes(60 / PIECES_AN_HOUR));
      for (String page : List.of("/room", "/findings", "/board", "/records")) {
        teacher.get(page);
      }
    }
    tablets.forEach(tablet -> tablet.browser.post("/leave", Map.of()));
  }

  private Work written() {
    return new Work("52 - " + random.nextInt(50) + " = x", "" + random.nextInt(100), "shells", new Bars("Tomas", "52", "x", "14"), null);
  }

  private static Thread listen(Browser teacher, String path) {
    Thread thread = new Thread(() -> {
      try {
        HttpResponse<InputStream> stream = HttpClient.newHttpClient().send(teacher.request(path).timeout(Duration.ofHours(1))
            .header("Accept", "text/event-stream").GET().build(), HttpResponse.BodyHandlers.ofInputStream());
        byte[] buffer = new byte[4096];
        while (stream.body().read(buffer) >= 0 && !Thread.currentThread().isInterrupted()) {
          TimeUnit.MILLISECONDS.sleep(1);
        }
      } catch (java.io.IOException | InterruptedException over) {
        // the day is over
      }
    }, "stream " + path);
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  static long heap() throws InterruptedException {
    long least = Long.MAX_VALUE;
    for (int time = 0; time < 4; time++) {
      System.gc();
      Thread.sleep(150);
      least = Math.min(least, Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory());
    }
    return least;
  }
}
