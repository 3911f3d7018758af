package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A teacher's page takes all style sheets of its frame: two areas with one class name would dress each other's pages. */
class StyleSheetsTest {
  private static final Path PAGES = Path.of("src/main/resources/pages");
  private static final Pattern SHEET = Pattern.compile("asset\\.of\\('css/([a-z-]+)\\.css'\\)");
  private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)}");
  private static final Pattern CLASS = Pattern.compile("\\.[a-z][\\w-]*");
  /** What a rule may do to a class of another sheet: hide it on paper, or let it out there. */
  private static final Pattern ON_PAPER = Pattern.compile("display:\\s*none.*|overflow:\\s*visible;?|min-width:\\s*0;.*");

  @Test
  void noClassIsDressedByTwoStyleSheetsOfOneFrame() throws IOException {
    List<String> sheets = new ArrayList<>();
    Matcher found = SHEET.matcher(Files.readString(PAGES.resolve("teacher/frame.html")));
    while (found.find()) {
      sheets.add(found.group(1));
    }
    assertTrue(sheets.size() > 5, "the sheets of the frame were found");
    Map<String, Set<String>> dressed = new TreeMap<>();
    for (String sheet : sheets) {
      String text = Files.readString(Path.of("static/css/" + sheet + ".css")).replaceAll("(?s)/\\*.*?\\*/", "");
      Matcher rule = RULE.matcher(text);
      while (rule.find()) {
        if (!ON_PAPER.matcher(rule.group(2).strip()).matches()) {
          for (String selector : rule.group(1).split(",")) {
            if (CLASS.matcher(selector.strip()).matches()) {
              dressed.computeIfAbsent(selector.strip(), none -> new TreeSet<>()).add(sheet);
            }
          }
        }
      }
    }
    assertTrue(dressed.size() > 100, "rules were found");
    dressed.values().removeIf(by -> by.size() < 2);
    dressed.keySet().removeAll(KNOWN);
    assertEquals(Map.of(), dressed);
  }

  /** {@code .box} is a length of the equation's box and a box that hides what is over; both are meant. */
  private static final Set<String> KNOWN = Set.of(".box");

  @Test
  void noPageIsDressedAsAChildsSheetOfPaper() throws IOException {
    try (Stream<Path> pages = Files.walk(PAGES.resolve("teacher"))) {
      assertEquals(List.of(), pages.filter(page -> page.toString().endsWith(".html"))
          .filter(page -> read(page).matches("(?s).*<body class=\"[^\"]*\\bpaper\\b(?!-).*")).toList());
    }
  }

  private static String read(Path page) {
    try {
      return Files.readString(page);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
