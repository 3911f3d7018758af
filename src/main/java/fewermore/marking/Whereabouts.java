package fewermore.marking;

import fewermore.equation.Term;
import fewermore.text.SourceSpan;
import java.util.List;

/** Where in an equation that of which a mark speaks can be seen. Each place may be null: then it is the whole. */
final class Whereabouts {
  private final List<Side> sides;
  private final int given;
  private final int otherGiven;

  Whereabouts(List<Side> sides, int given, int otherGiven) {
    this.sides = sides;
    this.given = given;
    this.otherGiven = otherGiven;
  }

  static SourceSpan of(Side side) {
    return side.first().at().through(side.terms().get(side.size() - 1).at());
  }

  SourceSpan unknownSign() {
    for (Side side : sides) {
      for (Term term : side.terms()) {
        if (term.unknown()) {
          return term.at();
        }
      }
    }
    return null;
  }

  /** From one given number to the other when both stand on one side. */
  SourceSpan givens() {
    for (Side side : sides) {
      Term one = find(side, given);
      Term other = find(side, otherGiven);
      if (one != null && other != null) {
        return one.at().through(other.at());
      }
    }
    return null;
  }

  /** The + or − that joins the given numbers, else a given number and the unknown, else the first one. */
  SourceSpan tellingSign() {
    SourceSpan first = null;
    for (Side side : sides) {
      boolean hasBoth = find(side, given) != null && find(side, otherGiven) != null;
      for (Term term : side.terms()) {
        if (term.signAt() != null) {
          boolean isGiven = !term.unknown() && (term.value() == given || term.value() == otherGiven);
          if (hasBoth && isGiven || term.unknown()) {
            return term.signAt();
          }
          first = first == null ? term.signAt() : first;
        }
      }
    }
    return first;
  }

  /** The wrong number of an equation that fits and is not true, where one can be told. */
  SourceSpan wrongNumber(Interpretation understood, long answer) {
    if (sides.size() > 2) {
      for (Statement claim : understood.claims()) {
        if (!claim.holds(answer)) {
          SourceSpan at = claim.right().first().at();
          return at.length() > 0 ? at : null;
        }
      }
      return null;
    }
    Term only = null;
    int others = 0;
    for (Side side : sides) {
      for (Term term : side.terms()) {
        if (!term.unknown() && term.value() != given && term.value() != otherGiven) {
          only = term;
          others++;
        }
      }
    }
    Side last = sides.get(sides.size() - 1);
    return others == 1 ? only.at() : others == 0 && last.isNumber() ? last.first().at() : null;
  }

  private static Term find(Side side, int value) {
    for (Term term : side.terms()) {
      if (!term.unknown() && term.value() == value) {
        return term;
      }
    }
    return null;
  }
}
