package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.records.RosterReader;
import fewermore.records.RosterReader.BadRow;
import fewermore.records.RosterReader.Roster;
import fewermore.records.RosterReader.SchoolClass;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Children to be added, before anything is saved. {@code pages/teacher/roster-in.html} takes names or files and posts
 * {@code names}, {@code files} and {@code class} to {@code /setup/list}; {@code pages/teacher/roster.html} shows what
 * was read and posts {@code name}, {@code language} and {@code roster} of each row to {@code /setup/list/save}.
 *
 * @param what what the text was taken for
 * @param classes classes to choose one of
 * @param names what was pasted, or the files to choose a class from, joined
 * @param problem a sentence about the last try, or null
 */
public record RosterPage(
    List<NewRow> rows, List<BadRow> bad, String what, List<SchoolClass> classes, List<String> names, String problem) {
  /** At most this many children in a class. */
  public static final int MOST = 60;

  /** @param clash why this child could not be told from another, or null; @param proposal a name that could */
  public record NewRow(String name, String language, String rosterId, String clash, String proposal) {}

  public RosterPage {
    rows = List.copyOf(rows);
    bad = List.copyOf(bad);
    classes = List.copyOf(classes);
    names = List.copyOf(names);
  }

  public static RosterPage empty() {
    return refused("", null);
  }

  public static RosterPage refused(String names, String problem) {
    return new RosterPage(List.of(), List.of(), "", List.of(), names.isEmpty() ? List.of() : List.of(names), problem);
  }

  public static RosterPage choose(List<String> texts, Roster roster) {
    return new RosterPage(List.of(), roster.bad(), roster.what(), roster.classes(), texts, null);
  }

  /** What was read: children of one first name get the letter of their family name as a proposal, for her to check. */
  public static RosterPage read(Roster roster, Collection<Child> there) {
    List<NewRow> plain = roster.rows().stream()
        .map(row -> new NewRow(row.name(), row.language().isEmpty() ? "en" : row.language(), row.rosterId(), null, null))
        .toList();
    List<NewRow> rows = new ArrayList<>();
    List<NewRow> told = toldApart(plain, there);
    for (int at = 0; at < told.size(); at++) {
      NewRow row = told.get(at);
      String initial = roster.rows().get(at).initial();
      rows.add(row.clash == null || initial.isEmpty() ? row
          : new NewRow(row.name, row.language, row.rosterId, row.clash, row.name + " " + initial + "."));
    }
    return new RosterPage(rows, roster.bad(), roster.what(), List.of(), List.of(), tooMany(rows.size() + there.size()));
  }

  /** What came back from the page; {@code problem} is null when it can be saved. */
  public static RosterPage typed(
      List<String> names, List<String> languages, List<String> rosterIds, Collection<Child> there) {
    List<NewRow> typed = new ArrayList<>();
    for (int at = 0; at < names.size(); at++) {
      if (!names.get(at).isEmpty()) {
        typed.add(new NewRow(names.get(at), at < languages.size() && languages.get(at).equals("es") ? "es" : "en",
            at < rosterIds.size() && rosterIds.get(at).length() <= 120 ? rosterIds.get(at) : "", null, null));
      }
    }
    List<NewRow> rows = toldApart(typed, there);
    boolean clash = rows.stream().anyMatch(row -> row.clash != null);
    boolean tooLong = rows.stream().anyMatch(row -> row.name.length() > RosterReader.LONGEST_NAME);
    String problem = rows.isEmpty() ? "No child is on the list. Go back and paste the names."
        : clash ? "Children on the tablets must be told apart. Change the names that are marked."
        : tooLong ? "A first name of at most " + RosterReader.LONGEST_NAME + " characters was expected. Shorten it."
        : tooMany(rows.size() + there.size());
    return new RosterPage(rows, List.of(), "", List.of(), List.of(), problem);
  }

  private static String tooMany(int all) {
    return all > MOST ? "At most " + MOST + " children were expected, this makes " + all + ". Make two classes." : null;
  }

  private static List<NewRow> toldApart(List<NewRow> rows, Collection<Child> there) {
    Map<String, Integer> count = new LinkedHashMap<>();
    rows.forEach(row -> count.merge(key(row.name), 1, Integer::sum));
    List<String> inClass = there.stream().map(child -> key(child.name())).toList();
    return rows.stream().map(row -> {
      String clash = inClass.contains(key(row.name)) ? "in the class already"
          : count.get(key(row.name)) > 1 ? "two of this name" : null;
      return new NewRow(row.name, row.language, row.rosterId, clash, null);
    }).toList();
  }

  private static String key(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  public boolean clashes() {
    return rows.stream().anyMatch(row -> row.clash != null);
  }
}
