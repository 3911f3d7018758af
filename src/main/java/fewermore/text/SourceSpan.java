package fewermore.text;

/**
 * A stretch of somebody's text: from {@code start} (included) to {@code end} (not included), counted in
 * {@code char}s from 0. An empty span marks a place between two characters.
 */
public record SourceSpan(int start, int end) {
  public SourceSpan {
    if (start < 0 || end < start) {
      throw new IllegalArgumentException("a span runs forward from 0: " + start + ".." + end);
    }
  }

  public int length() {
    return end - start;
  }

  /** The smallest span that holds both. */
  public SourceSpan through(SourceSpan other) {
    return new SourceSpan(Math.min(start, other.start), Math.max(end, other.end));
  }

  /** The text the span stands for; never fails, a span past the end is cut to the text. */
  public String of(String text) {
    return text.substring(Math.min(start, text.length()), Math.min(end, text.length()));
  }
}
