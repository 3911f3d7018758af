package fewermore.marking;

/** What the label shows. */
public enum LabelVerdict {
  NAMES_IT("names-it"),
  TOO_GENERAL("too-general"),
  OTHER_THING("other-thing"),
  A_PERSON("a-person"),
  BLANK("blank"),
  NOT_RECOGNISED("not-recognised");

  private final String id;

  LabelVerdict(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
