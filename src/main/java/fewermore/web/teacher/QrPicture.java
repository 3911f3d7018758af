package fewermore.web.teacher;

import io.nayuki.qrcodegen.QrCode;

/**
 * A QR code as one SVG path, four quiet modules around it as ISO/IEC 18004 asks.
 *
 * @param size modules along one side, quiet ones included
 * @param path the dark modules
 */
public record QrPicture(int size, String path) {
  private static final int QUIET = 4;

  public static QrPicture of(String text) {
    QrCode code = QrCode.encodeText(text, QrCode.Ecc.MEDIUM);
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < code.size; y++) {
      for (int x = 0; x < code.size; x++) {
        int run = x;
        while (code.getModule(run, y)) {
          run++;
        }
        if (run > x) {
          path.append('M').append(x + QUIET).append(' ').append(y + QUIET).append('h').append(run - x).append("v1h-")
              .append(run - x).append('z');
          x = run;
        }
      }
    }
    return new QrPicture(code.size + 2 * QUIET, path.toString());
  }
}
