package fewermore.web;

import static fewermore.web.TeacherHandlers.form;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.SentItem;
import fewermore.classroom.Sitting;
import fewermore.marking.Bars;
import fewermore.marking.Part;
import fewermore.marking.Work;
import fewermore.store.SittingStore.AssignedWork;
import fewermore.web.teacher.ChildRecordPage;
import fewermore.web.teacher.PaperPage;
import fewermore.web.teacher.Place;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Work a child did on paper, typed in by the teacher: kept and marked like any other, under a tablet called paper.
 * It counts for the day its problems were given.
 */
final class PaperHandlers {
  /** Days back whose sets may be typed in. */
  private static final int DAYS_BACK = 14;

  private final TeacherHandlers desk;
  private final Services services;

  PaperHandlers(TeacherHandlers desk) {
    this.desk = desk;
    this.services = desk.services;
  }

  /** Given sets, newest first. */
  private List<ProblemSet> sets(Classroom classroom) {
    List<ProblemSet> sets = new ArrayList<>();
    LocalDate today = services.today(classroom);
    for (int back = 0; back <= DAYS_BACK; back++) {
      List<ProblemSet> given = services.problems.given(classroom.id(), today.minusDays(back));
      for (int at = given.size() - 1; at >= 0; at--) {
        sets.add(given.get(at));
      }
    }
    return sets;
  }

  private Optional<Child> child(Classroom classroom, String id) {
    return TabletHandlers.number(String.valueOf(id)).flatMap(each -> services.classes.child(classroom.id(), each));
  }

  void page(Context request) {
    desk.inClass(request, classroom -> {
      List<ProblemSet> sets = sets(classroom);
      Optional<Child> child = child(classroom, request.queryParam("child"));
      Optional<ProblemSet> set = TabletHandlers.number(String.valueOf(request.queryParam("set")))
          .flatMap(id -> sets.stream().filter(each -> each.id() == id).findFirst())
          .or(() -> sets.stream().findFirst());
      int kept = TabletHandlers.number(String.valueOf(request.queryParam("kept"))).orElse(0L).intValue();
      desk.render(request, "teacher/paper", PaperPage.of(services.classes.children(classroom.id()), sets, child,
          child.isPresent() ? set : Optional.empty(),
          child.map(services.works::piecesOf).orElse(List.of()), kept), desk.frame(classroom, Place.RECORDS));
    });
  }

  void keep(Context request) {
    desk.inClass(request, classroom -> {
      Child child = child(classroom, form(request, "child")).orElseThrow(Refusal::notFound);
      ProblemSet set = TabletHandlers.number(form(request, "set"))
          .flatMap(id -> sets(classroom).stream().filter(each -> each.id() == id).findFirst())
          .orElseThrow(Refusal::notFound);
      List<AssignedProblem> written = set.problems().stream()
          .filter(problem -> !empty(work(request, set, problem))).toList();
      if (written.isEmpty()) {
        throw new Refusal(422, "Nothing was typed in. Go back and type what stands on the paper.");
      }
      Instant now = services.now();
      Instant at = set.day().equals(services.today(classroom)) ? now
          : set.day().atTime(LocalTime.NOON).atZone(classroom.zone()).toInstant();
      Sitting sitting = sit(classroom, child, at);
      List<AssignedWork> works = services.sittings.works(sitting, set.day(), services.tokens::idInOrder, at);
      String page = services.tokens.id().substring(0, 16);
      List<SentItem> items = new ArrayList<>();
      for (AssignedWork each : works) {
        if (each.set().id() == set.id() && written.stream().anyMatch(problem -> problem.id() == each.problem().id())) {
          items.add(new SentItem(each.id(), page, items.size() + 1, SentItem.Kind.HANDED_IN,
              work(request, set, each.problem()), at, true));
        }
      }
      services.works.keepTyped(sitting.id(), items, now);
      written.stream().filter(problem -> !form(request, "help-" + problem.id()).isEmpty())
          .forEach(problem -> services.records.withHelp(child.id(), problem.id(), true));
      services.sittings.end(sitting.id(), "typed in", now);
      services.live.changed(classroom.id());
      request.redirect("/records/paper?child=" + child.id() + "&set=" + set.id() + "&kept=" + items.size(),
          HttpStatus.SEE_OTHER);
    });
  }

  private Sitting sit(Classroom classroom, Child child, Instant at) {
    String tablet = "paper-" + classroom.id();
    services.sittings.meetTablet(tablet, ChildRecordPage.PAPER, at);
    String id = services.tokens.id();
    services.sittings.start(id, child.id(), tablet, Tokens.hash(services.tokens.id()), at);
    return services.sittings.find(id).orElseThrow();
  }

  private static Work work(Context request, ProblemSet set, AssignedProblem problem) {
    return new Work(text(request, set, Part.EQUATION, problem), text(request, set, Part.ANSWER, problem),
        text(request, set, Part.LABEL, problem),
        set.asks().contains(Part.BARS) ? new Bars(form(request, "longer-" + problem.id()),
            TabletHandlers.onBar(request, "longerBar-" + problem.id()),
            TabletHandlers.onBar(request, "shorterBar-" + problem.id()),
            TabletHandlers.onBar(request, "gap-" + problem.id())) : null,
        text(request, set, Part.ESTIMATE, problem));
  }

  private static String text(Context request, ProblemSet set, Part part, AssignedProblem problem) {
    String typed = form(request, part.id() + "-" + problem.id());
    return set.asks().contains(part) ? typed.length() > 60 ? typed.substring(0, 60) : typed : null;
  }

  private static boolean empty(Work work) {
    return (String.valueOf(work.equation()) + work.answer() + work.label() + work.estimate()).replace("null", "").isBlank()
        && (work.bars() == null || work.bars().blank());
  }
}
