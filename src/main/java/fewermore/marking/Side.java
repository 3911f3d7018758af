package fewermore.marking;

import fewermore.equation.Term;
import java.util.ArrayList;
import java.util.List;

/** One side of a statement: its terms, with what is asked of them again and again. */
final class Side {
  private final List<Term> terms;
  private final long sum;
  private final int unknowns;
  private final int unknownSign;
  private final boolean rises;
  private final boolean falls;

  Side(List<Term> terms) {
    this.terms = terms;
    long numbers = 0;
    int found = 0;
    int sign = 0;
    boolean plus = false;
    boolean minus = false;
    for (int i = 0; i < terms.size(); i++) {
      Term term = terms.get(i);
      if (term.unknown()) {
        found++;
        sign = term.sign();
      } else {
        numbers += term.signed();
        plus |= term.sign() > 0;
        minus |= term.sign() < 0;
      }
    }
    this.sum = numbers;
    this.unknowns = found;
    this.unknownSign = sign;
    this.rises = plus;
    this.falls = minus;
  }

  static Side of(Term term) {
    return new Side(List.of(term));
  }

  List<Term> terms() {
    return terms;
  }

  int size() {
    return terms.size();
  }

  Term first() {
    return terms.get(0);
  }

  /** All numbers, each with its sign. */
  long sum() {
    return sum;
  }

  int unknowns() {
    return unknowns;
  }

  /** +1 or −1 for the (last) unknown sign, 0 without one. */
  int unknownSign() {
    return unknownSign;
  }

  boolean hasOperation() {
    return terms.size() > 1;
  }

  /** Whether an operation stands in it and no unknown sign. */
  boolean isCalculation() {
    return terms.size() > 1 && unknowns == 0;
  }

  boolean isNumber() {
    return terms.size() == 1 && unknowns == 0;
  }

  boolean isUnknown() {
    return terms.size() == 1 && unknowns == 1;
  }

  /**
   * The number by which this side goes on from the result of {@code before}: the one that is its true result,
   * else the first, taken as a wrong result unless the story gives it; from a side that is one number, only
   * that number again. Null when it does not go on.
   */
  Term resultOf(Side before, int given, int otherGiven) {
    Term result = before.unknowns > 0 ? null : trueResultOf(before, 0);
    if (result != null || !before.hasOperation()) {
      return result;
    }
    Term first = first();
    boolean mayBeWrong = !first.unknown() && first.sign() > 0
        && (before.unknowns > 0 || first.value() != given && first.value() != otherGiven);
    return mayBeWrong ? first : null;
  }

  /** The number in this side that is what {@code before} comes to with the unknown sign as {@code x}, or null. */
  Term trueResultOf(Side before, long x) {
    long value = before.value(x);
    for (Term term : terms) {
      if (!term.unknown() && term.sign() > 0 && term.value() == value) {
        return term;
      }
    }
    return null;
  }

  /** The other terms. */
  List<Term> without(Term result) {
    List<Term> others = new ArrayList<>(terms.size());
    for (Term term : terms) {
      if (term != result) {
        others.add(term);
      }
    }
    return others;
  }

  /** Whether every number counts with {@code sign}. */
  boolean allCountWith(int sign) {
    return sign > 0 ? !falls : !rises;
  }

  /** What the side comes to when every unknown sign in it stands for {@code x}. */
  long value(long x) {
    if (unknowns == 0) {
      return sum;
    }
    long value = sum;
    for (Term term : terms) {
      value += term.unknown() ? term.sign() * x : 0;
    }
    return value;
  }
}
