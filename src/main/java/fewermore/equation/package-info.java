/**
 * What a child writes on the equation line, as a value: sides joined by equals signs, each a sum or
 * difference of whole numbers and unknown signs. Knows no story: whether an equation says what a story
 * says is the business of {@code marking}.
 *
 * <pre>{@code
 * Reading reading = EquationReader.read("52 − 14 = x");
 * reading.equation().get().solution();            // 38
 * EquationReader.read("52 14 = x").problem();     // where, what was expected, what was found, one thing to try
 * }</pre>
 *
 * <p>A <i>side</i> is what stands between equals signs; a <i>term</i> is one number or unknown sign with
 * the sign it counts with once parentheses are undone; a <i>chain</i> has more than one equals sign.
 *
 * <p>Not checked here: whether an equation is true, and whether a chain is meant as one statement or as
 * steps.
 */
package fewermore.equation;
