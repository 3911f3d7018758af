package fewermore.web.child;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Come in without today's door: the four pictures on the Board are tapped in order.
 * {@code pages/child/door.html}.
 *
 * <p>The form posts to {@code /door}: {@code csrf}; {@code taps}, the pictures tapped so far as ids with
 * commas between; {@code tap}, one more picture, the button just pressed. Without script it is posted
 * once a tap, with script once with all four in {@code taps} and no {@code tap}.
 *
 * @param language {@code en} or {@code es}
 * @param choices the pictures to choose from, the Board's four among them
 * @param tapped what was tapped so far, at most three
 * @param problem what stands between this tablet and the door
 */
public record DoorPage(String language, List<ShownPicture> choices, List<ShownPicture> tapped, Problem problem) {
  /** How many pictures open the door. */
  public static final int LENGTH = 4;

  /** What to say above the pictures. */
  public enum Problem {
    NONE,
    /** These four were not the Board's. */
    OTHER_PICTURES,
    /** Too many tries in a minute. */
    WAIT_A_MINUTE
  }

  public DoorPage {
    choices = List.copyOf(choices);
    tapped = List.copyOf(tapped);
  }

  public boolean otherPictures() {
    return problem == Problem.OTHER_PICTURES;
  }

  public boolean waitAMinute() {
    return problem == Problem.WAIT_A_MINUTE;
  }

  /** The value of the hidden field {@code taps}. */
  public String taps() {
    return tapped.stream().map(ShownPicture::id).collect(Collectors.joining(","));
  }

  /** Empty frames still to be filled. */
  public int left() {
    return LENGTH - tapped.size();
  }
}
