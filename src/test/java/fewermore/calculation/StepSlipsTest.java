package fewermore.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.Step.Break;
import fewermore.calculation.Step.Combine;
import fewermore.calculation.Step.CrossOut;
import fewermore.calculation.Step.Join;
import fewermore.calculation.Step.Jump;
import fewermore.calculation.Step.Place;
import fewermore.calculation.Step.Put;
import fewermore.calculation.Step.PutBack;
import fewermore.calculation.Step.Regroup;
import fewermore.calculation.Step.Row;
import fewermore.calculation.Step.Start;
import fewermore.calculation.Step.Trade;
import fewermore.calculation.Step.Write;
import fewermore.calculation.Working.Verdict;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Each slip as a child would make it, step by step; what the steps alone say of it. */
class StepSlipsTest {
  private record Shown(SlipRule rule, String calculation, Working working) {}

  /** {@code 62−28} pieces: {@code T5 O2 ~ xO8 xT2 =34}; line: {@code @14 +6:20 =38}; expanded: {@code a60+2 …}. */
  private static final String[] SHOWN = {
    // pieces: T, O lay out; +T, +O on pile 2; -T, -O lift off; ~ a ten for ones; ^ ten ones for a ten; x cross out;
    // & join; = write
    "smaller-from-larger | 62-28 | T6 O8 xT2 xO2",
    "borrow-tens-left | 62-28 | T6 O2 O10 xO8 xT2 =44",
    "traded-ten-not-added | 62-28 | T6 O8 -T1 xT2 xO2 =36",
    "zero-for-borrow | 62-28 | T6 O2 xT2 xO2 =40",
    "borrowed-twice | 62-28 | T6 O2 ~ -T1 xO8 xT2 =24",
    "borrowed-twice | 62-28 | T6 O2 -T2 O10 xO8 xT2",
    "zero-less-n-is-n | 70-34 | T7 O4 xT3 =44",
    "zero-less-n-is-zero | 70-34 | T7 xT3 =40",
    "n-less-zero-is-zero | 57-20 | T5 O7 xT2 xO7 =30",
    "borrowed-without-need | 57-23 | T5 O7 -T1 xO3 xT2 =24",
    "taken-from-both-places | 47-3 | T4 O7 xO3 xT3 =14",
    "stopped-at-the-blank | 47-3 | T4 O7 xO3 =4",
    "tens-only | 62-28 | T6 O2 xT2 =42",
    "ones-only | 62-28 | T6 O2 ~ xO8 =54",
    "mended-the-wrong-way | 62-28 | T6 O2 xT3 xO2 =30",
    "ten-too-few-taken | 62-38 | T6 O2 ~ xO8 xT2 =34",
    "ten-too-many-taken | 62-28 | T6 O2 ~ xO8 xT3 =24",
    "difference-digits-swapped | 62-28 | T6 O2 ~ xO8 xT2 =43",
    "added-instead | 62-28 | T6 O2 +T2 +O8 & =90",
    "carried-ten-dropped | 34+28 | T3 O4 +T2 +O8 & -O10 =52",
    "carried-ten-dropped | 34+28 | T3 O4 +T2 +O8 & =52",
    "both-digits-written | 34+28 | T3 O4 +T2 +O8 & =512",
    "ten-and-ones-exchanged | 34+28 | T3 O4 +T2 +O8 & -O11 T2 =71",
    "carried-without-need | 32+25 | T3 O2 +T2 +O5 & T1 =67",
    "all-digits-as-ones | 34+28 | O7 +O10 & =17",
    "ones-added-to-tens | 47+6 | T4 O7 +T6 & =107",
    "added-to-both-places | 47+6 | T4 O7 +T6 +O6 & =113",
    "first-mended-the-wrong-way | 34+28 | T4 +T2 +O8 & O6 =74",
    "second-mended-the-wrong-way | 34+28 | T3 O4 +T3 & O2 =66",
    "ten-too-many-added | 34+28 | T3 O4 +T3 +O8 & ^ =72",
    "ten-too-few-added | 34+28 | T3 O4 +T1 +O8 & ^ =52",
    "sum-digits-swapped | 34+28 | T3 O4 +T2 +O8 & ^ =26",
    "subtracted-instead | 34+28 | T3 O4 ~ xO8 xT2 =6",
    // the line: @ start, a jump with its size and where it lands
    "tens-only | 62-28 | @62 -20:42 =42",
    "ones-only | 62-28 | @62 -2:60 -6:54 =54",
    "taken-from-both-places | 47-3 | @47 -3:44 -30:14",
    "mended-the-wrong-way | 62-28 | @62 -30:32 -2:30",
    "counted-the-start-back | 34-5 | @34 -5:30",
    "counted-the-start-back | 62-28 | @62 -20:42 -8:35",
    "counted-both-ends | 52-45 | @45 8:52",
    "counted-both-ends | 52-14 | @14 6:20 30:50 3:52",
    "counted-neither-end | 52-45 | @45 6:52",
    "counted-neither-end | 52-45 | @45 5:50 2:52 =6",
    "ten-too-few-taken | 62-28 | @62 -10:52 -8:44 =44",
    "ten-too-few-taken | 62-28 | @62 -20:52 -8:44",
    "ten-too-many-taken | 62-28 | @62 -10:52 -10:42 -10:32 -8:24",
    "difference-digits-swapped | 62-28 | @62 -20:42 -8:34 =43",
    "added-instead | 62-28 | @62 20:82 8:90",
    "ones-added-to-tens | 47+6 | @47 60:107",
    "added-to-both-places | 47+6 | @47 60:107 6:113",
    "first-mended-the-wrong-way | 34+28 | @40 28:68 6:74",
    "first-mended-the-wrong-way | 34+28 | @34 6:40 28:68 6:74",
    "second-mended-the-wrong-way | 34+28 | @34 30:64 2:66",
    "counted-the-start-on | 28+5 | @28 5:32",
    "ten-too-many-added | 34+28 | @34 30:64 8:72",
    "ten-too-few-added | 34+28 | @34 10:44 8:52 =52",
    "sum-digits-swapped | 34+28 | @34 20:54 8:62 =26",
    "subtracted-instead | 34+28 | @34 -20:14 -8:6",
    // expanded form: a, b break the first and second; A, R regroup the first and the result; t, o what a place makes
    "smaller-from-larger | 62-28 | a60+2 b20+8 t40 o6 =46",
    "borrow-tens-left | 62-28 | a60+2 b20+8 A60+12 o4 t40 =44",
    "traded-ten-not-added | 62-28 | a60+2 b20+8 A50+2 o6 t30 =36",
    "zero-for-borrow | 62-28 | a60+2 b20+8 o0 t40 =40",
    "borrowed-twice | 62-28 | a60+2 b20+8 A40+12 o4 t20 =24",
    "zero-less-n-is-n | 70-34 | a70+0 b30+4 o4 t40 =44",
    "zero-less-n-is-zero | 70-34 | a70+0 b30+4 o0 t40 =40",
    "n-less-zero-is-zero | 57-20 | a50+7 b20+0 o0 t30 =30",
    "borrowed-without-need | 57-23 | a50+7 b20+3 A40+7 o4 t20 =24",
    "taken-from-both-places | 47-3 | a40+7 b30+3 o4 t10 =14",
    "stopped-at-the-blank | 47-3 | a40+7 b0+3 o4 =4",
    "tens-only | 62-28 | a60+2 b20+8 t40 o2 =42",
    "ones-only | 62-28 | a60+2 b20+8 A50+12 o4 t50 =54",
    "ten-too-few-taken | 62-28 | a60+2 b20+8 A50+12 o4 t40 =44",
    "ten-too-many-taken | 62-28 | a60+2 b20+8 A50+12 o4 t20 =24",
    "difference-digits-swapped | 62-28 | a60+2 b20+8 A50+12 o4 t30 =43",
    "added-instead | 62-28 | a60+2 b20+8 t80 o10 =90",
    "carried-ten-dropped | 34+28 | a30+4 b20+8 o12 t50 =52",
    "carried-ten-dropped | 34+28 | a30+4 b20+8 o12 t50 R50+2 =52",
    "both-digits-written | 34+28 | a30+4 b20+8 o12 t50 =512",
    "ten-and-ones-exchanged | 34+28 | a30+4 b20+8 o12 t50 R70+1 =71",
    "carried-without-need | 32+25 | a30+2 b20+5 o7 t50 R60+7 =67",
    "all-digits-as-ones | 34+28 | a3+4 b2+8 t5 o12 =17",
    "ones-added-to-tens | 47+6 | a40+7 b60+0 t100 o7 =107",
    "added-to-both-places | 47+6 | a40+7 b60+6 t100 o13 =113",
    "ten-too-many-added | 34+28 | a30+4 b20+8 t60 o12 =72",
    "ten-too-few-added | 34+28 | a30+4 b20+8 t40 o12 =52",
    "sum-digits-swapped | 34+28 | a30+4 b20+8 o12 t50 R60+2 =26",
    "subtracted-instead | 34+28 | a30+4 b20+8 t10 o4 =6",
  };

