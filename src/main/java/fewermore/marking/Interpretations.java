package fewermore.marking;

import fewermore.equation.Term;
import fewermore.marking.Interpretation.Manner;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * The ways to understand an equation or chain, the plainest first. One with two sides is what it says; a
 * chain, or two sides that both carry an operation, may also be
 *
 * <ul>
 *   <li>a run-on, each step going on from the last result: {@code 52 − 10 = 42 − 4 = 38} says
 *       {@code 52 − 10 − 4 = 38}. The last result may be missing, or stand at the head;
 *   <li>taken whole: the first side and the last, or two neighbors when every other side is one term;
 *   <li>several statements strung together, each of them true: {@code 52 − 14 = 38 + 14 = 52}.
 * </ul>
 */
final class Interpretations {
  private static final SourceSpan NOWHERE = new SourceSpan(0, 0);
  private static final Term MISSING = new Term(1, true, 0, NOWHERE, null);

  private final List<Side> sides;
  private final int given;
  private final int otherGiven;
  private final boolean holdsUnknown;
  private final List<Interpretation> found = new ArrayList<>(2);

  private Interpretations(List<Side> sides, int given, int otherGiven) {
    this.sides = sides;
    this.given = given;
    this.otherGiven = otherGiven;
    this.holdsUnknown = sides.stream().anyMatch(side -> side.unknowns() > 0);
  }

  /** @param lastIsEmpty whether the last side is empty and stands there as an unknown sign */
  static List<Interpretation> of(List<Side> sides, boolean lastIsEmpty, int given, int otherGiven) {
    Side first = sides.get(0);
    if (sides.size() == 1) {
      return List.of(Interpretation.plain(new Statement(first, Side.of(MISSING)), List.of()));
    }
    if (sides.size() == 2) {
      Statement plain = new Statement(first, sides.get(1));
      Interpretation asItStands = Interpretation.plain(plain, List.of(plain));
      if (!first.hasOperation() || !sides.get(1).hasOperation()) {
        return List.of(asItStands);
      }
      Interpretations all = new Interpretations(sides, given, otherGiven);
      all.found.add(asItStands);
      all.eitherWayRound(List.of(sides.get(1), first));
      return all.found;
    }
    return new Interpretations(sides, given, otherGiven).ofChain(lastIsEmpty);
  }

  /** Two sides mean the same either way round, so each manner is tried both ways before the next. */
  private void eitherWayRound(List<Side> turned) {
    if (!holdsUnknown) {
      strungTogether(sides);
      strungTogether(turned);
      reached(sides);
      reached(turned);
      runOn(sides, Side.of(MISSING));
      runOn(turned, Side.of(MISSING));
    }
  }

  private List<Interpretation> ofChain(boolean lastIsEmpty) {
    int last = sides.size() - 1;
    Side head = sides.get(0);
    Side end = sides.get(last);
    if (end.hasOperation()) {
      withoutLastResult(sides);
    } else {
      runOn(sides.subList(0, last), end);
      if (lastIsEmpty) {
        reached(sides.subList(0, last));
      }
    }
    if (!head.hasOperation() && end.hasOperation()) {
      runOn(sides.subList(1, last + 1), head);
    } else if (head.isUnknown()) {
      runOn(sides.subList(1, last), end);
    }
    takenWhole();
    strungTogether(sides);
    return found;
  }

  private void withoutLastResult(List<Side> steps) {
    reached(steps);
    if (!holdsUnknown) {
      runOn(steps, Side.of(MISSING));
    }
  }

  /** The jumps reach what the last step, or all of them together, come to. */
  private void reached(List<Side> steps) {
    Side joined = joined(steps);
    if (joined == null || joined.unknowns() > 0) {
      return;
    }
    reached(steps, joined, joined.sum());
    long lastStep = steps.get(steps.size() - 1).sum();
    if (lastStep != joined.sum()) {
      reached(steps, joined, lastStep);
    }
  }

  private void reached(List<Side> steps, Side joined, long end) {
    if (end >= 0 && end <= Integer.MAX_VALUE) {
      Side last = Side.of(number(end));
      found.add(new Interpretation(Manner.RUN_ON_REACHING, List.of(new Statement(joined, last)),
          claims(steps, null), steps.get(0).size()));
    }
  }

  private void runOn(List<Side> steps, Side last) {
    Side joined = joined(steps);
    if (joined != null) {
      found.add(new Interpretation(Manner.RUN_ON, List.of(new Statement(joined, last)),
          claims(steps, last), steps.get(0).size()));
    }
  }

  /** The steps as one side; null when they do not go on from one another. */
  private Side joined(List<Side> steps) {
    List<Term> terms = new ArrayList<>(steps.get(0).terms());
    boolean carries = false;
    for (int i = 1; i < steps.size(); i++) {
      Side step = steps.get(i);
      Term result = step.resultOf(steps.get(i - 1), given, otherGiven);
      if (result == null) {
        return null;
      }
      carries |= step.hasOperation();
      terms.addAll(step.without(result));
    }
    return carries ? new Side(terms) : null;
  }

  private List<Statement> claims(List<Side> steps, Side last) {
    List<Statement> claims = new ArrayList<>();
    for (int i = 1; i < steps.size(); i++) {
      Side before = steps.get(i - 1);
      claims.add(new Statement(before, Side.of(steps.get(i).resultOf(before, given, otherGiven))));
    }
    if (last != null && last.first() != MISSING) {
      claims.add(new Statement(steps.get(steps.size() - 1), last));
    }
    return claims;
  }

  private void takenWhole() {
    List<Statement> allEqual = new ArrayList<>();
    int operations = 0;
    for (int i = 0; i < sides.size(); i++) {
      operations += sides.get(i).hasOperation() ? 1 : 0;
      if (i > 0) {
        allEqual.add(new Statement(sides.get(i - 1), sides.get(i)));
      }
    }
    found.add(Interpretation.plain(new Statement(sides.get(0), sides.get(sides.size() - 1)), allEqual));
    for (Statement neighbors : allEqual) {
      int own = (neighbors.left().hasOperation() ? 1 : 0) + (neighbors.right().hasOperation() ? 1 : 0);
      if (own > 0 && own == operations) {
        found.add(Interpretation.plain(neighbors, allEqual));
      }
    }
  }

  /** Every step a statement of its own, each closed by the number the next one starts from. */
  private void strungTogether(List<Side> steps) {
    List<Statement> says = new ArrayList<>();
    List<Statement> equal = new ArrayList<>();
    boolean carried = false;
    for (int i = 0; i < steps.size(); i++) {
      Side step = steps.get(i);
      if (i == steps.size() - 1) {
        if (carried && isWhole(step)) {
          says.add(new Statement(step, Side.of(number(step.sum()))));
        }
        break;
      }
      Side next = steps.get(i + 1);
      Term result = next.resultOf(step, given, otherGiven);
      carried = next.hasOperation() && result != null;
      if (step.hasOperation()) {
        says.add(new Statement(step, carried ? Side.of(result) : next));
      } else if (!carried) {
        (next.hasOperation() ? says : equal).add(new Statement(step, next));
      }
    }
    if (says.size() > 1) {
      equal.addAll(says);
      found.add(new Interpretation(Manner.STRUNG, says, equal, 0));
    }
  }

  private static boolean isWhole(Side side) {
    return side.unknowns() == 0 && side.sum() >= 0 && side.sum() <= Integer.MAX_VALUE;
  }

  private static Term number(long value) {
    return new Term(1, false, (int) value, NOWHERE, null);
  }
}
