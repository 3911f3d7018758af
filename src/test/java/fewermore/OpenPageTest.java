package fewermore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.sun.net.httpserver.HttpServer;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OpenPageTest {
  @ParameterizedTest
  @CsvSource({
    "Linux, xdg-open http://localhost:8421",
    "Mac OS X, open http://localhost:8421",
    "Windows 11, 'rundll32 url.dll,FileProtocolHandler http://localhost:8421'"})
  void everySystemHasItsOwnWayToOpenAPage(String system, String command) {
    assertEquals(List.of(command.split(" ")), OpenPage.command(system, "http://localhost:8421"));
  }

  @Test
  void nothingRunsWhereNobodyListens() throws Exception {
    int free;
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      free = socket.getLocalPort();
    }
    assertFalse(OpenPage.alreadyRuns("http://127.0.0.1:" + free));
  }

  @ParameterizedTest
  @CsvSource({"<title>Fewermore</title>, true", "<title>Another program</title>, false"})
  void onlyAnotherFewermoreCountsAsRunning(String page, boolean runs) throws Exception {
    HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/sign-in", exchange -> {
      byte[] body = page.getBytes(StandardCharsets.UTF_8);
      exchange.sendResponseHeaders(200, body.length);
      exchange.getResponseBody().write(body);
      exchange.close();
    });
    server.start();
    try {
      assertEquals(runs, OpenPage.alreadyRuns("http://127.0.0.1:" + server.getAddress().getPort()));
    } finally {
      server.stop(0);
    }
  }
}
