package fewermore.web;

import static fewermore.web.May.ANYONE;
import static fewermore.web.May.SUBSTITUTE;
import static fewermore.web.May.TEACHER;
import static fewermore.web.Route.get;
import static fewermore.web.Route.post;

import java.util.ArrayList;
import java.util.List;

/** All that the teacher's browser can ask for, and who may. */
final class TeacherRoutes {
  private TeacherRoutes() {}

  static List<Route> of(TeacherHandlers teacher) {
    PlanHandlers plan = new PlanHandlers(teacher);
    BackupHandlers backups = new BackupHandlers(teacher);
    ReachHandlers reach = new ReachHandlers(teacher);
    CardHandlers cards = new CardHandlers(teacher);
    MovingHandlers moving = new MovingHandlers(teacher);
    FindingsHandlers findings = new FindingsHandlers(teacher);
    GroupsHandlers groups = new GroupsHandlers(teacher);
    BoardHandlers board = new BoardHandlers(teacher.services, teacher);
    RoomHandlers room = new RoomHandlers(teacher.services, teacher);
    List<Route> routes = new ArrayList<>(RecordsRoutes.of(teacher));
    routes.addAll(List.of(
        get("/", ANYONE, teacher::start),
        get("/first", ANYONE, teacher::first),
        post("/first", ANYONE, teacher::setPassphrase),
        post("/sign-out", SUBSTITUTE, teacher::signOut),
        get("/welcome", TEACHER, teacher::welcome),
        post("/classes", TEACHER, teacher::makeClass),
        post("/classes/invented", TEACHER, teacher::makeInventedClass),
        post("/classes/{class}/look", TEACHER, teacher::lookAtClass),
        post("/classes/{class}/throw-away", TEACHER, teacher::throwAwayClass),
        get("/plan", TEACHER, plan::plan),
        post("/plan", TEACHER, plan::make),
        post("/plan/replace", TEACHER, plan::replace),
        post("/plan/remove", TEACHER, plan::remove),
        post("/plan/move", TEACHER, plan::move),
        post("/plan/settle", TEACHER, plan::settle),
        post("/plan/put-away", TEACHER, plan::putAway),
        post("/plan/give", TEACHER, plan::give),
        post("/plan/keep", TEACHER, plan::keep),
        post("/plan/copy", TEACHER, plan::copy),
        get("/plan/sets", TEACHER, plan::shelf),
        get("/plan/sheet", TEACHER, plan::sheet),
        get("/plan/key", TEACHER, plan::key),
        get("/plan/type", TEACHER, plan::type),
        post("/plan/look", TEACHER, plan::look),
        post("/plan/type", TEACHER, plan::keepTyped),
        get("/plan/several", TEACHER, plan::several),
        post("/plan/several", TEACHER, plan::addSeveral),
        get("/voice/{problem}", TEACHER, teacher.recordings::page),
        post("/voice/{problem}", TEACHER, teacher.recordings::keep),
        post("/voice/{problem}/throw-away", TEACHER, teacher.recordings::throwAway),
        get("/voice/{problem}/{language}", TEACHER, teacher.recordings::sound),
        get("/findings", TEACHER, findings::findings),
        get("/findings/child/{child}", TEACHER, findings::child),
        post("/findings/child/{child}/put-aside", TEACHER, findings::putAside),
        post("/findings/child/{child}/no-longer-aside", TEACHER, findings::noLongerAside),
        post("/findings/take-out", TEACHER, findings::takeOut),
        post("/findings/put-back", TEACHER, findings::putBack),
        get("/findings/numbers", TEACHER, findings::numbers),
        get("/groups", TEACHER, groups::groups),
        post("/groups/move", TEACHER, groups::move),
        post("/groups/anew", TEACHER, groups::anew),
        post("/groups/pairs", TEACHER, groups::keepPair),
        post("/groups/pairs/forget", TEACHER, groups::forgetPair),
        get("/board", SUBSTITUTE, board::door),
        get("/board/problem/{number}", SUBSTITUTE, board::problem),
        get("/board/class", SUBSTITUTE, board::wall),
        get("/board/warm-up", SUBSTITUTE, board::warmUp),
        get("/board/strategy", SUBSTITUTE, board::strategy),
        get("/board/two", SUBSTITUTE, board::chooseTwo),
        get("/board/two/{problem}", SUBSTITUTE, board::two),
        get("/board/stage", SUBSTITUTE, board::stage),
        post("/board/stage", SUBSTITUTE, board::say),
        get("/board/size", SUBSTITUTE, board::size),
        post("/board/size", SUBSTITUTE, board::setSize),
        post("/board/door", SUBSTITUTE, board::newDoor),
        get("/live/board", SUBSTITUTE, board::live),
        get("/room", SUBSTITUTE, room::room),
        get("/room/child/{child}", SUBSTITUTE, room::child),
        post("/room/child/{child}/been", SUBSTITUTE, room::been),
        post("/room/child/{child}/absent", SUBSTITUTE, room::absent),
        post("/room/child/{child}/here", SUBSTITUTE, room::here),
        post("/room/child/{child}/take", SUBSTITUTE, room::take),
        post("/room/child/{child}/end", SUBSTITUTE, room::end),
        get("/room/take", SUBSTITUTE, room::takePage),
        post("/room/take", SUBSTITUTE, room::takeAll),
        post("/room/pause", SUBSTITUTE, room::pause),
        post("/room/go-on", SUBSTITUTE, room::goOn),
        post("/room/stuck", SUBSTITUTE, room::stuckAfter),
        get("/live/room", SUBSTITUTE, room::live),
        get("/work/{work}/{page}/{seq}", TEACHER, teacher::work),
        post("/work/{work}/{page}/{seq}/overrule", TEACHER, teacher::overrule),
        get("/paper/mats", TEACHER, teacher::mats),
        get("/setup/backups", TEACHER, backups::show),
        post("/setup/backups", TEACHER, backups::make),
        post("/setup/backups/stop", TEACHER, backups::stop),
        post("/setup/backups/keeping", TEACHER, backups::keeping),
        get("/setup/backups/{file}", TEACHER, backups::one),
        post("/setup/backups/{file}/delete", TEACHER, backups::delete),
        post("/setup/backups/{file}/restore", TEACHER, backups::restore),
        post("/backup", May.KEY, backups::byToken),
        get("/setup/reach", TEACHER, reach::page),
        get("/setup/reach/note", TEACHER, reach::note),
        post("/setup/reach/network", TEACHER, reach::choose),
        get("/setup/cards", TEACHER, cards::page),
        post("/setup/cards", TEACHER, cards::print),
        post("/setup/cards/revoke", TEACHER, cards::revoke),
        post("/setup/secrets", TEACHER, cards::secrets),
        get("/sittings", TEACHER, moving::sittings),
        post("/sittings/{sitting}/end", TEACHER, moving::end),
        post("/sittings/{sitting}/call", TEACHER, moving::call),
        post("/sittings/{sitting}/move", TEACHER, moving::moveSitting),
        post("/work/{work}/move", TEACHER, moving::moveWork),
        post("/work/{work}/confirm", TEACHER, moving::confirm),
        get("/live", SUBSTITUTE, teacher::live)));
    return routes;
  }
}
