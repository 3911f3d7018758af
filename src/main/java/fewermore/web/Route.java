package fewermore.web;

import io.javalin.http.Handler;
import io.javalin.http.HandlerType;

/** One line of a table of contents. */
public record Route(HandlerType method, String path, May may, Handler handler) {
  static Route get(String path, May may, Handler handler) {
    return new Route(HandlerType.GET, path, may, handler);
  }

  static Route post(String path, May may, Handler handler) {
    return new Route(HandlerType.POST, path, may, handler);
  }

  /** For example {@code GET /come-in}. */
  public String name() {
    return method.name() + " " + path;
  }
}
