package fewermore.web;

import static fewermore.web.May.ANYONE;
import static fewermore.web.May.TEACHER;
import static fewermore.web.Route.get;
import static fewermore.web.Route.post;

import java.util.List;

/** All that the teacher's browser can ask for, and who may. */
final class TeacherRoutes {
  private TeacherRoutes() {}

  static List<Route> of(TeacherHandlers teacher) {
    return List.of(
        get("/", ANYONE, teacher::start),
        get("/first", ANYONE, teacher::first),
        post("/first", ANYONE, teacher::setPassphrase),
        get("/sign-in", ANYONE, teacher::signInPage),
        post("/sign-in", ANYONE, teacher::signIn),
        post("/sign-out", TEACHER, teacher::signOut),
        get("/welcome", TEACHER, teacher::welcome),
        post("/classes", TEACHER, teacher::makeClass),
        post("/classes/invented", TEACHER, teacher::makeInventedClass),
        post("/classes/{class}/look", TEACHER, teacher::lookAtClass),
        post("/classes/{class}/throw-away", TEACHER, teacher::throwAwayClass),
        get("/plan", TEACHER, teacher::plan),
        post("/plan", TEACHER, teacher::makeSet),
        post("/plan/replace", TEACHER, teacher::replaceProblem),
        post("/plan/give", TEACHER, teacher::giveSet),
        get("/board", TEACHER, teacher::board),
        get("/board/class", TEACHER, teacher::wall),
        post("/board/door", TEACHER, teacher::newDoor),
        get("/findings", TEACHER, teacher::findings),
        get("/findings/child/{child}", TEACHER, teacher::child),
        get("/work/{work}/{page}/{seq}", TEACHER, teacher::work),
        post("/work/{work}/{page}/{seq}/overrule", TEACHER, teacher::overrule),
        get("/records", TEACHER, teacher::records),
        get("/setup", TEACHER, teacher::setup),
        post("/setup/children", TEACHER, teacher::addChildren),
        get("/help", TEACHER, teacher::help),
        get("/records/kinds.csv", TEACHER, teacher::kindsCsv),
        get("/records/work.csv", TEACHER, teacher::workCsv),
        get("/live", TEACHER, teacher::live));
  }
}