  /** What steps of a kind can't show, and why. */
  private static final Map<StrategyKind, Map<SlipRule, String>> CANNOT = new EnumMap<>(StrategyKind.class);

  static {
    String counted = "pieces lie there one by one: a number said while counting is no step";
    String digits = "the line knows no digits: nothing is traded, written or left out by place";
    String jumps = "expanded form has no jumps to count or to mend";
    CANNOT.put(StrategyKind.PIECES, Map.of(SlipRule.COUNTED_THE_START_BACK, counted,
        SlipRule.COUNTED_BOTH_ENDS, counted, SlipRule.COUNTED_NEITHER_END, counted,
        SlipRule.COUNTED_THE_START_ON, counted));
    Map<SlipRule, String> line = new EnumMap<>(SlipRule.class);
    for (SlipRule rule : List.of(SlipRule.SMALLER_FROM_LARGER, SlipRule.BORROW_TENS_LEFT,
        SlipRule.TRADED_TEN_NOT_ADDED, SlipRule.ZERO_FOR_BORROW, SlipRule.BORROWED_TWICE, SlipRule.ZERO_LESS_N_IS_N,
        SlipRule.ZERO_LESS_N_IS_ZERO, SlipRule.N_LESS_ZERO_IS_ZERO, SlipRule.BORROWED_WITHOUT_NEED,
        SlipRule.STOPPED_AT_THE_BLANK, SlipRule.CARRIED_TEN_DROPPED, SlipRule.BOTH_DIGITS_WRITTEN,
        SlipRule.TEN_AND_ONES_EXCHANGED, SlipRule.CARRIED_WITHOUT_NEED, SlipRule.ALL_DIGITS_AS_ONES)) {
      line.put(rule, digits);
    }
    CANNOT.put(StrategyKind.LINE, line);
    CANNOT.put(StrategyKind.EXPANDED, Map.of(SlipRule.MENDED_THE_WRONG_WAY, jumps,
        SlipRule.COUNTED_THE_START_BACK, jumps, SlipRule.COUNTED_BOTH_ENDS, jumps,
        SlipRule.COUNTED_NEITHER_END, jumps, SlipRule.COUNTED_THE_START_ON, jumps,
        SlipRule.FIRST_MENDED_THE_WRONG_WAY, jumps, SlipRule.SECOND_MENDED_THE_WRONG_WAY, jumps));
  }

