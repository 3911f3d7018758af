package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Moved;
import java.time.ZoneId;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/**
 * Moving one work to the right child, on the page of that work. {@code pages/teacher/moving.html}. The form posts
 * {@code child} and {@code note} to {@code /work/{work}/move}; another posts nothing to {@code /work/{work}/confirm}.
 *
 * @param notes what was moved, oldest first
 * @param waits whether the last move waits for the teacher's word
 */
public record MovingView(String work, List<String> notes, boolean waits, List<ShownChild> children) {
  /** Longest note kept with a move, in characters. */
  public static final int LONGEST_NOTE = 300;

  public MovingView {
    notes = List.copyOf(notes);
    children = List.copyOf(children);
  }

  public static MovingView of(String work, List<Moved> moves, Collection<Child> classList, ZoneId zone) {
    List<String> notes = moves.stream().map(move -> "Moved from " + move.from().name() + " to " + move.to().name() + ", "
        + AmericanDates.moment(move.at(), zone) + (move.note().isBlank() ? "." : ": “" + move.note() + "”")).toList();
    return new MovingView(work, notes,
        moves.stream().anyMatch(move -> move.state() == Moved.State.WAITING),
        classList.stream().sorted(Comparator.comparing(Child::name)).map(ShownChild::of).toList());
  }

  public int longestNote() {
    return LONGEST_NOTE;
  }
}
