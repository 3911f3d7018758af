package fewermore.equation;

import fewermore.text.SourceSpan;
import java.util.Optional;

/**
 * Why a written line could not be read as an equation. A value, never an exception. The texts are plain
 * English for a teacher or a child, without a period at the end of {@code expected} and {@code found}.
 *
 * @param kind what sort of problem, for who words it in another language
 * @param at where; an empty span for something that is missing
 * @param expected what could have stood there
 * @param found what stands there, quoted and cut to a few signs
 * @param tryThis one thing to try, a sentence
 */
public record SyntaxProblem(Kind kind, SourceSpan at, String expected, String found, String tryThis)
    implements Reading {

  /** The sorts of problem. */
  public enum Kind {
    NOTHING_WRITTEN,
    LINE_TOO_LONG,
    NUMBER_TOO_LONG,
    TOO_MANY_PARENTHESES,
    SIGN_FIRST,
    SIGN_LAST,
    TWO_SIGNS,
    EMPTY_SIDE,
    TWO_NUMBERS,
    SIDE_BY_SIDE,
    WORD,
    PARENTHESIS,
    OTHER_SIGN,
    HIDDEN_SIGN
  }

  /** The whole problem in two sentences. */
  public String says() {
    return "Expected " + expected + ", found " + found + ". " + tryThis;
  }

  @Override
  public Optional<Equation> equation() {
    return Optional.empty();
  }

  @Override
  public Optional<SyntaxProblem> problem() {
    return Optional.of(this);
  }
}
