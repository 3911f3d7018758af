package fewermore.classroom;

import fewermore.calculation.SlipRule;
import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.ProposedMix;
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
import java.util.HashSet;
import java.util.LinkedList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * A made-up class to look around in: children, three school weeks of problems, and what the children wrote. Raw work
 * only; marks and findings come from the same rules as for a real class. The same seed and moment give the same class.
 *
 * <p>All rates are ours unless their line says otherwise: they make a class worth looking at and are no norms.
 *
 * @param children in the order of the class list
 * @param days oldest first; the last is today
 */
public record InventedClass(List<InventedChild> children, List<Day> days) {
  /** Children where nobody says otherwise. */
  public static final int USUAL = 24;
  public static final int FEWEST = 5;
  public static final int MOST = 60;

  /** School days before today: three weeks. */
  public static final int DAYS_BEFORE = 15;
  public static final int PROBLEMS_A_DAY = 4;

  private static final LocalTime SET_GIVEN = LocalTime.of(8, 5);
  private static final LocalTime LESSON = LocalTime.of(9, 20);
  /** So long the lesson of today has lasted, at least. */
  private static final Duration UNDER_WAY = Duration.ofMinutes(20);

  private static final double ABSENT = .05;
  private static final double STOPS_EARLY = .08;
  /** Of the class, today: done, and still at work; the others have not come in yet. */
  private static final double DONE_TODAY = .50;
  private static final double AT_WORK_TODAY = .25;

  /** One child in so many reads Spanish. */
  private static final int READS_SPANISH = 8;
  /** One child in so many joined the class the day before today and has handed in one problem. */
  private static final int JUST_JOINED = 10;
  private static final int HANDED_IN_SINCE_JOINING = 1;
  /** One child in so many may change her way between two days, with {@link #CHANGES_WAY}. */
  private static final int MAY_CHANGE = 6;
  /** Bugs were found unstable over two days and over months (VanLehn 1982, abstract); the number is ours. */
  private static final double CHANGES_WAY = .20;

  /** Cox (1974), ERIC ED 092 407, abstract: systematic errors in 13 % of children in taking away, 5 to 6 % in adding. */
  private static final double HABIT_IN_TAKING_AWAY = .13;
  private static final double HABIT_IN_ADDING = .055;
  private static final double WRITES_AS_THE_KEYS = .70;

  /** One school day. */
  public record Day(LocalDate date, Instant givenAt, List<Problem> problems, List<Visit> visits) {
    public Day {
      problems = List.copyOf(problems);
      visits = List.copyOf(visits);
    }
  }

  /**
   * One child at a tablet.
   *
   * @param child her place in the class list, from 0
   * @param to null while she is there
   */
  public record Visit(int child, Instant from, Instant to, List<Sent> sent) {
    public Visit {
      sent = List.copyOf(sent);
    }
  }

  /**
   * What she sent.
   *
   * @param problem its place in the day's set, from 0
   */
  public record Sent(int problem, SentItem.Kind kind, Work parts, Instant at) {}

  public InventedClass {
    children = List.copyOf(children);
    days = List.copyOf(days);
  }

  /**
   * Makes a class up. Days before today are weekdays, its lessons in the morning; today has a lesson whatever day it
   * is, so that there is something to see on a weekend too, and nothing in it lies after {@code now}.
   *
   * @param size 5 to 60
   * @param now to the millisecond
   */
  public static InventedClass of(int size, Instant now, ZoneId zone, long seed) {
    if (size < FEWEST || size > MOST) {
      throw new IllegalArgumentException("an invented class has " + FEWEST + " to " + MOST + " children: " + size);
    }
    return new Making(size, now, zone, seed).made();
  }

  /** The making of one class. */
  private static final class Making {
    private final int size;
    private final Instant now;
    private final ZoneId zone;
    private final long seed;
    private final Random random;
    private final List<Integer> order = new ArrayList<>();
    private final Set<Integer> justJoined = new HashSet<>();
    private final List<InventedChild> children;

    Making(int size, Instant now, ZoneId zone, long seed) {
      this.size = size;
      this.now = now;
      this.zone = zone;
      this.seed = seed;
      this.random = new Random(seed);
      this.children = children();
    }

