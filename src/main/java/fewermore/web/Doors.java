package fewermore.web;

import fewermore.store.NotOnDisk;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.io.EOFException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/**
 * Builds a server from a table of routes, with what holds for every route: known names only, the headers
 * of every page, the form token on every change, who may, and a plain sentence for everything that fails.
 */
final class Doors {
  private static final Logger LOG = System.getLogger(Doors.class.getName());

  private static final String CONTENT_SECURITY_POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; "
      + "img-src 'self'; font-src 'self'; connect-src 'self'%s; media-src 'self'; frame-ancestors 'none'; "
      + "base-uri 'none'; form-action 'self'";

  /** How a door knows who asks, and shows a page that says why not. */
  interface Guard {
    /** Null when the asker may; else what happens instead: throws {@link Refusal} or redirects. */
    void admit(Context request, May may);

    /** What the asker's form token must be, or null when she has none. */
    String formToken(Context request);

    /** What a page of this door may send to beside itself, as sources of a content security policy. */
    default String maySendTo() {
      return "";
    }

    /** Is told the status of every answer. */
    default void answered(int status) {}

    /** Shows a sentence as a page of this door. */
    void show(Context request, int status, String sentence);
  }

  private Doors() {}

  static Javalin open(Services services, List<Route> routes, Guard guard, String host, int port, int threads) {
    return Javalin.create(config -> {
      config.startup.showJavalinBanner = false;
      config.startup.showOldJavalinVersionWarning = false;
      config.startup.startupWatcherEnabled = false;
      config.http.maxRequestSize = 256 * 1024L;
      config.http.generateEtags = false;
      config.jetty.host = host;
      config.jetty.port = port;
      QueuedThreadPool pool = new QueuedThreadPool(threads, 4, 60_000);
      pool.setName(port == services.settings.teacherPort() ? "teacher" : "tablets");
      config.jetty.threadPool = pool;
      config.jetty.modifyHttpConfiguration(http -> {
        http.setSendServerVersion(false);
        http.setRequestHeaderSize(16 * 1024);
      });
      config.fileRenderer(services.pages);
      config.routes.before(request -> beforeAll(services, guard, request));
      config.routes.get("/static/{version}/<name>", request -> sendFile(services, request));
      config.routes.get("/favicon.ico", request -> request.redirect(services.assets.of("img/mark.svg")));
      for (Route route : routes) {
        config.routes.addHttpHandler(route.method(), route.path(), guarded(route, guard));
      }
      refusals(config, guard);
      config.routes.after(request -> guard.answered(request.statusCode()));
    });
  }

  private static void beforeAll(Services services, Guard guard, Context request) {
    request.header("Content-Security-Policy", CONTENT_SECURITY_POLICY.formatted(guard.maySendTo()));
    request.header("X-Content-Type-Options", "nosniff");
    request.header("X-Frame-Options", "DENY");
    request.header("Referrer-Policy", "same-origin");
    request.header("Cache-Control", "no-store");
    if (!services.reach.knows(request.header("Host"))) {
      throw new Refusal(421, "This laptop does not answer to that name. Use the address on the Board.");
    }
  }

  private static Handler guarded(Route route, Guard guard) {
    return request -> {
      if (route.may() != May.KEY && route.method() != HandlerType.GET) {
        ownForm(request);
      }
      guard.admit(request, route.may());
      if (request.attribute("answered") != null) {
        return;
      }
      if (route.may() != May.KEY && route.method() != HandlerType.GET
          && !Tokens.same(guard.formToken(request), request.formParam("csrf"))) {
        throw new Refusal(403, "This page was open too long. Go back, load it again and send it once more.");
      }
      route.handler().handle(request);
    };
  }

  /** A change that leans on a cookie must come from a page of this very server. */
  private static void ownForm(Context request) {
    String origin = request.header("Origin");
    if (origin != null && !origin.equals("http://" + request.header("Host"))) {
      throw new Refusal(403, "This form came from another page. Open it here and send it again.");
    }
  }

  private static void sendFile(Services services, Context request) {
    Assets.File file = services.assets.find(request.pathParam("name")).orElseThrow(Refusal::notFound);
    request.header("Cache-Control", "public, max-age=31536000, immutable");
    request.contentType(file.type());
    request.result(file.content());
  }

  private static void refusals(JavalinConfig config, Guard guard) {
    config.routes.exception(Refusal.class, (refusal, request) -> {
      guard.show(request, refusal.status(), refusal.getMessage());
      request.attribute("answered", true);
    });
    config.routes.exception(NotOnDisk.class, (problem, request) -> {
      // What is refused while the store is stopped was logged once, when it stopped.
      if (problem.getCause() != null) {
        LOG.log(Level.ERROR, problem.getMessage(), problem.getCause());
      }
      request.header("Retry-After", "5");
      guard.show(request, 503, problem.getMessage());
    });
    config.routes.exception(Exception.class, (problem, request) -> {
      if (cannotBeRead(problem)) {
        guard.show(request, 400, "What was sent can't be read. Go back, load the page again and send it once more.");
        return;
      }
      LOG.log(Level.ERROR, "a page failed: " + request.method() + " " + request.endpoint().path, problem);
      guard.show(request, 500, "Something went wrong here. Nothing is lost; go back and try again.");
    });
    config.routes.error(404, request -> {
      if (request.attribute("answered") == null) {
        guard.show(request, 404, "There is nothing at this address.");
      }
    });
  }

  /** Whether the request itself is at fault: the server's own word for a body that is none, or that ended too early. */
  private static boolean cannotBeRead(Throwable problem) {
    for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
      if (cause instanceof EOFException || cause instanceof HttpException http && http.getCode() < 500) {
        return true;
      }
    }
    return false;
  }

  /** Marks a request as answered by the guard: its handler does not run. */
  static void redirect(Context request, String to) {
    request.attribute("answered", true);
    request.redirect(to, io.javalin.http.HttpStatus.SEE_OTHER);
  }

  /** Renders a page of a door with its token. */
  static void render(Services services, Context request, String name, Object page, String csrf, String language) {
    render(services, request, name, page, csrf, language, Map.of());
  }

  /** {@link #render} with what else the page needs, by name. */
  static void render(Services services, Context request, String name, Object page, String csrf, String language,
      Map<String, Object> more) {
    Map<String, Object> model = new java.util.HashMap<>(more);
    model.put("csrf", csrf);
    if (page != null) {
      model.put("page", page);
    }
    request.html(services.pages.render(name, model, java.util.Locale.forLanguageTag(language)));
  }
}
