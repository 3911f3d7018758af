package fewermore.marking;

/** What the answer box shows: the first that holds. */
public enum AnswerVerdict {
  RIGHT("right"),
  BLANK("blank"),
  STORY_NUMBER("story-number"),
  OWN_EQUATION("own-equation"),
  SLIP("slip"),
  OTHER("other");

  private final String id;

  AnswerVerdict(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
