package fewermore.marking;

import fewermore.equation.Equation;
import fewermore.equation.Term;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The rules of marking an equation once more, the slow and obvious way: every term is tried in every group,
 * every number with every change of a digit. The oracle of {@link EquationMarker}; shares only the reader
 * with it. For up to about nine terms.
 */
final class SlowEquationMarker {
  /** Said in place of the reason when the numbers can be grouped so that one or the other sign tells. */
  static final String EITHER_SIGN = "opposite-operation, cue-led or not";

  /** What it says, as one line: the reason, then what is noted. */
  static String mark(Comparison story, Equation equation) {
    return new SlowEquationMarker(story, equation.sides().stream().map(side -> side.terms()).toList()).mark();
  }

  private record Quantities(int total, int part, int other, int unknown) {
    int value(int group) {
      return group == 0 ? total : group == 1 ? part : other;
    }

    Set<Integer> known() {
      Set<Integer> known = new HashSet<>();
      for (int group = 0; group < 3; group++) {
        if (group != unknown) {
          known.add(value(group));
        }
      }
      return known;
    }
  }

  private record Stated(Set<Operation> signs, boolean byNumber, boolean isTrue, boolean runOn, boolean reached) {}

  private final Comparison story;
  private final List<List<Term>> sides;
  private final boolean isExpression;
  private final int one;
  private final int two;
  private final int answer;

  private SlowEquationMarker(Comparison story, List<List<Term>> sides) {
    this.story = story;
    this.isExpression = sides.size() == 1;
    this.sides = isExpression ? List.of(sides.get(0), List.of(x())) : sides;
    this.one = story.value(story.given().get(0));
    this.two = story.value(story.given().get(1));
    this.answer = story.answer();
  }

  private String mark() {
    if (sides.stream().allMatch(side -> side.size() == 1)) {
      return "number-only";
    }
    boolean larger = story.unknown() == Role.LARGER;
    Quantities fits = larger ? new Quantities(one + two, one, two, 0) : new Quantities(one, two, one - two, 2);
    Stated stated = stated(fits);
    if (stated != null) {
      boolean solved = stated.byNumber && (stated.reached || sides.stream().noneMatch(this::hasX));
      return line("fits", solved, false, stated.runOn, true, !isExpression && !stated.isTrue);
    }
    if (!larger && (stated = stated(new Quantities(two, one, two - one, 2))) != null) {
      return line("turned-round", false, false, stated.runOn, false, false);
    }
    List<Quantities> opposite = larger
        ? List.of(new Quantities(one, two, one - two, 2), new Quantities(two, one, two - one, 2))
        : List.of(new Quantities(one + two, one, two, 0));
    for (Quantities each : opposite) {
      if ((stated = stated(each)) != null) {
        boolean disagrees = story.wording() != Wording.DIFFERENCE && !story.kind().agrees();
        boolean cued = disagrees && stated.signs.contains(story.kind().cue());
        return line(cued && stated.signs.size() > 1 ? EITHER_SIGN : "opposite-operation", false,
            cued && stated.signs.size() == 1, stated.runOn, false, false);
      }
    }
    List<Quantities> misplaced = larger
        ? List.of(new Quantities(answer, one, two, 2), new Quantities(answer, two, one, 2))
        : List.of(new Quantities(answer + two, answer, two, 0), new Quantities(one, answer, one - answer, 2));
    for (Quantities each : misplaced) {
      if ((stated = stated(each)) != null && !stated.byNumber) {
        return line("unknown-misplaced", false, false, stated.runOn, false, false);
      }
    }
    return line(byNumbers(fits), false, false, false, false, false);
  }

