package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** A stream that is open and silent, as after the sleep of a laptop: the page's own script, a server that says nothing. */
class SilentStreamTest {
  private static final int SOON_ENOUGH = 24_000;
  private static final int TOO_LONG = 8_000;

  private final AtomicInteger opened = new AtomicInteger();

  @Test
  void noEventForTwentyFiveSecondsOpensTheStreamAgain() throws Exception {
    ExecutorService threads = Executors.newCachedThreadPool();
    HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setExecutor(threads);
    server.createContext("/", exchange -> answer(exchange, "text/html", "<!doctype html><title>silence</title>"
        + "<script type=module>import { openStream } from '/stream.js'; openStream('/live', {});</script>"));
    server.createContext("/stream.js",
        exchange -> answer(exchange, "text/javascript", Files.readString(Path.of("static/js/teacher-stream.js"))));
    server.createContext("/live", this::oneBeatThenSilence);
    server.start();
    try (BrowserContext laptop = Chromium.tablet(1366, 768)) {
      Page page = laptop.newPage();
      page.clock().install();
      page.navigate("http://127.0.0.1:" + server.getAddress().getPort() + "/");
      page.waitForCondition(() -> opened.get() == 1);
      page.clock().runFor(SOON_ENOUGH);
      page.evaluate("fetch('/')");
      assertEquals(1, opened.get(), "still within the silence that is allowed");
      page.clock().runFor(TOO_LONG);
      page.waitForCondition(() -> opened.get() == 2);
    } finally {
      server.stop(0);
      threads.shutdownNow();
    }
  }

  private static void answer(HttpExchange exchange, String type, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    exchange.getResponseHeaders().set("Content-Type", type);
    exchange.sendResponseHeaders(200, bytes.length);
    exchange.getResponseBody().write(bytes);
    exchange.close();
  }

  private void oneBeatThenSilence(HttpExchange exchange) throws IOException {
    exchange.getResponseHeaders().set("Content-Type", "text/event-stream");
    exchange.sendResponseHeaders(200, 0);
    exchange.getResponseBody().write("event: beat\ndata: 1\n\n".getBytes(StandardCharsets.UTF_8));
    exchange.getResponseBody().flush();
    opened.incrementAndGet();
  }
}