    InventedClass made() {
      List<LocalDate> dates = dates();
      ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER,
          Set.copyOf(children.stream().map(InventedChild::name).toList()));
      List<Day> days = new ArrayList<>();
      for (int day = 0; day <= DAYS_BEFORE; day++) {
        List<Problem> problems = writer.writeSet(kinds(day), seed * 1_000 + day).problems();
        days.add(day < DAYS_BEFORE ? before(day, dates.get(day), problems) : today(dates.get(day), problems));
      }
      return new InventedClass(children, days);
    }

    /** Each day takes the next kinds of the proposed order, which holds all six in eight. */
    private static List<Kind> kinds(int day) {
      List<Kind> all = ProposedMix.of(PROBLEMS_A_DAY * (day + 1));
      return all.subList(PROBLEMS_A_DAY * day, PROBLEMS_A_DAY * (day + 1));
    }

    private List<LocalDate> dates() {
      LinkedList<LocalDate> dates = new LinkedList<>();
      LocalDate day = now.atZone(zone).toLocalDate();
      dates.add(day);
      while (dates.size() <= DAYS_BEFORE) {
        day = day.minusDays(1);
        if (day.getDayOfWeek() != DayOfWeek.SATURDAY && day.getDayOfWeek() != DayOfWeek.SUNDAY) {
          dates.addFirst(day);
        }
      }
      return dates;
    }

    // Children

    private List<InventedChild> children() {
      List<String> names = InventedNames.draw(size, random);
      List<WayOfReasoning> ways = new ArrayList<>(StartingShares.of(size));
      Collections.shuffle(ways, random);
      List<Picture> pictures = new ArrayList<>(Picture.ALL);
      Collections.shuffle(pictures, random);
      for (int child = 0; child < size; child++) {
        order.add(child);
      }
      Collections.shuffle(order, random);
      // Only of ways that several children have, so that every way stays to be seen.
      List<Integer> common = order.stream()
          .filter(child -> Collections.frequency(ways, ways.get(child)) > size / 6).toList();
      int joined = Math.max(1, size / JUST_JOINED);
      justJoined.addAll(common.subList(0, Math.min(joined, common.size() - 1)));
      Set<Integer> changing = Set.copyOf(common.stream().skip(joined).limit(Math.max(1, size / MAY_CHANGE)).toList());
      Set<Integer> spanish = Set.copyOf(order.subList(size - Math.max(1, size / READS_SPANISH), size));
      List<InventedChild> made = new ArrayList<>();
      for (int child = 0; child < size; child++) {
        made.add(new InventedChild(names.get(child), picture(pictures, child), spanish.contains(child) ? "es" : "en",
            days(ways.get(child), changing.contains(child)), habit(), hand()));
      }
      return made;
    }

    /** A drawing of her own; when all are taken, the same on another ground. */
    private static Picture picture(List<Picture> pictures, int child) {
      Picture picture = pictures.get(child % pictures.size());
      int round = child / pictures.size();
      int ground = (Picture.GROUNDS.indexOf(picture.ground()) + round) % Picture.GROUNDS.size();
      return new Picture(picture.id(), Picture.GROUNDS.get(ground));
    }

    private List<WayOfReasoning> days(WayOfReasoning first, boolean changes) {
      List<WayOfReasoning> days = new ArrayList<>(List.of(first));
      while (days.size() <= DAYS_BEFORE) {
        boolean another = changes && random.nextDouble() < CHANGES_WAY;
        days.add(another ? StartingShares.draw(random) : days.get(days.size() - 1));
      }
      return days;
    }

    private SlipRule habit() {
      double at = random.nextDouble();
      // Taking the smaller digit from the larger is the commonest habit (from memory): the share is ours.
      return at < HABIT_IN_TAKING_AWAY * 2 / 3 ? SlipRule.SMALLER_FROM_LARGER
          : at < HABIT_IN_TAKING_AWAY ? SlipRule.BORROW_TENS_LEFT
          : at < HABIT_IN_TAKING_AWAY + HABIT_IN_ADDING ? SlipRule.CARRIED_TEN_DROPPED : null;
    }

    private InventedChild.Hand hand() {
      if (random.nextDouble() < WRITES_AS_THE_KEYS) {
        return InventedChild.Hand.KEYS;
      }
      String unknown = List.of("x", "?", "_", "n").get(random.nextInt(4));
      return new InventedChild.Hand(unknown, random.nextBoolean() ? "-" : "–", random.nextBoolean());
    }

