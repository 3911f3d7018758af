package fewermore.store.backup;

import com.fasterxml.jackson.databind.JsonNode;
import fewermore.json.Json;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Optional;

/**
 * Where the app that serves a data folder can be asked, over loopback, by whoever may read that folder: its port and a
 * token, in a file that only this user of the laptop can read.
 */
public record RunningApp(int port, String token) {
  private static final String FILE = "running.json";
  /** The header the token goes in. */
  public static final String TOKEN = "Fewermore-Token";
  private static final Duration LONGEST_BACKUP = Duration.ofMinutes(30);

  /** Written when the app has started to serve. */
  public void write(Path data) throws IOException {
    Path file = data.resolve(FILE);
    Files.deleteIfExists(file);
    if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    }
    Files.writeString(file, Json.write(Json.object().put("port", port).put("token", token)));
  }

  /** Taken away when it ends. */
  public static void remove(Path data) {
    try {
      Files.deleteIfExists(data.resolve(FILE));
    } catch (IOException e) {
      System.getLogger(RunningApp.class.getName()).log(System.Logger.Level.DEBUG, "the running app's file stays");
    }
  }

  /** Empty when nothing says that an app runs there. */
  public static Optional<RunningApp> of(Path data) {
    try {
      JsonNode json = Json.read(Files.readString(data.resolve(FILE)));
      return Optional.of(new RunningApp(json.path("port").asInt(), json.path("token").asText()));
    } catch (IOException | Json.Unusable e) {
      return Optional.empty();
    }
  }

  /** Asks the app for a backup into a file; what it answers is one JSON object. */
  public String backup(Path file, String passphrase) throws IOException, InterruptedException {
    HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/backup"))
        .header(TOKEN, token)
        .timeout(LONGEST_BACKUP)
        .POST(HttpRequest.BodyPublishers.ofString(
            Json.write(Json.object().put("file", file.toString()).put("passphrase", passphrase))))
        .build();
    HttpResponse<String> response = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
    return response.body();
  }
}
