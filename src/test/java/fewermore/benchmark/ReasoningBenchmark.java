package fewermore.benchmark;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.ClassGroups;
import fewermore.classroom.Findings;
import fewermore.classroom.HandIn;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.TeacherWord;
import fewermore.marking.Marker;
import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberChooser;
import fewermore.problem.NumberRange;
import fewermore.problem.Regrouping;
import fewermore.reasoning.GroupPlace;
import fewermore.reasoning.NextProblem;
import fewermore.reasoning.ReasoningTable;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Thing;
import fewermore.web.teacher.FindingsPage;
import java.lang.management.ManagementFactory;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * The estimate for a class of 28 after 180 days of 8 problems, on one core and in 128 MB. Run with {@code cpu} it takes
 * each once warm and gives the time of the core alone, which another's work beside does not lengthen.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(value = 1, jvmArgs = "-Xmx128m")
@Threads(1)
public class ReasoningBenchmark {
  private static final int CHILDREN = 28;
  private static final int DAYS = 180;
  private static final int PROBLEMS = 8;
  private static final LocalDate FIRST = LocalDate.of(2026, 9, 1);

  private final ReasoningTable table = ReasoningTable.standard();
  private final List<Child> children = new ArrayList<>();
  private final List<List<PieceOfWork>> work = new ArrayList<>();
  private final List<PieceOfWork> recent = new ArrayList<>();
  private final List<NextProblem.Candidate> candidates = new ArrayList<>();
  private List<ChildReasoning> reasonings;
  private LocalDate last;

  @Setup
  public void year() {
    Random random = new Random(1);
    List<List<AssignedProblem>> days = days(random);
    last = FIRST.plusDays(DAYS - 1L);
    for (int i = 0; i < CHILDREN; i++) {
      Child child = new Child(i + 1, 1, "Child " + (i + 1), "leaf", "moss", "en");
      children.add(child);
      List<PieceOfWork> pieces = new ArrayList<>();
      for (int day = 0; day < DAYS; day++) {
        for (int at = 0; at < PROBLEMS; at++) {
          pieces.add(piece(child, days.get(day).get(at), FIRST.plusDays(day), at, random));
        }
      }
      work.add(pieces);
      pieces.stream().filter(each -> each.evidence().day().isAfter(last.minusDays(Findings.DAYS_READ))).forEach(recent::add);
    }
    for (int i = 0; i < 500; i++) {
      Kind kind = Kind.values()[i % 6];
      candidates.add(new NextProblem.Candidate(kind, amounts(kind, random)));
    }
    reasonings = Findings.of(children, recent, last).children();
  }

  private static List<List<AssignedProblem>> days(Random random) {
    List<List<AssignedProblem>> days = new ArrayList<>();
    for (int day = 0; day < DAYS; day++) {
      List<AssignedProblem> problems = new ArrayList<>();
      for (int at = 0; at < PROBLEMS; at++) {
        Kind kind = Kind.values()[(day + at) % 6];
        Comparison story = new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null, List.of(),
            amounts(kind, random), kind.unknown(), kind.wording(), List.of());
        problems.add(new AssignedProblem(day * 10L + at, story, "beach", 1, List.of("A story.", "A question?"), List.of()));
      }
      days.add(problems);
    }
    return days;
  }

  private static Relation amounts(Kind kind, Random random) {
    return NumberChooser.choose(kind.unknown(), NumberRange.WITHIN_100, Regrouping.EITHER, random, Set.of()).amounts();
  }

  private static PieceOfWork piece(Child child, AssignedProblem problem, LocalDate day, int at, Random random) {
    WayOfReasoning way = WayOfReasoning.values()[random.nextInt(10) == 0 ? random.nextInt(6) : (int) (child.id() % 6)];
    var prediction = way.predict(problem.story()).orElseThrow();
    Work written = new Work(prediction.equation(), Integer.toString(prediction.answer()), null, null, null);
    Instant when = day.atTime(9, at).toInstant(ZoneOffset.UTC);
    return new PieceOfWork(child, problem, List.of(new HandIn("w", "p", 1, when, day, "s", "t", false, null, written,
        Marker.mark(problem.story(), written))));
  }

  /** Evidence and estimate of every child anew, from stored marks in memory. */
  @Benchmark
  public List<ChildReasoning> wholeClassAnew() {
    List<ChildReasoning> all = new ArrayList<>();
    for (int i = 0; i < CHILDREN; i++) {
      all.add(ChildReasoning.of(children.get(i), work.get(i), TeacherWord.NONE, table));
    }
    return all;
  }

  /** The page's model after one more piece, the work of the weeks that are read being in memory. */
  @Benchmark
  public FindingsPage findingsPage() {
    return FindingsPage.of(Findings.of(children, recent, last), null);
  }

  @Benchmark
  public Map<Long, GroupPlace> groupsForTwentyEight() {
    return ClassGroups.propose(reasonings, List.of(), table);
  }

  @Benchmark
  public Optional<NextProblem.Candidate> nextOfFiveHundred() {
    return NextProblem.best(reasonings.get(0).estimate().ways(), candidates, null, true, table);
  }

  /** Without an equation the number alone has to tell. */
  @Benchmark
  public Optional<NextProblem.Candidate> nextOfFiveHundredByNumber() {
    return NextProblem.best(reasonings.get(0).estimate().ways(), candidates, null, false, table);
  }

  private static void cpu(String name, Supplier<Object> once) {
    var threads = ManagementFactory.getThreadMXBean();
    for (int i = 0; i < 5; i++) {
      once.get();
    }
    long before = threads.getCurrentThreadCpuTime();
    for (int i = 0; i < 5; i++) {
      once.get();
    }
    System.out.printf("%-28s %8.1f ms of one core%n", name, (threads.getCurrentThreadCpuTime() - before) / 5e6);
  }

  public static void main(String[] arguments) throws RunnerException {
    if (arguments.length == 0 || !arguments[0].equals("cpu")) {
      new Runner(new OptionsBuilder().include(ReasoningBenchmark.class.getSimpleName()).build()).run();
      return;
    }
    ReasoningBenchmark bench = new ReasoningBenchmark();
    bench.year();
    cpu("whole class anew", bench::wholeClassAnew);
    cpu("Findings page", bench::findingsPage);
    cpu("groups for 28", bench::groupsForTwentyEight);
    cpu("next of 500", bench::nextOfFiveHundred);
    cpu("next of 500, number alone", bench::nextOfFiveHundredByNumber);
    System.gc();
    System.out.println("heap in use with a year of 28 children: "
        + ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / 1_000_000 + " MB");
  }
}
