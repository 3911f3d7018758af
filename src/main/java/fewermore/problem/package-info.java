/**
 * A problem is a story with its text. Problems are written from a seed, with numbers that fit the class and tell the
 * ways of going wrong apart, and put together to a day's set.
 *
 * <pre>{@code
 * Problem one = ProblemWriter.generate(Kind.LARGER_FEWER, NumberRange.WITHIN_100, Regrouping.NEEDED, 7);
 * one.english().sentences(); // one a line
 * ProblemSetDraft day = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, namesOfTheClass)
 *     .writeSet(ProposedMix.of(4), 7);
 * }</pre>
 */
package fewermore.problem;
