package fewermore.equation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A line that could be read: its sides from left to right. One side is an expression without equals
 * sign, two sides are an equation, more are a chain.
 */
public record Equation(List<Expression> sides) implements Reading {
  public Equation {
    sides = List.copyOf(sides);
    if (sides.isEmpty()) {
      throw new IllegalArgumentException("an equation has at least one side");
    }
  }

  public boolean hasEqualsSign() {
    return sides.size() > 1;
  }

  public boolean isChain() {
    return sides.size() > 2;
  }

  /** Whether a + or − stands anywhere. */
  public boolean hasOperation() {
    for (Expression side : sides) {
      if (side.hasOperation()) {
        return true;
      }
    }
    return false;
  }

  /**
   * The one value of the unknown sign for which an equation with two sides holds. Empty for expressions and
   * chains, when there are two different unknown signs, when every value or none will do, and when it is no
   * whole number. May be below 0.
   */
  public OptionalLong solution() {
    return sides.size() == 2
        ? sides.get(0).linear().flatMap(left -> sides.get(1).linear().flatMap(left::minus))
            .map(LinearForm::zero).orElse(OptionalLong.empty())
        : OptionalLong.empty();
  }

  /** What a line without equals sign and without unknown comes to; empty for any other. */
  public OptionalLong value() {
    return sides.size() == 1
        ? sides.get(0).linear().map(LinearForm::plainValue).orElse(OptionalLong.empty())
        : OptionalLong.empty();
  }

  @Override
  public Optional<Equation> equation() {
    return Optional.of(this);
  }

  @Override
  public Optional<SyntaxProblem> problem() {
    return Optional.empty();
  }
}
