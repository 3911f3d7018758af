package fewermore.web;

import io.nayuki.qrcodegen.QrCode.Ecc;

/** An address as a QR code: as a drawing for a page, and in letters for a terminal. */
public final class QrCode {
  /** Light modules around the code that a reader needs (ISO/IEC 18004; from memory). */
  private static final int QUIET = 4;

  private final io.nayuki.qrcodegen.QrCode code;

  private QrCode(io.nayuki.qrcodegen.QrCode code) {
    this.code = code;
  }

  public static QrCode of(String address) {
    return new QrCode(io.nayuki.qrcodegen.QrCode.encodeText(address, Ecc.MEDIUM));
  }

  /** Modules a side, quiet zone included. */
  public int size() {
    return code.size + 2 * QUIET;
  }

  /** The dark modules as the {@code d} of one SVG path, one unit a module. */
  public String path() {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < code.size; y++) {
      for (int x = 0; x < code.size; x++) {
        if (code.getModule(x, y)) {
          path.append('M').append(x + QUIET).append(' ').append(y + QUIET).append("h1v1h-1z");
        }
      }
    }
    return path.toString();
  }

  /** Two modules a letter, light on dark as most terminals are; the quiet zone is the light frame. */
  public String forTerminal() {
    StringBuilder text = new StringBuilder();
    for (int y = -2; y < code.size + 2; y += 2) {
      for (int x = -2; x < code.size + 2; x++) {
        boolean upper = !code.getModule(x, y);
        boolean lower = !code.getModule(x, y + 1);
        text.append(upper ? lower ? '█' : '▀' : lower ? '▄' : ' ');
      }
      text.append(System.lineSeparator());
    }
    return text.toString();
  }
}
