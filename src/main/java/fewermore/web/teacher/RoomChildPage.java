package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.Room;
import fewermore.classroom.RoomFacts;
import fewermore.classroom.RoomFacts.Late;
import fewermore.classroom.RoomFacts.Sat;
import fewermore.classroom.RoomFacts.Sent;
import fewermore.classroom.Seat;
import fewermore.classroom.SentItem;
import fewermore.marking.Part;
import fewermore.marking.Reading;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * One child's work of today as it stands. {@code pages/teacher/room-child.html}, {@code GET /room/child/{child}}.
 * Forms under the same address: {@code /been}, {@code /take}, {@code /absent}, {@code /here},
 * {@code /end} ({@code sitting}).
 *
 * @param stuck whether she waits for the teacher
 * @param notes what else is to be seen, each a few words
 * @param toTake pieces of work begun and not handed in
 */
public record RoomChildPage(
    ShownChild child, SeatTile tile, boolean stuck, boolean absent, String why, List<String> notes, List<OnTablet> tablets,
    List<Standing> problems, List<LateWork> late, int toTake) {
  public RoomChildPage {
    notes = List.copyOf(notes);
    tablets = List.copyOf(tablets);
    problems = List.copyOf(problems);
    late = List.copyOf(late);
  }

  public record OnTablet(String sitting, String name, String since) {}

  public record LateWork(String href, String when) {}

  /**
   * A problem and what stands there.
   *
   * @param says how it stands, for example {@code handed in 10:12 AM}
   * @param href of the newest hand-in, or null where there is none
   * @param parts empty where nothing was sent yet
   * @param empty what is said of a part with nothing in it
   */
  public record Standing(int number, List<String> sentences, String says, String href, List<PartNow> parts, String empty) {}

  /** @param line the equation; @param text an answer or label; @param bars what was drawn: one of them, or all null */
  public record PartNow(String id, WrittenLine line, String text, WorkView.DrawnBars bars) {
    public boolean blank() {
      return line == null && text == null && bars == null;
    }
  }

  public static RoomChildPage of(Seat seat, RoomFacts facts, ZoneId zone) {
    Child child = seat.child();
    List<Sent> sent = facts.sent().stream()
        .filter(item -> item.child() == child.id() && item.kind() != SentItem.Kind.HELP).toList();
    List<Standing> standings = new ArrayList<>();
    int toTake = 0;
    for (ProblemSet set : facts.setsOf(child.id())) {
      for (AssignedProblem problem : set.problems()) {
        List<Sent> own = sent.stream().filter(item -> item.problem() == problem.id()).toList();
        boolean handedIn = own.stream().anyMatch(item -> item.kind() == SentItem.Kind.HANDED_IN);
        toTake += handedIn || own.stream().allMatch(item -> Room.blank(item.parts())) ? 0 : 1;
        standings.add(standing(standings.size() + 1, problem, set, own, zone));
      }
    }
    List<OnTablet> tablets = facts.sittings().stream().map(Sat::sitting)
        .filter(sitting -> sitting.open() && sitting.child().id() == child.id())
        .map(sitting -> new OnTablet(sitting.id(), sitting.tabletName(), AmericanDates.clock(sitting.startedAt(), zone)))
        .toList();
    List<LateWork> late = facts.late().getOrDefault(child.id(), List.of()).stream()
        .map(each -> new LateWork(href(each), AmericanDates.clock(each.arrived(), zone))).toList();
    SeatTile tile = SeatTile.of(seat, zone);
    List<String> notes = new ArrayList<>(SeatTile.notes(seat));
    if (seat.newTablet()) {
      notes.add("new tablet");
    }
    return new RoomChildPage(ShownChild.of(child), tile, seat.status() == Seat.Status.STUCK,
        seat.why() == Seat.Why.MARKED_ABSENT, seat.why() == Seat.Why.NO_CHANGE ? tile.where() : SeatTile.why(seat, zone), notes, tablets, standings, late, toTake);
  }

  private static String href(Late late) {
    return "/work/" + late.work() + "/" + late.page() + "/" + late.seq();
  }

  private static Standing standing(
      int number, AssignedProblem problem, ProblemSet set, List<Sent> own, ZoneId zone) {
    if (own.isEmpty()) {
      return new Standing(number, problem.sentences(), "nothing yet", null, List.of(), "");
    }
    Sent newest = own.get(own.size() - 1);
    List<Sent> handIns = own.stream().filter(item -> item.kind() == SentItem.Kind.HANDED_IN).toList();
    Sent last = handIns.isEmpty() ? null : handIns.get(handIns.size() - 1);
    String at = AmericanDates.clock(newest.written(), zone);
    String says = newest != last ? "not handed in" + (last == null ? "" : " again") + ", changed " + at
        : (last.taken() ? "you took it as handed in, written " : "handed in ") + at
            + (handIns.size() > 1 ? ", try " + handIns.size() + " of " + set.tries() : "");
    List<PartNow> parts = set.asks().stream().sorted().map(part -> part(problem.story(), part, newest.parts())).toList();
    return new Standing(number, problem.sentences(), says,
        last == null ? null : "/work/" + last.work() + "/" + last.page() + "/" + last.seq(), parts,
        newest == last ? "left blank" : "nothing yet");
  }

  private static PartNow part(Comparison story, Part part, Work work) {
    if (Room.blank(work, part)) {
      return new PartNow(part.id(), null, null, null);
    }
    return switch (part) {
      case BARS -> new PartNow(part.id(), null, null, WorkView.drawn(story, work.bars()));
      case EQUATION -> new PartNow(part.id(), WrittenLine.of(work.equation()), null, null);
      case ANSWER -> new PartNow(part.id(), null, work.answer(), null);
      case LABEL -> new PartNow(part.id(), null, work.label(), null);
      case ESTIMATE -> new PartNow(part.id(), null, work.estimate(), null);
      case STRATEGY -> new PartNow(part.id(), null, work.strategy().kind().id() + ", "
          + work.strategy().steps().size() + (work.strategy().steps().size() == 1 ? " step" : " steps"), null);
      case READING -> new PartNow(part.id(), null, pointedAt(work.reading()), null);
    };
  }

  /** "the question “How many …?” · 28, 15". */
  private static String pointedAt(Reading reading) {
    String question = reading.question() == null || reading.question().isBlank() ? "" : "“" + reading.question() + "”";
    String known = String.join(", ", reading.known());
    return question.isEmpty() || known.isEmpty() ? question + known : question + " · " + known;
  }
}
