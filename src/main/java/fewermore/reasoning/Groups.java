package fewermore.reasoning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Whom to sit with: small groups, each for one thing to talk about. Of all mixes of at most four groups the one whose
 * members' fits sum to most, less what each sitting costs; exactly, by solving the assignment problem of every mix.
 *
 * <p>A mix names its columns (groups of 3 to 6, and <i>on their own</i>,
 * which holds any number). Each column becomes 3 places that must be taken and 3 that may be; a place that must be
 * taken is worth far more, so that none stays empty wherever that can be. Rows are children. Pairs kept apart
 * or together are no assignment problem: the best assignment without them bounds what is possible from above, and where
 * it breaks a pair it is solved again with one more place forbidden, in every way that mends the pair.
 */
public final class Groups {
  /** More than any sum of fits, so that no place that must be taken stays empty. */
  private static final double MUST = 1_000;
  private static final double NEVER = -1e7;
  /** Sums this close are equal; then the first mix in order stays. */
  private static final double SAME = 1e-9;

  private final ReasoningTable table;
  private final List<Member> members;
  private final List<int[]> apart = new ArrayList<>();
  private final List<int[]> together = new ArrayList<>();
  private final int smallest;
  private final int largest;

  /** A child, by a number that means nothing here, and how likely each way is. */
  public record Member(long id, Ways ways) {}

  /** Two who must sit in one group, or never in one. <i>On their own</i> is no group: two apart may both be there. */
  public record Pair(long one, long other, boolean together) {}

  /**
   * Everybody's place.
   *
   * @param value the sum of fits, less the cost of the sittings
   */
  public record Proposal(Map<Long, GroupPlace> places, double value) {
    /** The groups in the order of {@link GroupPlace}, members in the order given. */
    public Map<GroupPlace, List<Long>> groups() {
      Map<GroupPlace, List<Long>> groups = new TreeMap<>();
      places.forEach((id, place) -> groups.computeIfAbsent(place, none -> new ArrayList<>()).add(id));
      return groups;
    }
  }

  private Groups(Collection<Member> all, Collection<Pair> pairs, ReasoningTable table) {
    this.table = table;
    this.members = all.stream().sorted(Comparator.comparingLong(Member::id)).toList();
    this.smallest = table.whole("groups/smallest");
    this.largest = table.whole("groups/largest");
    Map<Long, Integer> rows = new LinkedHashMap<>();
    for (int row = 0; row < members.size(); row++) {
      rows.put(members.get(row).id(), row);
    }
    for (Pair pair : pairs) {
      if (rows.containsKey(pair.one()) && rows.containsKey(pair.other()) && pair.one() != pair.other()) {
        (pair.together() ? together : apart).add(new int[] {rows.get(pair.one()), rows.get(pair.other())});
      }
    }
  }

  /** The same members, pairs and table give the same proposal, in whatever order they come. */
  public static Proposal propose(Collection<Member> members, Collection<Pair> pairs, ReasoningTable table) {
    return new Groups(members, pairs.stream().sorted(Comparator.comparingLong(Pair::one)
        .thenComparingLong(Pair::other)).toList(), table).best();
  }

  /** How well a focus suits a child: the mean of how it suits the ways, by how likely they are. */
  public static double fit(Ways ways, Focus focus, ReasoningTable table) {
    double fit = 0;
    for (int way = 0; way < Ways.ALL.length; way++) {
      fit += ways.at(way) * table.suits(Ways.ALL[way], focus);
    }
    return fit;
  }

  /** What these places are worth: the sum of fits, less the cost of the sittings. */
  public static double value(Map<Long, GroupPlace> places, Collection<Member> members, ReasoningTable table) {
    double value = 0;
    for (Member member : members) {
      value += fit(member.ways(), places.get(member.id()).focus(), table);
    }
    long sittings = places.values().stream().filter(place -> place.focus() != Focus.ON_THEIR_OWN).distinct().count();
    return value - sittings * table.value("groups/cost");
  }

  private Proposal best() {
    Solution best = null;
    for (List<GroupPlace> mix : mixes()) {
      double bar = best == null ? Double.NEGATIVE_INFINITY : best.value + SAME;
      Solution found = solve(mix, new boolean[members.size()][mix.size()], bar);
      best = found != null ? found : best;
    }
    Map<Long, GroupPlace> places = new LinkedHashMap<>();
    for (int row = 0; row < members.size(); row++) {
      places.put(members.get(row).id(), best.mix.get(best.columns[row]));
    }
    return new Proposal(places, best.value);
  }

