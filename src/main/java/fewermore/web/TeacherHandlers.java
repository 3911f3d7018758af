package fewermore.web;

import fewermore.classroom.Classroom;
import fewermore.marking.Part;
import fewermore.store.TeacherStore.Teacher;
import fewermore.web.teacher.FirstPage;
import fewermore.web.teacher.Frame;
import fewermore.web.teacher.MatsPage;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.WelcomePage;
import fewermore.web.teacher.WorkView;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.Header;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import io.javalin.http.sse.SseHandler;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What the teacher can do on the laptop. */
final class TeacherHandlers implements Doors.Guard {
  static final String DESK = "desk";
  private static final String TEACHER_NAME = "Teacher";

  final Services services;

  final RecordingHandlers recordings;

  TeacherHandlers(Services services) {
    this.services = services;
    this.recordings = new RecordingHandlers(services, this);
  }

  // ---- who asks ----

  @Override
  public void admit(Context request, May may) {
    if (may == May.ANYONE) {
      if (visitor(request) == null) {
        String cookie = services.tokens.id();
        request.attribute(DESK, cookie);
        setDesk(request, cookie);
      }
    } else if (may != May.KEY && session(request).isEmpty()) {
      if (request.path().startsWith("/live")) {
        throw Refusal.forbidden();
      }
      Doors.redirect(request, services.teachers.first().isEmpty() ? "/first" : "/sign-in");
    } else if (may != May.KEY && may != May.SUBSTITUTE && session(request).orElseThrow().substitute()) {
      throw new Refusal(403, "This page is for the class’s own teacher. Today’s problems and the Board are open to you.");
    }
  }

  @Override
  public String formToken(Context request) {
    String cookie = visitor(request);
    return cookie == null ? null : services.tokens.csrfOf(cookie);
  }

  @Override
  public void show(Context request, int status, String sentence) {
    request.status(status);
    render(request, "teacher/stopped", sentence, null);
  }

  /** The cookie of whoever asks, signed in or not: what her forms' token hangs on. */
  static String visitor(Context request) {
    String made = request.attribute(DESK);
    return made != null ? made : request.cookie(DESK);
  }

  static void setDesk(Context request, String cookie) {
    request.cookie(new Cookie(DESK, cookie, "/", -1, false, true, null, SameSite.STRICT));
  }

  Optional<TeacherSessions.Session> session(Context request) {
    return services.sessions.of(visitor(request));
  }

  long teacher(Context request) {
    return session(request).orElseThrow(Refusal::forbidden).teacher();
  }

  /** The class she looks at; without one she is asked to make it. */
  Optional<Classroom> classroom(Context request) {
    TeacherSessions.Session session = session(request).orElseThrow(Refusal::forbidden);
    List<Classroom> classes = services.classesOf(session.teacher());
    if (session.substitute()) {
      return Optional.of(classes.stream().filter(each -> each.id() == session.classroom()).findFirst()
          .orElseThrow(Refusal::forbidden));
    }
    return classes.stream().filter(each -> session.classroom() != null && each.id() == session.classroom()).findFirst()
        .or(() -> classes.stream().findFirst());
  }

  /** What a page about a class does; a teacher without a class is asked to make one first. */
  interface ClassPage {
    void show(Classroom classroom);
  }

  /** The page of her class; nothing is changed in a class of a year that is over. */
  void inClass(Context request, ClassPage page) {
    inAnyClass(request, classroom -> {
      if (request.method() != HandlerType.GET && services.setups.of(classroom.id()).closedOn() != null) {
        throw new Refusal(422, "The year of " + classroom.name() + " is over: it can be read and printed. "
            + "Open it again in Setup, or change class.");
      }
      page.show(classroom);
    });
  }

  /** {@link #inClass} for the few changes a class of a year that is over allows. */
  void inAnyClass(Context request, ClassPage page) {
    Optional<Classroom> classroom = classroom(request);
    if (classroom.isEmpty()) {
      request.redirect("/welcome", HttpStatus.SEE_OTHER);
    } else {
      page.show(classroom.get());
    }
  }

