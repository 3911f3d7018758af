package fewermore.web;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Random ids, and tokens derived from the app's secret so that they need not be stored. All from a
 * cryptographically secure generator; 128 bits unless said otherwise.
 */
public final class Tokens {
  private static final String BASE32 = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
  private final SecureRandom random = new SecureRandom();
  private final byte[] secret;

  /** @param secret hex of at least 128 random bits, kept with the data */
  public Tokens(String secret) {
    this.secret = HexFormat.of().parseHex(secret);
  }

  /** A secret for a new data folder: 256 random bits in hex. */
  public static String newSecret() {
    byte[] bytes = new byte[32];
    new SecureRandom().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /** 128 random bits in hex. */
  public String id() {
    byte[] bytes = new byte[16];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /**
   * The id of a work: the moment in milliseconds as 12 digits in hex, then 80 random bits. What was begun together then
   * lies together in the database's indexes, and a year's work is read without looking all over the file.
   */
  public String idInOrder() {
    return String.format("%012x", System.currentTimeMillis()) + id().substring(12);
  }

  /** Today's door: 40 random bits as 8 letters of RFC 4648 base 32. */
  public String door() {
    return letters(8);
  }

  /** A desk card: 80 random bits as 16 letters of RFC 4648 base 32. */
  public String card() {
    return letters(16);
  }

  private String letters(int count) {
    StringBuilder letters = new StringBuilder();
    for (int letter = 0; letter < count; letter++) {
      letters.append(BASE32.charAt(random.nextInt(BASE32.length())));
    }
    return letters.toString();
  }

  public int below(int bound) {
    return random.nextInt(bound);
  }

  /** The key that may add work to a sitting, and do nothing else. */
  public String keyOf(String sitting) {
    return derived("work key", sitting);
  }

  /** The synchroniser token of whoever holds this cookie. */
  public String csrfOf(String cookie) {
    return derived("form", cookie);
  }

  private String derived(String purpose, String of) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(secret, "HmacSHA256"));
      byte[] full = mac.doFinal((purpose + ":" + of).getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(full, 0, 16);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has HmacSHA256", e);
    }
  }

  /** What is stored instead of a cookie: its SHA-256 in hex. */
  public static String hash(String cookie) {
    return hash(cookie.getBytes(StandardCharsets.UTF_8));
  }

  static String hash(byte[] content) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** Compares without telling by its time how much was right; false when either is null. */
  public static boolean same(String one, String other) {
    return one != null && other != null && MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }
}
