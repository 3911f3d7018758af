package fewermore.web;

import fewermore.web.child.HelloPage;
import io.javalin.http.Context;

/** A tablet tries whether it reaches the laptop, and says what it can do. Nobody comes in by this. */
final class HelloHandlers {
  static final String PATH = "/hello";

  private final TabletHandlers tablet;

  HelloHandlers(TabletHandlers tablet) {
    this.tablet = tablet;
  }

  void hello(Context request) {
    String language = tablet.language(request);
    tablet.render(request, "child/hello", new HelloPage(language), language);
  }

  void report(Context request) {
    tablet.services.visitors.reported(request.ip(), new Visitors.Report(
        yes(request, "storage"), yes(request, "english"), yes(request, "spanish")));
    request.status(204);
  }

  private static boolean yes(Context request, String field) {
    return "yes".equals(request.formParam(field));
  }
}
