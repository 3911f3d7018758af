package fewermore.web;

import fewermore.web.teacher.HelpPage;
import fewermore.web.teacher.Place;
import io.javalin.http.Context;
import java.util.List;

/** Help: one short page a place, and the licenses. */
final class HelpHandlers {
  /** The pages, by the last part of their address; each has its own fragment. */
  static final List<String> PAGES =
      List.of("start", "plan", "board", "tablets", "room", "findings", "groups", "records", "paper", "setup", "backups", "week",
          "new-laptop");

  private final TeacherHandlers desk;
  private final Services services;

  HelpHandlers(TeacherHandlers desk) {
    this.desk = desk;
    this.services = desk.services;
  }

  void index(Context request) {
    desk.inAnyClass(request, classroom -> desk.render(request, "teacher/help", page(),
        desk.frame(classroom, Place.HELP)));
  }

  void page(Context request) {
    String about = request.pathParam("about");
    if (!PAGES.contains(about)) {
      throw Refusal.notFound();
    }
    desk.inAnyClass(request, classroom -> desk.render(request, "teacher/help-page", page(),
        desk.frame(classroom, Place.HELP), java.util.Map.of("about", about)));
  }

  private HelpPage page() {
    return new HelpPage(version(), services.settings.data().toAbsolutePath().normalize().toString(),
        services.reach.address().orElse(null), Licences.all());
  }

  private static String version() {
    String version = HelpHandlers.class.getPackage().getImplementationVersion();
    return version == null ? "run from its source" : version;
  }
}