  // ---- coming in ----

  void start(Context request) {
    boolean substitute = session(request).map(TeacherSessions.Session::substitute).orElse(false);
    request.redirect(services.teachers.first().isEmpty() ? "/first" : substitute ? "/today" : "/plan",
        HttpStatus.SEE_OTHER);
  }

  void first(Context request) {
    if (services.teachers.first().isPresent()) {
      request.redirect("/sign-in", HttpStatus.SEE_OTHER);
      return;
    }
    render(request, "teacher/first", new FirstPage(null), null);
  }

  void setPassphrase(Context request) {
    String passphrase = form(request, "passphrase");
    Optional<String> problem = Passphrases.problem(passphrase, form(request, "again"));
    if (problem.isPresent()) {
      request.status(422);
      render(request, "teacher/first", new FirstPage(problem.get()), null);
      return;
    }
    Optional<Teacher> made =
        services.teachers.add(TEACHER_NAME, Passphrases.hash(passphrase), true, services.now());
    if (made.isEmpty()) {
      request.redirect("/sign-in", HttpStatus.SEE_OTHER);
      return;
    }
    setDesk(request, services.sessions.start(made.get().id()));
    request.redirect("/welcome", HttpStatus.SEE_OTHER);
  }

  void signOut(Context request) {
    services.sessions.end(visitor(request));
    request.removeCookie(DESK, "/");
    request.redirect("/sign-in", HttpStatus.SEE_OTHER);
  }

  // ---- classes ----

  void welcome(Context request) {
    render(request, "teacher/welcome", new WelcomePage("", "", null, ClassList.MOST), null);
  }

  void makeClass(Context request) {
    String name = form(request, "name").strip();
    String names = form(request, "names");
    ClassList list = names.isBlank() ? ClassList.NONE_YET : ClassList.read(names, List.of());
    String problem = name.isEmpty() || name.length() > 80
        ? "A name for the class was expected, for example Room 12. Type one."
        : list.problem();
    if (problem != null) {
      request.status(422);
      render(request, "teacher/welcome", new WelcomePage(name, names, problem, ClassList.MOST), null);
      return;
    }
    Classroom made = services.classes.add(teacher(request), name, ZoneId.systemDefault(), false,
        list.children(), services.now());
    services.sessions.look(visitor(request), made.id());
    request.redirect(list.children().isEmpty() ? "/setup/list" : "/plan", HttpStatus.SEE_OTHER);
  }

  void makeInventedClass(Context request) {
    Classroom made = services.invented.make(teacher(request), InventedClasses.USUAL, ZoneId.systemDefault());
    services.sessions.look(visitor(request), made.id());
    request.redirect("/findings", HttpStatus.SEE_OTHER);
  }

  void lookAtClass(Context request) {
    Classroom classroom = ownClass(request);
    services.sessions.look(visitor(request), classroom.id());
    request.redirect("/plan", HttpStatus.SEE_OTHER);
  }

  void throwAwayClass(Context request) {
    Classroom classroom = ownClass(request);
    if (!services.classes.throwAway(teacher(request), classroom.id())) {
      throw new Refusal(422, "Only an invented class can be thrown away here. Nothing was removed.");
    }
    request.redirect("/plan", HttpStatus.SEE_OTHER);
  }

  Classroom ownClass(Context request) {
    long teacher = teacher(request);
    return TabletHandlers.number(request.pathParam("class"))
        .flatMap(id -> services.classes.of(teacher).stream().filter(each -> each.id() == id).findFirst())
        .orElseThrow(Refusal::notFound);
  }

  // ---- small things of every page ----

