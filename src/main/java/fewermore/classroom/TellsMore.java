package fewermore.classroom;

import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberRange;
import fewermore.reasoning.NextProblem;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Ways;
import fewermore.story.Kind;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What would tell more about how children reason: for one child, a group or the class. A set serves teaching first, so
 * it begins with a problem that most are likely to do well; the rest are those that tell most, never one kind twice
 * running.
 */
public final class TellsMore {
  /** A kind asked again in the same set tells about half as much as the first time (ours). */
  private static final double AGAIN = .5;

  private TellsMore() {}

  /** The next kind to ask: the one expected to tell most about these children, and not the one asked last. */
  public static Kind next(Collection<ChildReasoning> children, Kind last, ReasoningTable table) {
    Map<Kind, Double> bits = bits(children, table);
    return highest(bits, last);
  }

  /** Kinds in order for a set of so many problems: one most are likely to do well, then those that tell most. */
  public static List<Kind> mix(Collection<ChildReasoning> children, int problems, ReasoningTable table) {
    List<Kind> kinds = new ArrayList<>();
    if (problems > 0) {
      kinds.add(doneWell(children, table));
    }
    Map<Kind, Double> bits = bits(children, table);
    while (kinds.size() < problems) {
      Kind next = highest(bits, kinds.get(kinds.size() - 1));
      kinds.add(next);
      bits.merge(next, AGAIN, (now, half) -> now * half);
    }
    return List.copyOf(kinds);
  }

  /** The kind that the least likely of these children is most likely to do well. */
  public static Kind doneWell(Collection<ChildReasoning> children, ReasoningTable table) {
    Kind best = Kind.SMALLER_FEWER;
    double most = -1;
    for (Kind kind : Kind.values()) {
      double least = children.stream().mapToDouble(child -> doesWell(child.estimate().ways(), kind, table)).min().orElse(0);
      if (least > most + 1e-9) {
        most = least;
        best = kind;
      }
    }
    return best;
  }

  /** The chance that a child of these ways states the story on a problem of that kind, whatever her reason. */
  public static double doesWell(Ways ways, Kind kind, ReasoningTable table) {
    Plan same = kind.operation() == Operation.ADD ? Plan.ADDS : Plan.TAKES_AWAY_LARGER_FIRST;
    double chance = 0;
    for (WayOfReasoning way : WayOfReasoning.values()) {
      chance += ways.of(way) * (table.chance(way, kind, Plan.THE_RELATION) + table.chance(way, kind, same));
    }
    return chance;
  }

  private static Map<Kind, Double> bits(Collection<ChildReasoning> children, ReasoningTable table) {
    List<NextProblem.Candidate> candidates = NextProblem.candidates(NumberRange.WITHIN_100);
    Map<Kind, Double> bits = new EnumMap<>(Kind.class);
    for (NextProblem.Candidate candidate : candidates) {
      // Where an equation is asked, the numbers of a kind tell the same: the first pair stands for all.
      bits.computeIfAbsent(candidate.kind(), kind -> children.stream()
          .mapToDouble(child -> NextProblem.bits(child.estimate().ways(), candidate, true, table)).sum());
    }
    return bits;
  }

  private static Kind highest(Map<Kind, Double> bits, Kind except) {
    Kind best = null;
    for (Map.Entry<Kind, Double> each : bits.entrySet()) {
      if (each.getKey() != except && (best == null || each.getValue() > bits.get(best) + 1e-9)) {
        best = each.getKey();
      }
    }
    return best;
  }

  /** Whether no child has work on a problem whose word points the other way: then nothing is said of story or word. */
  public static boolean onlyAgreeing(Collection<ChildReasoning> children) {
    return children.stream().allMatch(ChildReasoning::onlyAgreeing);
  }

  /** Why nothing is said of story or word, for Plan; empty when it can be. */
  public static String whyNot(Collection<ChildReasoning> children) {
    boolean work = children.stream().anyMatch(child -> !child.counted().isEmpty());
    return work && onlyAgreeing(children)
        ? "In all the work so far the word agrees with what has to be done, so it can’t tell who reads and who hunts for a "
            + "word. Put in one where the word points the other way."
        : "";
  }
}