  /** Every choice of at most so many groups that so many children can fill, fewest groups first. */
  private List<List<GroupPlace>> mixes() {
    List<List<GroupPlace>> mixes = new ArrayList<>();
    int most = Math.min(table.whole("groups/most"), members.size() / smallest);
    for (int groups = 0; groups <= most; groups++) {
      add(mixes, new ArrayList<>(), 0, groups);
    }
    return mixes;
  }

  private static void add(List<List<GroupPlace>> mixes, List<GroupPlace> mix, int from, int left) {
    if (left == 0) {
      List<GroupPlace> whole = new ArrayList<>(mix);
      whole.add(GroupPlace.ON_THEIR_OWN);
      mixes.add(whole);
      return;
    }
    for (int focus = from; focus < Focus.ON_THEIR_OWN.ordinal(); focus++) {
      int at = focus;
      int number = 1 + (int) mix.stream().filter(place -> place.focus().ordinal() == at).count();
      mix.add(new GroupPlace(Focus.values()[focus], number));
      add(mixes, mix, focus, left - 1);
      mix.remove(mix.size() - 1);
    }
  }

  private record Solution(List<GroupPlace> mix, int[] columns, double value) {}

  /**
   * The best places of this mix that are worth more than the bar, or null.
   *
   * @param forbidden child × column
   */
  private Solution solve(List<GroupPlace> mix, boolean[][] forbidden, double bar) {
    int[] columns = assign(mix, forbidden);
    if (columns == null) {
      return null;
    }
    double value = 0;
    for (int row = 0; row < columns.length; row++) {
      value += fit(members.get(row).ways(), mix.get(columns[row]).focus(), table);
    }
    value -= (mix.size() - 1) * table.value("groups/cost");
    if (value <= bar) {
      return null;
    }
    int own = mix.size() - 1;
    for (int[] pair : apart) {
      int column = columns[pair[0]];
      if (column == columns[pair[1]] && column != own) {
        Solution best = null;
        for (int child : pair) {
          boolean[][] more = copy(forbidden);
          more[child][column] = true;
          Solution found = solve(mix, more, best == null ? bar : best.value + SAME);
          best = found != null ? found : best;
        }
        return best;
      }
    }
    for (int[] pair : together) {
      if (columns[pair[0]] != columns[pair[1]]) {
        Solution best = null;
        for (int column = 0; column < mix.size(); column++) {
          boolean[][] more = copy(forbidden);
          if (more[pair[0]][column] || more[pair[1]][column]) {
            continue;
          }
          Arrays.fill(more[pair[0]], true);
          Arrays.fill(more[pair[1]], true);
          more[pair[0]][column] = false;
          more[pair[1]][column] = false;
          Solution found = solve(mix, more, best == null ? bar : best.value + SAME);
          best = found != null ? found : best;
        }
        return best;
      }
    }
    return new Solution(mix, columns, value);
  }

  private static boolean[][] copy(boolean[][] forbidden) {
    boolean[][] copy = new boolean[forbidden.length][];
    for (int row = 0; row < forbidden.length; row++) {
      copy[row] = forbidden[row].clone();
    }
    return copy;
  }

  /** The column of each child that maximizes the sum of fits, or null when the groups can't all be filled. */
  private int[] assign(List<GroupPlace> mix, boolean[][] forbidden) {
    int n = members.size();
    int groups = mix.size() - 1;
    int[] columnOf = new int[groups * largest + n];
    double[] bonus = new double[columnOf.length];
    for (int place = 0; place < columnOf.length; place++) {
      columnOf[place] = place < groups * largest ? place / largest : groups;
      bonus[place] = place < groups * largest && place % largest < smallest ? MUST : 0;
    }
    double[][] worth = new double[n][columnOf.length];
    for (int row = 0; row < n; row++) {
      for (int place = 0; place < columnOf.length; place++) {
        int column = columnOf[place];
        worth[row][place] = forbidden[row][column] ? NEVER
            : fit(members.get(row).ways(), mix.get(column).focus(), table) + bonus[place];
      }
    }
    int[] places = Assignment.best(worth);
    int[] columns = new int[n];
    int[] size = new int[mix.size()];
    for (int row = 0; row < n; row++) {
      columns[row] = columnOf[places[row]];
      if (forbidden[row][columns[row]]) {
        return null;
      }
      size[columns[row]]++;
    }
    for (int column = 0; column < groups; column++) {
      if (size[column] < smallest) {
        return null;
      }
    }
    return columns;
  }
}
