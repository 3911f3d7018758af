package fewermore.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;

/** What the teacher can do on the laptop. */
final class TeacherHandlers implements Doors.Guard {
  static final String DESK = "desk";
  private final Services services;

  TeacherHandlers(Services services) {
    this.services = services;
  }

  @Override
  public void admit(Context request, May may) {
    if (may != May.ANYONE && services.sessions.of(request.cookie(DESK)).isEmpty()) {
      Doors.redirect(request, "/sign-in");
    }
  }

  @Override
  public String formToken(Context request) {
    return null;
  }

  @Override
  public void show(Context request, int status, String sentence) {
    request.status(status).json(Map.of("problem", sentence));
  }

  void start(Context request) {
    request.redirect("/plan", HttpStatus.SEE_OTHER);
  }
}
