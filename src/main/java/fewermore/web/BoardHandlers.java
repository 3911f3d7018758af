package fewermore.web;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.TwoEquations;
import fewermore.classroom.Wall;
import fewermore.problem.NumberRange;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.story.Kind;
import fewermore.web.teacher.BoardFrame;
import fewermore.web.teacher.BoardPage;
import fewermore.web.teacher.BoardSizePage;
import fewermore.web.teacher.Lesson;
import fewermore.web.teacher.PairPage;
import fewermore.web.teacher.StrategyPage;
import fewermore.web.teacher.TeachPage;
import fewermore.web.teacher.TwoPage;
import fewermore.web.teacher.WallPage;
import fewermore.web.teacher.WarmUpPage;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import io.javalin.http.sse.SseHandler;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The Board: what the class sees on the wall. No page of it holds a child's name. */
final class BoardHandlers {
  static final String BACK_ROW = "board back row";
  static final String DARK = "board dark";
  /** A back row 6.7 picture heights away suits most classrooms. Ours. */
  private static final String USUAL_BACK_ROW = "27 4";
  private static final int WARM_UP_SENTENCES = 5;
  private static final int LONGEST_PATH = 400;
  private static final int MOST_MARKS = 60;
  private static final List<String> STRATEGY_FIELDS = List.of("first", "op", "second", "kind", "check");
  private static final int LONGEST_FIELD = 20;

  private final Services services;
  private final TeacherHandlers desk;

  BoardHandlers(Services services, TeacherHandlers desk) {
    this.services = services;
    this.desk = desk;
  }

  // ---- the pages ----

  void door(Context request) {
    desk.inClass(request, classroom -> show(request, classroom, "/board", step(request), false));
  }

  void problem(Context request) {
    desk.inClass(request, classroom ->
        show(request, classroom, "/board/problem/" + request.pathParam("number"), step(request), false));
  }

  void wall(Context request) {
    desk.inClass(request, classroom -> show(request, classroom, "/board/class", step(request), false));
  }

  void warmUp(Context request) {
    desk.inClass(request, classroom -> show(request, classroom, "/board/warm-up", step(request), false));
  }

  void two(Context request) {
    desk.inClass(request, classroom -> {
      List<String> lines = request.queryParams("line").stream().distinct().toList();
      if (lines.size() != 2) {
        chooseTwo(request, classroom, "Two equations were expected. Tick two of one problem.");
        return;
      }
      show(request, classroom, "/board/two/" + request.pathParam("problem") + "?line=" + encode(lines.get(0)) + "&line="
          + encode(lines.get(1)), step(request), false);
    });
  }

  /** Two numbers she types, worked out; without them the form for them. */
  void strategy(Context request) {
    desk.inClass(request, classroom -> {
      Map<String, String> asked = new TreeMap<>();
      for (String field : STRATEGY_FIELDS) {
        String value = request.queryParam(field);
        if (value != null) {
          asked.put(field, value.length() > LONGEST_FIELD ? value.substring(0, LONGEST_FIELD) : value);
        }
      }
      showStrategy(request, classroom, asked, step(request), false);
    });
  }

  private void showStrategy(Context request, Classroom classroom, Map<String, String> asked, int step, boolean stage) {
    StrategyPage page = StrategyPage.of(asked, problems(classroom));
    if (page.problem() != null) {
      request.status(422);
    }
    render(request, "board/strategy", page, frame(classroom, page.path(), step, page.steps(),
        page.worked() == null ? "/board" : "/board/strategy", null, stage));
  }

  void chooseTwo(Context request) {
    desk.inClass(request, classroom -> chooseTwo(request, classroom, null));
  }

  private void chooseTwo(Context request, Classroom classroom, String problem) {
    render(request, "board/choose-two", TwoPage.of(twoEquations(classroom), problem),
        frame(classroom, "/board/two", 1, 1, "/board", null, false));
  }

  /** The window on the second screen: whatever stands on the Board. */
  void stage(Context request) {
    desk.inClass(request, classroom -> {
      Stage.Shown shown = services.stage.of(classroom.id());
      try {
        show(request, classroom, shown.path(), shown.step(), true);
      } catch (Refusal gone) {
        show(request, classroom, Stage.DOOR.path(), 1, true);
      }
    });
  }

