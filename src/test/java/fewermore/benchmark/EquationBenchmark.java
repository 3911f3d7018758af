package fewermore.benchmark;

import com.ezylang.evalex.EvaluationException;
import com.ezylang.evalex.Expression;
import com.ezylang.evalex.config.ExpressionConfiguration;
import com.ezylang.evalex.parser.ParseException;
import fewermore.marking.EquationMarker;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.matheclipse.core.eval.ExprEvaluator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Equations marked per second on one core; and, in the same run, the one small question inside it, whether
 * the equation holds for the true answer, put to Symja and to EvalEx: with a configuration for each
 * expression, as its constructor makes it, and with one made beforehand. Divide the scores for the ratios.
 * Compare within one run: the scores are of wall-clock time, so another busy process halves them all.
 *
 * <pre>
 * mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.benchmark.EquationBenchmark
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class EquationBenchmark {
  private static final int LINES = 8;

  /** As a class writes them: more than half fit, the others are the usual mistakes. All have one unknown sign. */
  private static final String[] USUAL = {
    "52 - 14 = x", "x = 52 - 14", "14 + x = 52", "x + 14 = 52",
    "52 + 14 = x", "14 - 52 = x", "52 - 10 - 4 = x", "25 - 14 = x"};

  /** All that has to be taken apart: jumps, run-ons, numbers of no use. */
  private static final String[] LONG = {
    "14 + 6 + 30 + 2 = 52", "52 - 10 = 42 - 4 = 38", "52 - 2 = 50 - 10 = 40 - 2 = 38", "52 - 10 = 42 - 4",
    "14 + 6 = 20 + 30 = 50 + 2 = 52", "52 - 14 = 40 - 2 = 38", "20 - 3 = x", "40 + 10 = 50 + 6 = 56"};

  private Comparison story;
  private ExpressionConfiguration evalEx;
  private ExprEvaluator symja;

  @Setup
  public void prepare() {
    story = new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null, List.of(),
        new Relation(52, 38, 14), Role.SMALLER, Wording.MORE, List.of(6));
    evalEx = ExpressionConfiguration.defaultConfiguration();
    symja = new ExprEvaluator(true, (short) 0);
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void markUsualEquations(Blackhole hole) {
    for (String line : USUAL) {
      hole.consume(EquationMarker.mark(story, line));
    }
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void markLongEquations(Blackhole hole) {
    for (String line : LONG) {
      hole.consume(EquationMarker.mark(story, line));
    }
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void holdsForTheAnswerByEvalEx(Blackhole hole) throws EvaluationException, ParseException {
    for (String line : USUAL) {
      hole.consume(new Expression(line).with("x", story.answer()).evaluate().getBooleanValue());
    }
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void holdsForTheAnswerByEvalExConfiguredOnce(Blackhole hole) throws EvaluationException, ParseException {
    for (String line : USUAL) {
      hole.consume(new Expression(line, evalEx).with("x", story.answer()).evaluate().getBooleanValue());
    }
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void holdsForTheAnswerBySymja(Blackhole hole) {
    for (String line : USUAL) {
      hole.consume(symja.eval("(" + line.replace("=", "==") + ") /. x->" + story.answer()).isTrue());
    }
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(EquationBenchmark.class.getSimpleName())
        .addProfiler(GCProfiler.class).build()).run();
  }
}
