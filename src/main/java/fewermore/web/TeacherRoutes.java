package fewermore.web;

import java.util.List;

/** All that the teacher's browser can ask for, and who may. */
final class TeacherRoutes {
  private TeacherRoutes() {}

  static List<Route> of(TeacherHandlers teacher) {
    return List.of(Route.get("/", May.ANYONE, teacher::start));
  }
}
