package fewermore.web.teacher;

import fewermore.classroom.Wall;
import java.util.ArrayList;
import java.util.List;

/**
 * The class on the wall, for the projector: no child's name. {@code pages/board/class.html},
 * {@code GET /board/class?step=<n>}. One thing more at each press of the space bar.
 *
 * @param counts how many children's equations fit, by kind; empty below five children
 * @param pairs two equations side by side, one slide each
 */
public record WallPage(String className, String asOf, List<Count> counts, List<Pair> pairs) {
  public WallPage {
    counts = List.copyOf(counts);
    pairs = List.copyOf(pairs);
  }

  /** @param step the step of its slide at which it appears, from 1 */
  public record Count(KindWords kind, int fits, int children, int step) {}

  /** @param longStory whether its sentences need smaller type; @param longLine whether an equation does */
  public record Pair(List<String> sentences, WrittenLine a, WrittenLine b, boolean longStory, boolean longLine) {}

  public static WallPage of(String className, Wall wall) {
    List<Count> counts = new ArrayList<>();
    wall.counts().forEach(count ->
        counts.add(new Count(KindWords.of(count.kind()), count.fits(), count.children(), counts.size() + 1)));
    List<Pair> pairs = wall.pairs().stream().map(WallPage::pair).toList();
    return new WallPage(className, AmericanDates.day(wall.asOf()), counts, pairs);
  }

  private static Pair pair(Wall.Pair pair) {
    List<String> sentences = pair.problem().sentences();
    boolean longStory = sentences.size() > 3 || sentences.stream().anyMatch(sentence -> sentence.length() > 44);
    return new Pair(sentences, WrittenLine.of(pair.a()), WrittenLine.of(pair.b()), longStory,
        Math.max(pair.a().length(), pair.b().length()) > 13);
  }

  public boolean empty() {
    return counts.isEmpty() && pairs.isEmpty();
  }
}
