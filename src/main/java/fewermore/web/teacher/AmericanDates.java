package fewermore.web.teacher;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Dates as a teacher in the US writes them. Files use ISO dates instead. */
public final class AmericanDates {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE, MMM d", Locale.US);
  private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("MMM d", Locale.US);
  private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE, MMMM d", Locale.US);
  private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE, MMM d, h:mm a", Locale.US);

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("h:mm a", Locale.US);

  private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("h:mm", Locale.US);

  private AmericanDates() {}

  /** {@code 1:05}, where the half of the day is plain. */
  public static String hour(Instant at, ZoneId zone) {
    return HOUR.format(at.atZone(zone));
  }

  /** {@code 1:05 PM} */
  public static String clock(Instant at, ZoneId zone) {
    return CLOCK.format(at.atZone(zone));
  }

  /** {@code Wed, Nov 25} */
  public static String day(LocalDate day) {
    return DAY.format(day);
  }

  /** {@code Nov 25} */
  public static String shortDay(LocalDate day) {
    return SHORT.format(day);
  }

  /** {@code Wednesday, November 25} */
  public static String longDay(LocalDate day) {
    return LONG.format(day);
  }

  /** {@code Wed, Nov 25, 1:05 PM} */
  public static String moment(Instant at, ZoneId zone) {
    return MOMENT.format(at.atZone(zone));
  }

  /** {@code Nov 23 to 25}, {@code Oct 30 to Nov 2}, or one day. */
  public static String span(LocalDate from, LocalDate to) {
    if (from.equals(to)) {
      return shortDay(from);
    }
    boolean sameMonth = from.getMonth() == to.getMonth() && from.getYear() == to.getYear();
    return shortDay(from) + " to " + (sameMonth ? to.getDayOfMonth() : shortDay(to));
  }
}