  private String byNumbers(Quantities fits) {
    List<Integer> all = new ArrayList<>();
    List<Integer> withoutReached = new ArrayList<>();
    List<Integer> withoutResults = new ArrayList<>();
    int loneSide = loneResultSide();
    for (int i = 0; i < sides.size(); i++) {
      boolean reachedSeen = false;
      for (Term term : sides.get(i)) {
        if (!term.unknown()) {
          boolean reached = !reachedSeen && term.sign() > 0
              && (i > 0 && comesTo(sides.get(i - 1), term.value())
                  || sides.size() == 2 && i == 0 && comesTo(sides.get(1), term.value()));
          reachedSeen |= reached;
          all.add(term.value());
          if (!reached) {
            withoutReached.add(term.value());
            if (i != loneSide) {
              withoutResults.add(term.value());
            }
          }
        }
      }
    }
    Set<Integer> three = Set.copyOf(new HashSet<>(List.of(
        story.value(Role.LARGER), story.value(Role.SMALLER), story.value(Role.DIFFERENCE))));
    if (withoutReached.stream().anyMatch(n -> story.extras().contains(n) && !three.contains(n))) {
      return "extra-number";
    }
    List<Integer> rest = new ArrayList<>(withoutResults);
    boolean bothOnce = rest.remove((Integer) one) && rest.remove((Integer) two) && rest.isEmpty();
    if (withoutResults.stream().allMatch(n -> n == one || n == two) && !bothOnce) {
      return "missing-number";
    }
    for (int i = 0; i < sides.size(); i++) {
      for (int j = 0; j < sides.get(i).size(); j++) {
        Term term = sides.get(i).get(j);
        for (int restored : new int[] {one, two}) {
          if (!term.unknown() && term.value() != restored && miscopies(restored).contains(term.value())) {
            List<List<Term>> copy = new ArrayList<>();
            sides.forEach(side -> copy.add(new ArrayList<>(side)));
            copy.get(i).set(j, term.withValue(restored));
            Stated stated = new SlowEquationMarker(story, copy).stated(fits);
            boolean mayBeFalse = i != loneSide && (sides.size() <= 2 || stated != null && stated.runOn);
            if (stated != null && (mayBeFalse || stated.isTrue)) {
              return "miscopied-number";
            }
          }
        }
      }
    }
    long ones = all.stream().filter(n -> n == one).count();
    long twos = one == two ? 0 : all.stream().filter(n -> n == two).count();
    boolean exactlyOneGiven = one == two ? ones == 1 : ones > 0 ^ twos > 0;
    return exactlyOneGiven && all.stream().anyMatch(n -> n != one && n != two) ? "missing-number" : "other-numbers";
  }

  private int loneResultSide() {
    if (sides.stream().anyMatch(this::hasX)) {
      return -1;
    }
    int last = sides.size() - 1;
    return sides.get(last).size() == 1 ? last : sides.get(0).size() == 1 ? 0 : -1;
  }

  private boolean comesTo(List<Term> side, int value) {
    return side.size() > 1 && !hasX(side) && sum(side, 0) == value;
  }

  /** Every number that is {@code given} with two digits swapped, one changed or one dropped. */
  static Set<Integer> miscopies(int given) {
    Set<Integer> found = new HashSet<>();
    String digits = Integer.toString(given);
    for (int i = 0; i < digits.length(); i++) {
      for (char digit = '0'; digit <= '9'; digit++) {
        found.add(Integer.parseInt(digits.substring(0, i) + digit + digits.substring(i + 1)));
      }
      if (digits.length() > 1) {
        found.add(Integer.parseInt(digits.substring(0, i) + digits.substring(i + 1)));
      }
      for (int j = 0; j < i; j++) {
        StringBuilder swapped = new StringBuilder(digits);
        swapped.setCharAt(i, digits.charAt(j));
        swapped.setCharAt(j, digits.charAt(i));
        found.add(Integer.parseInt(swapped.toString()));
      }
    }
    found.remove(given);
    return found;
  }

  private String line(String reason, boolean solved, boolean cueLed, boolean runOn, boolean fits, boolean notTrue) {
    String line = reason + (solved ? " solved" : "") + (cueLed ? " cue-led" : "") + (notTrue ? " not-true" : "");
    return isExpression ? "no-equals " + line : line + (isEqualsChain(runOn, fits) ? " equals-chain" : "");
  }

