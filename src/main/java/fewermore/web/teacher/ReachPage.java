package fewermore.web.teacher;

import java.util.List;

/**
 * Can tablets reach this laptop? {@code pages/teacher/reach.html}, {@code GET /setup/reach?since=}. The page asks itself
 * again every two seconds; without script the teacher loads it again.
 *
 * <p>Form: {@code POST /setup/reach/network}: {@code address}, one of {@code others}.
 *
 * @param address what a tablet opens to try, or null when there is no network
 * @param change what changed of the address today, as a sentence; or null
 * @param reached devices that came since the page was opened, newest first
 * @param seconds how long the page has waited
 */
public record ReachPage(QrPicture qr, String address, List<String> others, boolean vpn, boolean publicRange,
    String change, List<Reached> reached, long seconds) {
  /** After so many seconds without any device the page asks what the tablet shows. */
  public static final int PATIENCE = 60;

  /** @param able what it can do, in words */
  public record Reached(String address, String browser, String when, String able) {}

  public ReachPage {
    others = List.copyOf(others);
    reached = List.copyOf(reached);
  }

  public static ReachPage of(String address, List<String> others, boolean vpn, boolean publicRange, String change,
      List<Reached> reached, long seconds) {
    return new ReachPage(address == null ? null : QrPicture.of(address), address, others, vpn, publicRange, change,
        reached, seconds);
  }

  /** Nothing came in all that time. */
  public boolean asksWhatItShows() {
    return reached.isEmpty() && seconds >= PATIENCE;
  }
}
