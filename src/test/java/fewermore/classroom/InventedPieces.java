package fewermore.classroom;

import fewermore.classroom.InventedClass.InventedChild;
import fewermore.classroom.InventedClass.InventedDay;
import fewermore.classroom.InventedClass.InventedSitting;
import fewermore.classroom.InventedClass.InventedTry;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Sign;
import fewermore.marking.Signs;
import fewermore.problem.Problem;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** An invented class's raw work through the marker, as it would come back from the store. */
public final class InventedPieces {
  public final List<Child> children = new ArrayList<>();
  public final List<PieceOfWork> pieces = new ArrayList<>();

  public InventedPieces(InventedClass invented) {
    for (InventedChild child : invented.children()) {
      children.add(new Child(children.size() + 1, 1, child.name(), child.picture(), child.ground(), "en"));
    }
    long id = 1;
    for (InventedDay day : invented.days()) {
      List<AssignedProblem> problems = new ArrayList<>();
      for (Problem problem : day.problems()) {
        problems.add(new AssignedProblem(id++, problem.story(), problem.scenario(), problem.seed(),
            problem.english().sentences().stream().map(sentence -> sentence.text()).toList(), List.of()));
      }
      day.sittings().forEach(sitting -> add(day, sitting, problems));
    }
  }

  private void add(InventedDay day, InventedSitting sitting, List<AssignedProblem> problems) {
    Map<Integer, List<HandIn>> byProblem = new LinkedHashMap<>();
    for (InventedTry each : sitting.tries()) {
      AssignedProblem problem = problems.get(each.problem());
      Marks marks = Marker.mark(problem.story(), each.work());
      Instant told = Signs.of(marks, false).containsValue(Sign.LOOK_AGAIN) ? each.at() : null;
      byProblem.computeIfAbsent(each.problem(), none -> new ArrayList<>()).add(new HandIn(
          "w" + sitting.child() + "-" + problem.id(), "p", each.seq(), each.at(), day.day(),
          "s" + sitting.child() + day.day(), "Otter", false, told, each.work(), marks));
    }
    byProblem.forEach((problem, tries) ->
        pieces.add(new PieceOfWork(children.get(sitting.child()), problems.get(problem), tries)));
  }
}
