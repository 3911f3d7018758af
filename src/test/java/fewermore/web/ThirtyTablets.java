package fewermore.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.TimeoutError;
import fewermore.classroom.Child;
import fewermore.classroom.HandIn;
import fewermore.classroom.Picture;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.ProblemSet;
import fewermore.json.Json;
import fewermore.json.WorkJson;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import fewermore.store.ClassStore.NewChild;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Thirty tablets on a bad Wi-Fi: two real pages in Chromium and 28 clients that speak the protocol, all on loopback.
 * Children change places while work still waits on a tablet. Each tablet writes down what was handed in; at the end
 * the laptop must hold each of them once, in order, under its own child, and nothing else. Run whole by
 * {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.web.ThirtyTablets -Dargs=600}.
 */
public final class ThirtyTablets {
  private static final int CLIENTS = 28;
  private static final int PAGES = 2;
  private static final int[] WAITS = {1, 2, 4, 8, 16, 30};
  private static final Duration TIMEOUT = Duration.ofSeconds(10);
  private static final int MOST_ITEMS = 20;
  /** Seconds after the last cut in which everything must have come in. */
  private static final int DRAIN_SECONDS = 90;

  /** What a run found. All but the first two lines of counts must be zero. */
  public record Outcome(int seconds, int tablets, int handedIn, int kept, int missing, int altered, int notHandedIn,
      int underAnotherChild, int outOfOrder, int stillWaiting, long requests, long drafts, long turns,
      long connections, long cut, long answersLost, long stuck, long outages, long medianMillis, long slowestMillis) {
    public boolean right() {
      return tablets == CLIENTS + PAGES && handedIn == kept && missing == 0 && altered == 0 && notHandedIn == 0 && underAnotherChild == 0
          && outOfOrder == 0 && stillWaiting == 0;
    }

    @Override
    public String toString() {
      return """
          %d tablets to the end, %d s of cuts: %d handed in, %d on the laptop
            missing %d, altered %d, never handed in %d, under another child %d, out of order %d, still waiting %d
            %d requests, %d drafts, %d times another child came in on a tablet
            %d connections, %d cut on the way there, %d answers lost, %d stuck for seconds, %d times no Wi-Fi at all
            from the press to the acknowledgement (protocol clients): median %d ms, slowest %d ms"""
          .formatted(tablets, seconds, handedIn, kept, missing, altered, notHandedIn, underAnotherChild, outOfOrder, stillWaiting,
              requests, drafts, turns, connections, cut, answersLost, stuck, outages, medianMillis, slowestMillis);
    }
  }

  /** What a tablet wrote down when a child handed in. */
  private record Entry(String name, long child, String parts) {}

  private record Waiting(String sitting, String key, String work, String page, int seq, String kind, Work parts, long at) {
    String name() {
      return work + "/" + page + "/" + seq;
    }
  }

