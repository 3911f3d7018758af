package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.marking.BarsMarker;
import fewermore.story.Comparison;
import fewermore.story.Role;

/**
 * A story as two bars and a gap.
 *
 * @param longer the longer bar, in full length
 * @param shorter the shorter bar
 * @param gap the difference, beside the shorter bar
 */
public record BarsPicture(Piece longer, Piece shorter, Piece gap) {
  /** In hundredths of the page's width. */
  private static final int FULL = 96;
  /** So that a name and a number have room in every bar. */
  private static final int LEAST = 16;

  /**
   * @param who whose amount it is; empty for the gap
   * @param number what stands on it; {@code ?} for the unknown
   * @param width in hundredths, as the class {@code w-<width>}
   */
  public record Piece(String who, String number, boolean unknown, int width) {}

  public static BarsPicture of(AssignedProblem problem) {
    return of(problem.story());
  }

  public static BarsPicture of(Comparison story) {
    int larger = Math.max(1, story.value(Role.LARGER));
    int shortWidth = Math.min(FULL - LEAST, Math.max(2 * LEAST, FULL * story.value(Role.SMALLER) / larger));
    return new BarsPicture(
        piece(story, Role.LARGER, name(story, Role.LARGER), FULL),
        piece(story, Role.SMALLER, name(story, Role.SMALLER), shortWidth),
        piece(story, Role.DIFFERENCE, "", FULL - shortWidth));
  }

  /** Whose bar it is: a person, or the kind of thing where nobody is named. */
  static String name(Comparison story, Role role) {
    return BarsMarker.name(story, role);
  }

  private static Piece piece(Comparison story, Role role, String who, int width) {
    boolean unknown = story.unknown() == role;
    return new Piece(who, unknown ? "?" : Integer.toString(story.value(role)), unknown, width);
  }

  /** For those who listen: "Theo 52. Mara unknown. The gap is 14." */
  public String aloud() {
    return longer.who + " " + said(longer) + ". " + shorter.who + " " + said(shorter) + ". The gap is " + said(gap) + ".";
  }

  private static String said(Piece piece) {
    return piece.unknown ? "unknown" : piece.number;
  }
}
