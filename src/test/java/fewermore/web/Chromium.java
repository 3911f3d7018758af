package fewermore.web;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * The one real browser of all browser tests. Without a Chromium these tests are skipped with a loud line, unless the
 * environment variable {@code CI} is set: then they fail.
 *
 * <p>The name {@code tablet.test} leads to this machine, so that pages have an origin that is not secure, as on a
 * tablet; on {@code localhost} forbidden things would exist and tests would lie.
 */
public final class Chromium {
  private static final List<String> ARGUMENTS = List.of("--no-sandbox", "--disable-gpu", "--disable-quic",
      "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
      "--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream",
      "--host-resolver-rules=MAP tablet.test 127.0.0.1");
  private static Browser browser;

  private Chromium() {}

  /** A fresh profile: no cookies, nothing stored. */
  public static BrowserContext tablet(int width, int height) {
    return tablet(new Browser.NewContextOptions().setViewportSize(width, height));
  }

  public static BrowserContext tablet(Browser.NewContextOptions options) {
    BrowserContext context = browser().newContext(options);
    context.setDefaultTimeout(30_000);
    return context;
  }

  private static synchronized Browser browser() {
    if (browser == null) {
      Path program = find().orElse(null);
      if (program == null) {
        String sentence = "NO BROWSER TESTS: no Chromium was found; install the package chromium, "
            + "or name the program in the environment variable CHROMIUM";
        if (System.getenv("CI") != null) {
          Assertions.fail(sentence);
        }
        System.err.println(sentence);
        Assumptions.abort(sentence);
      }
      Playwright playwright = Playwright.create(
          new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
      browser = playwright.chromium()
          .launch(new BrowserType.LaunchOptions().setExecutablePath(program).setArgs(ARGUMENTS));
      Runtime.getRuntime().addShutdownHook(new Thread(playwright::close));
    }
    return browser;
  }

  private static Optional<Path> find() {
    return Stream.of(System.getenv("CHROMIUM"), "/usr/bin/chromium", "/usr/bin/chromium-browser",
            "/usr/bin/google-chrome", "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
            "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe")
        .filter(path -> path != null && !path.isBlank()).map(Path::of).filter(Files::isExecutable).findFirst();
  }
}
