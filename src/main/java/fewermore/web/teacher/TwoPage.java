package fewermore.web.teacher;

import fewermore.classroom.TwoEquations;
import java.util.List;

/**
 * Lines to put side by side. {@code pages/board/choose-two.html}, {@code GET /board/two}; the form of a problem asks
 * for {@code /board/two/{problem}} with two {@code line}s.
 */
public record TwoPage(List<Choice> problems, String problem) {
  public TwoPage {
    problems = List.copyOf(problems);
  }

  public record Choice(long id, List<String> sentences, List<Line> lines) {}

  public record Line(String text, WrittenLine written) {}

  /** @param problem a sentence about the last try, or null */
  public static TwoPage of(List<TwoEquations> all, String problem) {
    return new TwoPage(all.stream().map(each -> new Choice(each.problem().id(), each.problem().sentences(),
        each.lines().stream().map(line -> new Line(line, WrittenLine.of(line))).toList())).toList(), problem);
  }
}
