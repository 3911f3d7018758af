package fewermore.web;

import io.nayuki.qrcodegen.QrCode.Ecc;

/** An address as a QR code in letters, for a terminal. Pages draw theirs with {@link fewermore.web.teacher.QrPicture}. */
public final class QrCode {
  /** Light modules around the code; a terminal's own margin is light or dark by its colors. */
  private static final int FRAME = 2;

  private QrCode() {}

  /** Two modules a letter, light on dark as most terminals are; the frame is light. */
  public static String forTerminal(String address) {
    io.nayuki.qrcodegen.QrCode code = io.nayuki.qrcodegen.QrCode.encodeText(address, Ecc.MEDIUM);
    StringBuilder text = new StringBuilder();
    for (int y = -FRAME; y < code.size + FRAME; y += 2) {
      for (int x = -FRAME; x < code.size + FRAME; x++) {
        boolean upper = !code.getModule(x, y);
        boolean lower = !code.getModule(x, y + 1);
        text.append(upper ? lower ? '█' : '▀' : lower ? '▄' : ' ');
      }
      text.append(System.lineSeparator());
    }
    return text.toString();
  }
}
