package fewermore.web;

import fewermore.classroom.Child;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Requests no browser of ours would send, by seed, to both doors of the real app while a class goes on handing in: fields
 * missing, of other types and huge, deep JSON, bytes that are no text, paths that climb, floods of headers, bodies that
 * never come. Sends to 127.0.0.1 alone and ends by itself. Run whole by
 * {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.web.HostileTraffic -Dargs=20000}.
 */
public final class HostileTraffic {
  private static final int SENDERS = 4;
  private static final int CLASS = 3;
  private static final int ANSWER_MILLIS = 15_000;
  private static final int LONGEST_ANSWER = 1 << 19;
  private static final List<String> NEVER_IN_AN_ANSWER = List.of("Exception", "java.lang", "at fewermore.", "at org.",
      "org.h2.", "SELECT ", "NullPointer", "Caused by");
  /** What really does something big when asked without any field; it is tried by others. */
  private static final List<String> LEFT_OUT = List.of("/sign-out", "/classes/invented", "/setup/backups", "/backup",
      "/leave", "/room/", "/setup/people/", "/sittings", "/setup/year", "/setup/cards", "/live", "/first", "/sign-in",
      "/board/door", "/door", "/records/child", "/setup/child");

  /** @param wrong answers that must not be, each with what was asked; empty when all is well */
  public record Outcome(int sent, Map<Integer, Integer> answers, List<String> wrong, int handedIn, int acknowledged,
      long heapBefore, long heapAfter) {
    double heap() {
      return heapAfter / (double) heapBefore;
    }
  }

  private record Ask(int port, byte[] bytes, boolean keepsBack, String what) {}

  private final Rig rig;
  private final List<Route> tablet;
  private final List<Route> teacher;
  private final Tablet child;
  private final Browser desk;

  private HostileTraffic(Rig rig) {
    this.rig = rig;
    this.tablet = App.tabletRoutes();
    this.teacher = App.teacherRoutes();
    this.child = Tablet.comeIn(rig, rig.children.get(0));
    this.desk = new Browser(rig.teacherAddress());
    desk.get("/sign-in");
    desk.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
  }

  public static void main(String[] arguments) throws Exception {
    int status = 1;
    try {
      Outcome outcome = run(arguments.length == 0 ? 20_000 : Integer.parseInt(arguments[0]), 20261126L);
      outcome.wrong.stream().limit(20).forEach(System.out::println);
      System.out.printf(Locale.ROOT, "%,d sent, answers %s, wrong %d; the class handed in %d, acknowledged %d; heap %.2f of"
          + " before (%d KB, %d KB)%n", outcome.sent, outcome.answers, outcome.wrong.size(), outcome.handedIn,
          outcome.acknowledged, outcome.heap(), outcome.heapBefore >> 10, outcome.heapAfter >> 10);
      status = outcome.wrong.isEmpty() && outcome.handedIn == outcome.acknowledged ? 0 : 1;
    } finally {
      System.exit(status);
    }
  }

  /** @param count how many requests, a tenth of them before the heap is looked at for the first time */
  public static Outcome run(int count, long seed) throws Exception {
    try (Rig rig = Rig.start()) {
      HostileTraffic traffic = new HostileTraffic(rig);
      List<String> wrong = java.util.Collections.synchronizedList(new ArrayList<>());
      ConcurrentSkipListMap<Integer, Integer> answers = new ConcurrentSkipListMap<>();
      AtomicBoolean over = new AtomicBoolean();
      AtomicInteger handedIn = new AtomicInteger();
      AtomicInteger acknowledged = new AtomicInteger();
      List<Thread> atWork = traffic.classAtWork(over, handedIn, acknowledged);
      traffic.send(count / 10, seed, answers, wrong);
      long before = LongDay.heap();
      traffic.send(count - count / 10, seed + 1, answers, wrong);
      over.set(true);
      for (Thread each : atWork) {
        each.join();
      }
      return new Outcome(count, new TreeMap<>(answers), List.copyOf(wrong), handedIn.get(), acknowledged.get(), before, LongDay.heap());
    }
  }