  private boolean isEqualsChain(boolean runOn, boolean fits) {
    Set<Long> values = new HashSet<>();
    sides.stream().filter(side -> fits || !hasX(side)).forEach(side -> values.add(sum(side, answer)));
    boolean carried = runOn;
    for (int i = 0; i < sides.size(); i++) {
      for (int j = 0; j < sides.size(); j++) {
        boolean next = j == i + 1 || sides.size() == 2 && i != j;
        if (next && sides.get(i).size() > 1 && sides.get(j).size() > 1 && (fits || !hasX(sides.get(i)))) {
          long result = sum(sides.get(i), answer);
          carried |= sides.get(j).stream().anyMatch(t -> !t.unknown() && t.sign() > 0 && t.value() == result);
        }
      }
    }
    return values.size() > 1 && carried;
  }

  /** The best way in which the equation states the relation: a true one, else the first found; or null. */
  private Stated stated(Quantities wanted) {
    List<Stated> found = new ArrayList<>();
    int n = sides.size();
    if (n == 2) {
      plain(wanted, sides.get(0), sides.get(1), found);
      if (sides.get(0).size() > 1 && sides.get(1).size() > 1) {
        List<List<Term>> turned = List.of(sides.get(1), sides.get(0));
        if (sides.stream().noneMatch(this::hasX)) {
          List.of(sides, turned).forEach(steps -> strung(wanted, steps, found));
          List.of(sides, turned).forEach(steps -> reaching(wanted, steps, found));
          List.of(sides, turned).forEach(steps -> runOn(wanted, steps, List.of(x()), false, found));
        }
      }
    } else {
      List<Term> head = sides.get(0);
      List<Term> end = sides.get(n - 1);
      if (end.size() > 1) {
        runOnWithoutResult(wanted, sides, found);
        if (head.size() == 1) {
          runOn(wanted, sides.subList(1, n), head, false, found);
        }
      } else {
        runOn(wanted, sides.subList(0, n - 1), end, false, found);
        if (hasX(end) && end.get(0).at().length() == 0) {
          reaching(wanted, sides.subList(0, n - 1), found);
        }
        if (head.size() == 1 && hasX(head)) {
          runOn(wanted, sides.subList(1, n - 1), end, false, found);
        }
      }
      plain(wanted, head, end, found);
      for (int i = 1; i < n; i++) {
        boolean othersAreSingle = true;
        for (int j = 0; j < n; j++) {
          othersAreSingle &= j == i || j == i - 1 || sides.get(j).size() == 1;
        }
        if (othersAreSingle) {
          plain(wanted, sides.get(i - 1), sides.get(i), found);
        }
      }
      strung(wanted, sides, found);
    }
    return found.stream().filter(Stated::isTrue).findFirst().orElse(found.isEmpty() ? null : found.get(0));
  }

  private void plain(Quantities wanted, List<Term> left, List<Term> right, List<Stated> found) {
    Stated stated = group(wanted, left, right, false);
    if (stated != null) {
      Set<Long> values = new HashSet<>();
      sides.forEach(side -> values.add(sum(side, wanted.value(wanted.unknown))));
      found.add(new Stated(stated.signs, stated.byNumber, values.size() == 1, false, false));
    }
  }

  private void runOnWithoutResult(Quantities wanted, List<List<Term>> steps, List<Stated> found) {
    reaching(wanted, steps, found);
    if (sides.stream().noneMatch(this::hasX)) {
      runOn(wanted, steps, List.of(x()), false, found);
    }
  }

  private void reaching(Quantities wanted, List<List<Term>> steps, List<Stated> found) {
    List<Term> flat = flat(steps);
    if (flat != null && !hasX(flat)) {
      for (long end : new long[] {sum(flat, 0), sum(steps.get(steps.size() - 1), 0)}) {
        if (end >= 0) {
          runOn(wanted, steps, List.of(new Term(1, false, (int) end, null, null)), true, found);
        }
      }
    }
  }

