package fewermore;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/** Shows the teacher's page in the laptop's own browser, for a start by double-click. */
final class OpenPage {
  private static final Duration PATIENCE = Duration.ofSeconds(2);

  private OpenPage() {}

  /** The program that opens an address on a system, as the system's own name ({@code os.name}) tells it. */
  static List<String> command(String system, String address) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      return List.of("rundll32", "url.dll,FileProtocolHandler", address);
    }
    return List.of(name.startsWith("mac") ? "open" : "xdg-open", address);
  }

  /** @return false when this machine has no program for it: the address then stands in the terminal only */
  static boolean show(String address) {
    try {
      new ProcessBuilder(command(System.getProperty("os.name"), address))
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start();
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /** Whether a Fewermore answers at this address: a second double-click then only opens the page. */
  static boolean alreadyRuns(String address) {
    HttpRequest request = HttpRequest.newBuilder(URI.create(address + "/sign-in")).timeout(PATIENCE).build();
    try {
      HttpResponse<String> answer = HttpClient.newBuilder().connectTimeout(PATIENCE).build()
          .send(request, HttpResponse.BodyHandlers.ofString());
      return answer.body().contains("Fewermore");
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
