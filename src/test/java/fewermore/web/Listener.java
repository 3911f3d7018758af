package fewermore.web;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;

/** Listens to a stream of the teacher's pages as a browser does, without one. */
final class Listener implements AutoCloseable {
  /** @param id null where the event has none */
  record Event(String name, String data, String id) {}

  final BlockingQueue<Event> events = new LinkedBlockingQueue<>();
  /** The tiles of the room as they stand now, by child. */
  final Map<Long, JsonNode> tiles = new ConcurrentHashMap<>();
  volatile String retry = "";
  volatile boolean ended;
  private final InputStream stream;

  Listener(Browser teacher, String path) throws IOException, InterruptedException {
    HttpRequest request = teacher.request(path).timeout(java.time.Duration.ofDays(1))
        .header("Accept", "text/event-stream").GET().build();
    HttpResponse<InputStream> response =
        HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofInputStream());
    stream = response.body();
    Thread reader = new Thread(this::read, "listener");
    reader.setDaemon(true);
    reader.start();
  }

  private void read() {
    try (var lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      String name = "";
      String data = "";
      String id = null;
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("event:")) {
          name = line.substring(6).strip();
        } else if (line.startsWith("data:")) {
          data = line.substring(5).strip();
        } else if (line.startsWith("id:")) {
          id = line.substring(3).strip();
        } else if (line.startsWith("retry:")) {
          retry = line.substring(6).strip();
        } else if (line.isEmpty() && !name.isEmpty()) {
          take(new Event(name, data, id));
          name = "";
        }
      }
    } catch (IOException e) {
      // The stream was closed, from here or from there.
    }
    ended = true;
  }

  private void take(Event event) {
    if (event.data.startsWith("{")) {
      Json.read(event.data).path("seats").forEach(tile -> tiles.put(tile.path("id").asLong(), tile));
    }
    events.add(event);
  }

  String status(long child) {
    JsonNode tile = tiles.get(child);
    return tile == null ? "" : tile.path("status").asText();
  }

  String where(long child) {
    JsonNode tile = tiles.get(child);
    return tile == null ? "" : tile.path("where").asText();
  }

  @Override
  public void close() {
    try {
      stream.close();
    } catch (IOException e) {
      // It is closed.
    }
  }
}
