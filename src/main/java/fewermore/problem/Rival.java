package fewermore.problem;

/**
 * One answer that a problem should let us tell from the others.
 *
 * @param cause where it comes from
 * @param number what the child would write
 */
public record Rival(Cause cause, int number) {

  /** Where an answer comes from: a way of reading the story, or a slip in one of the two calculations. */
  public enum Cause {
    RIGHT("the right answer"),
    OPPOSITE_OPERATION("the other operation"),
    REPEATS_FIRST("the first given number again"),
    REPEATS_SECOND("the second given number again"),
    SMALLER_FROM_LARGER("the smaller digit taken from the larger"),
    TEN_NOT_TAKEN("a ten borrowed and not taken away"),
    TEN_DROPPED("the new ten not added");

    private final String says;

    Cause(String says) {
      this.says = says;
    }

    /** For the teacher, in the middle of a sentence. */
    public String says() {
      return says;
    }
  }
}
