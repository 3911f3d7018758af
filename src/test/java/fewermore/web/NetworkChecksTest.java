package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the two ports answer to whoever knocks, and what the laptop notices of it. */
class NetworkChecksTest {
  private static Rig rig;

  @BeforeAll
  static void start() {
    rig = Rig.start();
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  /** A browser that tries HTTPS first falls back to HTTP only after it has an answer. */
  @Test
  void aTlsHelloOnTheTabletsPortIsAnsweredAtOnce() throws Exception {
    byte[] hello = HexFormat.of().parseHex("16030100a5010000a10303" + "00".repeat(158));
    try (Socket socket = new Socket("127.0.0.1", rig.app.port())) {
      socket.setSoTimeout(5_000);
      socket.getOutputStream().write(hello);
      socket.getOutputStream().flush();
      int first = socket.getInputStream().read();
      assertTrue(first == -1 || first == 'H', "an HTTP answer or the end, no silence: " + first);
    }
  }

  @Test
  void aFormFromAnotherPageChangesNothingOnATablet() {
    Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
    String token = rig.services.tokens.csrfOf(tablet.browser.cookies.get("tablet"));
    for (String path : List.of("/leave", "/mine/" + tablet.work(1), "/door", "/come-in/" + rig.children.get(1).id())) {
      assertEquals(403, tablet.browser.send(tablet.browser.request(path).header("Origin", "http://elsewhere.example")
          .header("Content-Type", "application/x-www-form-urlencoded")
          .POST(HttpRequest.BodyPublishers.ofString("csrf=" + token))).statusCode(), path);
    }
    assertEquals(200, tablet.browser.get("/mine").statusCode(), "still in");
  }

  @Test
  void noPageAsksABrowserForWhatPlainHttpCannotGive() {
    Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
    for (String path : List.of("/mine", "/come-in", "/hello")) {
      var headers = tablet.browser.get(path).headers();
      for (String never : List.of("Strict-Transport-Security", "Cross-Origin-Opener-Policy",
          "Cross-Origin-Embedder-Policy")) {
        assertTrue(headers.firstValue(never).isEmpty(), path + " " + never);
      }
      assertFalse(headers.firstValue("Content-Security-Policy").orElse("").contains("upgrade-insecure-requests"));
      assertTrue(headers.allValues("Set-Cookie").stream().noneMatch(cookie -> cookie.contains("Secure")), path);
    }
  }

  private static String from(String local, String request) throws Exception {
    try (Socket socket = new Socket()) {
      socket.bind(new InetSocketAddress(InetAddress.getByName(local), 0));
      socket.connect(new InetSocketAddress("127.0.0.1", rig.app.port()), 5_000);
      socket.setSoTimeout(10_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      InputStream in = socket.getInputStream();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** 127.0.0.77 is no address of this laptop's interfaces as the test's network lists them: a tablet stands there. */
  @Test
  void aTabletThatReachedTheLaptopIsNamedAndTheLaptopItselfIsNot() throws Exception {
    Browser teacher = RouteTableTest.signedInTo(rig);
    long since = rig.now().toEpochMilli();
    String page = "/setup/reach?since=" + since;
    new Browser(rig.tabletAddress()).get("/hello");
    assertTrue(teacher.get(page).body().contains("Waiting for the first tablet"));
    String host = "Host: 127.0.0.1:" + rig.app.port() + "\r\nUser-Agent: Mozilla/5.0 (iPad; CPU OS 17_4 like Mac OS X) "
        + "AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.4 Mobile/15E148 Safari/604.1\r\nConnection: close\r\n";
    String hello = from("127.0.0.77", "GET /hello HTTP/1.1\r\n" + host + "\r\n");
    String cookie = hello.replaceAll("(?s).*Set-Cookie: tablet=([0-9a-f]+).*", "$1");
    String reached = teacher.get(page).body();
    assertTrue(reached.contains("127.0.0.77") && reached.contains("Safari 17.4 on an iPad"), reached);
    assertTrue(reached.contains("Trying things out"));
    String body = "csrf=" + rig.services.tokens.csrfOf(cookie) + "&storage=yes&english=yes&spanish=no";
    assertTrue(from("127.0.0.77", "POST /hello HTTP/1.1\r\n" + host + "Cookie: tablet=" + cookie
        + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: " + body.length() + "\r\n\r\n" + body)
        .startsWith("HTTP/1.1 204"));
    assertTrue(teacher.get(page).body().contains("Script on. Storage on. A voice of its own for English, none for Spanish."));
    assertTrue(teacher.get("/setup/reach?since=" + (rig.now().toEpochMilli() + 60_000)).statusCode() == 303,
        "a time to come is no time to wait from");
  }

  @Test
  void afterAMinuteWithoutATabletThePageAsksWhatItShows() {
    Browser teacher = RouteTableTest.signedInTo(rig);
    long justNow = rig.now().toEpochMilli();
    assertFalse(teacher.get("/setup/reach?since=" + justNow).body().contains("Nothing came for a minute"));
    Hands clock = new Hands("2026-11-25T15:00:00Z");
    try (Rig waiting = Rig.start(clock)) {
      Browser there = RouteTableTest.signedInTo(waiting);
      String page = there.get("/setup/reach").headers().firstValue("Location").orElseThrow();
      clock.now = clock.now.plusSeconds(61);
      assertTrue(there.get(page).body().contains("Nothing came for a minute"));
      assertTrue(there.get("/setup/reach/note").body().contains("TCP port"));
    }
  }

  @Test
  void browsersAreNamedAsATeacherKnowsThem() {
    Map.of(
        "Mozilla/5.0 (X11; CrOS x86_64 14541.0.0) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Safari/537.36",
        "Chrome 126 on a Chromebook",
        "Mozilla/5.0 (Linux; Android 9; KFMAWI) AppleWebKit/537.36 (KHTML, like Gecko) Silk/120.4.1 like Chrome/120.0.0.0 Safari/537.36",
        "Silk 120.4 on Android",
        "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.4 Safari/605.1.15",
        "Safari 17.4 on a Mac or an iPad",
        "", "a browser it does not name")
        .forEach((agent, name) -> assertEquals(name, Visitors.browser(agent)));
  }

  @Test
  void onlyTheLatestSixtyDevicesAreKept() {
    Visitors visitors = new Visitors(address -> address.equals("192.168.1.23"));
    Instant now = Instant.parse("2026-11-25T15:00:00Z");
    for (int device = 0; device < 70; device++) {
      visitors.came("10.0.0." + device, "", false, now.plusSeconds(device));
    }
    visitors.came("192.168.1.23", "", true, now);
    assertEquals(60, visitors.since(now).size());
    assertEquals("10.0.0.69", visitors.since(now).get(0).address());
  }

  @Test
  void whatIsTurnedAwayIsCountedForTheTeacherWithoutSayingWho() {
    try (Rig rig = Rig.start()) {
      Browser teacher = new Browser(rig.teacherAddress());
      teacher.get("/sign-in");
      teacher.post("/sign-in", java.util.Map.of("passphrase", Rig.PASSPHRASE));
      String page = "/setup/reach?since=" + rig.now().toEpochMilli();
      assertFalse(teacher.get(page).body().contains("Turned away"), "nothing yet");
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      Tablet elsie = Tablet.comeIn(rig, rig.children.get(1));
      assertEquals(404, elsie.browser.get("/mine/" + noor.work(1)).statusCode());
      elsie.key = "0".repeat(32);
      assertEquals(403, elsie.send(elsie.item(elsie.work(1), 1, "draft", null)).statusCode());
      assertEquals(404, elsie.browser.get("/findings").statusCode());
      String body = teacher.get(page).body();
      assertTrue(body.contains("1 request for something that is not theirs, 2 requests at an address where nothing is"), body);
    }
  }
}
