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
    tablet("POST /mine/more", "/mine/more", Says.AWAY, Says.LET, Says.LET);
    tablet("GET /mine/{work}", "/mine/{work}", Says.AWAY, Says.LET, Says.NO);
    tablet("POST /mine/{work}", "/mine/{work}", Says.AWAY, Says.LET, Says.NO);
    tablet("POST /mine/{work}/hand", "/mine/{work}/hand", Says.AWAY, Says.LET, Says.NO);
    tablet("POST /hand", "/hand", Says.NO, Says.LET, Says.NO);
    tablet("POST /voice", "/voice", Says.NO, Says.LET, Says.NO);
    tablet("GET /voice/{work}", "/voice/{work}", Says.AWAY, Says.LET, Says.NO);
    tablet("POST /work", "/work", Says.NO, Says.LET, Says.NO);
    tablet("OPTIONS /work", "/work", Says.LET, Says.LET, Says.LET);
    tablet("GET /pulse", "/pulse", Says.LET, Says.LET, Says.LET);
    tablet("POST /come-in/{child}", "/come-in/{child}", Says.NO, Says.LET, Says.LET);
    tablet("GET /c/{card}", "/c/{card}", Says.LET, Says.LET, Says.LET);
    tablet("GET /C/{card}", "/C/{card}", Says.LET, Says.LET, Says.LET);
    tablet("POST /c/{card}", "/c/{card}", Says.LET, Says.LET, Says.LET);
    tablet("GET /hello", "/hello", Says.LET, Says.LET, Says.LET);
    tablet("POST /hello", "/hello", Says.LET, Says.LET, Says.LET);
    tablet("POST /leave", "/leave", Says.AWAY, Says.LET, Says.LET);

    teacher("GET /", "/", Says.LET, Says.LET, Says.LET);
    teacher("GET /first", "/first", Says.AWAY, Says.AWAY, Says.AWAY);
    teacher("POST /first", "/first", Says.NO, Says.NO, Says.NO);
    teacher("GET /sign-in", "/sign-in", Says.LET, Says.LET, Says.LET);
    teacher("POST /sign-in", "/sign-in", Says.NO, Says.NO, Says.NO);
    for (String page : List.of("/welcome", "/plan", "/board", "/findings", "/findings/numbers", "/groups", "/records", "/setup", "/help")) {
      teacher("GET " + page, page, Says.AWAY, Says.LET, Says.LET);
    }
    teacher("GET /paper/mats", "/paper/mats", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /records/kinds.csv", "/records/kinds.csv", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /records/work.csv", "/records/work.csv", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /findings/child/{child}", "/findings/child/{child}", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /findings/child/{child}/put-aside", "/findings/child/{child}/put-aside", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /findings/child/{child}/no-longer-aside", "/findings/child/{child}/no-longer-aside", Says.AWAY, Says.NO,
        Says.NO);
    teacher("POST /findings/take-out", "/findings/take-out", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /findings/put-back", "/findings/put-back", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /groups/move", "/groups/move", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /groups/anew", "/groups/anew", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /groups/pairs", "/groups/pairs", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /groups/pairs/forget", "/groups/pairs/forget", Says.AWAY, Says.NO, Says.NO);
    teacher("GET /work/{work}/{page}/{seq}", "/work/{work}/{page}/1", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /work/{work}/{page}/{seq}/overrule", "/work/{work}/{page}/1/overrule", Says.AWAY, Says.NO, Says.NO);
    teacher("GET /setup/backups", "/setup/backups", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /setup/backups", "/setup/backups", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /setup/backups/stop", "/setup/backups/stop", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /setup/backups/keeping", "/setup/backups/keeping", Says.AWAY, Says.NO, Says.NO);
    teacher("GET /setup/backups/{file}", "/setup/backups/none", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /setup/backups/{file}/delete", "/setup/backups/none/delete", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /setup/backups/{file}/restore", "/setup/backups/none/restore", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /backup", "/backup", Says.NO, Says.NO, Says.NO);
    for (String page : List.of("/board/class", "/board/warm-up", "/board/strategy", "/board/two", "/board/stage", "/board/size", "/room",
        "/room/take")) {
      teacher("GET " + page, page, Says.AWAY, Says.LET, Says.LET);
    }
    teacher("GET /board/problem/{number}", "/board/problem/1", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /board/two/{problem}", "/board/two/1", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /board/stage", "/board/stage", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /board/size", "/board/size", Says.AWAY, Says.NO, Says.NO);
    teacher("GET /live/board", "/live/board", Says.NO, Says.NO, Says.NO);
    teacher("GET /live/room", "/live/room", Says.NO, Says.NO, Says.NO);
    teacher("GET /room/child/{child}", "/room/child/{child}", Says.AWAY, Says.LET, Says.NO);
    for (String deed : List.of("been", "absent", "here", "take", "end")) {
      teacher("POST /room/child/{child}/" + deed, "/room/child/{child}/" + deed, Says.AWAY, Says.LET, Says.NO);
    }
    for (String deed : List.of("take", "pause", "go-on")) {
      teacher("POST /room/" + deed, "/room/" + deed, Says.AWAY, Says.LET, Says.LET);
    }
    teacher("POST /room/stuck", "/room/stuck", Says.AWAY, Says.NO, Says.NO);
    teacher("GET /live", "/live", Says.NO, Says.NO, Says.NO);
    teacher("POST /classes", "/classes", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /classes/{class}/look", "/classes/{class}/look", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /classes/{class}/throw-away", "/classes/{class}/throw-away", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /plan", "/plan", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /plan/replace", "/plan/replace", Says.AWAY, Says.NO, Says.NO);
    for (String change : List.of("give", "remove", "move", "settle", "put-away", "keep", "copy")) {
      teacher("POST /plan/" + change, "/plan/" + change, Says.AWAY, Says.NO, Says.NO);
    }
    for (String read : List.of("sets", "type", "several")) {
      teacher("GET /plan/" + read, "/plan/" + read, Says.AWAY, Says.LET, Says.LET);
    }
    for (String paper : List.of("sheet", "key")) {
      teacher("GET /plan/" + paper, "/plan/" + paper, Says.AWAY, Says.NO, Says.NO);
    }
    teacher("POST /plan/look", "/plan/look", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /plan/type", "/plan/type", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /plan/several", "/plan/several", Says.AWAY, Says.LET, Says.LET);
    teacher("GET /voice/{problem}", "/voice/{problem}", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /voice/{problem}", "/voice/{problem}", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /voice/{problem}/throw-away", "/voice/{problem}/throw-away", Says.AWAY, Says.NO, Says.NO);
    teacher("GET /voice/{problem}/{language}", "/voice/{problem}/en", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /board/door", "/board/door", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /classes/invented", "/classes/invented", Says.AWAY, Says.LET, Says.LET);
    for (String page : List.of("/setup/reach", "/setup/reach/note", "/setup/cards", "/sittings")) {
      teacher("GET " + page, page, Says.AWAY, Says.LET, Says.LET);
    }
    for (String change : List.of("/setup/reach/network", "/setup/cards", "/setup/secrets")) {
      teacher("POST " + change, change, Says.AWAY, Says.NO, Says.NO);
    }
    teacher("POST /setup/cards/revoke", "/setup/cards/revoke", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /sittings/{sitting}/end", "/sittings/{sitting}/end", Says.AWAY, Says.LET, Says.NO);
    teacher("POST /sittings/{sitting}/call", "/sittings/{sitting}/call", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /sittings/{sitting}/move", "/sittings/{sitting}/move", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /work/{work}/move", "/work/{work}/move", Says.AWAY, Says.NO, Says.NO);
    teacher("POST /work/{work}/confirm", "/work/{work}/confirm", Says.AWAY, Says.NO, Says.NO);
    for (String page : List.of("/classes", "/today", "/setup/people", "/setup/list", "/setup/year", "/records/report",
        "/records/days.csv", "/records/overruled.csv", "/records/conferences", "/records/paper")) {
      teacher("GET " + page, page, Says.AWAY, Says.LET, Says.LET);
    }
    teacher("GET /classes/{class}", "/classes/{class}", Says.AWAY, Says.LET, Says.NO);
    for (String page : List.of("/setup/child/{child}", "/records/child/{child}", "/records/child/{child}/family",
        "/records/child/{child}/everything.csv", "/records/child/{child}/conference")) {
      teacher("GET " + page, page, Says.AWAY, Says.LET, Says.NO);
    }
    for (String refused : List.of("/setup", "/setup/list", "/setup/list/save", "/setup/people/name",
        "/setup/people/passphrase", "/setup/people/teacher", "/setup/people/substitute", "/setup/year/close",
        "/setup/year/erase", "/records/paper", "/setup/child/{child}", "/setup/child/{child}/erase",
        "/records/child/{child}/note", "/records/child/{child}/note/remove", "/records/child/{child}/choose",
        "/records/child/{child}/help")) {
      teacher("POST " + refused, refused, Says.AWAY, Says.NO, Says.NO);
    }
    for (String done : List.of("/setup/people/substitute/note", "/setup/people/substitute/end", "/setup/year/until",
        "/setup/year/open")) {
      teacher("POST " + done, done, Says.AWAY, Says.LET, Says.LET);
    }
    for (String done : List.of("/setup/child/{child}/leave", "/setup/child/{child}/come-back",
        "/records/child/{child}/request", "/records/child/{child}/conference")) {
      teacher("POST " + done, done, Says.AWAY, Says.LET, Says.NO);
    }
    teacher("GET /help/{about}", "/help/week", Says.AWAY, Says.LET, Says.LET);
    teacher("POST /sign-out", "/sign-out", Says.AWAY, Says.LET, Says.LET);
  }

  /** What a substitute may do; on every other route of the teacher's she is refused. */
  private static boolean open(String route) {
    String path = route.substring(route.indexOf(' ') + 1);
    return path.startsWith("/board") || path.startsWith("/room") || path.startsWith("/live")
        || List.of("GET /today", "GET /help/{about}", "POST /sign-out").contains(route);
  }

  private static Rig rig;
  private static Classroom others;
  private static Tablet handedIn;
  private static String card;

  @BeforeAll
  static void start() {
    // The class before, on another database, signed in at an app that is gone.
    SIGNED_IN.clear();
    rig = Rig.start();
    long other = rig.services.teachers.add("Other", Passphrases.hash("another passphrase"), false, rig.now())
        .orElseThrow().id();
    others = rig.services.classes.add(other, "Room 9", ZoneId.of("UTC"), true, Rig.children("Juno"), rig.now());
    card = rig.services.tokens.card();
    rig.services.cards.make(Map.of(rig.children.get(0).id(), CardDoor.hash(card)), rig.tabletAddress(),
        rig.services.today(rig.classroom), rig.now());
    rig.set.problems().forEach(problem -> rig.services.voices.keep(problem.id(), "en", new byte[] {1}, rig.now()));
    rig.services.problems.addSet(others.id(), rig.services.today(others), false, 3, false,
        fewermore.classroom.ProblemSet.USUAL_PARTS, List.of(Stories.SHELLS), rig.now());
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
    String path = as.replace("{door}", rig.door()).replace("{card}", card)
        .replace("{child}", Long.toString(owner == null ? 1 : rig.children.get(0).id()))
        .replace("{work}", owner.work(1));
    if (List.of("POST /work", "POST /hand", "POST /voice").contains(route)) {
      String key = sender == null ? "0".repeat(32) : sender.key;
      return browser.postJson(path, "{\"sitting\":\"" + owner.sitting + "\",\"key\":\"" + key
          + "\",\"page\":\"p\",\"voice\":\"none\",\"items\":[]}");
    }
    if (route.startsWith("OPTIONS")) {
      return browser.send(browser.request(path).method("OPTIONS", HttpRequest.BodyPublishers.noBody()));
    }
    if (route.startsWith("POST")) {
      browser.get("/come-in");
      browser.get(path.startsWith("/come-in/") || path.startsWith("/c/") ? path : "/mine");
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
      check(wrong, route + " on another's class", line.childB, askTeacher(first(), route, line.as, others.id()));
      check(wrong, route + " as the teacher", line.childA, askTeacher(first(), route, line.as, rig.classroom.id()));
    });
    assertEquals(List.of(), wrong);
    assertTrue(rig.services.classes.find(others.id()).isPresent(), "another's class must not be thrown away");
  }

  @Test
  void aTeacherOfAnotherClassComesNoFurtherThanSomebodyElsesClassAllows() {
    List<String> wrong = new ArrayList<>();
    TEACHER.forEach((route, line) -> {
      if (!route.contains("sign-in") && !route.contains("/first") && !route.contains("/invented")) {
        check(wrong, route + " on the first teacher's class", line.childB,
            askTeacher(as("t" + others.teacher(), "another passphrase"), route, line.as, rig.classroom.id()));
      }
    });
    assertEquals(List.of(), wrong);
    assertEquals(3, rig.services.classes.children(rig.classroom.id()).size(), "another's children must stay");
  }

  @Test
  void aSubstituteComesToTodayTheBoardAndNoFurther() {
    List<String> wrong = new ArrayList<>();
    TEACHER.forEach((route, line) -> {
      if (route.contains("sign-in") || route.contains("/first") || route.equals("GET /")) {
        return;
      }
      Browser substitute = substitute();
      HttpResponse<String> response = askTeacher(substitute, route, line.as, rig.classroom.id());
      boolean live = route.startsWith("GET /live");
      check(wrong, route + " as the substitute", open(route) ? line.childA : Says.NO, response);
      if (!open(route) && response.statusCode() != 403) {
        wrong.add(route + " as the substitute: " + response.statusCode() + ", expected 403");
      }
      if (live && response.statusCode() != 406) {
        wrong.add(route + " as the substitute: " + response.statusCode() + ", expected to be let as far as 406");
      }
    });
    assertEquals(List.of(), wrong);
    String today = substitute().get("/today").body();
    rig.children.forEach(child -> assertTrue(!today.contains(child.name()), "a child's name on the substitute's page"));
  }

  private static Browser substitute() {
    if (rig.services.setups.substitute(rig.classroom.id()).isEmpty()) {
      rig.services.setups.letIn(rig.classroom.id(), Passphrases.hash("only for today"), rig.now());
    }
    return as("s" + rig.classroom.id(), "only for today");
  }

  /** One sign-in for many routes; another when that one was ended. */
  private static Browser as(String who, String passphrase) {
    Browser browser = SIGNED_IN.get(who);
    if (browser == null || browser.get("/today").statusCode() != 200) {
      browser = signedIn(who, passphrase);
      SIGNED_IN.put(who, browser);
    }
    return browser;
  }

  private static Browser first() {
    Browser browser = as("t" + rig.classroom.teacher(), Rig.PASSPHRASE);
    // A route tried before may have opened another class.
    browser.post("/classes/" + rig.classroom.id() + "/look", Map.of());
    return browser;
  }

  private static final Map<String, Browser> SIGNED_IN = new java.util.HashMap<>();

  static Browser signedIn(String who, String passphrase) {
    Browser browser = new Browser(rig.teacherAddress());
    browser.get("/sign-in");
    HttpResponse<String> response = browser.post("/sign-in", Map.of("who", who, "passphrase", passphrase));
    for (int tries = 0; response.statusCode() == 429 && tries < 10; tries++) {
      // A route tried before was a wrong passphrase: the next one waits.
      java.util.concurrent.locks.LockSupport.parkNanos(1_000_000_000L
          * Integer.parseInt(response.headers().firstValue("Retry-After").orElse("1")));
      response = browser.post("/sign-in", Map.of("who", who, "passphrase", passphrase));
    }
    assertEquals(303, response.statusCode(), response.body());
    browser.get(who.startsWith("s") ? "/board/class" : "/welcome");
    browser.get(who.startsWith("s") ? "/today" : "/welcome");
    return browser;
  }

  private static HttpResponse<String> askTeacher(Browser browser, String route, String as, long classroom) {
    boolean own = classroom == rig.classroom.id();
    long child = own ? rig.children.get(0).id() : rig.services.classes.children(others.id()).get(0).id();
    String path = as.replace("{class}", Long.toString(classroom)).replace("{child}", Long.toString(child))
        .replace("{problem}", Long.toString(own ? rig.set.problems().get(0).id() : 99_999))
        .replace("{sitting}", own ? handedIn.sitting : "0".repeat(32))
        .replace("{work}", own ? handedIn.work(1) : "0".repeat(32)).replace("{page}", handedIn.page);
    return route.startsWith("POST") ? browser.post(path, Map.of()) : browser.get(path);
  }

  static Browser signedIn() {
    return signedInTo(rig);
  }

  static Browser signedInTo(Rig rig) {
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
