package fewermore.equation;

import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One side of an equation, as written. */
public sealed interface Expression {
  SourceSpan at();

  /** Whether a + or − stands in it. */
  boolean hasOperation();

  /** Adds the terms to {@code into}, the first one counting with {@code sign} that stands at {@code signAt}. */
  void collect(int sign, SourceSpan signAt, List<Term> into);

  /** As {@code factor · x + constant}; empty when two different unknown signs stand in it. */
  Optional<LinearForm> linear();

  /** The terms from left to right, parentheses undone. */
  default List<Term> terms() {
    List<Term> terms = new ArrayList<>(4);
    collect(1, null, terms);
    return terms;
  }

  /** A whole number from 0 to 999,999,999. */
  record Whole(int value, SourceSpan at) implements Expression {
    @Override
    public boolean hasOperation() {
      return false;
    }

    @Override
    public Optional<LinearForm> linear() {
      return Optional.of(LinearForm.number(value));
    }

    @Override
    public void collect(int sign, SourceSpan signAt, List<Term> into) {
      into.add(new Term(sign, false, value, at, signAt));
    }
  }

  /**
   * An unknown sign.
   *
   * @param name the letter in small, or {@code □}, {@code ?}, {@code _}; 0 for an empty side read as one
   */
  record Unknown(int name, SourceSpan at) implements Expression {
    public boolean isEmptySide() {
      return name == 0;
    }

    @Override
    public boolean hasOperation() {
      return false;
    }

    @Override
    public Optional<LinearForm> linear() {
      return Optional.of(LinearForm.unknown(name));
    }

    @Override
    public void collect(int sign, SourceSpan signAt, List<Term> into) {
      into.add(new Term(sign, true, 0, at, signAt));
    }
  }

  /**
   * Two expressions joined by + or −.
   *
   * @param operation +1 for plus, −1 for minus
   */
  record Joined(Expression left, int operation, SourceSpan operationAt, Expression right) implements Expression {
    @Override
    public SourceSpan at() {
      return left.at().through(right.at());
    }

    @Override
    public boolean hasOperation() {
      return true;
    }

    @Override
    public Optional<LinearForm> linear() {
      return left.linear().flatMap(l -> right.linear().flatMap(r -> operation > 0 ? l.plus(r) : l.minus(r)));
    }

    @Override
    public void collect(int sign, SourceSpan signAt, List<Term> into) {
      left.collect(sign, signAt, into);
      right.collect(sign * operation, operationAt, into);
    }
  }

  /** An expression in parentheses; {@code at} includes them. */
  record Parenthesized(Expression inner, SourceSpan at) implements Expression {
    @Override
    public boolean hasOperation() {
      return inner.hasOperation();
    }

    @Override
    public Optional<LinearForm> linear() {
      return inner.linear();
    }

    @Override
    public void collect(int sign, SourceSpan signAt, List<Term> into) {
      inner.collect(sign, signAt, into);
    }
  }
}
