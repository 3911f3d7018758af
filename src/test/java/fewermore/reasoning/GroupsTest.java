package fewermore.reasoning;

import static fewermore.reasoning.Made.MONDAY;
import static fewermore.reasoning.Made.TABLE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.Groups.Member;
import fewermore.reasoning.Groups.Pair;
import fewermore.reasoning.Groups.Proposal;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.junit.jupiter.api.Test;

class GroupsTest {
  private static final double SAME = 1e-7;

  private static List<Member> children(int many, long seed) {
    Random random = new Random(seed);
    SimulatedChild child = new SimulatedChild(TABLE, random);
    List<Member> members = new ArrayList<>();
    for (int i = 0; i < many; i++) {
      members.add(new Member(100 + i, ways(child, child.draw(), 6, random)));
    }
    return members;
  }

  private static Ways ways(SimulatedChild child, WayOfReasoning way, int problems, Random random) {
    Ways ways = Ways.start(TABLE);
    for (Kind kind : Made.kindsInTurn(problems, random)) {
      Comparison story = child.story(kind);
      var evidence = Made.evidence(MONDAY, story, child.work(way, story));
      ways = evidence.isPresent() ? ways.after(evidence.get(), TABLE) : ways;
    }
    return ways;
  }

  private static void assertAcceptable(Proposal proposal, List<Member> members, List<Pair> pairs, String seed) {
    assertEquals(members.size(), proposal.places().size(), seed);
    proposal.groups().forEach((place, ids) -> {
      if (place.focus() != Focus.ON_THEIR_OWN) {
        assertTrue(ids.size() >= 3 && ids.size() <= 6, seed + ": " + place.id() + " of " + ids.size());
      }
    });
    assertTrue(proposal.groups().keySet().stream().filter(place -> place.focus() != Focus.ON_THEIR_OWN).count() <= 4);
    assertEquals(proposal.value(), Groups.value(proposal.places(), members, TABLE), SAME, seed);
    for (Pair pair : pairs) {
      GroupPlace one = proposal.places().get(pair.one());
      boolean same = one.equals(proposal.places().get(pair.other()));
      assertTrue(pair.together() ? same : !same || one.focus() == Focus.ON_THEIR_OWN, seed + ": " + pair);
    }
  }

  @Test
  void groupsHoldThreeToSixEveryoneHasOnePlaceAndNoSwapOrMoveIsBetter() {
    for (int seed = 0; seed < 15; seed++) {
      List<Member> members = children(20 + seed, seed);
      Proposal proposal = Groups.propose(members, List.of(), TABLE);
      assertAcceptable(proposal, members, List.of(), "seed " + seed);
      for (Member one : members) {
        for (Member other : members) {
          Map<Long, GroupPlace> swapped = new LinkedHashMap<>(proposal.places());
          swapped.put(one.id(), proposal.places().get(other.id()));
          swapped.put(other.id(), proposal.places().get(one.id()));
          assertTrue(Groups.value(swapped, members, TABLE) <= proposal.value() + SAME, "seed " + seed);
        }
      }
    }
  }

  @Test
  void theSameWorkGivesTheSameProposalInWhateverOrderTheChildrenStand() {
    List<Member> members = children(26, 3);
    List<Pair> pairs = List.of(new Pair(101, 105, false), new Pair(103, 111, true));
    Proposal once = Groups.propose(members, pairs, TABLE);
    List<Member> shuffled = new ArrayList<>(members);
    Collections.shuffle(shuffled, new Random(1));
    Proposal again = Groups.propose(shuffled, List.of(pairs.get(1), pairs.get(0)), TABLE);
    assertEquals(once, again);
  }

  @Test
  void pairsKeptApartOrTogetherAreHardLimits() {
    for (int seed = 0; seed < 12; seed++) {
      Random random = new Random(seed);
      List<Member> members = children(24, seed);
      List<Pair> pairs = new ArrayList<>();
      Set<Set<Long>> taken = new HashSet<>();
      while (pairs.size() < 6) {
        long one = 100 + random.nextInt(24);
        long other = 100 + random.nextInt(24);
        if (one != other && taken.add(Set.of(one, other))) {
          // Together in pairs of their own, so that they never contradict those apart.
          pairs.add(new Pair(one, other, pairs.size() == 5 && pairs.stream().noneMatch(
              each -> each.one() == one || each.other() == one || each.one() == other || each.other() == other)));
        }
      }
      Proposal free = Groups.propose(members, List.of(), TABLE);
      Proposal bound = Groups.propose(members, pairs, TABLE);
      assertAcceptable(bound, members, pairs, "seed " + seed);
      assertTrue(bound.value() <= free.value() + SAME);
    }
  }

  @Test
  void inASmallClassItIsTheBestOfAllPlaces() {
    for (int seed = 0; seed < 6; seed++) {
      List<Member> members = children(7, 50 + seed);
      List<Pair> pairs = seed % 2 == 0 ? List.of()
          : List.of(new Pair(100, 101, false), new Pair(102, 103, true), new Pair(104, 105, false));
      Proposal proposal = Groups.propose(members, pairs, TABLE);
      assertAcceptable(proposal, members, pairs, "seed " + seed);
      // With seven children no more than two groups can be filled: every place of every child, tried one by one.
      List<GroupPlace> places = new ArrayList<>();
      for (Focus focus : Focus.values()) {
        places.add(new GroupPlace(focus, 1));
        places.add(new GroupPlace(focus, 2));
      }
      places.remove(places.size() - 1);
      assertEquals(slowBest(members, pairs, places, new LinkedHashMap<>()), proposal.value(), SAME, "seed " + seed);
    }
  }

