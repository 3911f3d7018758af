package fewermore.web;

import static fewermore.web.TeacherHandlers.form;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.StrategyTable;
import fewermore.records.Csv;
import fewermore.records.ProgressTable;
import fewermore.records.Table;
import fewermore.records.Table.Column;
import fewermore.store.DaysThere;
import fewermore.store.RecordStore;
import fewermore.web.teacher.ChildRecordPage;
import fewermore.web.teacher.FamilyPage;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.RecordsPage;
import fewermore.web.teacher.StrategyView;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;

/** A class and a child over weeks, the teacher's notes, and what she takes away. */
final class RecordsHandlers {
  private final TeacherHandlers desk;
  private final Services services;

  RecordsHandlers(TeacherHandlers desk) {
    this.desk = desk;
    this.services = desk.services;
  }

  /** A child of that class, there or gone. */
  static Child childOf(Services services, Context request, Classroom classroom) {
    return TabletHandlers.number(request.pathParam("child"))
        .flatMap(id -> services.setups.child(classroom.id(), id)).orElseThrow(Refusal::notFound);
  }

  // ---- the class ----

  void records(Context request) {
    showClass(request, "teacher/records");
  }

  /** The class on paper. */
  void report(Context request) {
    showClass(request, "teacher/class-report");
  }

  private void showClass(Context request, String template) {
    desk.inAnyClass(request, classroom -> {
      List<Child> children = services.classes.children(classroom.id());
      List<PieceOfWork> pieces = services.works.pieces(classroom.id());
      desk.render(request, template, RecordsPage.of(children, pieces, List.of(
          kinds(classroom, children, pieces), days(classroom, children, pieces),
          ProgressTable.pieces(classroom, children, pieces), ProgressTable.overruled(classroom, List.of()))),
          desk.frame(classroom, Place.RECORDS), Map.of("overruled", services.works.overruled(classroom.id()),
              "markedAgain", desk.markedAgain()));
    });
  }

  private Table kinds(Classroom classroom, List<Child> children, List<PieceOfWork> pieces) {
    return ProgressTable.childByKind(classroom, children, pieces);
  }

  private Table days(Classroom classroom, List<Child> children, List<PieceOfWork> pieces) {
    DaysThere days = services.records.daysThere(classroom.id(), classroom.zone());
    return ProgressTable.childByDay(classroom, children, pieces, services.records.given(classroom.id()), days.there(),
        days.absent());
  }

  // ---- files ----

  private interface Tables {
    Table of(Classroom classroom, List<Child> children, List<PieceOfWork> pieces);
  }

  void kindsCsv(Context request) {
    csv(request, "kinds", this::kinds);
  }

  void daysCsv(Context request) {
    csv(request, "days", this::days);
  }

  void workCsv(Context request) {
    csv(request, "work", ProgressTable::pieces);
  }

  void overruledCsv(Context request) {
    csv(request, "overruled", (classroom, children, pieces) ->
        ProgressTable.overruled(classroom, services.records.overruled(classroom.id())));
  }

  private void csv(Context request, String name, Tables tables) {
    desk.inAnyClass(request, classroom -> send(request, services.today(classroom) + "-" + name,
        tables.of(classroom, services.classes.children(classroom.id()), services.works.pieces(classroom.id()))));
  }

  private static void send(Context request, String name, Table table) {
    Csv.Mark mark = "yes".equals(request.queryParam("mark")) ? Csv.Mark.BYTE_ORDER_MARK : Csv.Mark.NONE;
    request.header(Header.CONTENT_DISPOSITION, "attachment; filename=\"" + name + ".csv\"");
    request.contentType(Csv.MEDIA_TYPE);
    request.result(Csv.write(table, mark).getBytes(StandardCharsets.UTF_8));
  }

  // ---- one child ----