  private void show(Context request, Classroom classroom, String path, int step, boolean stage) {
    int problems = problems(classroom).size();
    String last = path.replaceFirst("\\?.*", "").replaceFirst(".*/", "");
    if (path.startsWith("/board/problem/")) {
      showProblem(request, classroom, last, step, stage);
    } else if (path.startsWith("/board/two/")) {
      showPair(request, classroom, path, last, step, stage);
    } else if (path.startsWith("/board/strategy?")) {
      Map<String, String> asked = new TreeMap<>();
      for (String field : path.replaceFirst("[^?]*\\?", "").split("&")) {
        String[] parts = field.split("=", 2);
        if (parts.length == 2 && STRATEGY_FIELDS.contains(parts[0])) {
          asked.put(parts[0], parts[1]);
        }
      }
      showStrategy(request, classroom, asked, step, stage);
    } else if (path.equals("/board/class")) {
      WallPage page = WallPage.of(classroom.name(), Wall.of(services.classes.children(classroom.id()),
          services.works.pieces(classroom.id()), services.today(classroom)));
      render(request, "board/class", page, frame(classroom, path, step, page.steps(), "/board", null, stage));
    } else if (path.equals("/board/warm-up")) {
      WarmUpPage page = WarmUpPage.of(comparingSentences(classroom));
      render(request, "board/warm-up", page, frame(classroom, path, step, page.lastStep(), "/board",
          problems == 0 ? null : "/board/problem/1", stage));
    } else if (path.equals("/board")) {
      BoardPage page = BoardPage.of(classroom.name(), services.door(classroom), services.reach.address().orElse(null));
      render(request, "board/door", page,
          frame(classroom, path, 1, 1, null, problems == 0 ? null : "/board/problem/1", stage));
    } else {
      throw Refusal.notFound();
    }
  }

  private void showProblem(Context request, Classroom classroom, String last, int step, boolean stage) {
    List<AssignedProblem> problems = problems(classroom);
    int number = TabletHandlers.number(last).filter(each -> each >= 1 && each <= problems.size())
        .orElseThrow(Refusal::notFound).intValue();
    AssignedProblem problem = problems.get(number - 1);
    boolean names = Wall.namesAChild(services.classes.children(classroom.id()), problem);
    TeachPage page = new TeachPage(number, problems.size(), names ? null : Lesson.of(problem));
    String before = number == 1 ? "/board" : "/board/problem/" + (number - 1) + "?step=99";
    render(request, "board/teach", page, frame(classroom, "/board/problem/" + number, step,
        names ? 1 : page.lesson().steps(), before,
        number == problems.size() ? null : "/board/problem/" + (number + 1), stage));
  }

  private void showPair(Context request, Classroom classroom, String path, String last, int step, boolean stage) {
    List<String> lines = Stream.of(path.replaceFirst(".*\\?", "").split("&"))
        .map(part -> java.net.URLDecoder.decode(part.replaceFirst("line=", ""), StandardCharsets.UTF_8)).toList();
    TwoEquations found = twoEquations(classroom).stream()
        .filter(each -> Long.toString(each.problem().id()).equals(last) && each.lines().containsAll(lines))
        .findFirst().orElseThrow(Refusal::notFound);
    List<String> inNoOrder = found.lines().stream().filter(lines::contains).toList();
    if (inNoOrder.size() != 2) {
      throw Refusal.notFound();
    }
    PairPage page = PairPage.of(found.problem().sentences(), inNoOrder.get(0), inNoOrder.get(1));
    render(request, "board/two", page, frame(classroom, path, step, page.steps(), "/board/two", null, stage));
  }

  private List<TwoEquations> twoEquations(Classroom classroom) {
    return TwoEquations.of(services.classes.children(classroom.id()), services.works.pieces(classroom.id()),
        services.today(classroom));
  }

  /** Today's problems: those the children see, or, before she gave any, those she is choosing. */
  private List<AssignedProblem> problems(Classroom classroom) {
    List<ProblemSet> sets = services.problems.sets(classroom.id(), services.today(classroom));
    List<ProblemSet> given = sets.stream().filter(ProblemSet::given).toList();
    return (given.isEmpty() ? sets : given).stream().flatMap(set -> set.problems().stream()).toList();
  }

