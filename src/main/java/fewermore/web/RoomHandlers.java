package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.RoomFacts;
import fewermore.classroom.Seat;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.RoomChildPage;
import fewermore.web.teacher.RoomPage;
import fewermore.web.teacher.TakePage;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import io.javalin.http.sse.SseHandler;

/** What the teacher sees and does in the room while the children work. */
final class RoomHandlers {
  private final Services services;
  private final TeacherHandlers desk;

  RoomHandlers(Services services, TeacherHandlers desk) {
    this.services = services;
    this.desk = desk;
  }

  void room(Context request) {
    desk.inClass(request, classroom -> desk.render(request, "teacher/room", services.room.page(classroom),
        desk.frame(classroom, Place.ROOM)));
  }

  void live(Context request) throws Exception {
    if (!String.valueOf(request.header(Header.ACCEPT)).contains("text/event-stream")) {
      throw new Refusal(406, "This address is for the pages themselves, not for reading.");
    }
    Classroom classroom = desk.classroom(request).orElseThrow(Refusal::notFound);
    new SseHandler(0, client -> services.room.watch(client, classroom)).handle(request);
  }

  void child(Context request) {
    desk.inClass(request, classroom -> {
      Child child = child(request, classroom);
      RoomFacts facts = services.room.facts(classroom);
      Seat seat = services.room.seats(classroom, facts).stream().filter(each -> each.child().id() == child.id())
          .findFirst().orElseThrow(Refusal::notFound);
      desk.render(request, "teacher/room-child", RoomChildPage.of(seat, facts, classroom.zone()),
          desk.frame(classroom, Place.ROOM));
    });
  }

  private Child child(Context request, Classroom classroom) {
    return TabletHandlers.number(request.pathParam("child"))
        .flatMap(id -> services.classes.child(classroom.id(), id)).orElseThrow(Refusal::notFound);
  }

  /** Something the teacher does with one child; she comes back to where she was. */
  private interface WithChild {
    void happen(Classroom classroom, Child child);
  }

  private void withChild(Context request, WithChild deed) {
    desk.inClass(request, classroom -> {
      Child child = child(request, classroom);
      deed.happen(classroom, child);
      services.live.changed(classroom.id());
      request.redirect("yes".equals(TeacherHandlers.form(request, "stay")) ? "/room" : "/room/child/" + child.id(),
          HttpStatus.SEE_OTHER);
    });
  }

  void been(Context request) {
    withChild(request, (classroom, child) -> services.rooms.visit(classroom.id(), child.id(), services.now()));
  }

  void absent(Context request) {
    withChild(request, (classroom, child) ->
        services.rooms.markAbsent(classroom.id(), child.id(), services.today(classroom), services.now()));
  }

  void here(Context request) {
    withChild(request, (classroom, child) ->
        services.rooms.takeBackAbsent(classroom.id(), child.id(), services.today(classroom)));
  }

  void take(Context request) {
    withChild(request, (classroom, child) ->
        services.rooms.takeAsHandedIn(classroom.id(), services.today(classroom), child.id(), services.now()));
  }

  void end(Context request) {
    withChild(request, (classroom, child) -> services.sittings.find(TeacherHandlers.form(request, "sitting"))
        .filter(sitting -> sitting.child().id() == child.id())
        .ifPresent(sitting -> services.sittings.end(sitting.id(), "teacher", services.now())));
  }

  void takePage(Context request) {
    desk.inClass(request, classroom -> desk.render(request, "teacher/room-take",
        TakePage.of(services.room.facts(classroom)), desk.frame(classroom, Place.ROOM)));
  }

  void takeAll(Context request) {
    toRoom(request, classroom ->
        services.rooms.takeAsHandedIn(classroom.id(), services.today(classroom), null, services.now()));
  }

  void pause(Context request) {
    toRoom(request, classroom -> services.pauses.pause(classroom.id(), services.now()));
  }

  void goOn(Context request) {
    toRoom(request, classroom -> services.pauses.goOn(classroom.id(), services.now()));
  }

  void stuckAfter(Context request) {
    int minutes = TabletHandlers.number(TeacherHandlers.form(request, "minutes"))
        .filter(each -> each >= RoomPage.FEWEST_MINUTES && each <= RoomPage.MOST_MINUTES)
        .orElseThrow(() -> new Refusal(422, "From " + RoomPage.FEWEST_MINUTES + " to " + RoomPage.MOST_MINUTES
            + " minutes were expected. Go back and choose again.")).intValue();
    toRoom(request, classroom -> services.teachers.set(RoomWatch.STUCK_MINUTES, Integer.toString(minutes)));
  }

  private void toRoom(Context request, TeacherHandlers.ClassPage deed) {
    desk.inClass(request, classroom -> {
      deed.show(classroom);
      services.live.changed(classroom.id());
      request.redirect("/room", HttpStatus.SEE_OTHER);
    });
  }
}
