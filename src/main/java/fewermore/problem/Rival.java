package fewermore.problem;

/**
 * One answer that a problem should let us tell from the others.
 *
 * @param cause where it comes from: {@code right}, {@code opposite-operation}, {@code repeats-a-number}, or the id of a
 *     slip rule
 * @param says the same for the teacher, in the middle of a sentence
 * @param number what the child would write
 */
public record Rival(String cause, String says, int number) {}
