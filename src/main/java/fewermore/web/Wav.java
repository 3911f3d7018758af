package fewermore.web;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** The one form of sound that is kept: a WAV file that every browser plays. */
final class Wav {
  static final int RATE = 16_000;
  /** Seconds a recording may last: a problem is read in about 12. */
  static final int LONGEST = 30;
  private static final int HEADER = 44;
  static final int MOST_BYTES = HEADER + LONGEST * RATE * 2;

  private Wav() {}

  /**
   * Whether bytes are a plain WAV file of 16 kHz, 16 bit, one channel, from a tenth of a second to {@link #LONGEST}
   * (header: RIFF WAVE, Microsoft and IBM 1991; from memory).
   */
  static boolean usable(byte[] file) {
    if (file.length < HEADER + RATE / 5 || file.length > MOST_BYTES) {
      return false;
    }
    ByteBuffer bytes = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    return tag(file, 0, "RIFF") && tag(file, 8, "WAVE") && tag(file, 12, "fmt ") && bytes.getInt(16) == 16
        && bytes.getShort(20) == 1 && bytes.getShort(22) == 1 && bytes.getInt(24) == RATE && bytes.getShort(34) == 16
        && tag(file, 36, "data") && bytes.getInt(40) == file.length - HEADER;
  }

  private static boolean tag(byte[] file, int at, String tag) {
    return new String(file, at, 4, StandardCharsets.US_ASCII).equals(tag);
  }
}
