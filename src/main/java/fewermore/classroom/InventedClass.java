package fewermore.classroom;

import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.story.Kind;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * A made-up class to look around in: made-up children and three school weeks of raw work, from a seed.
 *
 * <p>Each child reasons in a way that nothing here tells. From it, and from chance, come equations, answers,
 * labels and bars, as a child would leave them on a tablet; marks and findings come from the same marker and
 * tables as for real work. Most children keep their way; one who goes by the word reads the story in the
 * last week, and one has only just joined.
 *
 * <p>Shares, chances and rates are ours, rounded on purpose; they say what such a page can show, not what
 * children do.
 */
public record InventedClass(String name, List<InventedChild> children, List<InventedDay> days) {
  /** Children where nobody says otherwise. */
  public static final int USUAL = 24;

  /** The seed where nobody says otherwise: with it, a class of the usual size gives every sort of statement. */
  public static final long USUAL_SEED = 28;

  /** Fewer would tell too much of each on the wall. */
  public static final int FEWEST = 5;

  /** School days back from the last, in three weeks of five. */
  private static final List<Integer> SCHOOL_DAYS_BACK = List.of(14, 12, 10, 9, 7, 5, 4, 2, 0);

  /** Four problems a day; every six kinds come in three days, and most days ask two or three that tell. */
  private static final List<List<Kind>> KINDS = List.of(
      List.of(Kind.LARGER_FEWER, Kind.SMALLER_FEWER, Kind.SMALLER_MORE, Kind.DIFFERENCE_MORE),
      List.of(Kind.LARGER_MORE, Kind.SMALLER_MORE, Kind.DIFFERENCE_FEWER, Kind.LARGER_FEWER),
      List.of(Kind.DIFFERENCE_MORE, Kind.LARGER_FEWER, Kind.LARGER_MORE, Kind.SMALLER_MORE));

  /** How many of a class reason in each way, to begin with. */
  private static final Map<WayOfReasoning, Double> SHARES = shares();

  private static final List<String> NAMES = List.of(
      "Adela", "Benno", "Cosima", "Dorian", "Eleni", "Fabio", "Greta", "Henrik", "Isla", "Jaro", "Kamala", "Lorenz",
      "Mirela", "Nils", "Oriana", "Pavel", "Quinn", "Rashida", "Silvan", "Tamsin", "Ulla", "Viggo", "Wilma", "Zelda",
      "Anouk", "Bastian", "Corin", "Delia", "Edwin", "Farida", "Gideon", "Hedda", "Ilya", "Jasna", "Kerem", "Linnea",
      "Milos", "Nerys", "Orla", "Petra");

  private static final double ABSENT = .05;
  private static final double DOES_NOT_FINISH = .06;
  private static final int JOINED_LATE_DOES = 2;
  private static final int TABLETS = 6;
  private static final Duration CENTER = Duration.ofMinutes(20);

  public InventedClass {
    children = List.copyOf(children);
    days = List.copyOf(days);
  }

  /** @param picture one of {@link Picture#ALL}; no two children have the same one on the same ground */
  public record InventedChild(String name, String picture, String ground) {}

  /** One school day: its problems, and who came in. */
  public record InventedDay(LocalDate day, List<Problem> problems, List<InventedSitting> sittings) {
    public InventedDay {
      problems = List.copyOf(problems);
      sittings = List.copyOf(sittings);
    }
  }

  /**
   * One child on one tablet.
   *
   * @param child place in {@link #children}, from 0
   * @param tablet from 0; six at a time, so a tablet has other children after another
   */
  public record InventedSitting(int child, int tablet, Instant from, Instant to, List<InventedTry> tries) {
    public InventedSitting {
      tries = List.copyOf(tries);
    }
  }

  /** @param problem place in the day's problems, from 0; @param seq 1 for the first hand-in on it */
  public record InventedTry(int problem, int seq, Work work, Instant at) {}

