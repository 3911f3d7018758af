package fewermore.equation;

import java.util.Optional;

/** What reading a line gave: an equation, or the reason why it is none. */
public sealed interface Reading permits Equation, SyntaxProblem {
  Optional<Equation> equation();

  Optional<SyntaxProblem> problem();
}
