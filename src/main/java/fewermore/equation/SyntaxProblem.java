package fewermore.equation;

import fewermore.text.SourceSpan;

/**
 * Why a written line could not be read as an equation: where, what was expected, what was found, and
 * one thing to try. A value, never an exception.
 */
public record SyntaxProblem(SourceSpan at, String expected, String found, String tryThis) {}
