package fewermore.web.teacher;

import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A line a child wrote, in pieces a page can set: numbers, signs, the unknown sign as a drawn box, and the
 * stretch that tells marked. Nothing of what was written is left out or corrected.
 */
public record WrittenLine(List<Piece> pieces) {
  /**
   * @param text as written, or the name of the box for those who listen
   * @param box whether to draw the unknown's box in its place
   * @param tells whether the piece lies in the stretch that tells
   */
  public record Piece(String text, boolean box, boolean tells) {}

  public WrittenLine {
    pieces = List.copyOf(pieces);
  }

  public static WrittenLine of(String text) {
    return of(text, null);
  }

  /** @param telling the stretch to mark, or null */
  public static WrittenLine of(String text, SourceSpan telling) {
    List<Piece> pieces = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      int end = endOfPiece(text, at);
      String piece = text.substring(at, end);
      boolean tells = telling != null && at < telling.end() && end > telling.start();
      if (!piece.isBlank()) {
        boolean box = unknownSign(piece);
        pieces.add(new Piece(box ? "box" : shown(piece), box, tells));
      }
      at = end;
    }
    return new WrittenLine(pieces);
  }

  private static int endOfPiece(String text, int at) {
    int end = at + 1;
    int sort = sort(text.charAt(at));
    while (end < text.length() && sort != OTHER && sort(text.charAt(end)) == sort) {
      end++;
    }
    return end;
  }

  private static final int OTHER = 0;

  private static int sort(char c) {
    if (c >= '0' && c <= '9') {
      return 1;
    }
    if (Character.isLetter(c)) {
      return 2;
    }
    return c == '_' ? 3 : Character.isWhitespace(c) ? 4 : OTHER;
  }

  private static boolean unknownSign(String piece) {
    return piece.equals("□") || piece.equals("?") || piece.startsWith("_")
        || piece.length() == 1 && Character.isLetter(piece.charAt(0));
  }

  /** Every dash a child's keyboard gives is shown as the true minus sign. */
  private static String shown(String piece) {
    return piece.equals("-") || piece.equals("–") ? "−" : piece;
  }

  public boolean isEmpty() {
    return pieces.isEmpty();
  }

  /** The line as plain text, with the box as □. */
  @Override
  public String toString() {
    return pieces.stream().map(piece -> piece.box() ? "□" : piece.text()).collect(Collectors.joining(" "));
  }
}
