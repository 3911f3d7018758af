package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Seat;
import fewermore.web.child.Drawings;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * One child's tile in the room.
 *
 * @param status the word: {@code working}, {@code stuck}, {@code waiting}, {@code done}, {@code away}
 * @param where which problem and part, or since when; short enough for a tile
 * @param tablet the tablet's name with what is to be known of it; empty where she is on none
 * @param note what else the teacher should see, the most urgent; empty when there is nothing
 * @param aloud all of it as a sentence, for those who listen
 */
public record SeatTile(
    long id, String name, String picture, String ground, String status, String where, String tablet, String note,
    String aloud) {

  static SeatTile of(Seat seat, ZoneId zone) {
    Child child = seat.child();
    List<String> notes = notes(seat);
    String note = notes.isEmpty() ? "" : notes.get(0);
    String where = where(seat, zone);
    String tablet = tablet(seat);
    String aloud = child.name() + ": " + seat.status().word() + ", " + where
        + (tablet.isEmpty() ? "" : ". Tablet " + tablet) + (notes.isEmpty() ? "" : ". " + String.join(", ", notes)) + ".";
    return new SeatTile(child.id(), child.name(), child.picture(), child.ground(), seat.status().word(), where, tablet,
        note, aloud);
  }

  static List<String> notes(Seat seat) {
    List<String> notes = new ArrayList<>();
    if (seat.tablets() > 1) {
      notes.add(seat.tablets() + " tablets");
    }
    if (seat.late() > 0) {
      notes.add("late work");
    }
    if (seat.noVoice()) {
      notes.add("no voice");
    }
    return notes;
  }

  private static String tablet(Seat seat) {
    if (seat.tablet() == null) {
      return "";
    }
    return seat.tablet() + (seat.newTablet() ? ", new" : "") + (seat.heard() == Seat.Heard.QUIET ? ", quiet" : "");
  }

  /** Which problem and part, or since when. */
  static String where(Seat seat, ZoneId zone) {
    String problem = "problem " + seat.problem();
    return switch (seat.why()) {
      case ASKED_FOR_HELP, ON_A_PART -> seat.problem() == 0 ? "just came in"
          : seat.part() == null ? problem : problem + ", " + seat.part().id();
      case NO_TRIES_LEFT -> problem + ", no tries";
      case NO_CHANGE -> "no change since " + AmericanDates.hour(seat.since(), zone);
      case LOOKING_AGAIN -> problem + ", look again";
      case BETWEEN_PROBLEMS -> seat.handedIn() + " of " + seat.problems() + " handed in";
      case JUST_CAME_IN -> "just came in";
      case NOT_COME_IN -> "not come in yet";
      case NOT_HEARD -> "not heard since " + AmericanDates.hour(seat.since(), zone);
      case LEFT_EARLY -> "left, " + seat.handedIn() + " of " + seat.problems() + " done";
      case NO_PROBLEMS -> "no problems given yet";
      case ALL_HANDED_IN -> seat.problems() == 1 ? "handed in" : "all " + seat.problems() + " handed in";
      case MARKED_ABSENT -> "marked absent";
    };
  }

  /** Why a child is stuck, beside her name. */
  static String why(Seat seat, ZoneId zone) {
    return switch (seat.why()) {
      case ASKED_FOR_HELP -> "asked for help";
      case NO_TRIES_LEFT -> "no tries left";
      case NO_CHANGE -> "no change";
      default -> where(seat, zone);
    };
  }

  public String drawing() {
    return Drawings.of(picture);
  }

  /** The name of the status's shape in the sprite. */
  public String icon() {
    return icon(status);
  }

  static String icon(String status) {
    return switch (status) {
      case "working" -> "pencil";
      case "stuck" -> "question";
      case "waiting" -> "wait";
      case "done" -> "check";
      default -> "away";
    };
  }
}
