package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.store.MovingStore.Seat;
import fewermore.web.teacher.MovingView;
import fewermore.web.teacher.SittingsPage;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/** Who sits where, ending a sitting, and moving work to the right child. */
final class MovingHandlers {
  private final TeacherHandlers teacher;

  MovingHandlers(TeacherHandlers teacher) {
    this.teacher = teacher;
  }

  void sittings(Context request) {
    teacher.inClass(request, classroom -> {
      Services services = teacher.services;
      teacher.render(request, "teacher/sittings", SittingsPage.of(classroom,
          services.moving.seats(classroom.id(), services.midnight(classroom)),
          services.classes.children(classroom.id()), services.moving.waiting(classroom.id()),
          work -> whole(services, work)), teacher.frame(classroom, null));
    });
  }

  /** The address of a work's newest hand-in, or null when there is none. */
  private static String whole(Services services, String work) {
    return services.moving.newestHandIn(work).map(name -> "/work/" + work + "/" + name).orElse(null);
  }

  /** What the page of a piece of work shows of moving. */
  static MovingView view(Services services, Classroom classroom, String work) {
    return MovingView.of(work, services.moving.of(work), services.classes.children(classroom.id()), classroom.zone());
  }

  void end(Context request) {
    teacher.inClass(request, classroom -> {
      Seat seat = seat(request, classroom);
      teacher.services.sittings.end(seat.sitting().id(), "teacher", teacher.services.now());
      teacher.services.live.changed(classroom.id());
      request.redirect("/sittings", HttpStatus.SEE_OTHER);
    });
  }

  void call(Context request) {
    teacher.inClass(request, classroom -> {
      Seat seat = seat(request, classroom);
      String text = TeacherHandlers.form(request, "text");
      if (!Calls.TEXTS.contains(text)) {
        throw new Refusal(422, "A sentence from the list was expected. Go back and choose one.");
      }
      teacher.services.calls.call(seat.sitting().id(), text, teacher.services.now());
      request.redirect("/sittings", HttpStatus.SEE_OTHER);
    });
  }

  /** All work of a sitting goes to another child; the sitting ends, so that the child comes in as herself. */
  void moveSitting(Context request) {
    teacher.inClass(request, classroom -> {
      Seat seat = seat(request, classroom);
      Child child = wanted(request, classroom);
      move(request, classroom, seat.works(), child);
      teacher.services.sittings.end(seat.sitting().id(), "moved", teacher.services.now());
      teacher.services.live.changed(classroom.id());
      request.redirect("/sittings", HttpStatus.SEE_OTHER);
    });
  }

  void moveWork(Context request) {
    teacher.inClass(request, classroom -> {
      String work = request.pathParam("work");
      Child child = wanted(request, classroom);
      if (move(request, classroom, List.of(work), child) == 0) {
        throw Refusal.notFound();
      }
      teacher.services.live.changed(classroom.id());
      request.redirect("/sittings", HttpStatus.SEE_OTHER);
    });
  }

  private int move(Context request, Classroom classroom, List<String> works, Child child) {
    String note = TeacherHandlers.form(request, "note").strip();
    if (note.length() > MovingView.LONGEST_NOTE) {
      throw new Refusal(422, "A note of at most " + MovingView.LONGEST_NOTE
          + " characters was expected. Go back and shorten it.");
    }
    return teacher.services.moving.move(classroom.id(), teacher.teacher(request), works, child.id(), note,
        teacher.services.now());
  }

  void confirm(Context request) {
    teacher.inClass(request, classroom -> {
      if (!teacher.services.moving.confirm(classroom.id(), request.pathParam("work"), teacher.services.now())) {
        throw Refusal.notFound();
      }
      teacher.services.live.changed(classroom.id());
      request.redirect("/sittings", HttpStatus.SEE_OTHER);
    });
  }

  private Seat seat(Context request, Classroom classroom) {
    return teacher.services.moving.seat(classroom.id(), request.pathParam("sitting")).orElseThrow(Refusal::notFound);
  }

  private Child wanted(Context request, Classroom classroom) {
    return TabletHandlers.number(TeacherHandlers.form(request, "child"))
        .flatMap(child -> teacher.services.classes.child(classroom.id(), child))
        .orElseThrow(() -> new Refusal(422, "A child from the list was expected. Go back and choose one."));
  }
}
