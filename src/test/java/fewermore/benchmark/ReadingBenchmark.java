package fewermore.benchmark;

import fewermore.wording.ReadText;
import fewermore.wording.WordingReader;
import java.util.List;
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

/** The time to read one typed problem: the median is {@code p0.50} of the output. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
@Threads(1)
public class ReadingBenchmark {
  private final List<String> understood = List.of(
      "Ines has 14 fewer shells than Tomas. Tomas has 52 shells. How many shells does Ines have?",
      "If Ana has 52 shells and Ben has 38 shells, how many more shells does Ana have than Ben?",
      "Leah picked 34 apples. Her sister picked 12 fewer apples than she did. How many apples did Leah's sister pick?",
      "Ben's rope is 14 feet shorter than Ana's. Ana's rope is 52 feet long. How long is Ben's rope?",
      "Ana has 20 apples and 12 oranges. Ben has 16 apples and 9 oranges. How many more apples does Ana have than Ben?",
      "There are 20 books on the top shelf. There are 34 books on the bottom shelf. How many more books are on the "
          + "bottom shelf than on the top shelf?",
      "It was a sunny day. Ana and Ben looked for shells. Ana found twenty-two shells. Ben found nine fewer shells than "
          + "Ana. How many shells did Ben find?");
  private final List<String> declined = List.of(
      "Ana has three times as many shells as Ben. Ben has 12 shells. How many shells does Ana have?",
      "Ana has 12 shells. Ben has 5 more shells than Ana. How many shells do they have altogether?",
      "Ana read 12 pages on Monday and 15 pages on Tuesday. Ben read 20 pages. How many more pages did Ana read than "
          + "Ben?",
      "Ben had 30 stickers. He gave some to Ana. Ana has 12 more stickers than Ben. How many stickers does Ana have?");

  private int next;

  /** Seven problems in turn, all understood. */
  @Benchmark
  public ReadText understood() {
    next = (next + 1) % understood.size();
    return WordingReader.read(understood.get(next));
  }

  /** Four problems in turn, all declined. */
  @Benchmark
  public ReadText declined() {
    next = (next + 1) % declined.size();
    return WordingReader.read(declined.get(next));
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(ReadingBenchmark.class.getName()).build()).run();
  }
}