  private static double slowBest(
      List<Member> members, List<Pair> pairs, List<GroupPlace> places, Map<Long, GroupPlace> so) {
    if (so.size() == members.size()) {
      boolean sizes = places.stream().filter(place -> place.focus() != Focus.ON_THEIR_OWN).allMatch(place -> {
        int size = Collections.frequency(so.values(), place);
        return size == 0 || size >= 3 && size <= 6;
      });
      boolean limits = pairs.stream().allMatch(pair -> {
        boolean same = so.get(pair.one()).equals(so.get(pair.other()));
        return pair.together() ? same : !same || so.get(pair.one()).focus() == Focus.ON_THEIR_OWN;
      });
      return sizes && limits ? Groups.value(so, members, TABLE) : Double.NEGATIVE_INFINITY;
    }
    double best = Double.NEGATIVE_INFINITY;
    // More than two groups of seven children would leave one too small.
    Set<GroupPlace> used = new HashSet<>(so.values());
    used.remove(GroupPlace.ON_THEIR_OWN);
    for (GroupPlace place : places) {
      boolean second = place.number() == 2 && !used.contains(new GroupPlace(place.focus(), 1));
      if (second || used.size() == 2 && !used.contains(place) && place.focus() != Focus.ON_THEIR_OWN) {
        continue;
      }
      Map<Long, GroupPlace> more = new LinkedHashMap<>(so);
      more.put(members.get(so.size()).id(), place);
      best = Math.max(best, slowBest(members, pairs, places, more));
    }
    return best;
  }

  @Test
  void theAssignmentIsThatOfALinearProgram() {
    // The assignment problem's linear program has whole-number corners: commons-math's simplex gives the same sum.
    for (int seed = 0; seed < 10; seed++) {
      Random random = new Random(seed);
      int rows = 4 + random.nextInt(4);
      int columns = rows + random.nextInt(3);
      double[][] worth = new double[rows][columns];
      double[] flat = new double[rows * columns];
      for (int i = 0; i < flat.length; i++) {
        flat[i] = worth[i / columns][i % columns] = random.nextInt(1_000) / 100.0;
      }
      List<LinearConstraint> constraints = new ArrayList<>();
      for (int row = 0; row < rows; row++) {
        double[] of = new double[flat.length];
        for (int column = 0; column < columns; column++) {
          of[row * columns + column] = 1;
        }
        constraints.add(new LinearConstraint(of, Relationship.EQ, 1));
      }
      for (int column = 0; column < columns; column++) {
        double[] of = new double[flat.length];
        for (int row = 0; row < rows; row++) {
          of[row * columns + column] = 1;
        }
        constraints.add(new LinearConstraint(of, Relationship.LEQ, 1));
      }
      double expected = new SimplexSolver().optimize(new LinearObjectiveFunction(flat, 0),
          new LinearConstraintSet(constraints), GoalType.MAXIMIZE, new NonNegativeConstraint(true)).getValue();
      int[] found = Assignment.best(worth);
      double sum = 0;
      Set<Integer> used = new HashSet<>();
      for (int row = 0; row < rows; row++) {
        sum += worth[row][found[row]];
        assertTrue(used.add(found[row]), "a column twice, seed " + seed);
      }
      assertEquals(expected, sum, SAME, "seed " + seed);
    }
  }

  @Test
  void groupsFromTheEstimateFitNearlyAsWellAsThoseFromTheTrueWaysAndBetterThanByNumberRight() {
    int[] fitting = new int[3];
    int all = 0;
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      SimulatedChild child = new SimulatedChild(TABLE, random);
      List<Member> estimated = new ArrayList<>();
      List<Member> truly = new ArrayList<>();
      Map<Long, WayOfReasoning> ways = new LinkedHashMap<>();
      for (long id = 0; id < 25; id++) {
        WayOfReasoning way = child.draw();
        ways.put(id, way);
        estimated.add(new Member(id, ways(child, way, 6, random)));
        double[] sure = new double[Ways.ALL.length];
        sure[way.ordinal()] = 1;
        truly.add(new Member(id, Ways.scaled(sure)));
      }
      Map<Long, GroupPlace> fromWork = Groups.propose(estimated, List.of(), TABLE).places();
      Map<Long, GroupPlace> fromTruth = Groups.propose(truly, List.of(), TABLE).places();
      for (long id = 0; id < 25; id++) {
        all++;
        fitting[0] += suits(ways.get(id), fromWork.get(id)) ? 1 : 0;
        fitting[1] += suits(ways.get(id), fromTruth.get(id)) ? 1 : 0;
        // All where most belong, the best that a pile of right and wrong could do without looking at a way.
        fitting[2] += suits(ways.get(id), GroupPlace.ON_THEIR_OWN) ? 1 : 0;
      }
    }
    double estimate = (double) fitting[0] / all;
    double ceiling = (double) fitting[1] / all;
    assertTrue(ceiling > .90, "true ways " + ceiling);
    // 83 % in the reference at six problems.
    assertEquals(.83, estimate, .06, "estimate " + estimate + ", true ways " + ceiling);
    assertTrue(estimate > (double) fitting[2] / all + .20);
    assertNotEquals(estimate, ceiling);
  }

  /** Whether the place is among those that suit this way well. */
  private static boolean suits(WayOfReasoning way, GroupPlace place) {
    return TABLE.suits(way, place.focus()) >= .75;
  }
}
