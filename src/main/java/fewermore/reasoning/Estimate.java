package fewermore.reasoning;

import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.Statement.Early;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * Which way a child reasons, day by day: a hidden way that stays within a day and may be drawn afresh between two days
 * with work, Bayes' rule for each piece of work (forward filtering of a hidden Markov model, Rabiner 1989,
 * Proceedings of the IEEE 77(2):257-286, from memory). Each day holds the <i>filtered</i> chances, as of that day;
 * {@link #smoothed} gives those of past days in the light of later work.
 *
 * <p>Never changes; {@link #with} gives the estimate after one more piece of work. Days without work are no step,
 * however many weeks lie between. Log space is not needed: the chances are scaled to sum 1 after each piece.
 */
public final class Estimate {
  private final ReasoningTable table;
  private final List<Day> days;

  /**
   * One day with work.
   *
   * @param before the chances before its first piece
   * @param after the chances after its last
   */
  public record Day(LocalDate day, List<Evidence> evidence, Ways before, Ways after, Statement statement) {}

  private Estimate(ReasoningTable table, List<Day> days) {
    this.table = table;
    this.days = days;
  }

  public static Estimate none(ReasoningTable table) {
    return new Estimate(table, List.of());
  }

  /** From all of a child's evidence; that of one day in the order it was written. */
  public static Estimate of(Collection<Evidence> evidence, ReasoningTable table) {
    List<Evidence> inOrder = new ArrayList<>(evidence);
    inOrder.sort(Comparator.comparing(Evidence::day));
    List<Day> days = new ArrayList<>();
    int from = 0;
    while (from < inOrder.size()) {
      LocalDate day = inOrder.get(from).day();
      int to = from + 1;
      while (to < inOrder.size() && inOrder.get(to).day().equals(day)) {
        to++;
      }
      days.add(day(table, days, day, List.copyOf(inOrder.subList(from, to))));
      from = to;
    }
    return new Estimate(table, days);
  }

  /** After one more piece. Work that comes late is put into its own day, and the days after it are worked out anew. */
  public Estimate with(Evidence evidence) {
    if (days.isEmpty() || evidence.day().isAfter(last().day())) {
      List<Day> more = new ArrayList<>(days);
      more.add(day(table, days, evidence.day(), List.of(evidence)));
      return new Estimate(table, more);
    }
    if (evidence.day().equals(last().day())) {
      List<Day> before = days.subList(0, days.size() - 1);
      List<Evidence> ofTheDay = new ArrayList<>(last().evidence());
      ofTheDay.add(evidence);
      List<Day> more = new ArrayList<>(before);
      more.add(day(table, before, evidence.day(), List.copyOf(ofTheDay)));
      return new Estimate(table, more);
    }
    List<Evidence> all = new ArrayList<>(evidence());
    all.add(evidence);
    return of(all, table);
  }

  private static Day day(ReasoningTable table, List<Day> past, LocalDate day, List<Evidence> evidence) {
    Ways before = past.isEmpty() ? Ways.start(table) : past.get(past.size() - 1).after().nextDay(table);
    Ways after = before;
    for (Evidence each : evidence) {
      after = after.after(each, table);
    }
    return new Day(day, evidence, before, after, statement(table, past, day, evidence, after));
  }

  // Results

  /** Days with work, oldest first. */
  public List<Day> days() {
    return Collections.unmodifiableList(days);
  }

  private Day last() {
    return days.get(days.size() - 1);
  }

  /** As of the last day with work; the starting shares when there is none. */
  public Ways ways() {
    return days.isEmpty() ? Ways.start(table) : last().after();
  }

  /** All evidence, oldest first. */
  public List<Evidence> evidence() {
    return days.stream().flatMap(day -> day.evidence().stream()).toList();
  }

  /** What may be said as of the last day with work. */
  public Statement says() {
    return days.isEmpty()
        ? new Statement(null, Strength.TOO_EARLY, null, null, null, Early.NO_WORK, 0, 0, 0) : last().statement();
  }

  public ReasoningTable table() {
    return table;
  }

  /**
   * The chances of each day in the light of all work, later work too, in the order of {@link #days}: for a page about
   * past weeks only. (Forward and backward pass, Rabiner 1989, as above.)
   */
  public List<Ways> smoothed() {
    int ways = Ways.ALL.length;
    Ways start = Ways.start(table);
    double afresh = table.drawnAfresh();
    Ways[] smoothed = new Ways[days.size()];
    double[] later = new double[ways];
    Arrays.fill(later, 1);
    for (int at = days.size() - 1; at >= 0; at--) {
      double[] both = new double[ways];
      for (int way = 0; way < ways; way++) {
        both[way] = days.get(at).after().at(way) * later[way];
      }
      smoothed[at] = Ways.scaled(both);
      // The chance of this day's work and all after it, by the way of the day before, up to one factor.
      double[] here = new double[ways];
      double fresh = 0;
      double sum = 0;
      for (int way = 0; way < ways; way++) {
        double likelihood = later[way];
        for (Evidence each : days.get(at).evidence()) {
          likelihood *= each.weights().likelihood(table.row(each.kind(), way), table.floor());
        }
        here[way] = likelihood;
        fresh += start.at(way) * likelihood;
        sum += likelihood;
      }
      for (int way = 0; way < ways; way++) {
        later[way] = ((1 - afresh) * here[way] + afresh * fresh) / sum;
      }
    }
    return List.of(smoothed);
  }

  // What may be said

  private static Statement statement(
      ReasoningTable table, List<Day> past, LocalDate day, List<Evidence> evidence, Ways ways) {
    WayOfReasoning top = ways.top();
    WayOfReasoning next = ways.next();
    int problems = 0;
    int telling = 0;
    int tellingDays = 0;
    boolean disagreeing = false;
    for (int at = 0; at <= past.size(); at++) {
      List<Evidence> ofTheDay = at < past.size() ? past.get(at).evidence() : evidence;
      int before = telling;
      for (Evidence each : ofTheDay) {
        problems++;
        disagreeing |= !each.kind().agrees();
        telling += table.couldTell(each.kind(), top, next) ? 1 : 0;
      }
      tellingDays += telling > before ? 1 : 0;
    }
    Counts counts = new Counts(day, problems, telling, tellingDays);
    if (top == WayOfReasoning.NO_STEADY_WAY) {
      return ways.of(top) >= table.value("say/mixed") && problems >= table.whole("say/mixed-problems")
          ? counts.said(Strength.MIXED, top) : counts.early(disagreeing ? Early.NO_WAY_LIKELY_ENOUGH : Early.ONLY_AGREEING);
    }
    boolean aboutTheWord = top == WayOfReasoning.FROM_THE_STORY || top == WayOfReasoning.BY_THE_CUE_WORD;
    if (aboutTheWord && !disagreeing) {
      return counts.early(Early.ONLY_AGREEING);
    }
    if (ways.of(top) < table.value("say/looks-as-if")) {
      return counts.early(Early.NO_WAY_LIKELY_ENOUGH);
    }
    if (telling < table.whole("say/telling-problems")) {
      return counts.early(Early.TOO_FEW_THAT_TELL);
    }
    if (mayBeChanging(table, evidence, top)) {
      return counts.early(Early.MAY_BE_CHANGING);
    }
    for (int at = past.size() - 1; at >= 0; at--) {
      Statement said = past.get(at).statement();
      if (said.says() && said.strength() != Strength.MIXED) {
        if (said.way() != top) {
          return new Statement(day, Strength.CHANGED, top, said.way(), said.asOf(), null, problems, telling, tellingDays);
        }
        break;
      }
    }
    boolean clear = ways.of(top) >= table.value("say/clear") && tellingDays >= table.whole("say/clear-days");
    return counts.said(clear ? Strength.CLEAR : Strength.LOOKS_AS_IF, top);
  }

  private record Counts(LocalDate day, int problems, int telling, int tellingDays) {
    Statement early(Early why) {
      return new Statement(day, Strength.TOO_EARLY, null, null, null, why, problems, telling, tellingDays);
    }

    Statement said(Strength strength, WayOfReasoning way) {
      return new Statement(day, strength, way, null, null, null, problems, telling, tellingDays);
    }
  }

  /** The last two problems of the day both speak three to one for one and the same other way. */
  private static boolean mayBeChanging(ReasoningTable table, List<Evidence> evidence, WayOfReasoning top) {
    if (evidence.size() < 2) {
      return false;
    }
    Evidence last = evidence.get(evidence.size() - 1);
    Evidence before = evidence.get(evidence.size() - 2);
    for (WayOfReasoning other : Ways.ALL) {
      if (other != top && speaksFor(table, last, other, top) && speaksFor(table, before, other, top)) {
        return true;
      }
    }
    return false;
  }

  private static boolean speaksFor(ReasoningTable table, Evidence evidence, WayOfReasoning one, WayOfReasoning other) {
    return ratio(table, evidence, one, other) >= table.value("say/turning");
  }

  /** How many to one this work speaks for the first way against the second. */
  static double ratio(ReasoningTable table, Evidence evidence, WayOfReasoning one, WayOfReasoning other) {
    Kind kind = evidence.kind();
    return evidence.weights().likelihood(table.row(kind, one.ordinal()), table.floor())
        / evidence.weights().likelihood(table.row(kind, other.ordinal()), table.floor());
  }
}
