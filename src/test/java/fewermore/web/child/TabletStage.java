package fewermore.web.child;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;

/**
 * A stage for a child's pages: the real templates and files, sample children and problems, and an in-memory
 * stand-in for the laptop's side of {@code POST /work}. It marks nothing: what it tells of a hand-in is set by the
 * test. Tablets reach it by a name that is no secure context, as in a classroom.
 */
final class TabletStage implements AutoCloseable {
  static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
      + "font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  /** What happens to a request to {@code /work}. */
  enum Line { OPEN, LOSES_ANSWERS, CAPTIVE_PORTAL, SENDS_ELSEWHERE, REFUSES, ERASED, CLOSED }

  final Map<String, JsonNode> revisions = new LinkedHashMap<>();
  final List<String> twoContents = new CopyOnWriteArrayList<>();
  final List<String> problems = new CopyOnWriteArrayList<>();
  final AtomicInteger workRequests = new AtomicInteger();
  volatile Line line = Line.OPEN;
  volatile int refusal = 403;
  /** What the teacher calls, or null. */
  volatile String call;
  volatile SittingPage sitting = Samples.today();
  volatile Function<JsonNode, ObjectNode> telling = item -> null;
  volatile String language = "en";

  /** Held here, or the level would be forgotten with the logger. */
  private static final List<Logger> QUIET = Stream.of("io.javalin", "org.eclipse.jetty").map(Logger::getLogger).toList();

  static {
    QUIET.forEach(logger -> logger.setLevel(Level.WARNING));
  }

  private final ChildPages pages = new ChildPages();
  private Javalin server;
  private int port;

  TabletStage() {
    start(0);
  }

  void start(int onPort) {
    server = Javalin.create(config -> {
      config.startup.showJavalinBanner = false;
      config.http.defaultContentType = "text/html; charset=utf-8";
      config.routes.before(ctx -> ctx.header("Content-Security-Policy", POLICY));
      config.routes.get("/static/<name>", this::file);
      config.routes.get("/", ctx -> ctx.redirect("/come-in"));
      config.routes.get("/come-in", ctx -> page(ctx, "child/come-in", Samples.comeIn(language, children)));
      config.routes.get("/door", ctx -> page(ctx, "child/door", Samples.door(language, 0, DoorPage.Problem.NONE)));
      config.routes.post("/door", this::door);
      config.routes.get("/come-in/{child}", ctx -> page(ctx, "child/is-this-you",
          new IsThisYouPage(language, Samples.noor(), ctx.path())));
      config.routes.post("/come-in/{child}", ctx -> ctx.redirect("/mine", io.javalin.http.HttpStatus.SEE_OTHER));
      config.routes.get("/secret", ctx -> page(ctx, "child/secret", SecretPage.of(language, Samples.noor(), "/secret",
          SecretPage.Problem.OTHER_PICTURES)));
      config.routes.post("/secret", ctx -> {
        forms.add(Map.copyOf(ctx.formParamMap()));
        ctx.redirect("/mine", io.javalin.http.HttpStatus.SEE_OTHER);
      });
      config.routes.get("/hello", ctx -> page(ctx, "child/hello", new HelloPage(language)));
      config.routes.post("/hello", ctx -> {
        forms.add(Map.copyOf(ctx.formParamMap()));
        ctx.status(204);
      });
      config.routes.get("/school-sign-in", ctx -> ctx.html("<title>School Wi-Fi</title>"));
      config.routes.get("/mine", ctx -> page(ctx, "child/mine", sitting));
      config.routes.get("/mine/{work}", ctx -> {
        int at = Integer.parseInt(ctx.pathParam("work").substring(1)) - 1;
        List<ShownProblem> all = sitting.problems();
        page(ctx, "child/work", new WorkPage(language, sitting.me(), all.get(at), all.size(),
            at + 1 < all.size() ? all.get(at + 1).work() : null));
      });
      config.routes.post("/mine/{work}", ctx -> {
        forms.add(Map.copyOf(ctx.formParamMap()));
        ctx.redirect(ctx.path(), io.javalin.http.HttpStatus.SEE_OTHER);
      });
      config.routes.post("/leave", ctx -> ctx.redirect("/come-in", io.javalin.http.HttpStatus.SEE_OTHER));
      config.routes.get("/pulse", this::pulse);
      config.routes.post("/voice", ctx -> {
        voices.add(Json.read(ctx.body()).path("voice").asText());
        ctx.json(Json.object().put("fewermore", 1));
      });
      config.routes.get("/voice/{work}", ctx -> {
        byte[] sound = recordings.get(ctx.pathParam("work"));
        ctx.status(sound == null ? 404 : 200);
        if (sound != null) {
          ctx.contentType("audio/wav").result(sound);
        }
      });
      config.routes.post("/hand", this::hand);
      config.routes.post("/work", this::work);
    }).start("127.0.0.1", onPort);
    port = server.port();
  }

  volatile int children = 24;
  final List<Map<String, List<String>>> forms = new CopyOnWriteArrayList<>();

  int port() {
    return port;
  }

  /** The address as a tablet has it: neither loopback nor HTTPS. */
  String address(String path) {
    return "http://tablet.test:" + port + path;
  }

  void stop() {
    server.stop();
  }

  @Override
  public void close() {
    server.stop();
  }

  /** What tablets said they read aloud with. */
  final List<String> voices = new CopyOnWriteArrayList<>();
  final Map<String, byte[]> recordings = new java.util.concurrent.ConcurrentHashMap<>();
  /** Works whose hand is up, as the laptop would say. */
  final java.util.Set<String> handsUp = java.util.concurrent.ConcurrentHashMap.newKeySet();