  private static List<Shown> shown() {
    List<Shown> all = new ArrayList<>();
    for (String line : SHOWN) {
      String[] columns = line.split(" \\| ");
      boolean adds = columns[1].contains("+");
      String[] numbers = columns[1].split("[+-]");
      Calculation calculation = new Calculation(Integer.parseInt(numbers[0]),
          adds ? Operation.ADD : Operation.SUBTRACT, Integer.parseInt(numbers[1]));
      StrategyKind kind = columns[2].startsWith("@") ? StrategyKind.LINE
          : columns[2].startsWith("a") ? StrategyKind.EXPANDED : StrategyKind.PIECES;
      Working working = Working.begin(kind, calculation);
      for (String word : columns[2].split(" ")) {
        working = working.then(step(kind, word, calculation));
      }
      all.add(new Shown(SlipRule.of(columns[0]).orElseThrow(), line, working));
    }
    return all;
  }

  private static Step step(StrategyKind kind, String word, Calculation calculation) {
    if (word.startsWith("=")) {
      return new Write(Integer.parseInt(word.substring(1)));
    }
    return switch (kind) {
      case PIECES -> piece(word);
      case LINE -> word.startsWith("@") ? new Start(Integer.parseInt(word.substring(1)))
          : new Jump(Integer.parseInt(word.split(":")[0]), Integer.parseInt(word.split(":")[1]));
      case EXPANDED -> parts(word, calculation);
    };
  }

  private static Step piece(String word) {
    String last = word.replaceAll("[^TO]", "");
    Piece piece = last.equals("T") ? Piece.TEN : Piece.ONE;
    String digits = word.replaceAll("[^0-9]", "");
    int count = digits.isEmpty() ? 0 : Integer.parseInt(digits);
    return switch (word.charAt(0)) {
      case '~' -> new Trade(Piece.TEN, Piece.ONE);
      case '^' -> new Trade(Piece.ONE, Piece.TEN);
      case '&' -> new Join();
      case 'x' -> new CrossOut(piece, count);
      case '+' -> new Put(2, piece, count);
      case '-' -> new PutBack(1, piece, count);
      default -> new Put(1, piece, count);
    };
  }

