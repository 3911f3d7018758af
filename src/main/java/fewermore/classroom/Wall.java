package fewermore.classroom;

import fewermore.marking.EquationMark;
import fewermore.marking.EquationReason;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The class on the wall: what the class did, with no child in it. Holds no name, no count of fewer than five
 * children, and no wrong equation that only one child wrote.
 *
 * <p>Two equations stand side by side as A and B. A wrong one is shown as written only where two children or
 * more wrote it; otherwise an invented one stands for it, which the marker gives the same reason and which no
 * child wrote. Which of the two is A is drawn from the problem and the equations; it says nothing of right or wrong.
 *
 * @param counts kinds that five children or more worked on, in the order of pages
 * @param pairs at most {@value #MOST_PAIRS}, the latest problems first
 */
public record Wall(LocalDate asOf, List<KindCount> counts, List<Pair> pairs) {
  /** A count of fewer children could be about somebody. */
  public static final int FEWEST_COUNTED = 5;

  /** A wrong equation of fewer children could be known by its writer. */
  public static final int FEWEST_WRITERS = 2;

  public static final int MOST_PAIRS = 3;

  /** Work older than this is another lesson's. Ours. */
  public static final int DAYS_READ = 28;

  public Wall {
    counts = List.copyOf(counts);
    pairs = List.copyOf(pairs);
  }

  /**
   * Of so many children, the latest first try on this kind of problem fits the story so many times; and of those who
   * did several, the earliest so many times.
   *
   * @param children who did the kind at all; @param several who did it on two days or more, 0 below five
   */
  public record KindCount(Kind kind, int fits, int children, int before, int several) {
    public KindCount(Kind kind, int fits, int children) {
      this(kind, fits, children, 0, 0);
    }
  }

  /** Two equations for one problem, one of which says what the story says. */
  public record Pair(AssignedProblem problem, String a, String b) {}

  /** @param classList every child of the class: their names must not stand in a story on the wall */
  public static Wall of(Collection<Child> classList, Collection<PieceOfWork> work, LocalDate asOf) {
    List<PieceOfWork> read = read(work, asOf);
    return new Wall(asOf, counts(read), pairs(classList, read));
  }

  /** The work of this lesson and the ones shortly before it. */
  static List<PieceOfWork> read(Collection<PieceOfWork> work, LocalDate asOf) {
    return work.stream()
        .filter(piece -> !piece.evidence().day().isAfter(asOf))
        .filter(piece -> piece.evidence().day().isAfter(asOf.minusDays(DAYS_READ)))
        .filter(piece -> piece.evidence().marks().equation() != null)
        .toList();
  }

  /** Whether a name of the class stands in a problem: then it is not for the wall. */
  public static boolean namesAChild(Collection<Child> classList, AssignedProblem problem) {
    return names(classList, problem);
  }

  private static List<KindCount> counts(List<PieceOfWork> read) {
    List<KindCount> counts = new ArrayList<>();
    for (Kind kind : Findings.KINDS) {
      Map<Child, PieceOfWork> latest = new LinkedHashMap<>();
      Map<Child, PieceOfWork> earliest = new LinkedHashMap<>();
      read.stream().filter(piece -> piece.problem().kind() == kind)
          .sorted(Comparator.comparing(piece -> piece.evidence().at()))
          .forEach(piece -> {
            latest.put(piece.child(), piece);
            earliest.putIfAbsent(piece.child(), piece);
          });
      if (latest.size() >= FEWEST_COUNTED) {
        earliest.entrySet().removeIf(entry ->
            entry.getValue().evidence().day().equals(latest.get(entry.getKey()).evidence().day()));
        int several = earliest.size() < FEWEST_COUNTED ? 0 : earliest.size();
        counts.add(new KindCount(kind, fitting(latest.values()), latest.size(),
            several == 0 ? 0 : fitting(earliest.values()), several));
      }
    }
    return counts;
  }

  private static int fitting(Collection<PieceOfWork> pieces) {
    return (int) pieces.stream().filter(Findings::fits).count();
  }

  private static List<Pair> pairs(Collection<Child> classList, List<PieceOfWork> read) {
    Map<AssignedProblem, List<PieceOfWork>> byProblem = new LinkedHashMap<>();
    read.stream()
        .sorted(Comparator.comparing((PieceOfWork piece) -> piece.evidence().day()).reversed()
            .thenComparing(piece -> piece.problem().kind().agrees())
            .thenComparing(piece -> piece.problem().id()))
        .forEach(piece -> byProblem.computeIfAbsent(piece.problem(), none -> new ArrayList<>()).add(piece));
    List<Pair> pairs = new ArrayList<>();
    for (Map.Entry<AssignedProblem, List<PieceOfWork>> entry : byProblem.entrySet()) {
      boolean enough = entry.getValue().size() >= FEWEST_COUNTED;
      if (pairs.size() < MOST_PAIRS && enough && !names(classList, entry.getKey())) {
        pair(entry.getKey(), entry.getValue()).ifPresent(pairs::add);
      }
    }
    return pairs;
  }

  static boolean names(Collection<Child> classList, AssignedProblem problem) {
    Set<String> words = Set.copyOf(words(problem.text()));
    return classList.stream().anyMatch(child -> words(child.name()).stream().anyMatch(
        word -> word.length() > 1 && words.contains(word)));
  }

  private static List<String> words(String text) {
    return List.of(text.toLowerCase(Locale.ROOT).strip().split("[^\\p{L}\\p{N}]+"));
  }

  private static Optional<Pair> pair(AssignedProblem problem, List<PieceOfWork> work) {
    Map<String, Integer> fitting = new TreeMap<>();
    Map<String, Integer> wrong = new TreeMap<>();
    Map<EquationReason, Integer> reasons = new TreeMap<>();
    Set<String> written = new HashSet<>();
    for (PieceOfWork piece : work) {
      String line = line(piece.evidence().parts().equation());
      EquationMark mark = piece.evidence().marks().equation();
      written.add(line);
      if (mark.fits() && !mark.notTrue() && !mark.equalsChain()) {
        fitting.merge(line, 1, Integer::sum);
      } else if (StandIn.canBeInvented(mark.reason())) {
        wrong.merge(line, 1, Integer::sum);
        reasons.merge(mark.reason(), 1, Integer::sum);
      }
    }
    Optional<String> shownWrong = most(wrong).filter(line -> wrong.get(line) >= FEWEST_WRITERS)
        .or(() -> most(reasons).flatMap(reason -> StandIn.of(problem.story(), reason, written)));
    String shownFitting = most(fitting).filter(line -> fitting.get(line) >= FEWEST_WRITERS)
        .orElseGet(() -> StandIn.fitting(problem.story()));
    return shownWrong.map(line -> inNoOrderOfRight(problem, shownFitting, line));
  }

  private static Pair inNoOrderOfRight(AssignedProblem problem, String one, String other) {
    boolean first = drawn(problem, one) <= drawn(problem, other);
    return new Pair(problem, first ? one : other, first ? other : one);
  }

  /** The same for the same problem and line on every machine, and otherwise as good as by chance. */
  static int drawn(AssignedProblem problem, String line) {
    long mixed = (line.hashCode() * 31L + problem.text().hashCode()) * 0x9E3779B97F4A7C15L;
    return (int) (mixed >>> 33);
  }

  /** Lines that differ only in spaces, dashes or the unknown's sign are one. */
  static String line(String written) {
    String signs = written.replaceAll("[-–]", "−").replaceAll("_+|\\?", "□").replaceAll("(?<!\\p{L})\\p{L}(?!\\p{L})", "□");
    return signs.replaceAll("\\s+", "").replaceAll("([+−=])", " $1 ").strip();
  }

  private static <T> Optional<T> most(Map<T, Integer> times) {
    return times.entrySet().stream()
        .max(Comparator.comparing(Map.Entry<T, Integer>::getValue))
        .map(Map.Entry::getKey);
  }
}
