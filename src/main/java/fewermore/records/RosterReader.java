package fewermore.records;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Reads a class list: first names one a line, a CSV with a header, or files with the headers of 1EdTech OneRoster 1.1
 * or 1.2 ({@code users}, and with it {@code enrollments}, {@code roles}, {@code classes}). The headers are those the
 * specification's front pages and several implementations show; conformance is not claimed. Good rows come in, bad rows
 * come with line and reason. Of a person only first name, first letter of the family name and the school's id are kept.
 */
public final class RosterReader {
  /** Longest first name, in characters. */
  public static final int LONGEST_NAME = 40;

  /** @param initial first letter of the family name, or empty; @param rosterId the school's id, or empty */
  public record Row(int line, String name, String initial, String rosterId, String language) {}

  /** A line that does not come in. @param file which of the files, from 1 */
  public record BadRow(int file, int line, String found, String reason) {}

  /** A class of an enrollments file, to choose from. */
  public record SchoolClass(String id, String title, int children) {}

  /**
   * What was read.
   *
   * @param classes where the files hold several classes and none was chosen: then {@code rows} is empty
   * @param what in words what the text was taken for
   */
  public record Roster(List<Row> rows, List<BadRow> bad, List<SchoolClass> classes, String what) {
    public Roster {
      rows = List.copyOf(rows);
      bad = List.copyOf(bad);
      classes = List.copyOf(classes);
    }
  }

  private record Parsed(int number, List<String> header, List<CsvRecord> records) {
    Optional<String> of(CsvRecord record, String column) {
      int at = header.indexOf(column);
      return at < 0 || at >= record.getFieldCount() ? Optional.empty()
          : Optional.of(Csv.read(record.getField(at)).strip().replaceAll("\\s+", " "));
    }

    boolean has(String... columns) {
      return header.containsAll(List.of(columns));
    }
  }

  private static final Set<String> FIRST =
      Set.of("name", "first name", "first", "firstname", "given name", "givenname", "child", "student", "nombre");
  private static final Set<String> FAMILY = Set.of("last name", "last", "lastname", "family name", "familyname", "surname");
  private static final Set<String> LANGUAGE = Set.of("language", "idioma");
  private static final Set<String> ID = Set.of("id", "student id", "sourcedid", "number");

  private final List<BadRow> bad = new ArrayList<>();
  private final List<Row> rows = new ArrayList<>();

  private RosterReader() {}

  /**
   * @param texts the files' or the pasted text, in any order; at least one
   * @param chosen id of the class to take from an enrollments file, or null
   * @param there the school's ids of the children who are in the class already
   */
  public static Roster read(List<String> texts, String chosen, Set<String> there) {
    return new RosterReader().all(texts, chosen, there);
  }

  private Roster all(List<String> texts, String chosen, Set<String> there) {
    List<Parsed> files = new ArrayList<>();
    for (int file = 1; file <= texts.size(); file++) {
      String text = texts.get(file - 1).startsWith("\uFEFF") ? texts.get(file - 1).substring(1) : texts.get(file - 1);
      Optional<Parsed> parsed = table(file, text);
      if (parsed.isPresent()) {
        files.add(parsed.get());
      } else {
        names(file, text);
      }
    }
    Optional<Parsed> users = files.stream().filter(each -> each.has("sourcedId", "givenName")).findFirst();
    if (users.isEmpty()) {
      files.forEach(this::plain);
      String what = files.isEmpty() ? "first names, one a line" : "a CSV with a header";
      return new Roster(rows, bad, List.of(), what);
    }
    return oneRoster(users.get(), files, chosen, there);
  }

  /** A text whose first line is a header this reader knows. */
  private Optional<Parsed> table(int file, String text) {
    List<CsvRecord> records = new ArrayList<>();
    try (CsvReader<CsvRecord> reader = CsvReader.builder().skipEmptyLines(true).allowExtraFields(true)
        .allowMissingFields(true).ofCsvRecord(text)) {
      reader.forEach(records::add);
    } catch (CsvParseException e) {
      bad.add(new BadRow(file, (int) text.lines().count(), "", "A quote is opened and never closed. Close it."));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException("reading from memory", e);
    }
    if (records.isEmpty()) {
      return Optional.empty();
    }
    List<String> header = records.get(0).getFields().stream().map(String::strip).toList();
    boolean known = header.contains("sourcedId") || header.contains("userSourcedId") || column(header, FIRST) >= 0;
    return known ? Optional.of(new Parsed(file, header, records.subList(1, records.size()))) : Optional.empty();
  }

  private static int column(List<String> header, Set<String> names) {
    for (int at = 0; at < header.size(); at++) {
      if (names.contains(header.get(at).toLowerCase(Locale.ROOT))) {
        return at;
      }
    }
    return -1;
  }

  private void names(int file, String text) {
    int line = 0;
    for (String each : text.split("\\R", -1)) {
      line++;
      String name = each.strip().replaceAll("\\s+", " ");
      if (!name.isEmpty()) {
        keep(file, new Row(line, name, "", "", ""));
      }
    }
  }

  private void keep(int file, Row row) {
    if (row.name.isEmpty()) {
      bad.add(new BadRow(file, row.line, "", "A first name was expected here; the place is empty."));
    } else if (row.name.length() > LONGEST_NAME || row.name.chars().anyMatch(Character::isISOControl)) {
      bad.add(new BadRow(file, row.line, cut(row.name),
          "A first name of at most " + LONGEST_NAME + " characters was expected. Shorten it."));
    } else if (row.name.indexOf(',') >= 0) {
      bad.add(new BadRow(file, row.line, cut(row.name),
          "Only a first name was expected; there is a comma. Put a header line such as \"first name,last name\" above."));
    } else {
      rows.add(row);
    }
  }

