package fewermore.prediction;

/** What a child does with the two given numbers. A way of reasoning is a plan for each kind of problem. */
public enum Plan {
  /** The relation of the story, in any of its true arrangements. */
  THE_RELATION("the-relation"),
  ADDS("adds"),
  TAKES_AWAY_LARGER_FIRST("takes-away-larger-first"),
  TAKES_AWAY_SMALLER_FIRST("takes-away-smaller-first"),
  /** The number of the gap stands as the answer: "14 fewer" is heard as "14". */
  REPEATS_THE_DIFFERENCE("repeats-the-difference"),
  /** A given amount stands as the answer. */
  REPEATS_AN_AMOUNT("repeats-an-amount"),
  SOME_OTHER_NUMBER("some-other-number"),
  BLANK("blank");

  private final String id;

  Plan(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
