package fewermore.web.teacher;

import java.util.List;

/** Two lines side by side. {@code pages/board/two.html}, {@code GET /board/two/{problem}?line=…&line=…&step=n}. */
public record PairPage(WallPage.Pair pair) {
  static final int STEPS = 3;

  public int steps() {
    return STEPS;
  }

  public static PairPage of(List<String> sentences, String a, String b) {
    return new PairPage(WallPage.pair(sentences, a, b, 1));
  }
}
