package fewermore.reasoning;

import fewermore.prediction.Plan;
import fewermore.problem.NumberChooser;
import fewermore.problem.NumberRange;
import fewermore.problem.Regrouping;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Thing;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;

/**
 * Which problem would tell most about the way a child reasons: the entropy of the ways now, less what is expected to
 * be left after the work (Shannon-entropy selection, Xu, Chang &amp; Douglas 2003, from memory).
 */
public final class NextProblem {
  private static final int PLANS = Plan.values().length;
  private static final int NUMBERS_OF_A_KIND = 3;
  private static final long SEED = 1;
  /** Closer than this, two problems tell as much, and the first in the order stays. */
  private static final double AS_MUCH = 1e-9;

  private NextProblem() {}

  /** A problem one could ask: its kind and numbers; of persons and things nothing depends. */
  public record Candidate(Kind kind, Relation amounts) {
    Comparison story() {
      return new Comparison(Persons.UNNAMED, new Thing("thing", "things"), null, List.of(), amounts, kind.unknown(),
          kind.wording(), List.of());
    }
  }

  /** Every kind with three clean pairs of numbers, the same each time. */
  public static List<Candidate> candidates(NumberRange range) {
    List<Candidate> candidates = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      Random random = new Random(SEED);
      Set<Relation> taken = new HashSet<>();
      for (int i = 0; i < NUMBERS_OF_A_KIND; i++) {
        Relation amounts = NumberChooser.choose(kind.unknown(), range, Regrouping.EITHER, random, taken).amounts();
        taken.add(amounts);
        candidates.add(new Candidate(kind, amounts));
      }
    }
    return List.copyOf(candidates);
  }

  /**
   * The candidate that tells most, never of the kind asked last.
   *
   * @param last the kind of the child's last problem, or null
   * @param equation whether an equation is asked; else the number alone has to tell
   * @return empty when there is no candidate of another kind
   */
  public static Optional<Candidate> best(
      Ways ways, List<Candidate> candidates, Kind last, boolean equation, ReasoningTable table) {
    Candidate best = null;
    double most = -1;
    for (Candidate each : candidates) {
      if (each.kind() != last) {
        double bits = bits(ways, each, equation, table);
        if (bits > most + AS_MUCH) {
          most = bits;
          best = each;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** What the work on it is expected to tell about the way, in bits, from 0 up. */
  public static double bits(Ways ways, Candidate candidate, boolean equation, ReasoningTable table) {
    List<double[]> byWay = new ArrayList<>();
    for (double[] outcome : outcomes(candidate, equation, table)) {
      double[] likelihood = new double[Ways.ALL.length];
      for (int way = 0; way < likelihood.length; way++) {
        double[] row = table.row(candidate.kind(), way);
        for (int plan = 0; plan < PLANS; plan++) {
          likelihood[way] += row[plan] * outcome[plan];
        }
      }
      byWay.add(likelihood);
    }
    return ways.expectedInformation(byWay);
  }

  /** What may be written, each with its chance by plan: over all of them, each plan's chances sum to 1. */
  private static List<double[]> outcomes(Candidate candidate, boolean equation, ReasoningTable table) {
    return equation ? equations(candidate, table) : numbers(candidate.story(), table);
  }

  private static List<double[]> equations(Candidate candidate, ReasoningTable table) {
    List<double[]> outcomes = new ArrayList<>();
    boolean adds = candidate.kind().operation() == Operation.ADD;
    double solution = table.value("work/solution-form");
    if (adds) {
      outcomes.add(outcome(Plan.THE_RELATION, 1, Plan.ADDS, 1));
      outcomes.add(outcome(Plan.TAKES_AWAY_LARGER_FIRST, 1));
    } else {
      outcomes.add(outcome(Plan.THE_RELATION, solution, Plan.TAKES_AWAY_LARGER_FIRST, 1));
      outcomes.add(outcome(Plan.THE_RELATION, 1 - solution));
      outcomes.add(outcome(Plan.ADDS, 1));
    }
    outcomes.add(outcome(Plan.TAKES_AWAY_SMALLER_FIRST, 1));
    outcomes.add(outcome(Plan.REPEATS_THE_DIFFERENCE, 1));
    outcomes.add(outcome(Plan.REPEATS_AN_AMOUNT, 1));
    outcomes.add(outcome(Plan.SOME_OTHER_NUMBER, 1));
    outcomes.add(outcome(Plan.BLANK, 1));
    return outcomes;
  }

  private static double[] outcome(Plan plan, double chance) {
    double[] outcome = new double[PLANS];
    outcome[plan.ordinal()] = chance;
    return outcome;
  }

  private static double[] outcome(Plan plan, double chance, Plan other, double otherChance) {
    double[] outcome = outcome(plan, chance);
    outcome[other.ordinal()] = otherChance;
    return outcome;
  }

  /** Every number some plan makes likely, and all the others together. */
  private static List<double[]> numbers(Comparison story, ReasoningTable table) {
    Map<Integer, double[]> byNumber = new TreeMap<>();
    double[] rest = new double[PLANS];
    Arrays.fill(rest, 1);
    for (int number : PlanReading.likelyNumbers(story)) {
      double[] outcome = new double[PLANS];
      for (Plan plan : Plan.values()) {
        outcome[plan.ordinal()] = PlanReading.chance(story, plan, number, table);
        rest[plan.ordinal()] -= outcome[plan.ordinal()];
      }
      byNumber.put(number, outcome);
    }
    List<double[]> outcomes = new ArrayList<>(byNumber.values());
    rest[Plan.BLANK.ordinal()] = 0;
    for (int plan = 0; plan < PLANS; plan++) {
      rest[plan] = Math.max(0, rest[plan]);
    }
    outcomes.add(rest);
    outcomes.add(outcome(Plan.BLANK, 1));
    return outcomes;
  }
}
