package fewermore.classroom;

import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.Problem;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** One made-up child at one tablet for one lesson: problem after problem, each with its tries. Rates are ours. */
final class InventedLesson {
  /** Children come in within this time. */
  private static final Duration COMING_IN = Duration.ofMinutes(4);
  private static final Duration SHORTEST_PROBLEM = Duration.ofSeconds(90);
  private static final Duration LONGEST_PROBLEM = Duration.ofSeconds(210);
  private static final Duration SHORTEST_LOOK = Duration.ofSeconds(20);
  private static final Duration LONGEST_LOOK = Duration.ofSeconds(70);
  private static final Duration TO_THE_DOOR = Duration.ofSeconds(15);

  /** How often a child who is told to look again does, each time. What she then leaves as it was she doesn't send. */
  private static final double LOOKS_AGAIN = .75;

  private final InventedChild child;
  private final WayOfReasoning way;
  private final List<Problem> problems;
  private final Random random;
  private final Long strategies;
  private final List<InventedClass.Sent> sent = new ArrayList<>();
  private Instant now;

  /** @param strategies a seed of their own, or null on a day no strategy is asked */
  InventedLesson(InventedChild child, WayOfReasoning way, List<Problem> problems, Random random, Long strategies) {
    this.strategies = strategies;
    this.child = child;
    this.way = way;
    this.problems = problems;
    this.random = random;
  }

  /**
   * @param number the child's place in the class list, from 0
   * @param handsIn how many problems she hands in, from 1
   * @param stays whether she is still at work on the next one, with a draft, and has not left
   */
  InventedClass.Visit visit(int number, Instant begins, int handsIn, boolean stays) {
    Instant from = begins.plusMillis(random.nextInt((int) COMING_IN.toMillis()));
    now = from;
    for (int problem = 0; problem < handsIn; problem++) {
      handIn(problem);
    }
    if (stays && handsIn < problems.size()) {
      Work whole = work(handsIn).first(PlanChances.draw(way, problems.get(handsIn).kind(), random));
      later(SHORTEST_LOOK, LONGEST_LOOK);
      send(handsIn, SentItem.Kind.DRAFT, new Work(whole.equation(), "", "", whole.bars(), null));
    }
    return new InventedClass.Visit(number, from, stays ? null : now.plus(TO_THE_DOOR), sent);
  }

  private void handIn(int problem) {
    InventedWork writing = work(problem);
    Work work = writing.first(PlanChances.draw(way, problems.get(problem).kind(), random));
    later(SHORTEST_PROBLEM, LONGEST_PROBLEM);
    send(problem, SentItem.Kind.HANDED_IN, work);
    for (int tries = 1; tries < ProblemSet.USUAL_TRIES; tries++) {
      if (!writing.prompted(work) || random.nextDouble() >= LOOKS_AGAIN) {
        return;
      }
      Work before = work;
      work = writing.again(before);
      later(SHORTEST_LOOK, LONGEST_LOOK);
      if (work.equals(before)) {
        return;
      }
      send(problem, SentItem.Kind.HANDED_IN, work);
    }
  }

  private InventedWork work(int problem) {
    return new InventedWork(problems.get(problem).story(), child, random);
  }

  private void later(Duration shortest, Duration longest) {
    now = now.plusMillis(shortest.toMillis() + random.nextInt((int) (longest.toMillis() - shortest.toMillis())));
  }

  private void send(int problem, SentItem.Kind kind, Work parts) {
    Work whole = strategies == null ? parts
        : InventedStrategy.on(problems.get(problem).story(), parts, new Random(strategies + problem));
    sent.add(new InventedClass.Sent(problem, kind, whole, now));
  }
}
