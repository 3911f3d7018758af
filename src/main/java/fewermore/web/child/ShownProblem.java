package fewermore.web.child;

import fewermore.marking.Bars;
import fewermore.marking.Part;
import fewermore.marking.Sign;
import fewermore.marking.Work;
import java.util.List;

/**
 * One of today's problems as a child sees it. Holds nothing that gives the answer away.
 *
 * @param work id of this child's work on this problem, made by the laptop
 * @param number from 1, in the order of the set
 * @param sentences the story, one sentence an element; the last is the question
 * @param spoken the same sentences as a voice should say them
 * @param lanes the two that are compared, in the order the story names them
 * @param numbers the story's numbers in the order they stand there, extras included
 * @param asked the parts the teacher asks for, in the order they are shown
 * @param triesLeft how many more times it may be handed in
 * @param draft the newest work, or null
 * @param told what was said of the last hand-in, or null
 */
public record ShownProblem(
    String work, int number, List<String> sentences, List<String> spoken, List<Lane> lanes, List<Integer> numbers,
    List<Part> asked, int triesLeft, Draft draft, Told told) {
  public ShownProblem {
    sentences = List.copyOf(sentences);
    spoken = List.copyOf(spoken);
    lanes = List.copyOf(lanes);
    numbers = List.copyOf(numbers);
    asked = List.copyOf(asked);
    if (sentences.isEmpty() || lanes.size() != 2) {
      throw new IllegalArgumentException("a problem has sentences and two that are compared");
    }
  }

  public String firstLine() {
    return sentences.get(0);
  }

  public String question() {
    return sentences.get(sentences.size() - 1);
  }

  public boolean asks(String part) {
    return asked.stream().anyMatch(each -> each.id().equals(part));
  }

  /** Whether the newest work was handed in as it stands. */
  public boolean handedIn() {
    return draft != null && draft.handedIn();
  }

  /** The work to fill a form with; never null. */
  public Work parts() {
    return draft == null ? Work.NOT_ASKED : draft.parts();
  }

  /** The bars to fill a form with; never null. */
  public Bars bars() {
    return parts().bars() == null ? Bars.EMPTY : parts().bars();
  }

  /** How far a part is: {@code none}, {@code there}, {@code look-again} or {@code fits}. */
  public String state(Part part) {
    Sign sign = told != null && handedIn() ? told.signs().get(part) : null;
    if (sign == Sign.LOOK_AGAIN || sign == Sign.FITS) {
      return sign.id();
    }
    return empty(part) ? "none" : Sign.THERE.id();
  }

  /** The prompt of a part that is to be looked at again, or null. */
  public String prompt(String part) {
    return told == null ? null : Part.of(part).map(told.prompts()::get).orElse(null);
  }

  private boolean empty(Part part) {
    String text = switch (part) {
      case BARS -> bars().blank() ? "" : "drawn";
      case EQUATION -> parts().equation();
      case ANSWER -> parts().answer();
      case LABEL -> parts().label();
      case ESTIMATE -> parts().estimate();
      case STRATEGY -> "";
    };
    return text == null || text.isBlank();
  }
}
