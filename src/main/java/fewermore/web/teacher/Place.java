package fewermore.web.teacher;

import java.util.List;

/** The places of the teacher's side, in the order of the page's head. */
public enum Place {
  PLAN("Plan", "/plan"),
  BOARD("Board", "/board"),
  FINDINGS("Findings", "/findings"),
  RECORDS("Records", "/records"),
  SETUP("Setup", "/setup"),
  HELP("Help", "/help");

  /** Every place there is. */
  public static final List<Place> ALL = List.of(values());

  private final String word;
  private final String path;

  Place(String word, String path) {
    this.word = word;
    this.path = path;
  }

  public String word() {
    return word;
  }

  public String path() {
    return path;
  }
}
