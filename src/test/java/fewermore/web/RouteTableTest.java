package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Classroom;
import fewermore.marking.Work;
import fewermore.store.ProblemStore.NewProblem;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Every route × who: nobody, child A, child B (on A's things), and the teacher. A route without a line here
 * fails, and so does a line without a route.
 */
class RouteTableTest {
  /** {@code let} in (2xx or 303 to where the page goes next), sent {@code away} to come or sign in, {@code no}. */
  private enum Says {
    LET,
    AWAY,
    NO
  }

  private record Line(String as, Says nobody, Says childA, Says childB) {}

  private static final Map<String, Line> TABLET = new LinkedHashMap<>();
  private static final Map<String, Line> TEACHER = new LinkedHashMap<>();

  private static void tablet(String route, String as, Says nobody, Says childA, Says childB) {
    TABLET.put(route, new Line(as, nobody, childA, childB));
  }

  /** On the teacher's port: as nobody; childA stands for the signed-in teacher, childB for her on another's class. */
  private static void teacher(String route, String as, Says nobody, Says teacher, Says othersClass) {
    TEACHER.put(route, new Line(as, nobody, teacher, othersClass));
  }

  static {
    tablet("GET /", "/", Says.LET, Says.LET, Says.LET);
    tablet("GET /in/{door}", "/in/{door}", Says.LET, Says.LET, Says.LET);
    tablet("GET /come-in", "/come-in", Says.LET, Says.LET, Says.LET);
    tablet("POST /door", "/door", Says.LET, Says.LET, Says.LET);
    tablet("GET /come-in/{child}", "/come-in/{child}", Says.NO, Says.LET, Says.LET);
    tablet("GET /mine", "/mine", Says.AWAY, Says.LET, Says.LET);
    tablet("GET /mine/{work}", "/mine/{work}", Says.AWAY, Says.LET, Says.NO);
    tablet("POST /mine/{work}", "/mine/{work}", Says.AWAY, Says.LET, Says.NO);
    tablet("POST /work", "/work", Says.NO, Says.LET, Says.NO);
    tablet("OPTIONS /work", "/work", Says.LET, Says.LET, Says.LET);
    tablet("GET /pulse", "/pulse", Says.LET, Says.LET, Says.LET);
    tablet("POST /come-in/{child}", "/come-in/{child}", Says.NO, Says.LET, Says.LET);
    tablet("POST /leave", "/leave", Says.AWAY, Says.LET, Says.LET);

    teacher("GET /", "/", Says.LET, Says.LET, Says.LET);
    teacher("GET /first", "/first", Says.AWAY, Says.AWAY, Says.AWAY);
    teacher("POST /first", "/first", Says.NO, Says.NO, Says.NO);
    teacher("GET /sign-in", "/sign-in", Says.LET, Says.LET, Says.LET);
    teacher("POST /sign-in", "/sign-in", Says.NO, Says.NO, Says.NO);
    for (String page : List.of("/welcome", "/plan", "/board", "/findings", "/records", "/setup", "/help")) {
      teacher("GET " + page, page, Says.AWAY, Says.LET, Says.LET);
    }
    teacher("GET /records/kinds.csv", "/records/kinds.csv", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /records/work.csv", "/records/work.csv", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /findings/child/{child}", "/findings/child/{child}", Says.AWAY, Says.LET, Says.NO);
    teacher("GET /work/{work}/{page}/{seq}", "/work/{work}/{page}/1", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /work/{work}/{page}/{seq}/overrule", "/work/{work}/{page}/1/overrule", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /setup/children", "/setup/children", Says.AWAY, Says.NO, Says.NO);
    teacher("GET /board/class", "/board/class", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /live", "/live", Says.NO, Says.NO, Says.NO);
    teacher("POST /classes", "/classes", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /classes/{class}/look", "/classes/{class}/look", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /classes/{class}/throw-away", "/classes/{class}/throw-away", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /plan", "/plan", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /plan/replace", "/plan/replace", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /plan/give", "/plan/give", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /board/door", "/board/door", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /classes/invented", "/classes/invented", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /sign-out", "/sign-out", Says.AWAY, Says.LET, Says.LET);
  }

  private static Rig rig;
  private static Classroom others;
  private static Tablet handedIn;

  @BeforeAll
  static void start() {
    rig = Rig.start();
    long other = rig.services.teachers.add("Other", Passphrases.hash("another passphrase"), false, rig.now())
        .orElseThrow().id();
    others = rig.services.classes.add(other, "Room 9", ZoneId.of("UTC"), true, Rig.children("Juno"), rig.now());
    handedIn = Tablet.comeIn(rig, rig.children.get(0));
    handedIn.sent(handedIn.item(handedIn.work(1), 1, "handed-in", new Work("52 - 14 = x", "38", "shells", null, null)));
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  @Test
  void everyRouteHasALineAndEveryLineARoute() {
    assertEquals(names(App.tabletRoutes()), new TreeSet<>(TABLET.keySet()));
    assertEquals(names(App.teacherRoutes()), new TreeSet<>(TEACHER.keySet()));
  }

  private static Set<String> names(List<Route> routes) {
    Set<String> names = new TreeSet<>();
    routes.forEach(route -> names.add(route.name()));
    return names;
  }

  @Test
  void onTheTabletsPortEachComesAsFarAsTheTableSays() {
    List<String> wrong = new ArrayList<>();
    TABLET.forEach((route, line) -> {
      Tablet a = Tablet.comeIn(rig, rig.children.get(0));
      Tablet b = Tablet.comeIn(rig, rig.children.get(1));
      check(wrong, route + " as nobody", line.nobody, ask(new Browser(rig.tabletAddress()), route, line.as, a, null));
      check(wrong, route + " as child B on A's", line.childB, ask(b.browser, route, line.as, a, b));
      check(wrong, route + " as child A", line.childA, ask(a.browser, route, line.as, a, a));
    });
    assertEquals(List.of(), wrong);
  }

  /** @param sender whose key goes with the work, or null for none */
  private static HttpResponse<String> ask(Browser browser, String route, String as, Tablet owner, Tablet sender) {
    String path = as.replace("{door}", rig.door())
        .replace("{child}", Long.toString(owner == null ? 1 : rig.children.get(0).id()))
        .replace("{work}", owner.work(1));
    if (route.equals("POST /work")) {
      String key = sender == null ? "0".repeat(32) : sender.key;
      return browser.postJson("/work", "{\"sitting\":\"" + owner.sitting + "\",\"key\":\"" + key
          + "\",\"page\":\"p\",\"items\":[]}");
    }
    if (route.startsWith("OPTIONS")) {
      return browser.send(browser.request(path).method("OPTIONS", HttpRequest.BodyPublishers.noBody()));
    }
    if (route.startsWith("POST")) {
      browser.get("/come-in");
      browser.get(path.startsWith("/come-in/") ? path : "/mine");
      return browser.post(path, Map.of("taps", ""));
    }
    return browser.get(path);
  }

  @Test
  void onTheTeachersPortEachComesAsFarAsTheTableSays() {
    List<String> wrong = new ArrayList<>();
    TEACHER.forEach((route, line) -> {
      Browser nobody = new Browser(rig.teacherAddress());
      nobody.get("/sign-in");
      check(wrong, route + " as nobody", line.nobody, askTeacher(nobody, route, line.as, rig.classroom.id()));
      check(wrong, route + " on another's class", line.childB, askTeacher(signedIn(), route, line.as, others.id()));
      check(wrong, route + " as the teacher", line.childA, askTeacher(signedIn(), route, line.as, rig.classroom.id()));
    });
    assertEquals(List.of(), wrong);
    assertTrue(rig.services.classes.find(others.id()).isPresent(), "another's class must not be thrown away");
  }

  private static HttpResponse<String> askTeacher(Browser browser, String route, String as, long classroom) {
    boolean own = classroom == rig.classroom.id();
    long child = own ? rig.children.get(0).id() : rig.services.classes.children(others.id()).get(0).id();
    String path = as.replace("{class}", Long.toString(classroom)).replace("{child}", Long.toString(child))
        .replace("{work}", own ? handedIn.work(1) : "0".repeat(32)).replace("{page}", handedIn.page);
    return route.startsWith("POST") ? browser.post(path, Map.of()) : browser.get(path);
  }

  static Browser signedIn() {
    Browser browser = new Browser(rig.teacherAddress());
    browser.get("/sign-in");
    HttpResponse<String> response = browser.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    assertEquals(303, response.statusCode(), response.body());
    browser.get("/welcome");
    return browser;
  }

  private static void check(List<String> wrong, String what, Says expected, HttpResponse<String> response) {
    String to = response.headers().firstValue("Location").orElse("");
    boolean away = response.statusCode() == 303 && (to.equals("/come-in") || to.equals("/sign-in") || to.equals("/first"))
        && !what.startsWith("GET / ") && !what.startsWith("GET /in/") && !what.startsWith("POST /leave as child")
        && !what.startsWith("POST /sign-out as the") && !what.startsWith("POST /sign-out on");
    Says found = away ? Says.AWAY : response.statusCode() < 400 ? Says.LET : Says.NO;
    if (found != expected || response.statusCode() >= 500) {
      wrong.add(what + ": " + found + " (" + response.statusCode() + " " + to + "), expected " + expected);
    }
  }

  @Test
  void aTeachersPageDoesNotExistOnTheTabletsPort() {
    Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
    for (Route route : App.teacherRoutes()) {
      if (!route.path().equals("/")) {
        HttpResponse<String> response = tablet.browser.get(route.path().replaceAll("\\{[a-z]+}", "1"));
        assertEquals(404, response.statusCode(), route.name());
      }
    }
  }

  @Test
  void aChangeWithoutItsTokenOrFromAnotherPageIsRefused() {
    for (Route route : App.teacherRoutes()) {
      if (route.name().startsWith("POST")) {
        Browser teacher = signedIn();
        String path = route.path().replace("{class}", Long.toString(rig.classroom.id())).replaceAll("\\{[a-z]+}", "1");
        assertEquals(403, teacher.post(path, Map.of("csrf", "0".repeat(32))).statusCode(), route.name());
        assertEquals(403, teacher.send(teacher.request(path).header("Origin", "http://elsewhere.example")
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString("csrf=x"))).statusCode(), route.name());
      }
    }
    Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
    assertEquals(403, tablet.browser.post("/leave", Map.of("csrf", "")).statusCode());
    assertEquals(200, tablet.browser.get("/mine").statusCode());
  }

  @Test
  void anUnknownNameInTheHostLineIsRefused() throws Exception {
    for (int port : new int[] {rig.app.port(), rig.app.teacherPort()}) {
      try (var socket = new java.net.Socket("127.0.0.1", port)) {
        socket.setSoTimeout(5000);
        socket.getOutputStream().write("GET / HTTP/1.1\r\nHost: rebound.example\r\nConnection: close\r\n\r\n".getBytes());
        String answer = new String(socket.getInputStream().readAllBytes());
        assertTrue(answer.startsWith("HTTP/1.1 421"), answer.lines().findFirst().orElse(""));
      }
    }
  }

  @Test
  void everyPageHasTheStrictHeaders() {
    Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
    for (HttpResponse<String> page : List.of(tablet.browser.get("/mine"), tablet.browser.get("/come-in"),
        tablet.browser.get("/nowhere"), signedIn().get("/findings"), signedIn().get("/plan"))) {
      String policy = page.headers().firstValue("Content-Security-Policy").orElse("");
      assertTrue(policy.contains("default-src 'none'") && !policy.contains("unsafe"), policy);
      assertEquals("nosniff", page.headers().firstValue("X-Content-Type-Options").orElse(""));
      assertEquals("no-store", page.headers().firstValue("Cache-Control").orElse(""));
      assertTrue(page.headers().firstValue("Strict-Transport-Security").isEmpty());
      assertTrue(!page.body().contains("style=\"") && !page.body().contains("onclick"), "inline style or script");
    }
  }


  @Test
  void aProblemWrittenByATeacherIsEscaped() {
    NewProblem problem = new NewProblem(Stories.SHELLS.story(), "own", 0,
        List.of("<script>alert(1)</script> has 52 shells.", "Ines has 14 fewer.", "How many?"), List.of());
    try (Rig own = Rig.start()) {
      own.give(List.of(problem));
      Tablet tablet = Tablet.comeIn(own, own.children.get(0));
      String page = tablet.browser.get("/mine").body();
      assertTrue(!page.contains("<script>alert"), "the story's text was not escaped");
      assertTrue(page.contains("alert(1)"), "the story's text is missing");
    }
  }
}