  private void runOn(
      Quantities wanted, List<List<Term>> steps, List<Term> end, boolean reached, List<Stated> found) {
    List<Term> flat = flat(steps);
    if (flat == null) {
      return;
    }
    int x = wanted.value(wanted.unknown);
    boolean isTrue = true;
    for (int i = 1; i < steps.size(); i++) {
      isTrue &= sum(steps.get(i - 1), x) == carried(steps.get(i - 1), steps.get(i)).value();
    }
    if (!reached && end.get(0).at() != null) {
      isTrue &= sum(steps.get(steps.size() - 1), x) == sum(end, x);
    }
    Stated stated = group(wanted, flat, end, reached);
    if (stated != null) {
      found.add(new Stated(stated.signs, stated.byNumber, isTrue, true, reached));
    } else if (!reached && wanted.unknown == 0 && steps.get(0).size() == 2 && flat.size() == 3 && !hasX(flat)
        && flat.stream().allMatch(term -> term.sign() > 0)) {
      int tens1 = wanted.part / 10 * 10;
      int tens2 = wanted.other / 10 * 10;
      int ones1 = wanted.part % 10;
      int ones2 = wanted.other % 10;
      Set<Integer> first = pair(flat.get(0).value(), flat.get(1).value());
      int later = flat.get(2).value();
      if (tens1 > 0 && tens2 > 0 && ones1 > 0 && ones2 > 0) {
        boolean tens = first.equals(pair(tens1, tens2));
        boolean ones = first.equals(pair(ones1, ones2));
        int due = tens ? ones1 + ones2 : tens1 + tens2;
        if ((tens || ones) && (later == due || later != wanted.part && later != wanted.other)) {
          found.add(new Stated(Set.of(Operation.ADD), !hasX(end), isTrue && later == due, true, false));
        }
      }
    }
  }

  private static Set<Integer> pair(int a, int b) {
    Set<Integer> pair = new HashSet<>();
    pair.add(Math.min(a, b));
    pair.add(1_000_000 + Math.max(a, b));
    return pair;
  }

  private List<Term> flat(List<List<Term>> steps) {
    List<Term> flat = new ArrayList<>(steps.get(0));
    for (int i = 1; i < steps.size(); i++) {
      Term carried = carried(steps.get(i - 1), steps.get(i));
      if (carried == null) {
        return null;
      }
      steps.get(i).stream().filter(term -> term != carried).forEach(flat::add);
    }
    return steps.stream().skip(1).anyMatch(step -> step.size() > 1) ? flat : null;
  }

  private Term carried(List<Term> before, List<Term> step) {
    for (Term term : step) {
      if (!hasX(before) && !term.unknown() && term.sign() > 0 && term.value() == sum(before, 0)) {
        return term;
      }
    }
    Term first = step.get(0);
    boolean isGiven = first.value() == one || first.value() == two;
    return before.size() > 1 && !first.unknown() && first.sign() > 0 && (hasX(before) || !isGiven) ? first : null;
  }

  /** Each equals sign with an operation beside it states the relation, and all of it is true. */
  private void strung(Quantities wanted, List<List<Term>> steps, List<Stated> found) {
    int x = wanted.value(wanted.unknown);
    List<List<List<Term>>> says = new ArrayList<>();
    boolean isTrue = true;
    boolean carriedOn = false;
    for (int i = 0; i + 1 < steps.size(); i++) {
      List<Term> step = steps.get(i);
      List<Term> next = steps.get(i + 1);
      Term carried = next.size() > 1 ? carried(step, next) : null;
      carriedOn = carried != null;
      List<Term> end = carriedOn ? List.of(carried) : next;
      if (step.size() > 1 || !carriedOn && next.size() > 1) {
        says.add(List.of(step, end));
      }
      isTrue &= sum(step, x) == sum(end, x);
    }
    List<Term> last = steps.get(steps.size() - 1);
    if (carriedOn && !hasX(last) && sum(last, 0) >= 0) {
      says.add(List.of(last, List.of(new Term(1, false, (int) sum(last, 0), null, null))));
    }
    Stated first = null;
    for (List<List<Term>> say : says) {
      Stated stated = group(wanted, say.get(0), say.get(1), false);
      if (stated == null) {
        return;
      }
      first = first == null ? stated : first;
    }
    if (isTrue && says.size() > 1) {
      found.add(new Stated(first.signs, first.byNumber, true, false, false));
    }
  }

