package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Moved;
import fewermore.store.MovingStore.Seat;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * Who sat where today, and work that was moved. {@code pages/teacher/sittings.html}, {@code GET /sittings}.
 *
 * <p>Forms: {@code POST /sittings/{id}/end}; {@code POST /sittings/{id}/call}: {@code text};
 * {@code POST /sittings/{id}/move}: {@code child}, {@code note}; {@code POST /work/{work}/confirm}.
 *
 * @param open those who sit now, in the order of the list
 * @param over sittings of today that are over, newest first
 * @param moved work that waits for the teacher's word
 */
public record SittingsPage(List<Row> open, List<Row> over, List<MovedWork> moved, List<ShownChild> children) {
  /** What the teacher can call to a tablet: the key of the child's text, and the sentence in English. */
  public record Say(String text, String sentence) {}

  /**
   * A sitting.
   *
   * @param state how it stands, in words
   * @param also other tablets this child sits at now, in words; null when there is none
   */
  public record Row(String id, ShownChild child, String tablet, String since, String came, String state, String also) {}

  /** @param href the page of its newest hand-in, or null when it was never handed in */
  public record MovedWork(String work, ShownChild from, ShownChild to, String when, String note, String href) {}

  private static final Map<String, String> ENDS = Map.of("done", "“I’m done”", "next child", "the next child came in",
      "teacher", "you ended it", "night", "over at night", "moved", "moved to another child");

  public SittingsPage {
    open = List.copyOf(open);
    over = List.copyOf(over);
    moved = List.copyOf(moved);
    children = List.copyOf(children);
  }

  /** @param page the address of a work's newest hand-in, or null */
  public static SittingsPage of(Classroom room, List<Seat> seats, Collection<Child> classList, List<Moved> waiting,
      UnaryOperator<String> page) {
    Map<Long, List<Seat>> openOf = seats.stream().filter(seat -> seat.sitting().open())
        .collect(Collectors.groupingBy(seat -> seat.sitting().child().id()));
    List<Row> open = seats.stream().filter(seat -> seat.sitting().open())
        .sorted(Comparator.comparing((Seat seat) -> seat.sitting().child().name()))
        .map(seat -> row(seat, room, openOf.get(seat.sitting().child().id()))).toList();
    List<Row> over = seats.stream().filter(seat -> !seat.sitting().open())
        .map(seat -> row(seat, room, List.of())).toList();
    List<MovedWork> moved = waiting.stream().map(move -> new MovedWork(move.work(), ShownChild.of(move.from()),
        ShownChild.of(move.to()), AmericanDates.moment(move.at(), room.zone()), move.note(), page.apply(move.work())))
        .toList();
    return new SittingsPage(open, over, moved,
        classList.stream().sorted(Comparator.comparing(Child::name)).map(ShownChild::of).toList());
  }

  private static Row row(Seat seat, Classroom room, List<Seat> same) {
    List<String> elsewhere = same.stream().map(each -> each.sitting().tabletName())
        .filter(tablet -> !tablet.equals(seat.sitting().tabletName())).distinct().toList();
    String came = seat.handedIn() == 0 && seat.onlyDrafts() == 0 ? "nothing yet"
        : seat.handedIn() + " handed in"
            + (seat.onlyDrafts() == 0 ? "" : ", " + seat.onlyDrafts() + " begun and not handed in");
    return new Row(seat.sitting().id(), ShownChild.of(seat.sitting().child()), seat.sitting().tabletName(),
        AmericanDates.clock(seat.sitting().startedAt(), room.zone()), came,
        seat.sitting().open() ? "sits here now"
            : "until " + AmericanDates.clock(seat.sitting().endedAt(), room.zone()) + ": "
                + ENDS.getOrDefault(String.valueOf(seat.why()), "over"),
        elsewhere.isEmpty() ? null : "Also on " + String.join(" and ", elsewhere) + ". Both versions are kept whole.");
  }

  public List<Say> says() {
    return List.of(new Say("call.come", "Please come to your teacher."), new Say("call.board",
        "Please look at the board."), new Say("call.hand-in", "Please hand in what you have."));
  }

  public int longestNote() {
    return MovingView.LONGEST_NOTE;
  }
}
