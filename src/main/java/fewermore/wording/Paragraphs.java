package fewermore.wording;

import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;

/** Where the problems of a text with several begin and end. */
final class Paragraphs {
  private Paragraphs() {}

  static List<SourceSpan> of(String text) {
    List<SourceSpan> paragraphs = new ArrayList<>();
    List<SourceSpan> lines = new ArrayList<>();
    for (SourceSpan line : lines(text)) {
      if (line.length() > 0) {
        lines.add(line);
      } else {
        close(text, lines, paragraphs);
      }
    }
    close(text, lines, paragraphs);
    return paragraphs;
  }

  private static void close(String text, List<SourceSpan> lines, List<SourceSpan> paragraphs) {
    if (lines.stream().allMatch(line -> line.of(text).contains("?"))) {
      paragraphs.addAll(lines);
    } else {
      paragraphs.add(lines.get(0).through(lines.get(lines.size() - 1)));
    }
    lines.clear();
  }

  /** Every line without the blanks around it. */
  private static List<SourceSpan> lines(String text) {
    List<SourceSpan> lines = new ArrayList<>();
    int start = 0;
    for (int i = 0; i <= text.length(); i++) {
      if (i == text.length() || text.charAt(i) == '\n' || text.charAt(i) == '\r') {
        int from = start;
        int to = i;
        while (from < to && Character.isWhitespace(text.charAt(from))) {
          from++;
        }
        while (to > from && Character.isWhitespace(text.charAt(to - 1))) {
          to--;
        }
        boolean secondHalfOfBreak = i > 0 && i < text.length() && text.charAt(i) == '\n' && text.charAt(i - 1) == '\r';
        if (!secondHalfOfBreak) {
          lines.add(new SourceSpan(from, to));
        }
        start = i + 1;
      }
    }
    return lines;
  }
}
