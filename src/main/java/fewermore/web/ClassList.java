package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Picture;
import fewermore.store.ClassStore.NewChild;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A class list as a teacher pastes it: first names, one a line. Every child gets a drawing of her own while
 * there are enough.
 *
 * @param problem what stands in the way, as a sentence with the line; null when nothing does
 */
record ClassList(List<NewChild> children, String problem) {
  static final int MOST = 60;
  /** A class whose names come from a file next. */
  static final ClassList NONE_YET = new ClassList(List.of(), null);
  private static final int LONGEST = 40;

  /** @param there the children already in the class: new names and drawings differ from theirs */
  static ClassList read(String pasted, List<Child> there) {
    List<NewChild> children = new ArrayList<>();
    Map<String, Integer> lines = new LinkedHashMap<>();
    Set<String> names = there.stream().map(child -> child.name().toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
    List<Picture> free = new ArrayList<>(Picture.ALL);
    free.removeIf(picture -> there.stream().anyMatch(child -> child.picture().equals(picture.id())));
    if (free.isEmpty()) {
      free.addAll(Picture.ALL);
    }
    int line = 0;
    for (String each : pasted.split("\\R", -1)) {
      line++;
      String name = each.strip().replaceAll("\\s+", " ");
      if (name.isEmpty()) {
        continue;
      }
      if (name.length() > LONGEST || name.chars().anyMatch(Character::isISOControl)) {
        return refused("Line " + line + ": a first name of at most " + LONGEST + " characters was expected. Shorten it.");
      }
      Integer before = lines.put(name.toLowerCase(Locale.ROOT), line);
      if (before != null) {
        return refused("Lines " + before + " and " + line + " are both \"" + name
            + "\". Children must be told apart on the tablets: add a letter, for example \"" + name + " B\".");
      }
      if (names.contains(name.toLowerCase(Locale.ROOT))) {
        return refused("Line " + line + ": there is a \"" + name
            + "\" in this class already. Add a letter, for example \"" + name + " B\".");
      }
      Picture picture = free.get(children.size() % free.size());
      children.add(new NewChild(name, picture.id(), picture.ground(), "en"));
    }
    if (children.isEmpty()) {
      return refused("No names are there yet. Paste the first names, one a line.");
    }
    int all = children.size() + there.size();
    return all > MOST
        ? refused("At most " + MOST + " children were expected, this makes " + all + ". Make two classes.")
        : new ClassList(List.copyOf(children), null);
  }

  private static ClassList refused(String problem) {
    return new ClassList(List.of(), problem);
  }
}
