package fewermore.web.teacher;

import java.util.List;

/**
 * Several problems at once, pasted or from a file. {@code pages/teacher/several.html}.
 *
 * @param text what was pasted or read from the file; empty at first
 * @param lines what became of each problem
 */
public record SeveralPage(String day, String dayWords, long into, int room, String text, List<Line> lines, String problem) {
  /**
   * @param says what it was understood as, or why it was declined
   */
  public record Line(int number, String text, boolean understood, String says, KindWords kind) {}

  public long understood() {
    return lines.stream().filter(Line::understood).count();
  }

  public long declined() {
    return lines.size() - understood();
  }
}