  /**
   * The same seed gives the same class. Its last school day is {@code lastDay}, or the Friday before a weekend.
   *
   * @param size children, {@value #FEWEST} or more
   * @param zone where the class is: decides at what instant it is ten in the morning
   */
  public static InventedClass make(long seed, int size, LocalDate lastDay, ZoneId zone) {
    if (size < FEWEST) {
      throw new IllegalArgumentException("an invented class has " + FEWEST + " children or more: " + size);
    }
    Random random = new Random(seed);
    List<InventedChild> children = children(size, random);
    List<Mind> minds = minds(size, random);
    Set<String> names = new HashSet<>();
    children.forEach(child -> names.add(child.name()));
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, names);
    List<InventedDay> days = new ArrayList<>();
    for (int at = 0; at < SCHOOL_DAYS_BACK.size(); at++) {
      LocalDate day = back(lastDay, SCHOOL_DAYS_BACK.get(at));
      List<Problem> problems = writer.writeSet(KINDS.get(at % KINDS.size()), seed * 31 + at).problems();
      days.add(new InventedDay(day, problems, sittings(minds, at, problems, day, zone, random)));
    }
    return new InventedClass("The invented class", children, days);
  }

  private static List<InventedChild> children(int size, Random random) {
    List<Picture> pictures = new ArrayList<>(Picture.ALL);
    Collections.shuffle(pictures, random);
    List<InventedChild> children = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      int round = i / NAMES.size();
      String name = NAMES.get(i % NAMES.size()) + (round == 0 ? "" : " " + round);
      Picture picture = pictures.get(i % pictures.size());
      int shift = i / pictures.size();
      int ground = (Picture.GROUNDS.indexOf(picture.ground()) + shift) % Picture.GROUNDS.size();
      children.add(new InventedChild(name, picture.id(), Picture.GROUNDS.get(ground)));
    }
    return children;
  }

  /** One child's hidden ways, day by day. */
  private static final class Mind {
    private final WayOfReasoning way;
    private final InventedChildWork hand;
    private boolean readsTheStoryAtLast;
    private boolean justJoined;

    Mind(WayOfReasoning way, InventedChildWork hand) {
      this.way = way;
      this.hand = hand;
    }

    WayOfReasoning way(int day) {
      return readsTheStoryAtLast && day >= SCHOOL_DAYS_BACK.size() - 2 ? WayOfReasoning.FROM_THE_STORY : way;
    }

    boolean inClass(int day) {
      return !justJoined || day == SCHOOL_DAYS_BACK.size() - 1;
    }
  }

  private static List<Mind> minds(int size, Random random) {
    List<Mind> minds = new ArrayList<>();
    allocated(size).forEach((way, many) -> {
      for (int i = 0; i < many; i++) {
        minds.add(new Mind(way, InventedChildWork.drawn(random)));
      }
    });
    minds.stream().filter(mind -> mind.way == WayOfReasoning.BY_THE_CUE_WORD).findFirst()
        .ifPresent(mind -> mind.readsTheStoryAtLast = size >= 12);
    minds.stream().filter(mind -> mind.way == WayOfReasoning.FROM_THE_STORY).findFirst()
        .ifPresent(mind -> mind.justJoined = size >= 12);
    Collections.shuffle(minds, random);
    return minds;
  }

  /** So many of each way that the shares are met as nearly as whole children allow. */
  static Map<WayOfReasoning, Integer> allocated(int size) {
    Map<WayOfReasoning, Integer> many = new EnumMap<>(WayOfReasoning.class);
    SHARES.forEach((way, share) -> many.put(way, (int) (share * size)));
    List<WayOfReasoning> byRest = new ArrayList<>(SHARES.keySet());
    byRest.sort((one, other) -> Double.compare(
        SHARES.get(other) * size % 1, SHARES.get(one) * size % 1));
    int left = size - many.values().stream().mapToInt(Integer::intValue).sum();
    byRest.subList(0, left).forEach(way -> many.merge(way, 1, Integer::sum));
    return many;
  }

  private static List<InventedSitting> sittings(
      List<Mind> minds, int at, List<Problem> problems, LocalDate day, ZoneId zone, Random random) {
    List<Integer> order = new ArrayList<>();
    for (int child = 0; child < minds.size(); child++) {
      // Drawn for everybody, so that one child's absence moves nobody else's work.
      boolean absent = random.nextDouble() < ABSENT;
      if (minds.get(child).inClass(at) && !absent) {
        order.add(child);
      }
    }
    Collections.shuffle(order, random);
    List<InventedSitting> sittings = new ArrayList<>();
    for (int i = 0; i < order.size(); i++) {
      Instant from = day.atTime(LocalTime.of(10, 0)).atZone(zone).toInstant()
          .plus(CENTER.multipliedBy(i / TABLETS)).plusSeconds(random.nextInt(90));
      sittings.add(sitting(order.get(i), i % TABLETS, from, minds.get(order.get(i)), at, problems, random));
    }
    return sittings;
  }

  private static InventedSitting sitting(
      int child, int tablet, Instant from, Mind mind, int at, List<Problem> problems, Random random) {
    List<InventedTry> tries = new ArrayList<>();
    Instant now = from;
    for (int problem = 0; problem < problems.size(); problem++) {
      boolean last = problem == problems.size() - 1;
      if (mind.justJoined && problem == JOINED_LATE_DOES || last && random.nextDouble() < DOES_NOT_FINISH) {
        break;
      }
      int seq = 0;
      for (var work : mind.hand.tries(problems.get(problem).story(), mind.way(at), random)) {
        seq++;
        now = now.plusSeconds(seq == 1 ? 120 + random.nextInt(110) : 25 + random.nextInt(35));
        tries.add(new InventedTry(problem, seq, work, now));
      }
    }
    return new InventedSitting(child, tablet, from, now.plusSeconds(20), tries);
  }

  /** So many school days (Monday to Friday) before the day, or before the Friday before a weekend. */
  private static LocalDate back(LocalDate day, int schoolDays) {
    LocalDate at = day;
    while (weekend(at)) {
      at = at.minusDays(1);
    }
    for (int left = schoolDays; left > 0; left--) {
      at = at.minusDays(1);
      while (weekend(at)) {
        at = at.minusDays(1);
      }
    }
    return at;
  }

  private static boolean weekend(LocalDate day) {
    return day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
  }

  private static Map<WayOfReasoning, Double> shares() {
    Map<WayOfReasoning, Double> shares = new EnumMap<>(WayOfReasoning.class);
    shares.put(WayOfReasoning.FROM_THE_STORY, .40);
    shares.put(WayOfReasoning.BY_THE_CUE_WORD, .20);
    shares.put(WayOfReasoning.ALWAYS_ADDS, .08);
    shares.put(WayOfReasoning.ALWAYS_TAKES_AWAY, .06);
    shares.put(WayOfReasoning.TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT, .08);
    shares.put(WayOfReasoning.TURNS_SUBTRACTION_ROUND, .06);
    shares.put(WayOfReasoning.NO_STEADY_WAY, .12);
    return shares;
  }
}
