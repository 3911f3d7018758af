package fewermore.problem;

import fewermore.story.Relation;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/** Chooses a problem's numbers so that they fit the class and tell the ways of going wrong apart. */
public final class NumberChooser {
  /** What {@link #best} found: the same for every problem of that sort. */
  private static final Map<Sort, List<Relation>> BEST = new ConcurrentHashMap<>();

  private record Sort(Role unknown, NumberRange range, Regrouping regrouping) {}

  private NumberChooser() {}

  /**
   * Chosen numbers, with the proof that they are clean or the pairs that they could not separate.
   *
   * @param notSeparated empty when the numbers are clean
   */
  public record Choice(Relation amounts, List<NotSeparated> notSeparated) {
    public boolean clean() {
      return notSeparated.isEmpty();
    }
  }

  /**
   * Numbers by chance among those that separate the most rivals: clean ones wherever there are any.
   *
   * @param taken numbers already in the set, not taken again while others are left
   */
  public static Choice choose(Role unknown, NumberRange range, Regrouping regrouping, Random random,
      Set<Relation> taken) {
    List<Relation> best = BEST.computeIfAbsent(new Sort(unknown, range, regrouping),
        sort -> best(candidates(sort.unknown, sort.range, sort.regrouping), sort.unknown));
    List<Relation> fresh = best.stream().filter(amounts -> !taken.contains(amounts)).toList();
    List<Relation> from = fresh.isEmpty() ? best : fresh;
    Relation amounts = from.get(random.nextInt(from.size()));
    return new Choice(amounts, Cleanness.notSeparated(amounts, unknown));
  }

  /**
   * The clean numbers nearest to a teacher's own, that trade a ten when hers do: the offer beside a problem whose
   * numbers tell too little apart.
   *
   * @return empty when hers are clean already or lie outside 100
   */
  public static Optional<Relation> better(Relation amounts, Role unknown) {
    if (amounts.total() > NumberRange.WITHIN_100.limit() || Cleanness.isClean(amounts, unknown)) {
      return Optional.empty();
    }
    Regrouping same = Regrouping.isNeeded(amounts) ? Regrouping.NEEDED : Regrouping.NOT_NEEDED;
    return Stream.of(NumberRange.values()).flatMap(range -> candidates(unknown, range, same).stream())
        .filter(each -> Cleanness.isClean(each, unknown))
        .min(Comparator.comparingInt(each -> distance(each, amounts)));
  }

  private static int distance(Relation one, Relation other) {
    return Math.abs(one.firstPart() - other.firstPart()) + Math.abs(one.secondPart() - other.secondPart());
  }

  /** All numbers of that range and regrouping with smaller ≠ difference, clean or not, in a fixed order. */
  public static List<Relation> candidates(Role unknown, NumberRange range, Regrouping regrouping) {
    List<Relation> candidates = new ArrayList<>();
    // 100 itself is met as an answer only: 100 − 47 trades twice, which is another lesson.
    int largest = unknown == Role.LARGER || range.limit() < 100 ? range.limit() : 99;
    for (int larger = range.limit() / 2 + 1; larger <= largest; larger++) {
      for (int smaller = range.least(); smaller <= larger - range.least(); smaller++) {
        Relation amounts = new Relation(larger, smaller, larger - smaller);
        // With equal parts "repeats the difference" is right, and nothing is learned from it.
        if (amounts.firstPart() != amounts.secondPart() && regrouping.allows(amounts)) {
          candidates.add(amounts);
        }
      }
    }
    return List.copyOf(candidates);
  }

  private static List<Relation> best(List<Relation> candidates, Role unknown) {
    int fewest = candidates.stream().mapToInt(each -> Cleanness.notSeparated(each, unknown).size()).min().orElseThrow();
    return candidates.stream().filter(each -> Cleanness.notSeparated(each, unknown).size() == fewest).toList();
  }
}
