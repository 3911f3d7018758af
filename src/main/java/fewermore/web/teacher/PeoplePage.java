package fewermore.web.teacher;

import java.util.List;

/**
 * Who may sign in at this laptop. {@code pages/teacher/people.html}.
 *
 * <p>Forms: {@code /setup/people/name}: {@code name}. {@code /setup/people/passphrase}: {@code old},
 * {@code passphrase}, {@code again}. {@code /setup/people/teacher}: {@code name}, {@code passphrase}, {@code again}.
 * {@code /setup/people/substitute}: {@code passphrase}, {@code again}; {@code …/substitute/note}: {@code note};
 * {@code …/substitute/end}: nothing.
 *
 * @param about which form the problem is about, or null
 * @param problem a sentence about the last try, or null
 */
public record PeoplePage(
    String name, List<String> others, boolean substitute, String note, String className, String dataFolder,
    String about, String problem) {
  public PeoplePage {
    others = List.copyOf(others);
  }

  /** The problem of that form, or null. */
  public String problemOf(String form) {
    return form.equals(about) ? problem : null;
  }

  public int shortest() {
    return FirstPage.SHORTEST;
  }
}
