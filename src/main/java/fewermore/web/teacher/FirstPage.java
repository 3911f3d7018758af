package fewermore.web.teacher;

/**
 * First visit: she sets the passphrase. {@code pages/teacher/first.html}; posts {@code passphrase} and
 * {@code again} to {@code /first}.
 *
 * @param problem a sentence about the last try, or null
 */
public record FirstPage(String problem) {
  /** Fewest characters of a passphrase: eight, NIST SP 800-63B section 5.1.1.2. */
  public static final int SHORTEST = 8;

  public int shortest() {
    return SHORTEST;
  }
}