  /** Comparing sentences with as many different words as there are: today's first, then invented ones. */
  private List<String> comparingSentences(Classroom classroom) {
    List<Child> children = services.classes.children(classroom.id());
    Set<String> names = children.stream().map(Child::name).collect(Collectors.toSet());
    List<String> all = new ArrayList<>();
    problems(classroom).stream().filter(problem -> !Wall.namesAChild(children, problem))
        .forEach(problem -> all.addAll(problem.sentences()));
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, names);
    long seed = services.today(classroom).toEpochDay();
    for (int more = 0; more < 40; more++) {
      writer.write(Kind.values()[more % Kind.values().length], seed * 100 + more).english().sentences()
          .forEach(sentence -> all.add(sentence.text()));
    }
    List<String> chosen = new ArrayList<>();
    Set<String> words = new LinkedHashSet<>();
    for (String sentence : all) {
      Set<String> own = WarmUpPage.words(sentence);
      if (chosen.size() < WARM_UP_SENTENCES && !own.isEmpty() && !words.containsAll(own)) {
        chosen.add(sentence);
        words.addAll(own);
      }
    }
    return chosen;
  }

  // ---- what the teacher sets ----

  void newDoor(Context request) {
    desk.inClass(request, classroom -> {
      services.sittings.changeDoor(services.newDoor(classroom), services.now());
      services.live.changed(classroom.id());
      request.redirect("/board", HttpStatus.SEE_OTHER);
    });
  }

  /** What stands on the Board now: the other windows follow. */
  void say(Context request) {
    desk.inClass(request, classroom -> {
      String path = TeacherHandlers.form(request, "path");
      if (!path.startsWith("/board") || path.length() > LONGEST_PATH) {
        throw new Refusal(422, "A page of the Board was expected.");
      }
      List<String> marks = Stream.of(TeacherHandlers.form(request, "marks").split(","))
          .filter(mark -> mark.matches("[a-z0-9-]{1,20}")).limit(MOST_MARKS).toList();
      services.stage.show(classroom.id(), new Stage.Shown(path,
          TabletHandlers.number(TeacherHandlers.form(request, "step")).orElse(1L).intValue(), marks,
          TeacherHandlers.form(request, "blank").equals("yes")), TeacherHandlers.form(request, "window"));
      request.status(HttpStatus.NO_CONTENT);
    });
  }

  void size(Context request) {
    desk.inClass(request, classroom -> {
      String[] backRow = backRow(services).split(" ");
      showSize(request, classroom, backRow[0], backRow[1], null);
    });
  }

  void setSize(Context request) {
    desk.inClass(request, classroom -> {
      String distance = TeacherHandlers.form(request, "distance").strip();
      String height = TeacherHandlers.form(request, "height").strip();
      if (!positive(distance) || !positive(height)) {
        request.status(422);
        showSize(request, classroom, distance, height,
            "Two lengths were expected, for example 27 and 4. Measure both in the same unit.");
        return;
      }
      services.teachers.set(BACK_ROW, distance + " " + height);
      services.teachers.set(DARK, TeacherHandlers.form(request, "dark").equals("yes") ? "yes" : "no");
      services.live.changed(classroom.id());
      request.redirect("/board/size", HttpStatus.SEE_OTHER);
    });
  }

  private void showSize(Context request, Classroom classroom, String distance, String height, String problem) {
    boolean tooFar = positive(distance) && positive(height)
        && Double.parseDouble(distance) / Double.parseDouble(height) * 10 > BoardFrame.MOST;
    render(request, "board/size", new BoardSizePage(distance, height, dark(), tooFar, problem),
        frame(classroom, "/board/size", 1, 1, "/board", null, false));
  }

  private static boolean positive(String text) {
    return text.matches("\\d{1,4}(\\.\\d{1,2})?") && Double.parseDouble(text) > 0;
  }

  /** How far the back row is and how high the picture, in one unit: "27 4". */
  static String backRow(Services services) {
    return services.teachers.setting(BACK_ROW).orElse(USUAL_BACK_ROW);
  }

  private boolean dark() {
    return services.teachers.setting(DARK).filter("yes"::equals).isPresent();
  }

  /** The stream of all windows of the Board: what stands there, and that the class's work changed. */
  void live(Context request) throws Exception {
    if (!String.valueOf(request.header(Header.ACCEPT)).contains("text/event-stream")) {
      throw new Refusal(406, "This address is for the pages themselves, not for reading.");
    }
    Classroom classroom = desk.classroom(request).orElseThrow(Refusal::notFound);
    new SseHandler(0, client -> services.live.watch(client,
        Set.of(Live.topic(classroom.id()), Stage.topic(classroom.id())),
        () -> services.stage.json(classroom.id()))).handle(request);
  }

  // ---- small things ----

  private BoardFrame frame(
      Classroom classroom, String path, int step, int steps, String before, String next, boolean stage) {
    String[] backRow = backRow(services).split(" ");
    return new BoardFrame(path, Math.max(1, Math.min(step, steps)), steps, before, next, problems(classroom).size(), stage,
        dark(), BoardFrame.size(Double.parseDouble(backRow[0]), Double.parseDouble(backRow[1])));
  }

  private void render(Context request, String name, Object page, BoardFrame board) {
    desk.render(request, name, page, null, Map.of("board", board));
  }

  private static int step(Context request) {
    String step = request.queryParam("step");
    return step == null ? 1 : TabletHandlers.number(step).filter(each -> each >= 1 && each <= 999).orElse(1L).intValue();
  }

  private static String encode(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }
}