  private void hand(Context ctx) {
    if (line == Line.CAPTIVE_PORTAL || line == Line.CLOSED) {
      ctx.html("<title>School Wi-Fi</title>");
      return;
    }
    ArrayNode up = Json.array();
    handsUp.forEach(up::add);
    ctx.json(Json.object().put("fewermore", 1).set("up", up));
  }

  private void page(Context ctx, String template, Object page) {
    ctx.header("Cache-Control", "no-store");
    ctx.html(pages.render(template, language, page));
  }

  private void door(Context ctx) {
    List<String> taps = new ArrayList<>(List.of(String.valueOf(ctx.formParam("taps")).split(",")));
    taps.removeIf(String::isEmpty);
    if (ctx.formParam("tap") != null) {
      taps.add(ctx.formParam("tap"));
    }
    if (taps.size() < DoorPage.LENGTH) {
      List<ShownPicture> choices = Samples.door(language, 0, DoorPage.Problem.NONE).choices();
      List<ShownPicture> tapped = taps.stream().map(id ->
          choices.stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow()).toList();
      page(ctx, "child/door", new DoorPage(language, choices, tapped, DoorPage.Problem.NONE));
    } else if (taps.equals(List.of("kite", "sun", "bell", "lantern"))) {
      ctx.redirect("/come-in", io.javalin.http.HttpStatus.SEE_OTHER);
    } else {
      page(ctx, "child/door", Samples.door(language, 0, DoorPage.Problem.OTHER_PICTURES));
    }
  }

  private void file(Context ctx) {
    String name = ctx.pathParam("name");
    try (InputStream in = TabletStage.class.getResourceAsStream("/static/" + name)) {
      if (in == null) {
        ctx.status(404);
        return;
      }
      String end = name.substring(name.lastIndexOf('.') + 1);
      ctx.contentType(Map.of("css", "text/css", "js", "text/javascript", "svg", "image/svg+xml", "woff2",
          "font/woff2").getOrDefault(end, "text/plain"));
      ctx.result(in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void pulse(Context ctx) {
    if (line == Line.CAPTIVE_PORTAL || line == Line.SENDS_ELSEWHERE || line == Line.CLOSED) {
      ctx.html("<title>School Wi-Fi</title>");
      return;
    }
    ObjectNode reply = Json.object().put("fewermore", 1);
    if (call != null) {
      reply.putObject("say").put("id", call).put("text", call);
    }
    ctx.json(reply);
  }

  private void work(Context ctx) {
    workRequests.incrementAndGet();
    String body = ctx.body();
    switch (line) {
      case CAPTIVE_PORTAL -> ctx.html("<title>School Wi-Fi</title>");
      case SENDS_ELSEWHERE -> ctx.redirect("/school-sign-in", io.javalin.http.HttpStatus.FOUND);
      case ERASED -> ctx.json(erased(body));
      case CLOSED -> ctx.status(503);
      case REFUSES -> ctx.status(refusal).json(Json.object().put("problem", "no"));
      case LOSES_ANSWERS -> {
        take(body);
        ctx.status(502);
      }
      case OPEN -> {
        JsonNode request = Json.read(body);
        String itsKey = request.path("sitting").asText().replace('s', 'k');
        if (itsKey.equals(request.path("key").asText())) {
          ctx.json(take(body));
        } else {
          ctx.status(403).json(Json.object().put("problem", "this key adds no work to this sitting"));
        }
      }
    }
  }

  private static ObjectNode erased(String body) {
    ObjectNode reply = Json.object().put("fewermore", 1);
    reply.putArray("took");
    ArrayNode refused = reply.putArray("refused");
    for (JsonNode item : Json.read(body).path("items")) {
      refused.addArray().add(item.path("work").asText()).add(item.path("page").asText()).add(item.path("seq").asInt())
          .add("erased");
    }
    reply.putArray("told");
    return reply.put("sitting", "open").putNull("say");
  }

  private synchronized ObjectNode take(String body) {
    JsonNode request = Json.read(body);
    ObjectNode reply = Json.object().put("fewermore", 1);
    ArrayNode took = reply.putArray("took");
    reply.putArray("refused");
    ArrayNode told = reply.putArray("told");
    boolean leaving = false;
    for (JsonNode item : request.path("items")) {
      String work = item.path("work").asText();
      String from = item.path("page").asText();
      int seq = item.path("seq").asInt();
      String name = request.path("sitting").asText() + " " + work + " " + from + " " + seq;
      JsonNode before = revisions.putIfAbsent(name, item);
      if (before != null && !before.path("parts").equals(item.path("parts"))) {
        twoContents.add(name);
      }
      took.addArray().add(work).add(from).add(seq);
      ObjectNode says = "handed-in".equals(item.path("kind").asText()) ? telling.apply(item) : null;
      if (says != null) {
        told.add(says.put("work", work).put("page", from).put("seq", seq));
      }
      if ("help".equals(item.path("kind").asText())) {
        handsUp.add(work);
      } else if ("hand-down".equals(item.path("kind").asText())) {
        handsUp.remove(work);
      }
      leaving |= "leave".equals(item.path("kind").asText());
    }
    return reply.put("sitting", leaving ? "ended" : "open").putNull("say");
  }

  /** What was kept, in the order it came: the sort of thing and its parts. */
  synchronized List<JsonNode> kept(String kind) {
    return revisions.values().stream().filter(item -> item.path("kind").asText().equals(kind)).toList();
  }

  /** For looking at the pages by hand: prints the address and stays. */
  public static void main(String[] arguments) throws InterruptedException {
    TabletStage stage = new TabletStage();
    stage.stop();
    stage.start(8470);
    System.out.println("http://localhost:8470/");
    Thread.sleep(Long.MAX_VALUE);
  }
}