  private List<Thread> classAtWork(AtomicBoolean over, AtomicInteger handedIn, AtomicInteger acknowledged) {
    List<Thread> threads = new ArrayList<>();
    for (int at = 0; at < CLASS; at++) {
      Child who = rig.children.get(at % rig.children.size());
      Tablet own = Tablet.comeIn(rig, who);
      Thread thread = new Thread(() -> {
        for (int seq = 1; !over.get(); seq++) {
          handedIn.incrementAndGet();
          String answer = own.send(own.item(own.work(1), seq, "draft", new Work("52 - 14 = x", "" + seq, "shells", Bars.EMPTY,
              null))).body();
          if (answer.contains("\"took\":[[\"" + own.work(1))) {
            acknowledged.incrementAndGet();
          }
          pause(100);
        }
      }, "class-" + at);
      thread.start();
      threads.add(thread);
    }
    return threads;
  }

  private static void pause(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void send(int count, long seed, Map<Integer, Integer> answers, List<String> wrong) throws InterruptedException {
    AtomicLong next = new AtomicLong();
    List<Thread> senders = new ArrayList<>();
    for (int at = 0; at < SENDERS; at++) {
      Thread sender = new Thread(() -> {
        for (long number = next.getAndIncrement(); number < count; number = next.getAndIncrement()) {
          Ask ask = ask(new Random(seed * 1_000_003 + number));
          judge(ask, answers, wrong, "seed " + seed + ", number " + number);
        }
      }, "hostile-" + at);
      sender.start();
      senders.add(sender);
    }
    for (Thread sender : senders) {
      sender.join();
    }
  }

  private static void judge(Ask ask, Map<Integer, Integer> answers, List<String> wrong, String where) {
    String answer = answer(ask);
    int status = status(answer);
    answers.merge(status, 1, Integer::sum);
    // 501 and 505 are the server's own word for a method or a version it doesn't have; 503 is a disk that is full.
    if (status >= 500 && status != 501 && status != 505) {
      wrong.add(status + " for " + ask.what + " (" + where + ")");
    }
    String said = answer.replaceFirst("(?s)^.*?\r\n\r\n", "");
    NEVER_IN_AN_ANSWER.stream().filter(said::contains).findFirst()
        .ifPresent(word -> wrong.add("\"" + word + "\" in the answer to " + ask.what + " (" + where + "): "
            + said.substring(Math.max(0, said.indexOf(word) - 60), Math.min(said.length(), said.indexOf(word) + 60))));
  }

  /** 0 when the connection was closed without a word. */
  private static int status(String answer) {
    return answer.matches("(?s)HTTP/1\\.[01] \\d{3}.*") ? Integer.parseInt(answer.substring(9, 12)) : 0;
  }

  private static String answer(Ask ask) {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), ask.port), 5_000);
      socket.setSoTimeout(ask.keepsBack ? 300 : ANSWER_MILLIS);
      socket.getOutputStream().write(ask.bytes);
      socket.getOutputStream().flush();
      ByteArrayOutputStream answer = new ByteArrayOutputStream();
      InputStream in = socket.getInputStream();
      byte[] buffer = new byte[8192];
      for (int read = in.read(buffer); read >= 0 && answer.size() < LONGEST_ANSWER; read = in.read(buffer)) {
        answer.write(buffer, 0, read);
      }
      return answer.toString(StandardCharsets.ISO_8859_1);
    } catch (IOException closedOrSilent) {
      return "";
    }
  }

  // ---- what is asked ----

  private Ask ask(Random lot) {
    boolean atDesk = lot.nextInt(3) == 0;
    int port = atDesk ? rig.app.teacherPort() : rig.app.port();
    return switch (lot.nextInt(10)) {
      case 0, 1, 2 -> work(lot);
      case 3, 4 -> form(lot, atDesk, port);
      case 5, 6 -> page(lot, atDesk, port);
      case 7 -> path(lot, port);
      case 8 -> headers(lot, port);
      default -> lines(lot, port);
    };
  }

  /** JSON to the one address that needs no cookie. */
  private Ask work(Random lot) {
    String parts = pick(lot, "{\"equation\":\"52 - 14 = x\",\"answer\":\"38\"}", "[]", "\"\"", "null", "7", deep(lot, "{\"a\":", "}"),
        "{\"equation\":" + value(lot) + ",\"answer\":" + value(lot) + ",\"label\":" + value(lot) + ",\"bars\":" + value(lot)
            + ",\"strategy\":" + value(lot) + ",\"reading\":" + value(lot) + "}");
    String item = "{\"work\":" + pick(lot, quoted(child.work(1)), value(lot)) + ",\"page\":" + pick(lot, "\"p1\"", value(lot))
        + ",\"seq\":" + pick(lot, "1", "-1", "99999999999999999999", "1.5", value(lot)) + ",\"age\":"
        + pick(lot, "5", "-5", "1e400", value(lot)) + ",\"kind\":" + pick(lot, "\"draft\"", "\"handed-in\"", "\"help\"", value(lot))
        + ",\"parts\":" + parts + "}";
    String items = pick(lot, "[" + item + "]", "[" + (item + ",").repeat(lot.nextInt(60)) + item + "]", value(lot), deep(lot, "[", "]"));
    String body = "{\"sitting\":" + pick(lot, quoted(child.sitting), value(lot)) + ",\"key\":"
        + pick(lot, quoted(child.key), quoted("0".repeat(32)), value(lot)) + ",\"page\":" + value(lot) + ",\"items\":" + items
        + ",\"waiting\":" + value(lot) + "}";
    byte[] bytes = broken(lot, body);
    return new Ask(rig.app.port(), post(rig.app.port(), "/work", pick(lot, "application/json", "text/plain", "image/png", ""), "", bytes), false,
        "/work " + shortly(body));
  }

  private Ask form(Random lot, boolean atDesk, int port) {
    String path = filled(lot, route(lot, atDesk, "POST"));
    StringBuilder body = new StringBuilder(lot.nextInt(4) == 0 ? "" : "csrf=" + (atDesk ? desk.token() : child.browser.token()));
    for (int field = lot.nextInt(6); field > 0; field--) {
      body.append('&').append(pick(lot, "name", "names", "child", "day", "work", "problem", "equation", "answer", "label", "text",
          "kind", "number", "at", "role", "part", "verdict", "note", "tries", "asks", "%zz", "[]")).append('=')
          .append(pick(lot, "", "%", "%ff%fe", "1", "-1", "99999999999999", "x".repeat(1 + lot.nextInt(40_000)), "<script>", "'--",
              "2026-13-45", "%00", "\u2028", "a&a=b"));
    }
    byte[] bytes = broken(lot, body.toString());
    return new Ask(port, post(port, path, pick(lot, "application/x-www-form-urlencoded", "multipart/form-data; boundary=x",
        "multipart/form-data", "application/json"), cookies(lot, atDesk), bytes), false, "POST " + shortly(path + " " + body));
  }

  private Ask page(Random lot, boolean atDesk, int port) {
    String path = filled(lot, route(lot, atDesk, "GET")) + pick(lot, "", "?step=" + number(lot), "?set=" + number(lot), "?about=%ff",
        "?day=" + word(lot), "?" + word(lot) + "=" + word(lot), "?a=b&".repeat(1 + lot.nextInt(800)));
    return new Ask(port, get(port, path, cookies(lot, atDesk)), false, "GET " + shortly(path));
  }

  private static Ask path(Random lot, int port) {
    String path = pick(lot, "/static/../../pom.xml", "/static/%2e%2e/%2e%2e/pom.xml", "/static/x/..%2f..%2fpom.xml", "//evil.test/",
        "/static/" + "../".repeat(30) + "etc/passwd", "/%00", "/mine/%00", "/in/" + "a".repeat(lot.nextInt(9_000)), "*", "",
        "http://evil.test/", "/mine/;a=b", "/./mine/../mine", "/\\..\\..", "/c/%c0%ae%c0%ae", "/static/x/%252e%252e", "/%", "/?%",
        "/work/..;/mine", "/" + word(lot));
    return new Ask(port, get(port, path, ""), false, "GET " + shortly(path));
  }

  private static Ask headers(Random lot, int port) {
    String head = switch (lot.nextInt(9)) {
      case 0 -> "X-A: b\r\n".repeat(200 + lot.nextInt(2_000));
      case 1 -> "X-A: " + "b".repeat(lot.nextInt(200_000)) + "\r\n";
      case 2 -> "Cookie: " + "a=b; ".repeat(lot.nextInt(3_000)) + "\r\n";
      case 3 -> "no colon here\r\n";
      case 4 -> "Content-Length: -5\r\nContent-Length: 7\r\n";
      case 5 -> "Transfer-Encoding: chunked\r\nContent-Length: 4\r\n";
      case 6 -> "Cookie: seat=\u0001\u0002; desk==;;;\r\n";
      case 7 -> "Accept-Language: " + "q,".repeat(lot.nextInt(4_000)) + "\r\nRange: bytes=9-1\r\nIf-Modified-Since: never\r\n";
      default -> "Origin: http://evil.test\r\nX-Forwarded-For: 10.0.0.1\r\nX-HTTP-Method-Override: DELETE\r\n";
    };
    String host = pick(lot, "Host: 127.0.0.1:" + port + "\r\n", "Host: evil.test\r\n", "", "Host: a\r\nHost: b\r\n");
    return new Ask(port, bytes(pick(lot, "GET", "POST") + " / HTTP/1.1\r\n" + host + head + "Connection: close\r\n\r\n"), false,
        "headers " + shortly(head));
  }

  private static Ask lines(Random lot, int port) {
    String host = "Host: 127.0.0.1:" + port + "\r\nConnection: close\r\n";
    return switch (lot.nextInt(8)) {
      case 0 -> new Ask(port, bytes(pick(lot, "FOO", "TRACE", "CONNECT", "PUT", "DELETE", "PATCH", "HEAD", "get") + " /mine HTTP/1.1\r\n"
          + host + "\r\n"), false, "an odd method");
      case 1 -> new Ask(port, bytes("GET / HTTP/" + pick(lot, "9.9", "0.9", "1", "3.0", "x") + "\r\n" + host + "\r\n"), false,
          "an odd version");
      case 2 -> new Ask(port, noise(lot), true, "noise");
      case 3 -> new Ask(port, bytes("POST /work HTTP/1.1\r\n" + host + "Content-Length: 1000\r\n\r\n{\"sitting\""), true,
          "a body that does not come");
      case 4 -> new Ask(port, bytes("GET /mine HTTP/1.1\r\nHos"), true, "half a head");
      case 5 -> new Ask(port, bytes("POST /work HTTP/1.1\r\n" + host + "Transfer-Encoding: chunked\r\n\r\nZZ\r\nabc\r\n0\r\n\r\n"), false,
          "chunks that are none");
      case 6 -> new Ask(port, bytes("POST /work HTTP/1.1\r\n" + host + "Content-Encoding: gzip\r\nContent-Length: 3\r\n\r\nabc"), false,
          "zipped that is not");
      default -> new Ask(port, bytes("POST /work HTTP/1.1\r\n" + host + "Expect: 100-continue\r\nContent-Length: 99999999\r\n\r\n"), true,
          "more than may come");
    };
  }

  private String route(Random lot, boolean atDesk, String method) {
    List<String> paths = (atDesk ? teacher : tablet).stream().filter(route -> route.method().name().equals(method))
        .map(Route::path).filter(path -> method.equals("GET") ? !path.startsWith("/live")
            : LEFT_OUT.stream().noneMatch(path::startsWith)).toList();
    return paths.get(lot.nextInt(paths.size()));
  }

  private String filled(Random lot, String path) {
    StringBuilder filled = new StringBuilder();
    for (String piece : path.split("(?=/)")) {
      filled.append(piece.contains("{") ? "/" + pick(lot, number(lot), word(lot), "%ff", "..%2f", child.work(1), "en") : piece);
    }
    return filled.toString();
  }

  private String cookies(Random lot, boolean atDesk) {
    Map<String, String> own = atDesk ? desk.cookies : child.browser.cookies;
    List<String> pairs = own.entrySet().stream().map(each -> each.getKey() + "=" + each.getValue()).toList();
    return pick(lot, "", "seat=" + word(lot), String.join("; ", pairs), String.join("; ", pairs), String.join("; ", pairs));
  }

  private static byte[] broken(Random lot, String body) {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    switch (lot.nextInt(5)) {
      case 0 -> {
        for (int at = lot.nextInt(8); at > 0 && bytes.length > 0; at--) {
          bytes[lot.nextInt(bytes.length)] = (byte) lot.nextInt(256);
        }
      }
      case 1 -> bytes = java.util.Arrays.copyOf(bytes, lot.nextInt(bytes.length + 1));
      default -> { }
    }
    return bytes;
  }

  private static byte[] noise(Random lot) {
    byte[] noise = new byte[1 + lot.nextInt(4_000)];
    lot.nextBytes(noise);
    return noise;
  }

  private static String value(Random lot) {
    return switch (lot.nextInt(12)) {
      case 0 -> "null";
      case 1 -> "true";
      case 2 -> number(lot);
      case 3 -> "[]";
      case 4 -> "{}";
      case 5 -> quoted("x".repeat(lot.nextInt(30_000)));
      case 6 -> deep(lot, "[", "]");
      case 7 -> "\"\\ud800\"";
      case 8 -> "\"\\u0000\"";
      case 9 -> "NaN";
      case 10 -> "\"52 - 14 = x\"";
      default -> quoted(word(lot));
    };
  }

  private static String deep(Random lot, String open, String close) {
    int depth = lot.nextInt(20_000);
    return open.repeat(depth) + "1" + close.repeat(depth);
  }

  private static String number(Random lot) {
    return pick(lot, "0", "-1", "1", "2147483648", "99999999999999999999", "1e9", "1", "3", "" + lot.nextInt());
  }

  private static String word(Random lot) {
    return pick(lot, "x", "%27%20OR%201=1", "%3Cscript%3E", "ä", "null", "undefined", "a".repeat(64), "%E2%80%AE", "${7*7}",
        "a".repeat(lot.nextInt(3_000)), "%0d%0aSet-Cookie:a=b");
  }

  private static String quoted(String text) {
    return "\"" + text + "\"";
  }

  private static String pick(Random lot, String... of) {
    return of[lot.nextInt(of.length)];
  }

  private static String shortly(String text) {
    return text.length() < 300 ? text : text.substring(0, 300) + "…";
  }

  private static byte[] post(int port, String path, String type, String cookies, byte[] body) {
    byte[] head = bytes("POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nOrigin: http://127.0.0.1:" + port + "\r\n"
        + (type.isEmpty() ? "" : "Content-Type: " + type + "\r\n") + (cookies.isEmpty() ? "" : "Cookie: " + cookies + "\r\n")
        + "Content-Length: " + body.length + "\r\nConnection: close\r\n\r\n");
    byte[] whole = java.util.Arrays.copyOf(head, head.length + body.length);
    System.arraycopy(body, 0, whole, head.length, body.length);
    return whole;
  }

  private static byte[] get(int port, String path, String cookies) {
    return bytes("GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\n"
        + (cookies.isEmpty() ? "" : "Cookie: " + cookies + "\r\n") + "Connection: close\r\n\r\n");
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
