package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Examples as data: a Markdown file of prose, in which each section has a story and tables of examples.
 *
 * <pre>
 * ## Section
 * Story: `Priya 61, Jonah ?, 26 fewer; spotted toad/spotted toads; not brown toad/brown toads; wider animal/animals;
 * also 6`
 *
 * | n | written | mark |
 * |---|---|---|
 * | 1 | `toads` | too-general |
 * </pre>
 *
 * The story names who has more, who has fewer and the difference with its wording, the unknown as {@code ?}
 * and nobody as {@code -}; then the thing, one and many. A column {@code thing} replaces the story's. Numbers of
 * examples run on
 * through the file. What stands between backticks is taken as it is, with {@code \\u0000} for signs that do not show.
 */
final class SpecFile {
  /** One example: its cells by the column's name. */
  record Example(String file, String section, int number, Comparison story, Map<String, String> cells) {
    String cell(String column) {
      String cell = cells.get(column);
      if (cell == null) {
        throw new IllegalStateException(this + " has no column " + column);
      }
      return cell;
    }

    @Override public String toString() {
      return file + ", " + section + ", example " + number + " " + cells;
    }
  }

  private final String name;
  private final List<Example> examples = new ArrayList<>();
  private String section = "";
  private String story = "";
  private List<String> columns = List.of();

  private SpecFile(String name) {
    this.name = name;
  }

  static List<Example> read(String name) {
    try (InputStream in = SpecFile.class.getResourceAsStream("/spec/" + name)) {
      SpecFile file = new SpecFile(name);
      new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().forEach(file::line);
      return List.copyOf(file.examples);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private void line(String line) {
    if (line.startsWith("## ")) {
      section = line.substring(3).strip();
      columns = List.of();
    } else if (line.startsWith("Story: `")) {
      story = line.substring("Story: `".length(), line.lastIndexOf('`'));
    } else if (line.startsWith("|---")) {
      return;
    } else if (line.startsWith("| n |")) {
      columns = cells(line);
    } else if (line.startsWith("|")) {
      example(cells(line));
    } else if (!line.isBlank()) {
      columns = List.of();
    }
  }

  private void example(List<String> cells) {
    if (cells.size() != columns.size()) {
      throw new IllegalStateException(name + ", " + section + ": " + cells + " does not fit the columns " + columns);
    }
    Map<String, String> byColumn = new TreeMap<>();
    for (int i = 1; i < cells.size(); i++) {
      byColumn.put(columns.get(i), written(cells.get(i)));
    }
    int number = Integer.parseInt(cells.get(0));
    if (number != examples.size() + 1) {
      throw new IllegalStateException(name + ", " + section + ": example " + (examples.size() + 1) + " is numbered "
          + number);
    }
    String thing = byColumn.get("thing");
    examples.add(new Example(name, section, number, story(thing == null ? story : story + "; " + thing), byColumn));
  }

  private static List<String> cells(String line) {
    String[] cells = line.substring(1, line.lastIndexOf('|')).split("\\|", -1);
    return List.of(cells).stream().map(String::strip).toList();
  }

  private static String written(String cell) {
    if (!cell.startsWith("`")) {
      return cell;
    }
    String text = cell.substring(1, cell.length() - 1);
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      if (text.startsWith("\\u", i)) {
        plain.append((char) Integer.parseInt(text.substring(i + 2, i + 6), 16));
        i += 5;
      } else {
        plain.append(text.charAt(i));
      }
    }
    return plain.toString();
  }

  /** A story as spec files write it. */
  static Comparison story(String text) {
    String[] fields = text.split(";");
    String[] amounts = fields[0].split(",");
    String larger = amount(amounts[0]);
    String smaller = amount(amounts[1]);
    String[] difference = amounts[2].strip().split(" ");
    Role unknown = larger.equals("?") ? Role.LARGER : smaller.equals("?") ? Role.SMALLER : Role.DIFFERENCE;
    Relation relation = switch (unknown) {
      case LARGER -> relation(number(smaller) + number(difference[0]), number(smaller));
      case SMALLER -> relation(number(larger), number(larger) - number(difference[0]));
      case DIFFERENCE -> relation(number(larger), number(smaller));
    };
    Thing thing = null;
    Thing other = null;
    List<Thing> wider = new ArrayList<>();
    List<Integer> extras = new ArrayList<>();
    for (int i = 1; i < fields.length; i++) {
      String field = fields[i].strip();
      if (field.startsWith("not ")) {
        other = thing(field.substring(4));
      } else if (field.startsWith("wider ")) {
        wider.add(thing(field.substring(6)));
      } else if (field.startsWith("also ")) {
        extras.add(number(field.substring(5)));
      } else {
        thing = thing(field);
      }
    }
    return new Comparison(new Persons(name(amounts[0]), name(amounts[1])), thing, other, wider, relation, unknown,
        Wording.of(difference[1]).orElseThrow(), extras);
  }

  private static Relation relation(int larger, int smaller) {
    return new Relation(larger, smaller, larger - smaller);
  }

  private static String amount(String field) {
    return field.substring(field.lastIndexOf(' ') + 1);
  }

  private static String name(String field) {
    String name = field.substring(0, field.lastIndexOf(' ')).strip();
    return name.equals("-") ? null : name;
  }

  private static int number(String text) {
    return Integer.parseInt(text.strip());
  }

  private static Thing thing(String field) {
    String[] forms = field.split("/");
    return new Thing(forms[0].strip(), forms[1].strip());
  }
}
