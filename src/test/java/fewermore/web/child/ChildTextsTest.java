package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ChildTextsTest {
  /** Keys that are put together while the page is made. */
  private static final List<String> GROUPS = List.of("part.", "state.", "picture.", "fitted.", "strategy.", "say.strategy.");
  private static final Set<String> FIELDS = Set.of("answer.field", "estimate.field");

  private static Properties read(String file) throws IOException {
    Properties texts = new Properties();
    try (Reader in = Files.newBufferedReader(Path.of("src/main/resources/messages/" + file), StandardCharsets.UTF_8)) {
      texts.load(in);
    }
    return texts;
  }

  private static Set<String> found(String folder, String end, String pattern) throws IOException {
    Set<String> found = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      for (Path file : files.filter(each -> each.toString().endsWith(end)).toList()) {
        Matcher matcher = Pattern.compile(pattern).matcher(Files.readString(file));
        while (matcher.find()) {
          found.add(matcher.group(1));
        }
      }
    }
    return found;
  }

  private static Set<String> inTemplates() throws IOException {
    Set<String> keys = found("src/main/resources/pages/child", ".html", "#\\{([a-z.-]+)[}(]");
    keys.addAll(found("src/main/resources/pages/fragments", ".html", "#\\{([a-z.-]+)[}(]"));
    keys.addAll(found("src/main/resources/pages/child", ".html", "#messages\\.msg\\('([a-z.-]+)'\\)"));
    return keys;
  }

  private static Set<String> inScript() throws IOException {
    Set<String> keys = new TreeSet<>();
    found("static/js", ".js", "\\bsay\\(\"([a-z.-]+)\"").forEach(key -> keys.add("say." + key));
    return keys;
  }

  @Test
  void everythingAPageOrItsScriptSaysHasAText() throws IOException {
    Properties english = read("child.properties");
    Set<String> wanted = inTemplates();
    wanted.addAll(inScript());
    wanted.removeIf(english::containsKey);
    assertEquals(Set.of(), wanted, "said, but not in child.properties");
  }

  @Test
  void noTextIsThereForNothing() throws IOException {
    Set<String> used = inTemplates();
    used.addAll(inScript());
    used.addAll(found("src/main/java/fewermore/web", ".java", "\"([a-z-]+\\.[a-z.-]+)\""));
    used.addAll(FIELDS);
    Set<String> unused = new TreeSet<>();
    for (String key : read("child.properties").stringPropertyNames()) {
      if (!used.contains(key) && GROUPS.stream().noneMatch(key::startsWith)) {
        unused.add(key);
      }
    }
    assertEquals(Set.of(), unused);
  }

  @Test
  void spanishSaysAllThatEnglishSaysWithTheSameBlanksToFill() throws IOException {
    Properties english = read("child.properties");
    Properties spanish = read("child_es.properties");
    assertEquals(new TreeSet<>(english.stringPropertyNames()), new TreeSet<>(spanish.stringPropertyNames()));
    for (String key : english.stringPropertyNames()) {
      assertEquals(blanks(english.getProperty(key)), blanks(spanish.getProperty(key)), key);
    }
  }

  @Test
  void noTextHasAStraightApostropheThatAPatternWouldSwallowNorSaysSaved() throws IOException {
    for (String file : List.of("child.properties", "child_es.properties")) {
      Properties texts = read(file);
      for (String key : texts.stringPropertyNames()) {
        String text = texts.getProperty(key);
        assertTrue(!text.contains("'"), file + " " + key);
        assertTrue(!text.toLowerCase(java.util.Locale.ROOT).matches(".*\\b(saved|guardado|wrong|incorrect)\\b.*"),
            file + " " + key);
      }
    }
  }

  private static Set<String> blanks(String text) {
    Set<String> blanks = new TreeSet<>();
    Matcher blank = Pattern.compile("\\{\\d}").matcher(text);
    while (blank.find()) {
      blanks.add(blank.group());
    }
    return blanks;
  }
}
