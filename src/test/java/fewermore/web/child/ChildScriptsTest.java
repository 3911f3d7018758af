package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What a child's script and styles must not use: the oldest browsers with the full experience are Safari 15.4,
 * Chrome 99 and Firefox 98 (versions: W3C/MDN browser-compat-data, August 2026), and a tablet reaches the laptop over
 * plain HTTP, where what needs a secure context is missing (tried in headless Chromium 156).
 */
class ChildScriptsTest {
  private static final Map<String, String> NEVER_IN_SCRIPT = Map.ofEntries(
      Map.entry("\\(\\?<[=!]", "look-behind: Safari 16.4, and a syntax error stops the whole file"),
      Map.entry("(?m)^await\\b", "top-level await: module bug in Safari"),
      Map.entry("\\bclass\\s+\\w+[^{]*\\{\\s*(static\\s+)?#?\\w+\\s*=", "class field with parentheses in its initializer: Safari 16"),
      Map.entry("requestSubmit", "Safari 16"),
      Map.entry("AbortSignal\\.timeout", "Safari 16"),
      Map.entry("toSorted|toReversed|toSpliced|findLast", "Safari 15.4 to 16"),
      Map.entry("adoptedStyleSheets", "Safari 16.4"),
      Map.entry("structuredClone\\(", "the gate only asks for it"),
      Map.entry("serviceWorker|caches\\.|randomUUID|crypto\\.subtle|navigator\\.locks|navigator\\.storage"
          + "|mediaDevices|wakeLock|navigator\\.clipboard|navigator\\.share|Notification\\b|cookieStore|getBattery"
          + "|getCoalescedEvents", "missing without a secure context"),
      Map.entry("location\\.reload|beforeunload|innerHTML|outerHTML|insertAdjacentHTML|document\\.write|eval\\(",
          "no page is fetched before the laptop answered; no text becomes markup"),
      Map.entry("https?://", "nothing leaves the laptop"));
  private static final Map<String, String> NEVER_IN_STYLE = Map.of(
      "@container", "container queries: Safari 16",
      "color-mix\\(", "Safari 16.2",
      "\\((width|height)\\s*[<>]|[<>]=?\\s*(width|height)\\b", "media range syntax: Safari 16.4",
      ":has\\(", "only as decoration",
      "\\d[dsl]vh\\b", "Safari 15.4 to 16",
      "popover", "2024");
  private static final Path HEAD = Path.of("src/main/resources/pages/fragments/child.html");
  private static final Pattern LINKED = Pattern.compile("asset\\.of\\('((?:css|js)/[^']+)'\\)");
  private static final Pattern IMPORTED = Pattern.compile("(?:from|import\\()\\s*\"\\./([^\"]+)\"");

  /** What a child's page asks for: the style sheets of its head, and its script with all that this imports. */
  private static List<Path> files(String end) throws IOException {
    Set<Path> found = new LinkedHashSet<>();
    Deque<Path> open = new ArrayDeque<>();
    LINKED.matcher(Files.readString(HEAD)).results().map(each -> Path.of("static", each.group(1))).forEach(open::add);
    while (!open.isEmpty()) {
      Path file = open.pop();
      if (found.add(file) && file.toString().endsWith(".js")) {
        IMPORTED.matcher(Files.readString(file)).results().map(each -> file.resolveSibling(each.group(1)))
            .forEach(open::add);
      }
    }
    return found.stream().filter(file -> file.toString().endsWith(end)).toList();
  }

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/resources/pages/child"))) {
      return files.filter(file -> file.toString().endsWith(".html")).toList();
    }
  }

  private static List<String> offences(List<Path> files, Map<String, String> never) throws IOException {
    assertTrue(files.size() > 2, "the files were found");
    List<String> offences = new ArrayList<>();
    for (Path file : files) {
      String text = Files.readString(file).replaceAll("(?s)/\\*.*?\\*/", "");
      never.forEach((pattern, why) -> {
        if (Pattern.compile(pattern).matcher(text).find()) {
          offences.add(file + ": " + pattern + " (" + why + ")");
        }
      });
    }
    return offences;
  }

  @Test
  void scriptsUseOnlyWhatTheOldestFullBrowserHasOverPlainHttp() throws IOException {
    List<Path> scripts = files(".js").stream()
        .filter(file -> !file.getFileName().toString().equals("gate.js")).toList();
    assertTrue(scripts.size() > 30, "all that is imported was found");
    assertEquals(List.of(), offences(scripts, NEVER_IN_SCRIPT));
  }

  @Test
  void stylesUseOnlyWhatTheOldestFullBrowserHas() throws IOException {
    assertEquals(List.of(), offences(files(".css"), NEVER_IN_STYLE));
  }

  @Test
  void noPageForbidsZoom() throws IOException {
    for (Path page : pages()) {
      assertTrue(!Files.readString(page).matches("(?s).*(user-scalable|maximum-scale|importmap).*"), page.toString());
    }
    assertTrue(Files.readString(HEAD)
        .contains("content=\"width=device-width, initial-scale=1\""));
  }

  @Test
  void noScriptHoldsATextForAChild() throws IOException {
    Pattern sentence = Pattern.compile("\"[A-Z][a-z]+ [a-z]+ [^\"]*\"");
    for (Path script : files(".js")) {
      String text = Files.readString(script).replaceAll("(?s)/\\*.*?\\*/", "");
      assertTrue(!sentence.matcher(text).find(), script.toString());
    }
  }
}
