package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.ClassGroups;
import fewermore.classroom.Classroom;
import fewermore.classroom.SeatedPair;
import fewermore.problem.NumberRange;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.reasoning.GroupPlace;
import fewermore.reasoning.ReasoningTable;
import fewermore.store.ReasoningStore.Kept;
import fewermore.web.teacher.GroupsPage;
import fewermore.web.teacher.Place;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Whom to sit with: proposed from the work, changed by the teacher's hand. */
final class GroupsHandlers {
  private final TeacherHandlers teacher;
  private final Services services;

  GroupsHandlers(TeacherHandlers teacher) {
    this.teacher = teacher;
    this.services = teacher.services;
  }

  void groups(Context request) {
    teacher.inClass(request, classroom -> {
      LocalDate today = services.today(classroom);
      List<Child> children = services.classes.children(classroom.id());
      List<SeatedPair> pairs = services.reasoning.pairs(classroom.id());
      Set<String> names = children.stream().map(Child::name).collect(Collectors.toSet());
      teacher.render(request, "teacher/groups", GroupsPage.of(today, today(classroom, today, pairs), pairs, children,
          new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, names)),
          teacher.frame(classroom, Place.GROUPS), Map.of());
    });
  }

  private ClassGroups today(Classroom classroom, LocalDate today, List<SeatedPair> pairs) {
    ReasoningTable table = ReasoningTable.standard();
    List<ChildReasoning> now = FindingsHandlers.found(services, classroom, today).children();
    Map<Long, Kept> kept = services.reasoning.kept(classroom.id(), today);
    Map<Long, GroupPlace> places = places(now, kept, pairs, table);
    Optional<LocalDate> lastKept = services.reasoning.lastKept(classroom.id(), today);
    Optional<LocalDate> lastWork = now.stream().flatMap(child -> child.work().stream())
        .map(piece -> piece.evidence().day()).filter(day -> day.isBefore(today)).max(LocalDate::compareTo);
    Optional<LocalDate> before = lastKept.filter(day -> lastWork.isEmpty() || !day.isBefore(lastWork.get())).or(() -> lastWork);
    Map<Long, GroupPlace> placesBefore = new LinkedHashMap<>();
    Map<Long, ChildReasoning> then = new LinkedHashMap<>();
    before.ifPresent(day -> {
      List<ChildReasoning> children = FindingsHandlers.found(services, classroom, day).children();
      children.forEach(child -> then.put(child.child().id(), child));
      placesBefore.putAll(places(children, services.reasoning.kept(classroom.id(), day), pairs, table));
    });
    return ClassGroups.of(now, places, !kept.isEmpty(), kept.entrySet().stream()
        .filter(entry -> entry.getValue().byHand()).map(Map.Entry::getKey).toList(), placesBefore, then, table);
  }

  /** As kept; else as proposed. */
  private static Map<Long, GroupPlace> places(
      List<ChildReasoning> children, Map<Long, Kept> kept, List<SeatedPair> pairs, ReasoningTable table) {
    if (kept.isEmpty()) {
      return ClassGroups.propose(children, pairs, table);
    }
    Map<Long, GroupPlace> places = new LinkedHashMap<>();
    kept.forEach((child, place) -> places.put(child, place.place()));
    return places;
  }

  /** Moves one child and keeps the places of all the others as they are shown. */
  void move(Context request) {
    teacher.inClass(request, classroom -> {
      Child child = child(request, classroom, "child");
      GroupPlace to = GroupPlace.of(TeacherHandlers.form(request, "place"))
          .orElseThrow(() -> new Refusal(422, "A group from the list was expected. Go back and choose one."));
      LocalDate today = services.today(classroom);
      Map<Long, Kept> kept = services.reasoning.kept(classroom.id(), today);
      Map<Long, GroupPlace> places = places(FindingsHandlers.found(services, classroom, today).children(), kept,
          services.reasoning.pairs(classroom.id()), ReasoningTable.standard());
      Map<Long, Kept> next = new LinkedHashMap<>();
      ClassGroups.moved(places, child.id(), to).forEach((id, place) -> next.put(id, new Kept(place,
          id == child.id() || kept.containsKey(id) && kept.get(id).byHand())));
      services.reasoning.keep(classroom.id(), today, next);
      back(request);
    });
  }

  void anew(Context request) {
    teacher.inClass(request, classroom -> {
      services.reasoning.keep(classroom.id(), services.today(classroom), Map.of());
      back(request);
    });
  }

  void keepPair(Context request) {
    teacher.inClass(request, classroom -> {
      Child one = child(request, classroom, "one");
      Child other = child(request, classroom, "other");
      if (one.id() == other.id()) {
        throw new Refusal(422, "Two different children were expected. Go back and choose another one.");
      }
      services.reasoning.keep(classroom.id(), new SeatedPair(one.id(), other.id(),
          TeacherHandlers.form(request, "together").equals("yes")));
      back(request);
    });
  }

  void forgetPair(Context request) {
    teacher.inClass(request, classroom -> {
      services.reasoning.forget(classroom.id(), child(request, classroom, "one").id(),
          child(request, classroom, "other").id());
      back(request);
    });
  }

  private Child child(Context request, Classroom classroom, String field) {
    return TabletHandlers.number(TeacherHandlers.form(request, field))
        .flatMap(id -> services.classes.child(classroom.id(), id)).orElseThrow(Refusal::notFound);
  }

  private static void back(Context request) {
    request.redirect("/groups", HttpStatus.SEE_OTHER);
  }
}
