package fewermore.web.child;

import fewermore.marking.Part;
import fewermore.marking.Work;

/**
 * One problem as a plain form, for a tablet without script. {@code pages/child/work.html}.
 *
 * <p>The form posts to {@code /mine/<work>}: {@code csrf}, {@code longer} (the id of a lane, or nothing),
 * {@code longerBar}, {@code shorterBar}, {@code gap} (a number, {@code ?} or nothing), {@code equation},
 * {@code answer}, {@code label}, {@code estimate} with {@code estimateSide}; a part that is not asked sends no field.
 *
 * @param language {@code en} or {@code es}
 * @param of how many problems today's set has
 * @param next id of the work on the problem after this one, or null after the last
 */
public record WorkPage(String language, Me me, ShownProblem problem, int of, String next) {
  /** What stands in a field for a place of the bars: the unknown sign as a child writes it there. */
  public String onBar(String place) {
    return "x".equals(place) ? "?" : place;
  }

  /** What stands in the field of a part other than the bars. */
  public String written(String part) {
    Work work = problem.parts();
    String text = switch (part) {
      case "equation" -> work.equation();
      case "answer" -> work.answer();
      case "label" -> work.label();
      case "estimate" -> problem.sides().stream().anyMatch(this::side) ? "" : work.estimate();
      default -> throw new IllegalArgumentException(part);
    };
    return text == null ? "" : text;
  }

  /** Whether this side of the estimate was chosen. */
  public boolean side(String side) {
    return side.equals(problem.parts().estimate());
  }

  /** How far a part is; see {@link ShownProblem#state}. */
  public String stateOf(String part) {
    return problem.state(Part.of(part).orElseThrow());
  }

  /** Whether it may be handed in (again). */
  public boolean open() {
    return problem.triesLeft() > 0;
  }

  /** Whether every part that was asked fits. */
  public boolean allFits() {
    return problem.handedIn() && problem.asked().stream().filter(part -> part != Part.READING).allMatch(part -> problem.state(part).equals("fits"));
  }
}
