package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One numbered example of {@code spec/equations.md}.
 *
 * @param reason the main reason's id, for {@code no-equals} and {@code unreadable} with what stands in
 *     parentheses
 * @param at what the mark rests on, {@code "null"} for the whole, or null when the example does not say
 */
record EquationExample(
    int number, String section, Comparison story, String written, String reason, Set<String> notes, String at) {
  static final String FILE = "spec/equations.md";

  private static final Pattern STORY = Pattern.compile("Story: (.+)\\.");
  private static final Pattern EXAMPLE = Pattern.compile("(\".*\"|.*?)\\s+→ ([a-z-]+(?: \\([a-z-]+\\))?)(.*)");
  private static final Pattern NOTE = Pattern.compile(", (?:at (?:\"(.+)\"|(null))|([a-z-]+))");
  private static final Pattern ESCAPE = Pattern.compile("\\\\(?:u([0-9A-F]{4})|([tn]))");

  String name() {
    return FILE + " §" + section + " example " + number + ": " + written;
  }

  static List<EquationExample> all() {
    List<EquationExample> examples = new ArrayList<>();
    String section = "";
    Comparison story = null;
    boolean fenced = false;
    for (String line : lines()) {
      if (line.startsWith("```")) {
        fenced = !fenced;
      } else if (fenced) {
        examples.add(example(examples.size() + 1, section, story, line));
      } else if (line.startsWith("#")) {
        section = line.replaceFirst("#+ ", "");
      } else if (line.startsWith("Story: ")) {
        story = story(line);
      }
    }
    return examples;
  }

  private static EquationExample example(int number, String section, Comparison story, String line) {
    Matcher parts = EXAMPLE.matcher(line);
    if (!parts.matches() || story == null) {
      throw new IllegalArgumentException("not an example: " + line);
    }
    Set<String> notes = new HashSet<>();
    String at = null;
    Matcher note = NOTE.matcher(parts.group(3));
    int end = 0;
    while (note.find() && note.start() == end) {
      end = note.end();
      if (note.group(3) != null) {
        notes.add(note.group(3));
      } else {
        at = note.group(1) == null ? note.group(2) : note.group(1);
      }
    }
    if (end != parts.group(3).length()) {
      throw new IllegalArgumentException("not to be read from \"" + parts.group(3).substring(end) + "\": " + line);
    }
    return new EquationExample(number, section, story, unquoted(parts.group(1)), parts.group(2), notes, at);
  }

  private static String unquoted(String written) {
    return written.startsWith("\"") ? ESCAPE.matcher(written.substring(1, written.length() - 1))
        .replaceAll(EquationExample::character) : written.strip();
  }

  private static String character(MatchResult escape) {
    return escape.group(2) == null ? Character.toString(Integer.parseInt(escape.group(1), 16))
        : escape.group(2).equals("t") ? "\t" : "\n";
  }

  private static Comparison story(String line) {
    Matcher whole = STORY.matcher(line);
    if (!whole.matches()) {
      throw new IllegalArgumentException("not a story: " + line);
    }
    Integer[] values = new Integer[Role.values().length];
    Role asked = null;
    Wording wording = null;
    List<Integer> extras = new ArrayList<>();
    for (String part : whole.group(1).split("[;,] ")) {
      String[] words = part.split(" ");
      if (words[0].equals("asked")) {
        asked = Role.of(words[1]).orElseThrow();
      } else if (words[0].equals("extra")) {
        extras.add(Integer.valueOf(words[1]));
      } else if (words.length == 2) {
        values[Role.of(words[0]).orElseThrow().ordinal()] = Integer.valueOf(words[1]);
      } else {
        wording = Wording.of(words[0]).orElseThrow();
      }
    }
    Integer larger = values[Role.LARGER.ordinal()];
    Integer smaller = values[Role.SMALLER.ordinal()];
    Integer difference = values[Role.DIFFERENCE.ordinal()];
    int least = smaller == null ? larger - difference : smaller;
    return RandomEquations.story(larger == null ? smaller + difference : larger, least, asked, wording, extras);
  }

  private static List<String> lines() {
    try (var in = EquationExample.class.getResourceAsStream("/" + FILE)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
