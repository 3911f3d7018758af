package fewermore.web.teacher;

import fewermore.classroom.RoomFacts;
import fewermore.classroom.Seat;
import fewermore.classroom.Seat.Status;
import fewermore.classroom.Seat.Why;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * The room, live. {@code pages/teacher/room.html}, {@code GET /room}; its stream is {@code GET /live/room}: the whole
 * first, then what changed. Forms: {@code POST /room/been} ({@code child}), {@code /room/pause}, {@code /room/go-on},
 * {@code /room/stuck} ({@code minutes}).
 *
 * @param title who is stuck, as a sentence
 * @param tiles the class in the order of the list; a tile keeps its place
 * @param stuck those to go to first: hands up before all others, the longest waiting first
 * @param moreStuck how many more are stuck than stand in {@code stuck}
 * @param pausedSays null while the children work
 */
public record RoomPage(
    String title, List<SeatTile> tiles, List<Stuck> stuck, int moreStuck, List<Count> counts, String pausedSays,
    long stuckMinutes) {
  public static final int FEWEST_MINUTES = 2;
  public static final int MOST_MINUTES = 10;

  /** Names that fit beside the sentence. */
  private static final int MOST_NAMED = 3;

  public RoomPage {
    tiles = List.copyOf(tiles);
    stuck = List.copyOf(stuck);
    counts = List.copyOf(counts);
  }

  public record Stuck(long id, String name, String why) {}

  public record Count(String status, long many) {
    public String icon() {
      return SeatTile.icon(status);
    }
  }

  /**
   * A pause that is on.
   *
   * @param heard tablets that were answered since, and so show it; @param tablets tablets in use
   */
  public record Paused(Instant since, int heard, int tablets) {}

  /** @param paused null while the children work */
  public static RoomPage of(List<Seat> seats, RoomFacts facts, ZoneId zone, Instant now, Paused paused) {
    List<Seat> stuck = seats.stream().filter(seat -> seat.status() == Status.STUCK)
        .sorted(Comparator.comparing((Seat seat) -> seat.why() != Why.ASKED_FOR_HELP)
            .thenComparing(seat -> seat.since() == null ? Instant.MAX : seat.since())).toList();
    String title = stuck.isEmpty() ? "Nobody is stuck."
        : stuck.size() == 1 ? "1 child is stuck." : stuck.size() + " children are stuck.";
    List<Count> counts = Stream.of(Status.values()).map(status ->
        new Count(status.word(), seats.stream().filter(seat -> seat.status() == status).count())).toList();
    String says = paused == null ? null
        : "Paused since " + AmericanDates.clock(paused.since, zone) + ". " + paused.heard + " of " + paused.tablets
            + (paused.tablets == 1 ? " tablet shows it." : " tablets show it.");
    return new RoomPage(title, seats.stream().map(seat -> SeatTile.of(seat, zone)).toList(),
        stuck.stream().limit(MOST_NAMED)
            .map(seat -> new Stuck(seat.child().id(), seat.child().name(), SeatTile.why(seat, zone))).toList(),
        Math.max(0, stuck.size() - MOST_NAMED), counts, says, facts.stuckAfter().toMinutes());
  }

  public List<Integer> minutes() {
    return List.of(2, 3, 4, 5, 6, 8, 10);
  }
}