    // Days

    private Day before(int day, LocalDate date, List<Problem> problems) {
      List<Visit> visits = new ArrayList<>();
      for (int child = 0; child < size; child++) {
        Random lot = lot(child, day);
        boolean joinedLater = justJoined.contains(child) && day < DAYS_BEFORE - 1;
        boolean absent = lot.nextDouble() < ABSENT && !justJoined.contains(child);
        boolean early = lot.nextDouble() < STOPS_EARLY;
        int handsIn = justJoined.contains(child) ? HANDED_IN_SINCE_JOINING
            : early ? 1 + lot.nextInt(PROBLEMS_A_DAY - 1) : PROBLEMS_A_DAY;
        if (!joinedLater && !absent) {
          visits.add(lesson(child, day, problems, lot).visit(child, at(date, LESSON), handsIn, false));
        }
      }
      return new Day(date, at(date, SET_GIVEN), problems, visits);
    }

    private Day today(LocalDate date, List<Problem> problems) {
      Instant midnight = date.atStartOfDay(zone).toInstant();
      Instant begins = earlier(at(date, LESSON), now.minus(UNDER_WAY));
      begins = begins.isBefore(midnight) ? midnight : begins;
      int done = (int) Math.round(size * DONE_TODAY);
      int working = Math.max(1, (int) (size * AT_WORK_TODAY));
      List<Integer> here = order.stream().filter(child -> !justJoined.contains(child)).limit(done + working).toList();
      List<Visit> visits = new ArrayList<>();
      for (int i = 0; i < here.size(); i++) {
        int child = here.get(i);
        Random lot = lot(child, DAYS_BEFORE);
        int handsIn = i < done ? problems.size() : 1 + lot.nextInt(problems.size() - 1);
        visits.add(lesson(child, DAYS_BEFORE, problems, lot).visit(child, begins, handsIn, i >= done));
      }
      return new Day(date, earlier(at(date, SET_GIVEN), begins), problems, untilNow(visits, begins));
    }

    /** Draws the moments of a lesson together so that none lies after now. */
    private List<Visit> untilNow(List<Visit> visits, Instant begins) {
      long lasted = Math.max(0, Duration.between(begins, now).toMillis());
      long longest = visits.stream().mapToLong(visit -> Duration.between(begins, last(visit)).toMillis()).max().orElse(0);
      if (longest <= lasted) {
        return visits;
      }
      double share = (double) lasted / longest;
      return visits.stream().map(visit -> new Visit(visit.child(), drawn(begins, visit.from(), share),
          visit.to() == null ? null : drawn(begins, visit.to(), share),
          visit.sent().stream().map(sent -> new Sent(sent.problem(), sent.kind(), sent.parts(),
              drawn(begins, sent.at(), share))).toList())).toList();
    }

    private static Instant last(Visit visit) {
      return visit.to() != null ? visit.to() : visit.sent().get(visit.sent().size() - 1).at();
    }

    private static Instant drawn(Instant begins, Instant moment, double share) {
      return begins.plusMillis((long) (Duration.between(begins, moment).toMillis() * share));
    }

    private InventedLesson lesson(int child, int day, List<Problem> problems, Random lot) {
      InventedChild who = children.get(child);
      return new InventedLesson(who, who.ways().get(day), problems, lot,
          day == STRATEGY_DAY ? new SplittableRandom(seed * MOST + child).nextLong() : null);
    }

    /** The last whole day: then a strategy is asked too. */
    private static final int STRATEGY_DAY = DAYS_BEFORE - 1;

    /** A source of chance for each child and day: what one does moves nothing for another. */
    private Random lot(int child, int day) {
      // Neighboring seeds start java.util.Random too alike; SplittableRandom's first number parts them.
      return new Random(new SplittableRandom((seed * MOST + child) * (DAYS_BEFORE + 1) + day).nextLong());
    }

    private Instant at(LocalDate date, LocalTime time) {
      return date.atTime(time).atZone(zone).toInstant();
    }

    private static Instant earlier(Instant one, Instant other) {
      return one.isBefore(other) ? one : other;
    }
  }
}
