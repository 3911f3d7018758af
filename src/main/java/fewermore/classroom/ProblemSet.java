package fewermore.classroom;

import fewermore.marking.Part;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;

/**
 * The problems of a day for a class, in order.
 *
 * @param given false while the teacher is still choosing: no child sees it
 * @param tries hand-ins allowed a problem, the first included; from 1
 * @param tellLater when true a tablet is told nothing but that the work is there
 * @param asks the parts of the work that are asked
 */
public record ProblemSet(
    long id, long classroom, LocalDate day, boolean given, int tries, boolean tellLater, Set<Part> asks,
    List<AssignedProblem> problems) {
  /** What is asked where the teacher says nothing else. */
  public static final Set<Part> USUAL_PARTS = Set.of(Part.READING, Part.BARS, Part.EQUATION, Part.ANSWER,
      Part.LABEL);

  /** Hand-ins a problem where the teacher says nothing else: the first, and two more after a look again. */
  public static final int USUAL_TRIES = 3;

  public ProblemSet {
    asks = Set.copyOf(asks);
    problems = List.copyOf(problems);
  }
}
