package fewermore.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.Child;
import fewermore.classroom.Picture;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import fewermore.store.ClassStore.NewChild;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The Wi-Fi is back: thirty tablets with thirty waiting pieces each send at once, at most twenty a request, while the
 * teacher's pages and Come in are asked for. Run by {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test
 * -Dmain.class=fewermore.web.ComingBack}, with {@code -Dargs="5 6"} for fewer tablets and pieces.
 */
public final class ComingBack {
  private static final int A_REQUEST = 20;
  private static final Work WRITTEN = new Work("52 - 14 = x", "38", "shells", new Bars("Tomas", "52", "x", "14"), null);

  /** @param slowestMillis of all tablets, from its first request to the answer that named its last piece */
  public record Outcome(int tablets, int pieces, int acknowledged, int onTheLaptop, long slowestMillis, long pageP95Millis,
      int pages, int pagesFailed) {}

  private ComingBack() {}

  public static void main(String[] arguments) throws Exception {
    Outcome outcome = run(at(arguments, 0, 30), at(arguments, 1, 30));
    System.out.printf(Locale.ROOT, "%d tablets, %d pieces waiting: %d acknowledged, %d on the laptop; slowest tablet %d ms from"
        + " its first request to its last acknowledgement; %d pages meanwhile, p95 %d ms, failed %d%n", outcome.tablets,
        outcome.pieces, outcome.acknowledged, outcome.onTheLaptop, outcome.slowestMillis, outcome.pages, outcome.pageP95Millis,
        outcome.pagesFailed);
    System.exit(outcome.acknowledged == outcome.pieces && outcome.onTheLaptop == outcome.pieces ? 0 : 1);
  }

  private static int at(String[] arguments, int place, int usual) {
    return arguments.length > place ? Integer.parseInt(arguments[place]) : usual;
  }

  /** @param each how many pieces wait on a tablet */
  public static Outcome run(int tablets, int each) throws Exception {
    try (Rig rig = Rig.start()) {
      rig.services.classes.addChildren(rig.classroom.id(), more(tablets), rig.now());
      List<Child> children = rig.services.classes.children(rig.classroom.id());
      List<Tablet> all = new ArrayList<>();
      for (int at = 0; at < tablets; at++) {
        all.add(Tablet.comeIn(rig, children.get(at)));
      }
      long before = rig.services.works.handIns();
      AtomicInteger acknowledged = new AtomicInteger();
      long[] took = new long[tablets];
      CountDownLatch wifi = new CountDownLatch(1);
      List<Thread> threads = new ArrayList<>();
      for (int at = 0; at < tablets; at++) {
        int mine = at;
        threads.add(started("tablet-" + at, () -> {
          wifi.await();
          took[mine] = send(all.get(mine), each, acknowledged);
        }));
      }
      AtomicBoolean over = new AtomicBoolean();
      List<Long> pages = java.util.Collections.synchronizedList(new ArrayList<>());
      AtomicInteger failed = new AtomicInteger();
      // Signing in takes as long as its hash: before the Wi-Fi is back.
      Browser desk = RouteTableTest.signedInTo(rig);
      Thread teacher = started("teacher", () -> {
        wifi.await();
        look(desk, all.get(0), over, pages, failed);
      });
      wifi.countDown();
      for (Thread thread : threads) {
        thread.join();
      }
      over.set(true);
      teacher.join();
      Arrays.sort(took);
      List<Long> sorted = pages.stream().sorted().toList();
      return new Outcome(tablets, tablets * each, acknowledged.get(), (int) (rig.services.works.handIns() - before),
          took[tablets - 1] / 1_000_000, sorted.isEmpty() ? 0 : sorted.get(sorted.size() * 95 / 100) / 1_000_000, sorted.size(),
          failed.get());
    }
  }

  private static List<NewChild> more(int tablets) {
    List<NewChild> more = new ArrayList<>();
    for (int child = 3; child < tablets; child++) {
      Picture picture = Picture.ALL.get(child);
      more.add(new NewChild("Child" + (char) ('A' + child % 26) + (child / 26), picture.id(), picture.ground(), "en"));
    }
    return more;
  }

  private interface Deed {
    void run() throws Exception;
  }

  private static Thread started(String name, Deed deed) {
    Thread thread = new Thread(() -> {
      try {
        deed.run();
      } catch (Exception e) {
        throw new IllegalStateException(e);
      }
    }, name);
    thread.start();
    return thread;
  }

  private static long send(Tablet tablet, int pieces, AtomicInteger acknowledged) {
    long from = System.nanoTime();
    for (int first = 1; first <= pieces; first += A_REQUEST) {
      List<ObjectNode> items = new ArrayList<>();
      for (int seq = first; seq < first + A_REQUEST && seq <= pieces; seq++) {
        items.add(tablet.item(tablet.work(1 + seq % 2), seq, "handed-in", WRITTEN));
      }
      JsonNode answer = Json.read(tablet.send(items.toArray(ObjectNode[]::new)).body());
      acknowledged.addAndGet(answer.path("took").size());
    }
    return System.nanoTime() - from;
  }

  private static void look(Browser teacher, Tablet tablet, AtomicBoolean over, List<Long> pages, AtomicInteger failed) {
    do {
      for (String page : List.of("/room", "/findings")) {
        time(() -> teacher.get(page).statusCode(), pages, failed);
      }
      time(() -> tablet.browser.get("/mine").statusCode(), pages, failed);
    } while (!over.get());
  }

  private static void time(java.util.function.IntSupplier page, List<Long> pages, AtomicInteger failed) {
    long from = System.nanoTime();
    if (page.getAsInt() != 200) {
      failed.incrementAndGet();
    }
    pages.add(System.nanoTime() - from);
  }
}
