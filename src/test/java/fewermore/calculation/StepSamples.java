package fewermore.calculation;

import fewermore.calculation.Step.CrossOut;
import fewermore.calculation.Step.Put;
import fewermore.calculation.Step.Row;
import fewermore.calculation.Step.Trade;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Steps of every sort, sensible or not, the same in every run. */
public final class StepSamples {
  static final long SEED = 20261125;

  private StepSamples() {}

  /** A step of a kind, sensible or not. */
  static Step any(StrategyKind kind, Random random) {
    Piece piece = Piece.values()[random.nextInt(3)];
    Piece next = Piece.values()[random.nextInt(3)];
    int count = random.nextInt(12);
    Row row = Row.values()[random.nextInt(3)];
    int number = random.nextInt(130);
    return switch (kind) {
      case PIECES -> switch (random.nextInt(6)) {
        case 0 -> new Put(1 + random.nextInt(2), piece, count);
        case 1 -> new Step.PutBack(1 + random.nextInt(2), piece, count);
        case 2 -> new Trade(piece, next);
        case 3 -> new CrossOut(piece, count);
        case 4 -> new Step.Join();
        default -> new Step.Write(number);
      };
      case LINE -> switch (random.nextInt(4)) {
        case 0 -> new Step.Start(number);
        case 1, 2 -> new Step.Jump(random.nextInt(80) - 40, number);
        default -> new Step.Write(number);
      };
      case EXPANDED -> switch (random.nextInt(4)) {
        case 0 -> new Step.Break(row, number, number / 10 * 10, number % 10);
        case 1 -> new Step.Regroup(row, number, count);
        case 2 -> new Step.Combine(random.nextBoolean() ? Step.Place.TENS : Step.Place.ONES, number);
        default -> new Step.Write(number);
      };
    };
  }

  static Calculation anyCalculation(Random random) {
    return Calculation.of(random.nextInt(101), random.nextBoolean() ? Operation.ADD : Operation.SUBTRACT,
        random.nextInt(101)).orElseThrow();
  }

  public static List<Working> anyWorkings(int how) {
    Random random = new Random(SEED);
    List<Working> all = new ArrayList<>();
    for (int at = 0; at < how; at++) {
      Working working = Working.begin(StrategyKind.values()[at % 3], anyCalculation(random));
      int steps = random.nextInt(20);
      for (int step = 0; step < steps; step++) {
        working = working.then(any(working.kind(), random));
      }
      all.add(working);
    }
    return all;
  }
}
