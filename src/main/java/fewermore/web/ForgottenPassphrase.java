package fewermore.web;

import fewermore.store.Database;
import fewermore.store.TeacherStore;
import fewermore.store.TeacherStore.Teacher;
import java.util.List;
import java.util.Optional;

/**
 * A new passphrase for a teacher who forgot hers: only by whoever can run a program on the laptop and read its data
 * folder, and only while the app is stopped. There is no way over the network.
 */
public final class ForgottenPassphrase {
  private ForgottenPassphrase() {}

  /**
   * Sets it, and says in a sentence what was done or what was expected.
   *
   * @param name the teacher's name as on the sign-in page, or null where there is only one
   * @return a sentence that starts with {@code Set} when it was done
   */
  public static String set(Database database, String name, String passphrase) {
    TeacherStore teachers = new TeacherStore(database);
    List<Teacher> all = teachers.all();
    List<Teacher> meant = name == null ? all : all.stream().filter(each -> each.name().equalsIgnoreCase(name)).toList();
    if (all.isEmpty()) {
      return "Nobody has set a passphrase in this folder yet. Start the app and open its first page.";
    }
    if (meant.size() != 1) {
      return "Whose passphrase? Name one with --teacher: "
          + String.join(", ", all.stream().map(each -> "\"" + each.name() + "\"").toList()) + ".";
    }
    Optional<String> problem = Passphrases.problem(passphrase);
    if (problem.isPresent()) {
      return problem.get() + " Nothing was changed.";
    }
    teachers.changePassphrase(meant.get(0).id(), Passphrases.hash(passphrase));
    return "Set. Start the app and sign in as " + meant.get(0).name() + ".";
  }
}
