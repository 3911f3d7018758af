package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.InventedClass;
import fewermore.classroom.InventedClass.Day;
import fewermore.classroom.InventedClass.Sent;
import fewermore.classroom.InventedClass.Visit;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.SentItem;
import fewermore.marking.Part;
import fewermore.store.ClassStore.NewChild;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.store.SittingStore;
import fewermore.store.SittingStore.AssignedWork;
import fewermore.store.SittingStore.Coming;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Puts the invented class into the store by the same verbs as a real one: raw work goes in, and is marked there. */
final class InventedClasses {
  /** Children of the invented class where nobody says otherwise. */
  static final int USUAL = InventedClass.USUAL;

  private static final String NAME = "The invented class";
  /** Chosen so that Findings has one of each statement it can make. */
  private static final long SEED = 9;

  private final Services services;

  InventedClasses(Services services) {
    this.services = services;
  }

  /**
   * The same class every time, up to today.
   *
   * @param size {@link InventedClass#FEWEST} to {@link InventedClass#MOST} children
   */
  Classroom make(long teacher, int size, ZoneId zone) {
    Instant now = services.now();
    InventedClass invented = InventedClass.of(size, now, zone, SEED);
    Classroom classroom = services.classes.add(teacher, NAME, zone, true, invented.children().stream()
        .map(child -> new NewChild(child.name(), child.picture().id(), child.picture().ground(), child.language()))
        .toList(), now);
    List<Child> children = services.classes.children(classroom.id());
    services.sittings.meetTablets(tablets(classroom, size), now);
    for (Day day : invented.days()) {
      keep(classroom, children, day);
    }
    return classroom;
  }

  /** A tablet for each child. The names come from the end of the list: those of real tablets come from its start. */
  private static Map<String, String> tablets(Classroom classroom, int size) {
    Map<String, String> tablets = new LinkedHashMap<>();
    for (int child = 0; child < size; child++) {
      tablets.put(SittingStore.inventedTablet(classroom.id(), child), Animals.fromTheEnd(child));
    }
    return tablets;
  }

  /** What was asked on a day: a strategy where somebody was asked for one. */
  private static Set<Part> asks(Day day) {
    Set<Part> asks = EnumSet.copyOf(ProblemSet.USUAL_PARTS);
    if (day.visits().stream().flatMap(visit -> visit.sent().stream()).anyMatch(sent -> sent.parts().strategy() != null)) {
      asks.add(Part.STRATEGY);
    }
    return asks;
  }

  private void keep(Classroom classroom, List<Child> children, Day day) {
    services.problems.addSet(classroom.id(), day.date(), true, ProblemSet.USUAL_TRIES, false, asks(day),
        day.problems().stream().map(NewProblem::of).toList(), day.givenAt());
    Map<String, Visit> visits = new LinkedHashMap<>();
    day.visits().forEach(visit -> visits.put(services.tokens.id(), visit));
    List<Coming> comings = new ArrayList<>();
    visits.forEach((sitting, visit) -> comings.add(new Coming(sitting, children.get(visit.child()).id(),
        SittingStore.inventedTablet(classroom.id(), visit.child()), Tokens.hash(services.tokens.id()), visit.from())));
    Map<String, List<AssignedWork>> works = services.sittings.startAll(comings, day.date(), services.tokens::idInOrder);
    Map<String, List<SentItem>> items = new LinkedHashMap<>();
    Map<String, Instant> ends = new LinkedHashMap<>();
    visits.forEach((sitting, visit) -> {
      items.put(sitting, items(visit, works.get(sitting)));
      if (visit.to() != null) {
        ends.put(sitting, visit.to());
      }
    });
    services.works.keepAll(items);
    services.sittings.endAll(ends, "done");
  }

  private List<SentItem> items(Visit visit, List<AssignedWork> works) {
    String page = services.tokens.id();
    List<SentItem> items = new ArrayList<>();
    for (Sent sent : visit.sent()) {
      items.add(new SentItem(works.get(sent.problem()).id(), page, items.size() + 1, sent.kind(), sent.parts(),
          sent.at(), false));
    }
    return items;
  }
}