  private static String cut(String text) {
    return text.length() > 60 ? text.substring(0, 60) + "…" : text;
  }

  private void plain(Parsed file) {
    int first = column(file.header, FIRST);
    if (first < 0) {
      bad.add(new BadRow(file.number, 1, cut(String.join(",", file.header)),
          "A column with first names was expected, for example \"first name\". A users file is missing."));
      return;
    }
    int family = column(file.header, FAMILY);
    int language = column(file.header, LANGUAGE);
    int id = column(file.header, ID);
    for (CsvRecord record : file.records) {
      if (fits(file, record)) {
        keep(file.number, new Row((int) record.getStartingLineNumber(), cell(record, first),
            family < 0 ? "" : initial(cell(record, family)), id < 0 ? "" : cell(record, id),
            language < 0 ? "" : language(cell(record, language))));
      }
    }
  }

  private static String language(String said) {
    String lower = said.toLowerCase(Locale.ROOT);
    return lower.startsWith("es") || lower.startsWith("spa") ? "es" : lower.startsWith("en") ? "en" : "";
  }

  private static String cell(CsvRecord record, int at) {
    return at >= record.getFieldCount() ? "" : Csv.read(record.getField(at)).strip().replaceAll("\\s+", " ");
  }

  private static String initial(String family) {
    return family.isEmpty() ? "" : family.substring(0, family.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT);
  }

  /** A row must have as many places as the header. */
  private boolean fits(Parsed file, CsvRecord record) {
    if (record.getFieldCount() == file.header.size()) {
      return true;
    }
    bad.add(new BadRow(file.number, (int) record.getStartingLineNumber(), cut(String.join(",", record.getFields())),
        file.header.size() + " places were expected, as in the first line; there are " + record.getFieldCount()
            + ". Look for a comma or a quote too many or too few."));
    return false;
  }

  // ---- the OneRoster shape ----

  private Roster oneRoster(Parsed users, Collection<Parsed> files, String chosen, Set<String> there) {
    Map<String, Set<String>> enrolled = new TreeMap<>();
    Map<String, String> titles = new HashMap<>();
    Set<String> students = null;
    for (Parsed file : files) {
      if (file.has("classSourcedId", "userSourcedId")) {
        enrollments(file, enrolled);
      } else if (file.has("userSourcedId", "role")) {
        students = students == null ? new HashSet<>() : students;
        for (CsvRecord record : file.records) {
          if (file.of(record, "role").orElse("").equals("student") && kept(file, record)) {
            students.add(file.of(record, "userSourcedId").orElse(""));
          }
        }
      } else if (file.has("sourcedId", "title")) {
        file.records.forEach(record -> titles.put(file.of(record, "sourcedId").orElse(""),
            file.of(record, "title").orElse("")));
      }
    }
    String taken = chosen == null && enrolled.size() == 1 ? enrolled.keySet().iterator().next() : chosen;
    if (!enrolled.isEmpty() && !enrolled.containsKey(String.valueOf(taken))) {
      List<SchoolClass> classes = enrolled.entrySet().stream().map(entry -> new SchoolClass(entry.getKey(),
          titles.getOrDefault(entry.getKey(), entry.getKey()), entry.getValue().size())).toList();
      return new Roster(List.of(), bad, classes, "files in the shape of OneRoster");
    }
    users(users, enrolled.isEmpty() ? null : enrolled.get(taken), students, there);
    return new Roster(rows, bad, List.of(), "files in the shape of OneRoster");
  }

  private static boolean kept(Parsed file, CsvRecord record) {
    return !file.of(record, "status").orElse("").equals("tobedeleted");
  }

  private void enrollments(Parsed file, Map<String, Set<String>> enrolled) {
    for (CsvRecord record : file.records) {
      if (fits(file, record) && kept(file, record) && file.of(record, "role").orElse("student").equals("student")) {
        enrolled.computeIfAbsent(file.of(record, "classSourcedId").orElse(""), none -> new TreeSet<>())
            .add(file.of(record, "userSourcedId").orElse(""));
      }
    }
  }

  private void users(Parsed file, Set<String> enrolled, Set<String> students, Set<String> there) {
    Map<String, Integer> seen = new LinkedHashMap<>();
    for (CsvRecord record : file.records) {
      int line = (int) record.getStartingLineNumber();
      if (!fits(file, record)) {
        continue;
      }
      String id = file.of(record, "sourcedId").orElse("");
      String name = file.of(record, "preferredGivenName").filter(each -> !each.isEmpty())
          .or(() -> file.of(record, "givenName")).orElse("");
      if (id.isEmpty()) {
        bad.add(new BadRow(file.number, line, cut(name), "sourcedId was expected; the place is empty."));
        continue;
      }
      if (enrolled != null && !enrolled.contains(id)) {
        continue;
      }
      Integer before = seen.putIfAbsent(id, line);
      String reason = before != null ? "This sourcedId stands in line " + before + " already."
          : !kept(file, record) ? "Marked in the file to be deleted."
          : file.of(record, "enabledUser").orElse("true").equals("false") ? "Not an enabled user in the file."
          : notAStudent(file, record, id, students) ? "Not a student in the file."
          : there.contains(id) ? "In this class already." : null;
      if (reason != null) {
        bad.add(new BadRow(file.number, line, cut(name), reason));
      } else {
        keep(file.number, new Row(line, name, initial(file.of(record, "familyName").orElse("")), id, ""));
      }
    }
  }

  /** 1.1 says the role in the users file, 1.2 in the roles file; where neither says it, enrollments decide. */
  private static boolean notAStudent(Parsed file, CsvRecord record, String id, Set<String> students) {
    return file.header.contains("role") ? !file.of(record, "role").orElse("").equals("student")
        : students != null && !students.contains(id);
  }
}