  void child(Context request) {
    desk.inAnyClass(request, classroom -> {
      Child child = childOf(services, request, classroom);
      LocalDate left = services.setups.left(classroom.id()).stream().filter(each -> each.child().id() == child.id())
          .map(each -> each.on()).findFirst().orElse(null);
      List<PieceOfWork> work = services.works.piecesOf(child);
      desk.render(request, "teacher/child-record", ChildRecordPage.of(child, left, work,
          new HashSet<>(services.records.chosen(child.id())), services.records.notes(child.id()),
          services.records.request(child.id()).orElse(null), services.today(classroom)),
          desk.frame(classroom, Place.RECORDS), Map.of("strategies",
              StrategyView.of(StrategyTable.of(work.stream().filter(piece -> !piece.withHelp()).toList()))));
    });
  }

  /** A change on one child's record; then the page again, at that place. */
  private void change(Context request, String at, Change change) {
    desk.inClass(request, classroom -> {
      Child child = childOf(services, request, classroom);
      change.make(classroom, child);
      services.live.changed(classroom.id());
      request.redirect("/records/child/" + child.id() + at, HttpStatus.SEE_OTHER);
    });
  }

  private interface Change {
    void make(Classroom classroom, Child child);
  }

  void note(Context request) {
    change(request, "#notes", (classroom, child) -> {
      String content = form(request, "content").strip();
      if (content.isEmpty() || content.length() > RecordStore.LONGEST_NOTE) {
        throw new Refusal(422, "A note of 1 to " + RecordStore.LONGEST_NOTE
            + " characters was expected. Go back; what you typed is still there.");
      }
      services.records.note(child.id(), services.today(classroom), content, services.now());
    });
  }

  void removeNote(Context request) {
    change(request, "#notes", (classroom, child) -> services.records.removeNote(child.id(),
        TabletHandlers.number(form(request, "note")).orElseThrow(Refusal::notFound)));
  }

  /** Only a problem she has work on. */
  private long problemOf(Context request, Child child) {
    long problem = TabletHandlers.number(form(request, "problem")).orElseThrow(Refusal::notFound);
    if (services.works.piecesOf(child).stream().noneMatch(piece -> piece.problem().id() == problem)) {
      throw Refusal.notFound();
    }
    return problem;
  }

  void choose(Context request) {
    change(request, "#work", (classroom, child) -> services.records.choose(child.id(), problemOf(request, child),
        form(request, "chosen").equals("yes"), services.now()));
  }

  void withHelp(Context request) {
    change(request, "#work", (classroom, child) -> services.records.withHelp(child.id(), problemOf(request, child),
        form(request, "help").equals("yes")));
  }

  // ---- a family's request ----

  void request(Context request) {
    change(request, "#family", (classroom, child) -> services.records.request(child.id(),
        form(request, "open").equals("yes") ? services.today(classroom) : null));
  }

  void family(Context request) {
    desk.inAnyClass(request, classroom -> {
      Child child = childOf(services, request, classroom);
      desk.render(request, "teacher/family", FamilyPage.of(child, classroom.name(),
          services.records.everything(child.id()), services.today(classroom),
          services.setups.of(classroom.id()).keptUntil(), services.records.request(child.id()).orElse(null),
          classroom.zone()), desk.frame(classroom, Place.RECORDS));
    });
  }

  private static final List<Column> EVERYTHING = List.of(
      new Column("class", "the class's name"),
      new Column("child", "the child's first name as the class uses it"),
      new Column("what", "child, sitting, work, problem, mark, note and so on"),
      new Column("at", "when, in UTC"),
      new Column("about", "which one"),
      new Column("content", "what is kept, as it is kept"));

  void everythingCsv(Context request) {
    desk.inAnyClass(request, classroom -> {
      Child child = childOf(services, request, classroom);
      send(request, services.today(classroom) + "-one-child", new Table("all that is kept about one child", EVERYTHING,
          services.records.everything(child.id()).stream().map(each -> Arrays.<Object>asList(classroom.name(),
              child.name(), each.what(), each.at(), each.about(), each.content())).toList()));
    });
  }
}
