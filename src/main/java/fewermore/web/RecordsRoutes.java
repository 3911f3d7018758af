package fewermore.web;

import static fewermore.web.May.ANYONE;
import static fewermore.web.May.SUBSTITUTE;
import static fewermore.web.May.TEACHER;
import static fewermore.web.Route.get;
import static fewermore.web.Route.post;

import java.util.List;

/** People, Setup, Records and Help: the part of the teacher's table of contents that is about keeping. */
final class RecordsRoutes {
  private RecordsRoutes() {}

  static List<Route> of(TeacherHandlers desk) {
    PeopleHandlers people = new PeopleHandlers(desk);
    SetupHandlers setup = new SetupHandlers(desk);
    RecordsHandlers records = new RecordsHandlers(desk);
    ConferenceHandlers conference = new ConferenceHandlers(desk);
    PaperHandlers paper = new PaperHandlers(desk);
    HelpHandlers help = new HelpHandlers(desk);
    return List.of(
        get("/sign-in", ANYONE, people::signInPage),
        post("/sign-in", ANYONE, people::signIn),
        get("/classes", TEACHER, people::classes),
        get("/classes/{class}", TEACHER, people::askToChange),
        get("/today", SUBSTITUTE, people::today),
        get("/setup/people", TEACHER, people::people),
        post("/setup/people/name", TEACHER, people::rename),
        post("/setup/people/passphrase", TEACHER, people::changePassphrase),
        post("/setup/people/teacher", TEACHER, people::addTeacher),
        post("/setup/people/substitute", TEACHER, people::letSubstituteIn),
        post("/setup/people/substitute/note", TEACHER, people::tellSubstitute),
        post("/setup/people/substitute/end", TEACHER, people::takeSubstituteBack),
        get("/setup", TEACHER, setup::setup),
        post("/setup", TEACHER, setup::keep),
        get("/setup/list", TEACHER, setup::addPage),
        post("/setup/list", TEACHER, setup::read),
        post("/setup/list/save", TEACHER, setup::save),
        get("/setup/child/{child}", TEACHER, setup::child),
        post("/setup/child/{child}", TEACHER, setup::change),
        post("/setup/child/{child}/leave", TEACHER, setup::leave),
        post("/setup/child/{child}/come-back", TEACHER, setup::comeBack),
        post("/setup/child/{child}/erase", TEACHER, setup::erase),
        get("/setup/year", TEACHER, setup::year),
        post("/setup/year/until", TEACHER, setup::keepUntil),
        post("/setup/year/close", TEACHER, setup::close),
        post("/setup/year/open", TEACHER, setup::openAgain),
        post("/setup/year/erase", TEACHER, setup::eraseClass),
        get("/records", TEACHER, records::records),
        get("/records/report", TEACHER, records::report),
        get("/records/kinds.csv", TEACHER, records::kindsCsv),
        get("/records/days.csv", TEACHER, records::daysCsv),
        get("/records/work.csv", TEACHER, records::workCsv),
        get("/records/overruled.csv", TEACHER, records::overruledCsv),
        get("/records/conferences", TEACHER, conference::all),
        get("/records/paper", TEACHER, paper::page),
        post("/records/paper", TEACHER, paper::keep),
        get("/records/child/{child}", TEACHER, records::child),
        post("/records/child/{child}/note", TEACHER, records::note),
        post("/records/child/{child}/note/remove", TEACHER, records::removeNote),
        post("/records/child/{child}/choose", TEACHER, records::choose),
        post("/records/child/{child}/help", TEACHER, records::withHelp),
        post("/records/child/{child}/request", TEACHER, records::request),
        get("/records/child/{child}/family", TEACHER, records::family),
        get("/records/child/{child}/everything.csv", TEACHER, records::everythingCsv),
        get("/records/child/{child}/conference", TEACHER, conference::page),
        post("/records/child/{child}/conference", TEACHER, conference::keep),
        get("/help", TEACHER, help::index),
        get("/help/{about}", SUBSTITUTE, help::page));
  }
}
