package fewermore.store.backup;

import com.password4j.Argon2Function;
import com.password4j.types.Argon2;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

/**
 * What locks a backup: made from a passphrase by Argon2id (RFC 9106) with 19 MiB, two passes and one lane, the least
 * that the OWASP Password Storage cheat sheet allows. The salt stands in the backup, the passphrase nowhere.
 */
public record Key(byte[] salt, byte[] secret) {
  private static final Argon2Function FUNCTION = Argon2Function.getInstance(19 * 1024, 2, 1, 32, Argon2.ID, 19);

  public static Key fresh(String passphrase) {
    byte[] salt = new byte[16];
    new SecureRandom().nextBytes(salt);
    return of(passphrase, salt);
  }

  /** The same passphrase gives the same key whichever way a keyboard composes its letters. */
  static Key of(String passphrase, byte[] salt) {
    byte[] typed = Normalizer.normalize(passphrase, Normalizer.Form.NFC).getBytes(StandardCharsets.UTF_8);
    return new Key(salt, FUNCTION.hash(typed, salt).getBytes());
  }

  /** As kept among the settings, for backups that the app makes by itself. */
  public String kept() {
    return HexFormat.of().formatHex(salt) + ":" + HexFormat.of().formatHex(secret);
  }

  public static Optional<Key> read(String kept) {
    String[] parts = kept.split(":");
    return parts.length != 2 || parts[0].isEmpty() ? Optional.empty()
        : Optional.of(new Key(HexFormat.of().parseHex(parts[0]), HexFormat.of().parseHex(parts[1])));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Key key && Arrays.equals(salt, key.salt) && Arrays.equals(secret, key.secret);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(salt);
  }

  /** Never the secret. */
  @Override
  public String toString() {
    return "Key[" + HexFormat.of().formatHex(salt) + "]";
  }
}
