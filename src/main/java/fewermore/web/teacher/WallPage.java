package fewermore.web.teacher;

import fewermore.classroom.Wall;
import java.util.ArrayList;
import java.util.List;

/**
 * The class on the wall, for the projector: no child's name. {@code pages/board/class.html},
 * {@code GET /board/class?step=n}. One thing more at each press of the space bar.
 *
 * @param counts how many children's equations fit, by kind; empty below five children
 * @param pairs two equations side by side, one slide each
 */
public record WallPage(String className, String asOf, List<Count> counts, List<Pair> pairs, int steps) {
  public WallPage {
    counts = List.copyOf(counts);
    pairs = List.copyOf(pairs);
  }

  /**
   * @param step when it appears
   * @param before how many of those who did the kind on several days fitted the story at first
   * @param several how many did; 0 where fewer than five
   */
  public record Count(KindWords kind, int fits, int children, int before, int several, int step) {}

  /**
   * @param longStory whether its sentences need smaller type; @param longLine whether an equation does
   * @param step when its story comes; the lines come one later, the question two later
   */
  public record Pair(
      List<String> sentences, WrittenLine a, WrittenLine b, boolean longStory, boolean longLine, int step) {}

  public static WallPage of(String className, Wall wall) {
    List<Count> counts = new ArrayList<>();
    wall.counts().forEach(count -> counts.add(new Count(KindWords.of(count.kind()), count.fits(), count.children(),
        count.before(), count.several(), counts.size() + 1)));
    List<Pair> pairs = new ArrayList<>();
    wall.pairs().forEach(pair -> pairs.add(pair(pair.problem().sentences(), pair.a(), pair.b(),
        counts.size() + PairPage.STEPS * pairs.size() + 1)));
    return new WallPage(className, AmericanDates.day(wall.asOf()), counts, pairs,
        Math.max(1, counts.size() + PairPage.STEPS * pairs.size()));
  }

  static Pair pair(List<String> sentences, String a, String b, int step) {
    boolean longStory = sentences.size() > 3 || sentences.stream().anyMatch(sentence -> sentence.length() > 44);
    return new Pair(sentences, WrittenLine.of(a), WrittenLine.of(b), longStory,
        Math.max(a.length(), b.length()) > 13, step);
  }

  /** Whether any kind was done on several days. */
  public boolean before() {
    return counts.stream().anyMatch(count -> count.several > 0);
  }

  public boolean empty() {
    return counts.isEmpty() && pairs.isEmpty();
  }
}
