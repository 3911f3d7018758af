package fewermore.web;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;

/**
 * Argon2id with 19 MiB, two passes, one lane: the least the OWASP Password Storage cheat sheet allows.
 * One hash at a time, so that many tries can't fill a small laptop's memory.
 */
final class Passphrases {
  static final int LONGEST = 200;

  private static final Argon2Function FUNCTION =
      Argon2Function.getInstance(19 * 1024, 2, 1, 32, Argon2.ID, 19);

  private Passphrases() {}

  static synchronized String hash(String passphrase) {
    return Password.hash(passphrase).addRandomSalt(16).with(FUNCTION).getResult();
  }

  static synchronized boolean fits(String passphrase, String hash) {
    return Password.check(passphrase, hash).with(Argon2Function.getInstanceFromHash(hash));
  }
}
