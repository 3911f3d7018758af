package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Findings;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.Wall;
import fewermore.marking.Part;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.ProposedMix;
import fewermore.problem.Regrouping;
import fewermore.records.Csv;
import fewermore.records.ProgressTable;
import fewermore.records.Table;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.store.TeacherStore.Teacher;
import fewermore.story.Kind;
import fewermore.web.teacher.BoardPage;
import fewermore.web.teacher.ChildPage;
import fewermore.web.teacher.FindingsPage;
import fewermore.web.teacher.FirstPage;
import fewermore.web.teacher.Frame;
import fewermore.web.teacher.HelpPage;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.PlanPage;
import fewermore.web.teacher.RecordsPage;
import fewermore.web.teacher.SetupPage;
import fewermore.web.teacher.SignInPage;
import fewermore.web.teacher.WallPage;
import fewermore.web.teacher.WelcomePage;
import fewermore.web.teacher.WorkView;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import io.javalin.http.sse.SseHandler;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;

/** What the teacher can do on the laptop. */
final class TeacherHandlers implements Doors.Guard {
  static final String DESK = "desk";
  private static final String TEACHER_NAME = "Teacher";

  private final Services services;

  TeacherHandlers(Services services) {
    this.services = services;
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
    } else if (session(request).isEmpty()) {
      if (request.path().equals("/live")) {
        throw Refusal.forbidden();
      }
      Doors.redirect(request, services.teachers.first().isEmpty() ? "/first" : "/sign-in");
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
  private static String visitor(Context request) {
    String made = request.attribute(DESK);
    return made != null ? made : request.cookie(DESK);
  }

  private static void setDesk(Context request, String cookie) {
    request.cookie(new Cookie(DESK, cookie, "/", -1, false, true, null, SameSite.STRICT));
  }

  private Optional<TeacherSessions.Session> session(Context request) {
    return services.sessions.of(visitor(request));
  }

  private long teacher(Context request) {
    return session(request).orElseThrow(Refusal::forbidden).teacher();
  }

  /** The class she looks at; without one she is asked to make it. */
  private Optional<Classroom> classroom(Context request) {
    TeacherSessions.Session session = session(request).orElseThrow(Refusal::forbidden);
    List<Classroom> classes = services.classesOf(session.teacher());
    return classes.stream().filter(each -> session.classroom() != null && each.id() == session.classroom()).findFirst()
        .or(() -> classes.stream().findFirst());
  }

  /** What a page about a class does; a teacher without a class is asked to make one first. */
  private interface ClassPage {
    void show(Classroom classroom);
  }

  private void inClass(Context request, ClassPage page) {
    Optional<Classroom> classroom = classroom(request);
    if (classroom.isEmpty()) {
      request.redirect("/welcome", HttpStatus.SEE_OTHER);
    } else {
      page.show(classroom.get());
    }
  }

  // ---- coming in ----

  void start(Context request) {
    request.redirect(services.teachers.first().isEmpty() ? "/first" : "/plan", HttpStatus.SEE_OTHER);
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
    String problem = passphrase.length() < FirstPage.SHORTEST || passphrase.length() > Passphrases.LONGEST
        ? "A passphrase of " + FirstPage.SHORTEST + " to " + Passphrases.LONGEST
            + " characters was expected. Try a few words in a row."
        : passphrase.equals(form(request, "again")) ? null
        : "The two passphrases are not the same. Type the second one again.";
    if (problem != null) {
      request.status(422);
      render(request, "teacher/first", new FirstPage(problem), null);
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

  void signInPage(Context request) {
    if (services.teachers.first().isEmpty()) {
      request.redirect("/first", HttpStatus.SEE_OTHER);
      return;
    }
    render(request, "teacher/sign-in", new SignInPage(null), null);
  }

  void signIn(Context request) {
    Teacher teacher = services.teachers.first().orElseThrow(Refusal::notFound);
    long seconds = services.sessions.untilNextTry().toSeconds();
    if (seconds > 0) {
      request.status(429);
      request.header("Retry-After", Long.toString(seconds));
      render(request, "teacher/sign-in", new SignInPage("Wait " + seconds + " seconds, then try once more."), null);
      return;
    }
    String passphrase = form(request, "passphrase");
    if (passphrase.length() > Passphrases.LONGEST || !Passphrases.fits(passphrase, teacher.passphrase())) {
      services.sessions.wrong();
      request.status(422);
      render(request, "teacher/sign-in",
          new SignInPage("That is not the passphrase. Look at capital letters and try again."), null);
      return;
    }
    services.sessions.right();
    services.sessions.end(visitor(request));
    setDesk(request, services.sessions.start(teacher.id()));
    request.redirect("/plan", HttpStatus.SEE_OTHER);
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
    ClassList list = ClassList.read(names, List.of());
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
    request.redirect("/plan", HttpStatus.SEE_OTHER);
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

  private Classroom ownClass(Context request) {
    long teacher = teacher(request);
    return TabletHandlers.number(request.pathParam("class"))
        .flatMap(id -> services.classes.of(teacher).stream().filter(each -> each.id() == id).findFirst())
        .orElseThrow(Refusal::notFound);
  }

  // ---- plan ----

  void plan(Context request) {
    inClass(request, classroom -> showPlan(request, classroom, ProposedMix.counts(PlanPage.PROPOSED),
        NumberRange.WITHIN_100, Regrouping.EITHER, null));
  }

  void makeSet(Context request) {
    inClass(request, classroom -> {
      NumberRange range = NumberRange.of("within-" + form(request, "within")).orElse(NumberRange.WITHIN_100);
      Regrouping regrouping = regrouping(form(request, "regroup"));
      boolean proposed = form(request, "mix").equals("proposed");
      Map<Kind, Integer> counts = proposed ? ProposedMix.counts(PlanPage.PROPOSED) : counts(request);
      int all = counts.values().stream().mapToInt(Integer::intValue).sum();
      if (all < 1 || all > PlanPage.MOST) {
        request.status(422);
        showPlan(request, classroom, counts, range, regrouping,
            "From 1 to " + PlanPage.MOST + " problems were expected, this makes " + all + ". Change a count.");
        return;
      }
      LocalDate today = services.today(classroom);
      Optional<ProblemSet> there = latestSet(classroom);
      int given = services.problems.given(classroom.id(), today).stream().mapToInt(set -> set.problems().size()).sum();
      if (given + all > PlanPage.MOST) {
        request.status(422);
        showPlan(request, classroom, counts, range, regrouping, "The children already have " + given
            + " of at most " + PlanPage.MOST + " problems for today; there is room for " + (PlanPage.MOST - given)
            + " more. Choose fewer.");
        return;
      }
      ProblemWriter writer = new ProblemWriter(range, regrouping, namesOf(classroom));
      long seed = services.tokens.below(Integer.MAX_VALUE);
      List<Problem> problems = writer.writeSet(counts, seed).problems();
      there.filter(set -> !set.given()).ifPresent(set -> services.problems.putAway(classroom.id(), set.id()));
      services.problems.addSet(classroom.id(), today, false, ProblemSet.USUAL_TRIES, false, ProblemSet.USUAL_PARTS,
          problems.stream().map(NewProblem::of).toList(), services.now());
      request.redirect("/plan", HttpStatus.SEE_OTHER);
    });
  }

  void replaceProblem(Context request) {
    inClass(request, classroom -> {
      ProblemSet set = latestSet(classroom).orElseThrow(Refusal::notFound);
      long id = TabletHandlers.number(form(request, "problem")).orElseThrow(Refusal::notFound);
      Kind kind = set.problems().stream().filter(each -> each.id() == id).findFirst()
          .orElseThrow(Refusal::notFound).kind();
      Set<String> names = namesOf(classroom);
      set.problems().forEach(each -> {
        names.add(String.valueOf(each.story().persons().larger()));
        names.add(String.valueOf(each.story().persons().smaller()));
      });
      NumberRange range = set.problems().stream().allMatch(each -> each.story().amounts().total() <= 20)
          ? NumberRange.WITHIN_20
          : set.problems().stream().allMatch(each -> each.story().amounts().total() <= 50)
              ? NumberRange.WITHIN_50 : NumberRange.WITHIN_100;
      Problem other = new ProblemWriter(range, Regrouping.EITHER, names)
          .write(kind, services.tokens.below(Integer.MAX_VALUE));
      if (!services.problems.replace(classroom.id(), set.id(), id, NewProblem.of(other), services.now())) {
        throw new Refusal(422, "The children already have this problem. It stays as it is.");
      }
      request.redirect("/plan", HttpStatus.SEE_OTHER);
    });
  }

  void giveSet(Context request) {
    inClass(request, classroom -> {
      ProblemSet set = latestSet(classroom).orElseThrow(() -> new Refusal(422, "There is no set yet. Make one first."));
      services.problems.give(classroom.id(), set.id());
      request.redirect("/board", HttpStatus.SEE_OTHER);
    });
  }

  private void showPlan(Context request, Classroom classroom, Map<Kind, Integer> counts, NumberRange range,
      Regrouping regrouping, String problem) {
    Optional<ProblemSet> set = latestSet(classroom);
    Set<Long> problems = set.stream().flatMap(each -> each.problems().stream()).map(each -> each.id())
        .collect(Collectors.toSet());
    int withWork = set.isEmpty() || !set.get().given() ? 0
        : (int) services.works.pieces(classroom.id()).stream()
            .filter(piece -> problems.contains(piece.problem().id())).map(piece -> piece.child().id()).distinct().count();
    render(request, "teacher/plan", PlanPage.of(services.today(classroom), counts, range.limit(), said(regrouping),
        set.orElse(null), withWork, problem), frame(classroom, Place.PLAN));
  }

  /** The set she works on: the day's newest. One that was given stays; a new one starts beside it. */
  private Optional<ProblemSet> latestSet(Classroom classroom) {
    List<ProblemSet> sets = services.problems.sets(classroom.id(), services.today(classroom));
    return sets.isEmpty() ? Optional.empty() : Optional.of(sets.get(sets.size() - 1));
  }

  private static Map<Kind, Integer> counts(Context request) {
    Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
    for (Kind kind : Kind.values()) {
      counts.put(kind, TabletHandlers.number(form(request, kind.id())).filter(count -> count >= 0 && count <= 99)
          .orElse(0L).intValue());
    }
    return counts;
  }

  private static Regrouping regrouping(String said) {
    return switch (said) {
      case "yes" -> Regrouping.NEEDED;
      case "no" -> Regrouping.NOT_NEEDED;
      default -> Regrouping.EITHER;
    };
  }

  private static String said(Regrouping regrouping) {
    return switch (regrouping) {
      case NEEDED -> "yes";
      case NOT_NEEDED -> "no";
      case EITHER -> "either";
    };
  }

  private Set<String> namesOf(Classroom classroom) {
    return services.classes.children(classroom.id()).stream().map(each -> each.name())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  // ---- board, findings, records ----

  void board(Context request) {
    inClass(request, classroom -> render(request, "board/door",
        BoardPage.of(classroom.name(), services.door(classroom), services.reach.address().orElse(null)), null));
  }

  void newDoor(Context request) {
    inClass(request, classroom -> {
      services.sittings.changeDoor(services.newDoor(classroom), services.now());
      request.redirect("/board", HttpStatus.SEE_OTHER);
    });
  }

  void findings(Context request) {
    inClass(request, classroom -> render(request, "teacher/findings",
        FindingsPage.of(Findings.of(services.classes.children(classroom.id()),
            services.works.pieces(classroom.id()), services.today(classroom)), request.queryParam("about")),
        frame(classroom, Place.FINDINGS), Map.of("markedAgain", markedAgain())));
  }

  void wall(Context request) {
    inClass(request, classroom -> {
      Wall wall = Wall.of(services.classes.children(classroom.id()), services.works.pieces(classroom.id()),
          services.today(classroom));
      render(request, "board/class", WallPage.of(classroom.name(), wall), null);
    });
  }

  void child(Context request) {
    inClass(request, classroom -> {
      Findings findings = Findings.of(services.classes.children(classroom.id()),
          services.works.pieces(classroom.id()), services.today(classroom));
      ChildPage page = TabletHandlers.number(request.pathParam("child"))
          .flatMap(id -> services.classes.child(classroom.id(), id))
          .flatMap(child -> ChildPage.of(findings, child)).orElseThrow(Refusal::notFound);
      render(request, "teacher/child", page, frame(classroom, Place.FINDINGS));
    });
  }

  void work(Context request) {
    inClass(request, classroom -> render(request, "teacher/work", workView(request, classroom),
        frame(classroom, Place.FINDINGS)));
  }

  private WorkView workView(Context request, Classroom classroom) {
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

  void records(Context request) {
    inClass(request, classroom -> {
      List<Child> children = services.classes.children(classroom.id());
      List<PieceOfWork> pieces = services.works.pieces(classroom.id());
      render(request, "teacher/records", RecordsPage.of(children, pieces, List.of(
          ProgressTable.childByKind(classroom, children, pieces), ProgressTable.pieces(classroom, children, pieces))),
          frame(classroom, Place.RECORDS), Map.of("overruled", services.works.overruled(classroom.id()),
              "markedAgain", markedAgain()));
    });
  }

  void setup(Context request) {
    inClass(request, classroom -> showSetup(request, classroom, "", null));
  }

  void addChildren(Context request) {
    inClass(request, classroom -> {
      String typed = form(request, "names");
      ClassList list = ClassList.read(typed, services.classes.children(classroom.id()));
      if (list.problem() != null) {
        request.status(422);
        showSetup(request, classroom, typed, list.problem());
        return;
      }
      services.classes.addChildren(classroom.id(), list.children(), services.now());
      request.redirect("/setup", HttpStatus.SEE_OTHER);
    });
  }

  private void showSetup(Context request, Classroom classroom, String typed, String problem) {
    AddressPicker.Choice choice = services.reach.choice();
    render(request, "teacher/setup", SetupPage.of(classroom, services.classes.children(classroom.id()),
        services.reach.address().orElse(null), services.reach.otherAddresses(), choice.vpn(), choice.publicRange(),
        services.classesOf(teacher(request)), dataFolder(), problem, typed), frame(classroom, Place.SETUP));
  }

  void help(Context request) {
    inClass(request, classroom -> render(request, "teacher/help", new HelpPage(version(), dataFolder(),
        services.reach.address().orElse(null), Licences.all()), frame(classroom, Place.HELP)));
  }

  private String dataFolder() {
    return services.settings.data().toAbsolutePath().normalize().toString();
  }

  private static String version() {
    String version = TeacherHandlers.class.getPackage().getImplementationVersion();
    return version == null ? "run from its source" : version;
  }

  void kindsCsv(Context request) {
    csv(request, "kinds", (classroom, pieces) ->
        ProgressTable.childByKind(classroom, services.classes.children(classroom.id()), pieces));
  }

  void workCsv(Context request) {
    csv(request, "work", (classroom, pieces) ->
        ProgressTable.pieces(classroom, services.classes.children(classroom.id()), pieces));
  }

  private void csv(
      Context request, String name, BiFunction<Classroom, Collection<PieceOfWork>, Table> table) {
    inClass(request, classroom -> {
      Csv.Mark mark = "yes".equals(request.queryParam("mark")) ? Csv.Mark.BYTE_ORDER_MARK : Csv.Mark.NONE;
      String text = Csv.write(table.apply(classroom, services.works.pieces(classroom.id())), mark);
      request.header(Header.CONTENT_DISPOSITION,
          "attachment; filename=\"" + services.today(classroom) + "-" + name + ".csv\"");
      request.contentType(Csv.MEDIA_TYPE);
      request.result(text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
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

  private Frame frame(Classroom classroom, Place here) {
    return Frame.of(classroom, here, services.now());
  }

  /** What marking again by newer rules changed, in words; empty when nothing did. */
  private String markedAgain() {
    return services.teachers.setting(App.MARKED_AGAIN).orElse("");
  }

  private void render(Context request, String name, Object page, Frame frame) {
    render(request, name, page, frame, Map.of());
  }

  private void render(Context request, String name, Object page, Frame frame, Map<String, Object> more) {
    Map<String, Object> model = new HashMap<>(more);
    model.put("page", page);
    model.put("csrf", String.valueOf(formToken(request)));
    model.put("frame", frame);
    request.html(services.pages.render(name, model, Locale.US));
  }

  private static String form(Context request, String field) {
    String value = request.formParam(field);
    return value == null ? "" : value.length() > 20_000 ? value.substring(0, 20_000) : value;
  }
}
