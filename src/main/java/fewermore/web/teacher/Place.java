package fewermore.web.teacher;

import java.util.List;
import java.util.stream.Stream;

/** The places of the teacher's side, in the order of the page's head. */
public enum Place {
  PLAN("Plan", "/plan"),
  BOARD("Board", "/board"),
  ROOM("Room", "/room"),
  FINDINGS("Findings", "/findings"),
  GROUPS("Groups", "/groups"),
  RECORDS("Records", "/records"),
  SETUP("Setup", "/setup"),
  HELP("Help", "/help"),
  /** Today's set and what to do, for a substitute; the teacher prints it. */
  TODAY("Today", "/today");

  /** Every place of the teacher's. */
  public static final List<Place> ALL = Stream.of(values()).filter(place -> place != TODAY).toList();

  /** What a substitute may open, by path: no place with a child's record. */
  private static final List<String> OF_A_SUBSTITUTE = List.of("/today", "/board", "/room");

  public static final List<Place> SUBSTITUTES = Stream.concat(Stream.of(TODAY),
      ALL.stream().filter(place -> OF_A_SUBSTITUTE.contains(place.path))).toList();

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