  private static Step parts(String word, Calculation calculation) {
    String[] numbers = word.substring(1).split("\\+");
    int one = Integer.parseInt(numbers[0]);
    int two = numbers.length == 1 ? 0 : Integer.parseInt(numbers[1]);
    return switch (word.charAt(0)) {
      case 'a' -> new Break(Row.FIRST, calculation.first(), one, two);
      case 'b' -> new Break(Row.SECOND, calculation.second(), one, two);
      case 'A' -> new Regroup(Row.FIRST, one, two);
      case 'R' -> new Regroup(Row.RESULT, one, two);
      case 't' -> new Combine(Place.TENS, one);
      default -> new Combine(Place.ONES, one);
    };
  }

  @Test
  void eachSlipIsRecognizedFromItsSteps() {
    for (Shown each : shown()) {
      assertEquals(Verdict.SLIP, each.working.judge().verdict(), each.calculation);
      assertTrue(each.working.judge().slips().contains(each.rule), each.calculation + " " + each.working.judge());
      each.working.moves().forEach(moved ->
          assertTrue(moved.check() != State.Check.NOT_POSSIBLE, each.calculation));
    }
  }

  @Test
  void stepsTellApartWhatTheAnswerAloneCannot() {
    Set<SlipRule> together = EnumSet.noneOf(SlipRule.class);
    for (Shown each : shown()) {
      List<SlipRule> slips = each.working.judge().slips();
      List<SlipRule> fromTheAnswer = SlipRule.predicting(each.working.calculation().first(),
          each.working.calculation().operation(), each.working.calculation().second(),
          each.working.result().orElseThrow());
      assertTrue(fromTheAnswer.containsAll(slips), each.calculation);
      if (slips.size() > 1) {
        together.addAll(slips);
      }
    }
    // With 0 ones above, these are the same steps: 0 − N as N is the smaller from the larger; as 0 it is a 0 written
    // for a trade, and nothing but the tens taken away.
    assertEquals(EnumSet.of(SlipRule.SMALLER_FROM_LARGER, SlipRule.ZERO_LESS_N_IS_N, SlipRule.ZERO_FOR_BORROW,
        SlipRule.ZERO_LESS_N_IS_ZERO, SlipRule.TENS_ONLY), together);
  }

  @Test
  void everyRuleIsShownByStepsOfEveryKindThatCanShowIt() {
    Map<String, List<String>> lacking = new TreeMap<>();
    Map<StrategyKind, Set<SlipRule>> there = new EnumMap<>(StrategyKind.class);
    shown().forEach(each -> there.computeIfAbsent(each.working.kind(), kind -> EnumSet.noneOf(SlipRule.class))
        .add(each.rule));
    for (StrategyKind kind : StrategyKind.values()) {
      for (SlipRule rule : SlipRule.values()) {
        boolean can = there.get(kind).contains(rule);
        boolean cannot = CANNOT.get(kind).containsKey(rule);
        if (can == cannot) {
          lacking.computeIfAbsent(kind.id(), key -> new ArrayList<>()).add(rule.id());
        }
      }
    }
    assertEquals(Map.of(), lacking);
    for (SlipRule rule : SlipRule.values()) {
      assertTrue(there.values().stream().anyMatch(rules -> rules.contains(rule)), rule.id());
    }
  }

  @Test
  void aSlipIsOnlyNamedWithItsOwnNumber() {
    WorkedSolutionsTest.everyCalculation(calculation -> {
      for (WorkedSolution solution : WorkedSolutions.of(calculation)) {
        int right = calculation.result();
        for (int wrong : new int[] {right + 1, right + 3, right + 10}) {
          Working working = solution.working().undone().then(new Write(wrong));
          List<SlipRule> named = working.judge().slips();
          for (SlipRule rule : named) {
            assertEquals(wrong, rule.predicts(calculation.first(), calculation.operation(), calculation.second())
                .orElse(-1), solution.way() + " " + calculation.text());
          }
          assertTrue(working.judge().verdict() == Verdict.SLIP
              || working.judge().verdict() == Verdict.OTHER_CALCULATION, calculation.text() + " " + wrong);
        }
      }
    });
  }
}
