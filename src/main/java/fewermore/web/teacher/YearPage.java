package fewermore.web.teacher;

import fewermore.classroom.ClassSetup;
import fewermore.classroom.Classroom;
import java.time.LocalDate;
import java.util.List;

/**
 * Until when a class is kept, the end of its year, and erasing it. {@code pages/teacher/year.html}. Forms:
 * {@code /setup/year/until}: {@code until}, ISO; {@code /setup/year/close}, {@code /setup/year/open}: nothing;
 * {@code /setup/year/erase}: {@code typed}, the class's name.
 *
 * @param until ISO, or empty
 * @param untilWords in American words, or null
 * @param past whether that day is over
 * @param closed since when the class can only be read, in words, or null
 */
public record YearPage(
    String className, String until, String untilWords, boolean past, String closed, int children, String problem) {
  /** What is erased and what remains. {@code pages/teacher/erased.html}. */
  public record Erased(String what, List<String> remains) {}

  public static YearPage of(Classroom room, ClassSetup setup, LocalDate today, int children, String problem) {
    LocalDate until = setup.keptUntil();
    return new YearPage(room.name(), until == null ? "" : until.toString(),
        until == null ? null : AmericanDates.longDay(until) + ", " + until.getYear(),
        until != null && until.isBefore(today),
        setup.closedOn() == null ? null : AmericanDates.longDay(setup.closedOn()) + ", " + setup.closedOn().getYear(),
        children, problem);
  }
}
