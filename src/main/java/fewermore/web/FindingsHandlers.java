package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Findings;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.StrategyTable;
import fewermore.classroom.PutAside;
import fewermore.classroom.TakenOut;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.ReasoningTable;
import fewermore.web.teacher.ChildPage;
import fewermore.web.teacher.FindingsPage;
import fewermore.web.teacher.NumbersPage;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.StrategyView;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What the work says, and what the teacher says of it: work taken out, ways put aside. */
final class FindingsHandlers {
  private final TeacherHandlers teacher;
  private final Services services;

  FindingsHandlers(TeacherHandlers teacher) {
    this.teacher = teacher;
    this.services = teacher.services;
  }

  void findings(Context request) {
    teacher.inClass(request, classroom -> {
      Findings found = found(services, classroom, services.today(classroom));
      teacher.render(request, "teacher/findings", FindingsPage.of(found, request.queryParam("about")),
          teacher.frame(classroom, Place.FINDINGS), Map.of("markedAgain", teacher.markedAgain(), "strategies",
              StrategyView.of(StrategyTable.of(found.children().stream().flatMap(each -> each.counted().stream()).toList()))));
    });
  }

  /** Findings of a class as of a day, from the work of the weeks that are read. */
  static Findings found(Services services, Classroom classroom, LocalDate asOf) {
    return Findings.of(services.classes.children(classroom.id()), recent(services, classroom, asOf), asOf,
        services.reasoning.word(classroom.id()), ReasoningTable.standard(), services.reasonings);
  }

  /** A work's row is older than what is written on it; two days more hold every sitting. */
  private static List<PieceOfWork> recent(Services services, Classroom classroom, LocalDate asOf) {
    Instant since = asOf.minusDays(Findings.DAYS_READ + 2L).atStartOfDay(classroom.zone()).toInstant();
    return services.works.pieces(classroom.id(), since);
  }

  void child(Context request) {
    teacher.inClass(request, classroom -> {
      Child child = child(request, classroom);
      List<PieceOfWork> all = services.works.pieces(classroom.id(), child);
      Findings findings = Findings.of(List.of(child), all, services.today(classroom),
          services.reasoning.word(classroom.id()), ReasoningTable.standard());
      ChildPage page = ChildPage.of(findings, child, all, services.reasoning.word(classroom.id()))
          .orElseThrow(Refusal::notFound);
      teacher.render(request, "teacher/child", page, teacher.frame(classroom, Place.FINDINGS),
          Map.of("strategies", StrategyView.of(StrategyTable.of(all))));
    });
  }

  private Child child(Context request, Classroom classroom) {
    return TabletHandlers.number(request.pathParam("child"))
        .flatMap(id -> services.classes.child(classroom.id(), id)).orElseThrow(Refusal::notFound);
  }

  void putAside(Context request) {
    teacher.inClass(request, classroom -> {
      Child child = child(request, classroom);
      WayOfReasoning way = WayOfReasoning.of(TeacherHandlers.form(request, "way"))
          .orElseThrow(() -> new Refusal(422, "A way from the list was expected. Go back and choose one."));
      String note = TeacherHandlers.form(request, "note").strip();
      if (note.isEmpty() || note.length() > PutAside.LONGEST_NOTE) {
        throw new Refusal(422, "A note of 1 to " + PutAside.LONGEST_NOTE
            + " characters was expected. Go back and say in a few words what you saw or asked.");
      }
      services.reasoning.putAside(classroom.id(), child.id(), way, note, services.today(classroom), services.now());
      changed(request, classroom, "/findings/child/" + child.id());
    });
  }

  void noLongerAside(Context request) {
    teacher.inClass(request, classroom -> {
      Child child = child(request, classroom);
      services.reasoning.noLongerAside(classroom.id(), id(request, "aside"), services.now());
      changed(request, classroom, "/findings/child/" + child.id());
    });
  }

  void takeOut(Context request) {
    teacher.inClass(request, classroom -> {
      TakenOut.Why why = TakenOut.Why.of(TeacherHandlers.form(request, "why"))
          .orElseThrow(() -> new Refusal(422, "A reason from the list was expected. Go back and choose one."));
      Child child = services.classes.child(classroom.id(), id(request, "child")).orElseThrow(Refusal::notFound);
      long whose = TeacherHandlers.form(request, "whose").equals("class") ? 0 : child.id();
      if (why == TakenOut.Why.WITH_HELP) {
        if (!services.records.withHelp(classroom.id(), whose, id(request, "problem"), true)) {
          throw Refusal.notFound();
        }
      } else if (!services.reasoning.takeOut(classroom.id(), whose, id(request, "problem"), why, services.today(classroom),
          services.now())) {
        throw Refusal.notFound();
      }
      changed(request, classroom, "/findings/child/" + child.id());
    });
  }

  void putBack(Context request) {
    teacher.inClass(request, classroom -> {
      Child child = services.classes.child(classroom.id(), id(request, "child")).orElseThrow(Refusal::notFound);
      if (id(request, "out") == 0) {
        services.records.withHelp(classroom.id(), child.id(), id(request, "problem"), false);
      } else {
        services.reasoning.putBack(classroom.id(), id(request, "out"), services.now());
      }
      changed(request, classroom, "/findings/child/" + child.id());
    });
  }

  /** Every number of the estimate with its source. */
  void numbers(Context request) {
    teacher.inClass(request, classroom -> teacher.render(request, "teacher/numbers",
        NumbersPage.of(ReasoningTable.standard()), teacher.frame(classroom, Place.FINDINGS), Map.of()));
  }

  private static long id(Context request, String field) {
    return TabletHandlers.number(TeacherHandlers.form(request, field)).orElseThrow(Refusal::notFound);
  }

  private void changed(Context request, Classroom classroom, String next) {
    services.live.changed(classroom.id());
    request.redirect(next, HttpStatus.SEE_OTHER);
  }
}