  private final Rig rig;
  private final CutLine line;
  private final List<Child> children;
  private volatile long until;
  private final Queue<Entry> journal = new ConcurrentLinkedQueue<>();
  private final Queue<Long> delays = new ConcurrentLinkedQueue<>();
  private final Map<String, Long> childOfSitting = new ConcurrentHashMap<>();
  private final AtomicLong requests = new AtomicLong();
  private final AtomicLong drafts = new AtomicLong();
  private final AtomicLong turns = new AtomicLong();
  private final AtomicLong stillWaiting = new AtomicLong();
  private final AtomicLong toTheEnd = new AtomicLong();
  private final HttpClient http = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1)
      .connectTimeout(Duration.ofSeconds(5)).build();

  private ThirtyTablets(Rig rig, CutLine line) {
    this.rig = rig;
    this.line = line;
    rig.services.classes.addChildren(rig.classroom.id(), more(), rig.now());
    this.children = rig.services.classes.children(rig.classroom.id());
    rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, 9_999, false,
        ProblemSet.USUAL_PARTS, List.of(Stories.SHELLS, Stories.BEADS), rig.now());
  }

  private static List<NewChild> more() {
    List<NewChild> more = new ArrayList<>();
    for (int child = 3; child < CLIENTS + PAGES; child++) {
      Picture picture = Picture.ALL.get(child);
      more.add(new NewChild("Child" + (char) ('A' + child % 26) + (child / 26), picture.id(), picture.ground(), "en"));
    }
    return more;
  }

  public static void main(String[] arguments) throws Exception {
    int seconds = arguments.length == 0 ? 600 : Integer.parseInt(arguments[0]);
    Outcome outcome = run(seconds, 20261125L);
    System.out.println(outcome);
    System.exit(outcome.right() ? 0 : 1);
  }

  /** @param seconds of cuts; what waits then may still come in for a while */
  public static Outcome run(int seconds, long seed) throws Exception {
    try (Rig rig = Rig.startForTablets(); CutLine line = new CutLine(rig.app.port(), seed)) {
      return new ThirtyTablets(rig, line).run(seconds, new Random(seed));
    }
  }

  private Outcome run(int seconds, Random random) throws InterruptedException {
    List<Thread> threads = new ArrayList<>();
    List<BrowserContext> tablets = new ArrayList<>();
    try {
      List<Page> pages = new ArrayList<>();
      for (int tablet = 0; tablet < PAGES; tablet++) {
        pages.add(takeATablet(tablets, children.get(CLIENTS + tablet)));
      }
      until = System.nanoTime() + seconds * 1_000_000_000L;
      line.spoil();
      for (int client = 0; client < CLIENTS; client++) {
        Client tablet = new Client(client, new Random(random.nextLong()));
        Thread thread = new Thread(tablet, "tablet-" + client);
        thread.start();
        threads.add(thread);
      }
      realPages(tablets, pages, new Random(random.nextLong()));
    } finally {
      tablets.forEach(BrowserContext::close);
    }
    for (Thread thread : threads) {
      thread.join((DRAIN_SECONDS + 30) * 1_000L);
    }
    return count(seconds);
  }

  private boolean over() {
    return System.nanoTime() > until;
  }

  // ---- a tablet that speaks the protocol ----

  private final class Client implements Runnable {
    private final int number;
    private final Random random;
    private final Map<String, Waiting> outbox = new LinkedHashMap<>();
    private final Map<String, Integer> seqs = new HashMap<>();
    private Tablet tablet;
    private String page;
    private int count;
    private int failures;
    private long quietUntil;

    private Client(int number, Random random) {
      this.number = number;
      this.random = random;
    }

    @Override
    public void run() {
      try {
        tablet = new Tablet(rig);
        comeIn(children.get(number));
        while (!over()) {
          work();
          send();
          Thread.sleep(150 + random.nextInt(1_200));
        }
        line.mend();
        long end = System.nanoTime() + DRAIN_SECONDS * 1_000_000_000L;
        while (!outbox.isEmpty() && System.nanoTime() < end) {
          send();
          Thread.sleep(100);
        }
        toTheEnd.incrementAndGet();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } finally {
        stillWaiting.addAndGet(outbox.size());
      }
    }

    /** Coming in is not what is tried here: on a machine that is too busy it is tried again. */
    private void comeIn(Child child) throws InterruptedException {
      for (int tries = 0; ; tries++) {
        try {
          tablet.in(rig, child);
          break;
        } catch (UncheckedIOException e) {
          if (tries >= 20) {
            throw e;
          }
          Thread.sleep(1_000);
        }
      }
      childOfSitting.put(tablet.sitting, child.id());
      newPage();
    }

    private void newPage() {
      page = "p" + number + "x" + Long.toHexString(random.nextLong() & 0xffffffffL);
      seqs.clear();
    }

    /** A child writes, hands in, loads the page anew, or makes room for the next child. */
    private void work() throws InterruptedException {
      int lot = random.nextInt(100);
      String work = tablet.work(1 + random.nextInt(tablet.problems.size()));
      if (lot < 45) {
        add(work, "draft", written("draft"));
        drafts.incrementAndGet();
      } else if (lot < 92) {
        Work parts = written("hand-in");
        Waiting made = add(work, "handed-in", parts);
        outbox.remove("draft " + work + page);
        journal.add(new Entry(made.name(), childOfSitting.get(tablet.sitting), Json.write(WorkJson.write(parts))));
      } else if (lot < 96) {
        newPage();
      } else {
        add(tablet.work(1), "leave", null);
        turns.incrementAndGet();
        comeIn(children.get(random.nextInt(children.size())));
      }
    }

    private Work written(String what) {
      return new Work("52 + 14 = x", what + " " + number + "-" + ++count, "shells", new Bars("Tomas", "52", "x", "14"),
          null);
    }

    private Waiting add(String work, String kind, Work parts) {
      int seq = seqs.merge(work, 1, Integer::sum);
      Waiting item = new Waiting(tablet.sitting, tablet.key, work, page, seq, kind, parts, System.currentTimeMillis());
      outbox.put(kind.equals("draft") ? "draft " + work + page : item.name(), item);
      return item;
    }

    /** One request a sitting, hand-ins before drafts, waits that grow. */
    private void send() {
      if (outbox.isEmpty() || System.currentTimeMillis() < quietUntil) {
        return;
      }
      List<Map.Entry<String, Waiting>> order = new ArrayList<>(outbox.entrySet());
      order.sort(java.util.Comparator.comparing(
          (Map.Entry<String, Waiting> each) -> each.getValue().kind.equals("draft"))
          .thenComparing(each -> each.getValue().at).thenComparing(each -> each.getValue().seq));
      Waiting first = order.get(0).getValue();
      List<Waiting> chosen = order.stream().map(Map.Entry::getValue)
          .filter(each -> each.sitting.equals(first.sitting)).limit(MOST_ITEMS).toList();
      JsonNode reply = post(first, chosen);
      if (reply == null) {
        long wait = (long) (WAITS[Math.min(failures++, WAITS.length - 1)] * 1_000 * (0.75 + random.nextDouble() / 2));
        quietUntil = System.currentTimeMillis() + wait;
        return;
      }
      failures = 0;
      Set<String> took = new HashSet<>();
      reply.path("took").forEach(name ->
          took.add(name.get(0).asText() + "/" + name.get(1).asText() + "/" + name.get(2).asInt()));
      long now = System.currentTimeMillis();
      chosen.stream().filter(each -> each.kind.equals("handed-in") && took.contains(each.name()))
          .forEach(each -> delays.add(now - each.at));
      outbox.values().removeIf(each -> took.contains(each.name()));
    }

    private JsonNode post(Waiting first, List<Waiting> chosen) {
      ObjectNode body = Json.object().put("sitting", first.sitting).put("key", first.key).put("page", page);
      ArrayNode items = body.putArray("items");
      for (Waiting each : chosen) {
        ObjectNode item = items.addObject().put("work", each.work).put("page", each.page).put("seq", each.seq)
            .put("age", System.currentTimeMillis() - each.at).put("kind", each.kind);
        if (each.parts != null) {
          item.set("parts", WorkJson.write(each.parts));
        }
      }
      requests.incrementAndGet();
      try {
        HttpResponse<String> response = http.send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + line.port() + "/work")).timeout(TIMEOUT)
                .header("Content-Type", "application/json").POST(HttpRequest.BodyPublishers.ofString(Json.write(body)))
                .build(), HttpResponse.BodyHandlers.ofString());
        JsonNode reply = Json.read(response.body());
        return response.statusCode() == 200 && reply.path("fewermore").asInt() == 1 ? reply : null;
      } catch (IOException | Json.Unusable e) {
        return null;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return null;
      }
    }
  }

  // ---- two real pages ----

  /** What the page's storage is told when a child hands in: the tablet's own note of it. */
  private static final String NOTE = """
      const keep = Storage.prototype.setItem;
      Storage.prototype.setItem = function (key, value) {
        if (key.startsWith('fw.h.')) window.note(key, value);
        return keep.call(this, key, value);
      };""";

  private Page takeATablet(List<BrowserContext> tablets, Child child) {
    BrowserContext context = Chromium.tablet(1024, 600);
    context.setDefaultTimeout(60_000);
    tablets.add(context);
    context.exposeFunction("note", arguments -> {
      note(String.valueOf(arguments[0]), String.valueOf(arguments[1]));
      return null;
    });
    context.addInitScript(NOTE);
    return comeIn(context, child);
  }

  private void realPages(List<BrowserContext> tablets, List<Page> pages, Random random) {
    for (int turn = 0; !over(); turn++) {
      tablets.get(turn % PAGES).setOffline(random.nextInt(100) < 25);
      type(pages.get(turn % PAGES), random);
    }
    line.mend();
    for (int tablet = 0; tablet < PAGES; tablet++) {
      tablets.get(tablet).setOffline(false);
      drain(pages.get(tablet));
      toTheEnd.incrementAndGet();
    }
  }

  private Page comeIn(BrowserContext context, Child child) {
    Page page = context.newPage();
    String origin = "http://tablet.test:" + line.port();
    page.navigate(origin + "/in/" + rig.door());
    page.click(".tile >> text=" + child.name());
    page.click("form[data-once] button");
    page.waitForSelector("[data-open='3'][href='#3']");
    page.click("[data-open='3']");
    page.click("[data-part=answer]");
    page.waitForSelector("[data-for=answer]:not([hidden])");
    return page;
  }

  private static void type(Page page, Random random) {
    try {
      while (page.inputValue("[data-for=answer] [data-field]").length() > 4) {
        press(page, "back");
      }
      for (int digits = 0; digits < 3; digits++) {
        press(page, String.valueOf(random.nextInt(10)));
        page.waitForTimeout(160);
      }
      if (random.nextInt(100) < 60 && page.isVisible("[data-hand-in]")) {
        page.waitForTimeout(820);
        page.click("[data-hand-in]", SOON);
        if (page.isVisible("[data-ask-box]")) {
          page.click("[data-ask-box] [data-anyway]", SOON);
        }
      }
    } catch (TimeoutError e) {
      // What the laptop says opens another part in the middle of a press: the child looks up and goes on.
    }
  }

  private static final Page.ClickOptions SOON = new Page.ClickOptions().setTimeout(4_000);

  private static void press(Page page, String key) {
    if (!page.isVisible("[data-for=answer]")) {
      page.click("[data-part=answer]", SOON);
    }
    page.click("[data-for=answer] [data-key='" + key + "']", SOON);
  }

  private void drain(Page page) {
    String waiting = "Object.keys(localStorage).filter(key => /^fw[.][dh][.]/.test(key)).length";
    int left = 1;
    for (int tries = 0; tries < DRAIN_SECONDS * 5 && left > 0; tries++) {
      page.waitForTimeout(200);
      left = ((Number) page.evaluate(waiting)).intValue();
    }
    stillWaiting.addAndGet(left);
  }

  private void note(String key, String value) {
    String[] parts = key.split("\\.");
    JsonNode item = Json.read(value);
    if (!item.path("kind").asText().equals("handed-in")) {
      return;
    }
    long child = rig.services.sittings.find(parts[2]).orElseThrow().child().id();
    journal.add(new Entry(parts[3] + "/" + parts[4] + "/" + parts[5], child,
        Json.write(WorkJson.write(WorkJson.read(item.path("parts"))))));
  }

  // ---- what the laptop holds ----

  private Outcome count(int seconds) {
    Map<String, Entry> kept = new HashMap<>();
    int keptInAll = 0;
    int outOfOrder = 0;
    for (PieceOfWork piece : rig.services.works.pieces(rig.classroom.id())) {
      Map<String, Integer> last = new HashMap<>();
      for (HandIn each : piece.handIns()) {
        keptInAll++;
        kept.put(each.work() + "/" + each.page() + "/" + each.seq(), new Entry(
            each.work() + "/" + each.page() + "/" + each.seq(), piece.child().id(),
            Json.write(WorkJson.write(each.parts()))));
        Integer before = last.put(each.work() + "/" + each.page(), each.seq());
        outOfOrder += before != null && before >= each.seq() ? 1 : 0;
      }
    }
    int missing = 0;
    int altered = 0;
    int elsewhere = 0;
    Set<String> made = new HashSet<>();
    for (Entry entry : journal) {
      made.add(entry.name);
      Entry there = kept.get(entry.name);
      missing += there == null ? 1 : 0;
      altered += there != null && !there.parts.equals(entry.parts) ? 1 : 0;
      elsewhere += there != null && there.child != entry.child ? 1 : 0;
    }
    int notHandedIn = (int) kept.keySet().stream().filter(name -> !made.contains(name)).count();
    List<Long> sorted = delays.stream().sorted().toList();
    return new Outcome(seconds, (int) toTheEnd.get(), journal.size(), keptInAll, missing, altered, notHandedIn, elsewhere, outOfOrder,
        (int) stillWaiting.get(), requests.get(), drafts.get(), turns.get(), line.connections.get(), line.cut.get(),
        line.answersLost.get(), line.stuck.get(), line.outages.get(),
        sorted.isEmpty() ? 0 : sorted.get(sorted.size() / 2), sorted.isEmpty() ? 0 : sorted.get(sorted.size() - 1));
  }
}
