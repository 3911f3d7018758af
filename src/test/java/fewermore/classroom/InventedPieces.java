package fewermore.classroom;

import fewermore.classroom.InventedClass.Day;
import fewermore.classroom.InventedClass.Sent;
import fewermore.classroom.InventedClass.Visit;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.problem.Problem;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** An invented class's raw work through the marker, as it would come back from the store. */
public final class InventedPieces {
  public final List<Child> children = new ArrayList<>();
  public final List<PieceOfWork> pieces = new ArrayList<>();

  /** The class as it is at four in the afternoon of a day. */
  public static InventedPieces of(int size, LocalDate day, ZoneId zone, long seed) {
    return of(InventedClass.of(size, day.atTime(LocalTime.of(16, 0)).atZone(zone).toInstant(), zone, seed));
  }

  public static InventedPieces of(InventedClass invented) {
    return new InventedPieces(invented);
  }

  private InventedPieces(InventedClass invented) {
    for (InventedChild child : invented.children()) {
      children.add(new Child(children.size() + 1, 1, child.name(), child.picture().id(), child.picture().ground(), "en"));
    }
    long id = 1;
    for (Day day : invented.days()) {
      List<AssignedProblem> problems = new ArrayList<>();
      for (Problem problem : day.problems()) {
        problems.add(new AssignedProblem(id++, problem.story(), problem.scenario(), problem.seed(),
            problem.english().sentences().stream().map(sentence -> sentence.text()).toList(), List.of()));
      }
      day.visits().forEach(visit -> add(day, visit, problems));
    }
  }

  private void add(Day day, Visit visit, List<AssignedProblem> problems) {
    Map<Integer, List<HandIn>> byProblem = new LinkedHashMap<>();
    for (Sent each : visit.sent()) {
      if (each.kind() != SentItem.Kind.HANDED_IN) {
        continue;
      }
      AssignedProblem problem = problems.get(each.problem());
      Marks marks = Marker.mark(problem.story(), each.parts());
      Instant told = Signs.of(marks, false).containsValue(Sign.LOOK_AGAIN) ? each.at() : null;
      List<HandIn> tries = byProblem.computeIfAbsent(each.problem(), none -> new ArrayList<>());
      tries.add(new HandIn("w" + visit.child() + "-" + problem.id(), "p", tries.size() + 1, each.at(), day.date(),
          "s" + visit.child() + day.date(), "Otter", false, told, each.parts(), marks));
    }
    byProblem.forEach((problem, tries) ->
        pieces.add(new PieceOfWork(children.get(visit.child()), problems.get(problem), tries)));
  }
}
