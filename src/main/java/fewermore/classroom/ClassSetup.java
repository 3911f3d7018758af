package fewermore.classroom;

import fewermore.marking.Part;
import java.time.LocalDate;
import java.util.Set;

/**
 * How a class is set up: what a set is given with where the teacher says nothing else, and how long all of it is kept.
 *
 * @param usualTries hand-ins allowed a problem, the first included; {@link #FEWEST_TRIES} to {@link #MOST_TRIES}
 * @param usualParts the parts of the work that are asked; never empty
 * @param tellLater when true a tablet is told nothing but that the work is there
 * @param keptUntil the day the teacher means to erase the class, or null
 * @param closedOn the day the class was closed for a new year, after which it can only be read; null while it is open
 */
public record ClassSetup(
    int usualTries, Set<Part> usualParts, boolean tellLater, LocalDate keptUntil, LocalDate closedOn) {
  public static final int FEWEST_TRIES = 1;
  public static final int MOST_TRIES = 5;

  public ClassSetup {
    usualParts = Set.copyOf(usualParts);
    if (usualTries < FEWEST_TRIES || usualTries > MOST_TRIES || usualParts.isEmpty()) {
      throw new IllegalArgumentException("not a way to set up a class: " + this);
    }
  }
}
