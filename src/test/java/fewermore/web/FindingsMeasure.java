package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.Classroom;
import fewermore.classroom.Findings;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.SentItem;
import fewermore.classroom.TeacherWord;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.ProposedMix;
import fewermore.problem.Regrouping;
import fewermore.reasoning.ReasoningTable;
import fewermore.store.ClassStore.NewChild;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.store.SittingStore;
import fewermore.store.SittingStore.Coming;
import fewermore.story.Comparison;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * A class of 28 after 180 days of 8 problems, on a real data file in the real app: Findings' page, a new piece of work
 * to the page that shows it, and the estimate of every child over all days from the marks as they are stored. Run by
 * {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.web.FindingsMeasure}; with
 * {@code -Dargs="28 20 8"} a smaller one. Printed, never asserted.
 */
public final class FindingsMeasure {
  private static final int TIMES = 21;
  private static final int WARM = 60;

  private FindingsMeasure() {}

  public static void main(String[] arguments) {
    int children = at(arguments, 0, 28);
    int days = at(arguments, 1, 180);
    int problems = at(arguments, 2, 8);
    int status = 1;
    try (Rig rig = Rig.start(Clock.systemUTC())) {
      Classroom classroom = fill(rig, children, days, problems);
      System.out.printf(Locale.ROOT, "%d children, %d days, %d problems a day: %,d pieces of work%n", children, days,
          problems, rig.services.works.pieces(classroom.id()).size());
      measure(rig, classroom);
      status = 0;
    } finally {
      System.exit(status);
    }
  }

  private static int at(String[] arguments, int place, int usual) {
    return arguments.length > place ? Integer.parseInt(arguments[place]) : usual;
  }

  private static Classroom fill(Rig rig, int size, int days, int problems) {
    List<NewChild> list = new ArrayList<>();
    for (int child = 0; child < size; child++) {
      list.add(new NewChild("Child " + (child + 1), "kite", "sand", "en"));
    }
    Services services = rig.services;
    Classroom classroom = services.classes.add(rig.classroom.teacher(), "The year", rig.classroom.zone(), false, list,
        services.now());
    List<Child> children = services.classes.children(classroom.id());
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, Set.of());
    Random random = new Random(7);
    LocalDate today = services.today(classroom);
    for (int day = days - 1; day >= 0; day--) {
      List<Problem> set = writer.writeSet(ProposedMix.of(problems), day).problems();
      keep(services, classroom, children, set, today.minusDays(day), random);
    }
    return classroom;
  }

  private static void keep(Services services, Classroom classroom, List<Child> children, List<Problem> set,
      LocalDate day, Random random) {
    Instant nine = day.atTime(LocalTime.of(0, 5)).atZone(classroom.zone()).toInstant();
    services.problems.addSet(classroom.id(), day, true, ProblemSet.USUAL_TRIES, false, ProblemSet.USUAL_PARTS,
        set.stream().map(NewProblem::of).toList(), nine);
    Map<String, Child> sittings = new LinkedHashMap<>();
    List<Coming> comings = new ArrayList<>();
    for (Child child : children) {
      String sitting = services.tokens.id();
      String tablet = SittingStore.inventedTablet(classroom.id(), children.indexOf(child));
      services.sittings.meetTablet(tablet, "tablet", nine);
      sittings.put(sitting, child);
      comings.add(new Coming(sitting, child.id(), tablet, Tokens.hash(services.tokens.id()), nine));
    }
    var works = services.sittings.startAll(comings, day, services.tokens::idInOrder);
    Map<String, List<SentItem>> items = new LinkedHashMap<>();
    sittings.forEach((sitting, child) -> {
      List<SentItem> sent = new ArrayList<>();
      for (int at = 0; at < set.size(); at++) {
        sent.add(new SentItem(works.get(sitting).get(at).id(), "page", at + 1, SentItem.Kind.HANDED_IN,
            written(set.get(at).story(), random), nine.plusSeconds(60L * at), false));
      }
      items.put(sitting, sent);
    });
    services.works.keepAll(items);
  }

  /** Right three times in four, otherwise the opposite operation. */
  private static Work written(Comparison story, Random random) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    int right = story.value(story.unknown());
    boolean adds = right == first + second;
    boolean plus = random.nextInt(4) > 0 ? adds : !adds;
    String equation = Math.max(first, second) + (plus ? " + " : " - ") + Math.min(first, second) + " = □";
    return new Work(equation, String.valueOf(plus ? first + second : Math.abs(first - second)), "", Bars.EMPTY, null);
  }

  private static void measure(Rig rig, Classroom classroom) {
    Browser teacher = new Browser(rig.teacherAddress());
    teacher.get("/sign-in");
    teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    teacher.post("/classes/" + classroom.id() + "/look", Map.of());
    for (int time = 0; time < WARM; time++) {
      teacher.get("/findings");
    }
    long[] page = new long[TIMES];
    for (int time = 0; time < TIMES; time++) {
      page[time] = nanos(() -> teacher.get("/findings"));
    }
    tell("Findings' page, asked over HTTP", page);

    Child child = rig.services.classes.children(classroom.id()).get(0);
    long[] piece = new long[TIMES];
    long[] sent = new long[TIMES];
    Tablet tablet = new Tablet(rig);
    tablet.browser.get("/in/" + rig.services.door(classroom).token());
    tablet.browser.get("/come-in/" + child.id());
    tablet.browser.post("/come-in/" + child.id(), Map.of());
    tablet.load();
    for (int time = 0; time < TIMES; time++) {
      int seq = time + 1;
      sent[time] = nanos(() ->
        tablet.send(tablet.item(tablet.work(1), seq, "handed-in", new Work("5 + " + seq + " = x", "9", "", Bars.EMPTY, null))));
      piece[time] = sent[time] + nanos(() -> teacher.get("/findings"));
    }
    tell("a piece of work sent until it is on disk", sent);
    tell("a piece of work sent, and the page that shows it", piece);

    long[] anew = new long[TIMES / 3];
    for (int time = 0; time < anew.length; time++) {
      anew[time] = nanos(() -> {
        TeacherWord word = rig.services.reasoning.word(classroom.id());
        rig.services.classes.children(classroom.id()).forEach(each -> ChildReasoning.of(each,
            rig.services.works.pieces(classroom.id(), each), word, ReasoningTable.standard()));
      });
    }
    tell("every child's estimate over all days, read from the file", anew);
    System.gc();
    System.gc();
    System.out.printf(Locale.ROOT, "heap after a forced collection: %d MB, days on Findings: %d%n",
        (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20, Findings.DAYS_READ);
  }

  private static long nanos(Runnable what) {
    long from = System.nanoTime();
    what.run();
    return System.nanoTime() - from;
  }

  private static void tell(String what, long[] nanos) {
    Arrays.sort(nanos);
    System.out.printf(Locale.ROOT, "%s: median %.1f ms, longest %.1f ms, of %d%n", what, nanos[nanos.length / 2] / 1e6,
        nanos[nanos.length - 1] / 1e6, nanos.length);
  }
}
