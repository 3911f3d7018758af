package fewermore.web;

import fewermore.marking.BarsMarker;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.wording.Lexicon;

/** Work that says what a story says, as it is tapped in: for tests and pictures. */
record RightWork(Comparison story) {

  String nameOfLonger(String language) {
    String name = BarsMarker.name(story, Role.LARGER);
    return "es".equals(language) ? Lexicon.inSpanish(name).orElse(name) : name;
  }

  /** What stands on a place of the bars: the number, or {@code ?}. */
  String on(Role role) {
    return role == story.unknown() ? "?" : String.valueOf(story.value(role));
  }

  /** What the answer counts, in the language the story is read in. */
  String label(String language) {
    return "es".equals(language) ? Lexicon.inSpanish(story.thing().many()).orElseThrow() : story.thing().many();
  }

  /** With the signs of the page's keys. */
  String equation() {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    return first + (story.kind().operation() == Operation.ADD ? "+" : "−") + second + "=□";
  }
}