  /** Tries every term in every group, with the signs as they are and all reversed. */
  private Stated group(Quantities wanted, List<Term> left, List<Term> right, boolean endIsKnown) {
    List<Term> terms = new ArrayList<>(left);
    terms.addAll(right);
    int ways = 1;
    for (int i = 0; i < terms.size(); i++) {
      ways *= 3;
    }
    Set<Operation> signs = EnumSet.noneOf(Operation.class);
    for (int way = 0; way < ways; way++) {
      int[] group = new int[terms.size()];
      for (int i = 0, rest = way; i < group.length; i++, rest /= 3) {
        group[i] = rest % 3;
      }
      for (int turn = 1; turn >= -1; turn -= 2) {
        Operation sign = grouped(wanted, terms, left.size(), group, turn, endIsKnown);
        if (sign != null) {
          signs.add(sign);
        }
      }
    }
    return signs.isEmpty() ? null : new Stated(signs, !hasX(terms), true, false, false);
  }

  /** The sign written between the known quantities (or one and the unknown), or null when they are not these. */
  private Operation grouped(
      Quantities wanted, List<Term> terms, int leftSize, int[] group, int turn, boolean endIsKnown) {
    int[] side = {0, 0, 0};
    int[] size = {0, 0, 0};
    int[] sum = {0, 0, 0};
    int[] plus = {0, 0, 0};
    int[] minus = {0, 0, 0};
    int xs = 0;
    int sameSideAsUnknown = 0;
    boolean allKnown = true;
    Set<Integer> inUnknown = new HashSet<>();
    int unknown = wanted.unknown;
    for (int i = 0; i < terms.size(); i++) {
      Term term = terms.get(i);
      int here = i < leftSize ? 1 : -1;
      int g = group[i];
      if (side[g] != 0 && side[g] != here) {
        return null;
      }
      side[g] = here;
      size[g]++;
      int sign = term.sign() * here;
      plus[g] += sign > 0 ? 1 : 0;
      minus[g] += sign < 0 ? 1 : 0;
      if (term.unknown()) {
        xs++;
        if (g != unknown) {
          return null;
        }
      } else {
        sum[g] += sign * term.value();
        if (g == unknown) {
          inUnknown.add(term.value());
        }
        allKnown &= g != unknown || wanted.known().contains(term.value());
      }
    }
    for (int g = 0; g < 3; g++) {
      int due = g == 0 ? turn : -turn;
      if (size[g] == 0 || g != unknown && sum[g] != due * wanted.value(g)) {
        return null;
      }
      sameSideAsUnknown += g != unknown && side[g] == side[unknown] ? 1 : 0;
    }
    int due = unknown == 0 ? turn : -turn;
    boolean oneWay = due > 0 ? minus[unknown] == 0 : plus[unknown] == 0;
    boolean right = wanted.value(unknown) >= 0 && sum[unknown] == due * wanted.value(unknown);
    boolean alone = size[unknown] == 1 && sameSideAsUnknown == 0;
    boolean stands = xs > 0 ? xs == 1 && size[unknown] == 1 && oneWay
        : alone ? oneWay
        : allKnown ? right && oneWay && inUnknown.size() == 1 : right || oneWay;
    if (!stands || endIsKnown && side[unknown] == -1) {
      return null;
    }
    int[] others = {(unknown + 1) % 3, (unknown + 2) % 3};
    int a = side[others[0]] == side[others[1]] ? others[0] : unknown;
    int b = a == unknown ? side[others[0]] == side[unknown] ? others[0] : others[1] : others[1];
    boolean sameSign = (a == 0) == (b == 0);
    return sameSign ? Operation.ADD : Operation.SUBTRACT;
  }

  private boolean hasX(List<Term> side) {
    return side.stream().anyMatch(Term::unknown);
  }

  private static long sum(List<Term> side, long x) {
    return side.stream().mapToLong(term -> term.sign() * (term.unknown() ? x : term.value())).sum();
  }

  private static Term x() {
    return new Term(1, true, 0, null, null);
  }
}
