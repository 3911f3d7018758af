package fewermore.web.teacher;

import fewermore.classroom.Classroom;
import java.time.Instant;
import java.util.List;

/**
 * What stands around every page of a signed-in teacher.
 *
 * @param classroom id of the class shown, for forms about it
 * @param className the class's name; on every page, so that no work is read as another class's
 * @param invented whether the class is the made-up one
 * @param here the place that is open, or null on a page between places
 * @param when the day and time where the class is
 * @param closed whether the class is of a year that is over and can only be read
 * @param substitute whether a substitute looks at it: fewer places, no child's record
 * @param hasOthers whether she has another class to change to
 */
public record Frame(
    long classroom, String className, boolean invented, Place here, String when, boolean closed, boolean substitute,
    boolean hasOthers) {
  public static Frame of(Classroom room, Place here, Instant now) {
    return new Frame(room.id(), room.name(), room.invented(), here, AmericanDates.moment(now, room.zone()), false,
        false, false);
  }

  public Frame in(boolean closedClass, boolean forSubstitute, boolean others) {
    return new Frame(classroom, className, invented, here, when, closedClass, forSubstitute, others);
  }

  public List<Place> places() {
    return substitute ? Place.SUBSTITUTES : Place.ALL;
  }
}
