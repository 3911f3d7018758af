package fewermore.web.child;

import fewermore.marking.Bars;
import fewermore.marking.Part;
import fewermore.marking.Reading;
import fewermore.marking.Sign;
import fewermore.marking.Work;
import java.util.List;
import java.util.Map;

/**
 * One of today's problems as a child sees it. Holds nothing that gives the answer away.
 *
 * @param work id of this child's work on this problem, made by the laptop
 * @param number from 1, in the order of the set
 * @param sentences the story, one sentence an element
 * @param spoken the same sentences as a voice should say them
 * @param lanes the two that are compared, in the order the story names them
 * @param numbers the story's numbers in the order they stand there, extras included
 * @param asked the parts the teacher asks for, in the order they are shown
 * @param triesLeft how many more times it may be handed in
 * @param draft the newest work, or null
 * @param told what was said of the last hand-in, or null
 * @param handUp whether the child has asked for the teacher and she has not been yet
 * @param recorded whether the teacher's own voice can read it
 * @param than the given number that an estimate may be said to be bigger or smaller than
 */
public record ShownProblem(
    String work, int number, List<String> sentences, List<String> spoken, List<Lane> lanes, List<Integer> numbers,
    List<Part> asked, int triesLeft, Draft draft, Told told, boolean handUp, boolean recorded, int than) {
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

  /** A problem nobody has asked about, without a recording; estimates go by its largest number. */
  public ShownProblem(
      String work, int number, List<String> sentences, List<String> spoken, List<Lane> lanes, List<Integer> numbers,
      List<Part> asked, int triesLeft, Draft draft, Told told) {
    this(work, number, sentences, spoken, lanes, numbers, asked, triesLeft, draft, told, false, false,
        numbers.stream().mapToInt(Integer::intValue).max().orElse(0));
  }

  public String firstLine() {
    return sentences.get(0);
  }

  public boolean asks(String part) {
    return asked.stream().anyMatch(each -> each.id().equals(part));
  }

  /** The parts that are work: what was asked, without pointing at the story. */
  public List<Part> worked() {
    return asked.stream().filter(part -> part != Part.READING).toList();
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

  /** The reading to fill a form with; never null. */
  public Reading reading() {
    return parts().reading() == null ? Reading.EMPTY : parts().reading();
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

  /** The two sides an estimate may take, as they are sent. */
  public List<String> sides() {
    return List.of("bigger than " + than, "smaller than " + than);
  }

  /** The fields of the plain form for a strategy, filled with the newest work; never null. */
  public Map<String, String> strategyFields() {
    return StrategyForm.fields(parts().strategy());
  }

  public String strategyState() {
    return state(Part.STRATEGY);
  }

  private boolean empty(Part part) {
    String text = switch (part) {
      case BARS -> bars().blank() ? "" : "drawn";
      case EQUATION -> parts().equation();
      case ANSWER -> parts().answer();
      case LABEL -> parts().label();
      case ESTIMATE -> parts().estimate();
      case READING -> reading().blank() ? "" : "pointed at";
      case STRATEGY -> parts().strategy() == null || parts().strategy().blank() ? "" : "worked";
    };
    return text == null || text.isBlank();
  }
}