  Set<String> namesOf(Classroom classroom) {
    return services.classes.children(classroom.id()).stream().map(each -> each.name())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  // ---- findings, records ----

  /** A sheet to print, the same for every class. */
  void mats(Context request) {
    render(request, "teacher/mats", MatsPage.of("es".equals(request.queryParam("language"))
        ? Locale.forLanguageTag("es") : Locale.US), null);
  }

  void work(Context request) {
    inClass(request, classroom -> render(request, "teacher/work", workView(request, classroom),
        frame(classroom, Place.FINDINGS), Map.of("moving", MovingHandlers.view(services, classroom,
            request.pathParam("work")))));
  }

  WorkView workView(Context request, Classroom classroom) {
    String work = request.pathParam("work");
    String page = request.pathParam("page");
    int seq = TabletHandlers.number(request.pathParam("seq")).filter(each -> each == each.intValue())
        .orElseThrow(Refusal::notFound).intValue();
    return services.works.piece(classroom.id(), work)
        .flatMap(piece -> WorkView.of(piece, work, page, seq, services.works.overrules(work, page, seq),
            classroom.zone()))
        .orElseThrow(Refusal::notFound);
  }

  void overrule(Context request) {
    inClass(request, classroom -> {
      WorkView view = workView(request, classroom);
      String verdict = form(request, "verdict");
      Part part = view.parts().stream()
          .filter(each -> each.id().equals(form(request, "part"))
              && each.choices().stream().anyMatch(choice -> choice.id().equals(verdict)))
          .findFirst().flatMap(each -> Part.of(each.id()))
          .orElseThrow(() -> new Refusal(422, "A mark from the list was expected. Go back and choose one."));
      String note = form(request, "note").strip();
      if (note.length() > WorkView.LONGEST_NOTE) {
        throw new Refusal(422, "A note of at most " + WorkView.LONGEST_NOTE
            + " characters was expected. Go back and shorten it.");
      }
      services.works.overrule(classroom.id(), teacher(request), request.pathParam("work"), request.pathParam("page"),
          Integer.parseInt(request.pathParam("seq")), part, verdict, note, services.now());
      services.live.changed(classroom.id());
      request.redirect(request.path().replaceFirst("/overrule$", ""), HttpStatus.SEE_OTHER);
    });
  }

  /** The stream of changes of the class she looks at. */
  void live(Context request) throws Exception {
    if (!String.valueOf(request.header(Header.ACCEPT)).contains("text/event-stream")) {
      throw new Refusal(406, "This address is for the pages themselves, not for reading.");
    }
    Classroom classroom = classroom(request).orElseThrow(Refusal::notFound);
    new SseHandler(0, client -> services.live.watch(client, classroom.id())).handle(request);
  }

  // ---- small things ----

  Frame frame(Classroom classroom, Place here) {
    return Frame.of(classroom, here, services.now());
  }

  /** The frame as whoever asks may see it. */
  private Frame whose(Context request, Frame frame) {
    TeacherSessions.Session session = session(request).orElseThrow(Refusal::forbidden);
    return frame.in(services.setups.of(frame.classroom()).closedOn() != null, session.substitute(),
        !session.substitute() && services.classes.of(session.teacher()).size() > 1);
  }

  /** What marking again by newer rules changed, in words; empty when nothing did. */
  String markedAgain() {
    return services.teachers.setting(App.MARKED_AGAIN).orElse("");
  }

  void render(Context request, String name, Object page, Frame frame) {
    render(request, name, page, frame, Map.of());
  }

  void render(Context request, String name, Object page, Frame frame, Map<String, Object> more) {
    Map<String, Object> model = new HashMap<>(more);
    model.put("page", page);
    model.put("csrf", String.valueOf(formToken(request)));
    model.put("frame", frame == null ? null : whose(request, frame));
    request.html(services.pages.render(name, model, Locale.US));
  }

  static String form(Context request, String field) {
    String value = request.formParam(field);
    return value == null ? "" : value.length() > 20_000 ? value.substring(0, 20_000) : value;
  }
}
