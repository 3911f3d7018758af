package fewermore.web.child;

import fewermore.classroom.Picture;
import java.util.List;

/**
 * "Tap your two pictures": asked after "Yes, it's me" where the class has picture secrets.
 * {@code pages/child/secret.html}. It keeps a neighbor out, not an attacker: two of nine are one of 36.
 *
 * @param language {@code en} or {@code es}
 * @param post where the two are posted, as {@code secret} twice
 * @param choices always the same nine, in the same places
 * @param problem what stands between the child and her seat
 */
public record SecretPage(String language, Me me, String post, List<ShownPicture> choices, Problem problem) {
  /** How many pictures are a secret. */
  public static final int LENGTH = 2;

  /** The nine to choose from: drawings that no one takes for another. */
  public static final List<String> CHOICES =
      List.of("kite", "sun", "key", "boat", "cup", "drum", "moon", "snail", "cherries");

  /** What to say above the pictures. */
  public enum Problem {
    NONE,
    /** These two are not hers. */
    OTHER_PICTURES,
    /** Too many tries in a minute. */
    WAIT_A_MINUTE
  }

  public SecretPage {
    choices = List.copyOf(choices);
  }

  public static SecretPage of(String language, Me me, String post, Problem problem) {
    return new SecretPage(language, me, post, shown(), problem);
  }

  /** The nine as drawings. */
  public static List<ShownPicture> shown() {
    return CHOICES.stream().map(id -> ShownPicture.of(Picture.of(id).orElseThrow())).toList();
  }

  public boolean otherPictures() {
    return problem == Problem.OTHER_PICTURES;
  }

  public boolean waitAMinute() {
    return problem == Problem.WAIT_A_MINUTE;
  }
}
