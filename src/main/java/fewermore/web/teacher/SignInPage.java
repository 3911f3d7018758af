package fewermore.web.teacher;

import java.util.List;

/**
 * {@code pages/teacher/sign-in.html}; posts {@code who} (only where there is more than one) and {@code passphrase} to
 * {@code /sign-in}.
 *
 * @param problem a sentence about the last try, or null
 * @param people who may sign in
 * @param chosen the id of the one who tried last, or null
 */
public record SignInPage(String problem, List<Person> people, String chosen) {
  /** A teacher ({@code t7}) or the substitute of a class ({@code s3}). */
  public record Person(String id, String name) {}

  public SignInPage {
    people = List.copyOf(people);
  }

  /** With one teacher. */
  public SignInPage(String problem) {
    this(problem, List.of(), null);
  }

  public boolean chosen(Person person) {
    return chosen == null ? person == people.get(0) : person.id.equals(chosen);
  }
}
