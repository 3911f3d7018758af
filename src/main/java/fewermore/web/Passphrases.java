package fewermore.web;

import com.nulabinc.zxcvbn.StandardDictionaries;
import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import fewermore.web.teacher.FirstPage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Optional;

/**
 * Argon2id with 19 MiB, two passes, one lane: the least the OWASP Password Storage cheat sheet allows.
 * One hash at a time, so that many tries can't fill a small laptop's memory.
 */
final class Passphrases {
  static final int LONGEST = 200;

  private static final Argon2Function FUNCTION =
      Argon2Function.getInstance(19 * 1024, 2, 1, 32, Argon2.ID, 19);

  private Passphrases() {}

  /**
   * What stands against a new passphrase: its length in characters, and whether it is among the 11,611 passwords of
   * that length which people take most often (the list of the library zxcvbn), in upper or lower case.
   */
  static Optional<String> problem(String passphrase) {
    if (passphrase.length() < FirstPage.SHORTEST || passphrase.length() > LONGEST) {
      return Optional.of("A passphrase of " + FirstPage.SHORTEST + " to " + LONGEST
          + " characters was expected. Try a few words in a row.");
    }
    return common(passphrase) ? Optional.of("That one is among the first that anybody would try. A passphrase that few"
        + " people have was expected. Try a few words in a row.") : Optional.empty();
  }

  /** {@link #problem(String)}, where it is typed twice. */
  static Optional<String> problem(String passphrase, String again) {
    return problem(passphrase).or(() -> passphrase.equals(again) ? Optional.empty()
        : Optional.of("The two passphrases are not the same. Type the second one again."));
  }

  private static boolean common(String passphrase) {
    try {
      return StandardDictionaries.PASSWORDS_LOADER.load().getRankedDictionary()
          .containsKey(passphrase.toLowerCase(Locale.ROOT));
    } catch (IOException e) {
      throw new UncheckedIOException("the list of common passwords is in the program itself", e);
    }
  }

  static synchronized String hash(String passphrase) {
    return Password.hash(passphrase).addRandomSalt(16).with(FUNCTION).getResult();
  }

  static synchronized boolean fits(String passphrase, String hash) {
    return Password.check(passphrase, hash).with(Argon2Function.getInstanceFromHash(hash));
  }
}
