package fewermore.store;

import fewermore.store.disk.RecordingDisk;
import fewermore.store.disk.RecordingDisk.Unforced;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * A power cut, simulated: a class hands in on a disk that writes down every write and every force; then the files are
 * built as they would be had the power gone at a moment drawn by lot, and opened. Run whole by
 * {@code mvn -q test-compile exec:exec -Dexec.classpathScope=test -Dmain.class=fewermore.store.PowerCuts -Dargs=30}.
 */
public final class PowerCuts {
  /** What was found: of all rounds those that could not be opened, and acknowledged pieces missing or other. */
  public record Outcome(
      int rounds, Unforced unforced, long acknowledged, long lost, int unopenable, String firstProblem) {}

  private record Acknowledged(String name, String answer, int moment) {}

  private PowerCuts() {}

  public static void main(String[] arguments) throws Exception {
    int rounds = arguments.length == 0 ? 30 : Integer.parseInt(arguments[0]);
    run(rounds, 20261125L).forEach(System.out::println);
    System.exit(0);
  }

  /** @param rounds power cuts for each of the two ways */
  public static List<Outcome> run(int rounds, long seed) throws Exception {
    Path folder = Files.createTempDirectory("fewermore-power").toRealPath();
    RecordingDisk disk = new RecordingDisk();
    List<Acknowledged> acknowledged = new ArrayList<>();
    int whole;
    try (Database database = Database.open(folder, disk, (data, from) -> {})) {
      SchoolDay day = new SchoolDay(database, 6, false, "p");
      List<Thread> children = new ArrayList<>();
      for (int child = 0; child < 6; child++) {
        int mine = child;
        Thread thread = new Thread(() -> {
          for (int seq = 1; seq <= 120; seq++) {
            String name = day.handIn(mine, "page" + mine, seq);
            synchronized (acknowledged) {
              acknowledged.add(new Acknowledged(name, "page" + mine + "-" + seq, disk.moment()));
            }
          }
        });
        thread.start();
        children.add(thread);
      }
      for (Thread child : children) {
        child.join();
      }
      whole = disk.moment();
    }
    List<Outcome> outcomes = new ArrayList<>();
    Random random = new Random(seed);
    for (Unforced how : Unforced.values()) {
      outcomes.add(cuts(rounds, how, random, disk, folder, acknowledged, whole));
    }
    remove(folder);
    return outcomes;
  }

  private static Outcome cuts(int rounds, Unforced how, Random random, RecordingDisk disk, Path folder,
      List<Acknowledged> acknowledged, int whole) throws IOException {
    long told = 0;
    long lost = 0;
    int unopenable = 0;
    String problem = "";
    int first = acknowledged.get(0).moment;
    for (int round = 0; round < rounds; round++) {
      int moment = first + random.nextInt(disk.moment() - first + 1);
      long seed = random.nextLong();
      Path left = Files.createTempDirectory("fewermore-left").toRealPath();
      disk.cutPowerAt(moment, how, seed, folder, left);
      try (Database database = Database.open(left)) {
        Map<String, String> there = new ConcurrentHashMap<>(SchoolDay.there(database));
        for (Acknowledged each : acknowledged) {
          if (each.moment <= moment) {
            told++;
            lost += each.answer.equals(there.get(each.name)) ? 0 : 1;
          }
        }
      } catch (RuntimeException e) {
        unopenable++;
        problem = problem.isEmpty() ? "moment " + moment + " of " + whole + ", seed " + seed + ": " + e : problem;
        e.printStackTrace();
      }
      remove(left);
    }
    return new Outcome(rounds, how, told, lost, unopenable, problem);
  }

  static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
        Files.deleteIfExists(each);
      }
    }
  }
}
