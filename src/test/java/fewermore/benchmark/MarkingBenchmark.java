package fewermore.benchmark;

import fewermore.marking.Bars;
import fewermore.marking.LabelMarker;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Prompts;
import fewermore.marking.Remarks;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Labels and whole pieces of work marked a second on one core. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
@Threads(1)
public class MarkingBenchmark {
  private final Comparison story = new Comparison(new Persons("Priya", "Jonah"),
      new Thing("spotted toad", "spotted toads"), new Thing("brown toad", "brown toads"),
      List.of(new Thing("animal", "animals")), new Relation(61, 35, 26), Role.SMALLER,
      Wording.FEWER, List.of());

  private final String[] labels = {"spotted toads", "35 spoted toads", "Jonah has 35 spotid tods", "toads",
      "brown toads",
      "Jonah", "animals", "frogs", "", "spotted"};

  private final Work[] work = {
      new Work("61 - 26 = x", "35", "spotted toads", new Bars("Priya", "61", "x", "26"), "30"),
      new Work("61 + 26 = x", "87", "toads", new Bars("Priya", "61", "26", "x"), "90"),
      new Work("61 - 20 = 41 - 6 = 35", "45", "spoted tods", new Bars("Jonah", "61", "x", "26"), "40"),
      new Work("", "26", "Jonah", Bars.EMPTY, "")};

  private int next;

  /** One label, ten kinds of them in turn. */
  @Benchmark
  public LabelVerdict label() {
    next = (next + 1) % labels.length;
    return LabelMarker.mark(story, labels[next]);
  }

  /** Bars, equation, answer, label and estimate of one problem. */
  @Benchmark
  public Marks wholePieceOfWork() {
    next = (next + 1) % work.length;
    return Marker.mark(story, work[next]);
  }

  /** The same with the teacher's sentences and the child's prompts. */
  @Benchmark
  public int wholePieceOfWorkWithSentences() {
    next = (next + 1) % work.length;
    Marks marks = Marker.mark(story, work[next]);
    return Remarks.of(story, work[next], marks).size()
        + Prompts.of(story, work[next], marks, false, Locale.ENGLISH).size();
  }

  /** {@code gc.alloc.rate.norm} in the output is the memory a mark takes, in bytes. */
  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(MarkingBenchmark.class.getName()).addProfiler("gc").build()).run();
  }
}
