package fewermore.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.State.Check;
import fewermore.calculation.Working.Verdict;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Worked solutions of all calculations with numbers from 0 to 100, held against plain arithmetic. */
class WorkedSolutionsTest {

  static void everyCalculation(Consumer<Calculation> check) {
    for (int first = 0; first <= 100; first++) {
      for (int second = 0; second <= 100; second++) {
        check.accept(new Calculation(first, Operation.ADD, second));
        if (first >= second) {
          check.accept(new Calculation(first, Operation.SUBTRACT, second));
        }
      }
    }
  }

  @Test
  void everySolutionOfEveryCalculationEndsAtTheRightNumberByTrueStepsOnly() {
    Map<Way, Integer> seen = new EnumMap<>(Way.class);
    everyCalculation(calculation -> {
      int right = calculation.operation() == Operation.ADD
          ? calculation.first() + calculation.second() : calculation.first() - calculation.second();
      for (WorkedSolution solution : WorkedSolutions.of(calculation)) {
        String what = solution.way() + " " + calculation.text();
        seen.merge(solution.way(), 1, Integer::sum);
        solution.working().moves().forEach(moved -> assertEquals(Check.RIGHT, moved.check(), what));
        assertEquals(right, solution.working().result().orElse(-1), what);
        assertEquals(Verdict.FITS, solution.working().judge().verdict(), what);
        assertEquals(solution.steps().get(solution.steps().size() - 1).state(), solution.working().state(), what);
        assertTrue(solution.steps().size() <= Working.MOST, what);
      }
    });
    assertEquals(Way.values().length, seen.size(), seen.toString());
    seen.forEach((way, times) -> assertTrue(times >= 500, way + " " + times));
  }

  @Test
  void everyCalculationIsWorkedWithPiecesOnTheLineAndInExpandedForm() {
    everyCalculation(calculation -> {
      for (StrategyKind kind : StrategyKind.values()) {
        assertFalse(WorkedSolutions.of(calculation, kind).isEmpty(), kind + " " + calculation.text());
      }
    });
  }

  @Test
  void regroupingCalculationsHaveTwoWaysOrMoreOfEachKind() {
    List<String> lacking = new ArrayList<>();
    everyCalculation(calculation -> {
      int o1 = calculation.first() % 10;
      int o2 = calculation.second() % 10;
      boolean regroups = calculation.adds() ? o1 + o2 >= 10 : o1 < o2;
      boolean twoDigits = Math.min(calculation.first(), calculation.second()) > 10 && calculation.first() < 100;
      if (regroups && twoDigits) {
        for (StrategyKind kind : StrategyKind.values()) {
          if (WorkedSolutions.of(calculation, kind).size() < 2) {
            lacking.add(kind + " " + calculation.text());
          }
        }
      }
    });
    assertEquals(List.of(), lacking);
  }

  @Test
  void theWayOfAWorkedSolutionIsRecognizedWhereItIsToBeSeen() {
    for (Calculation calculation : List.of(new Calculation(62, Operation.SUBTRACT, 28),
        new Calculation(34, Operation.ADD, 28))) {
      for (WorkedSolution solution : WorkedSolutions.of(calculation)) {
        assertEquals(solution.way(), WorkedSolutions.wayOf(solution.working()).orElse(null), calculation.text());
      }
    }
  }

  @Test
  void anAddUpToIsToldAsATeacherWouldTellIt() {
    WorkedSolution solution =
        WorkedSolutions.of(new Calculation(52, Operation.SUBTRACT, 14), Way.COUNT_UP).orElseThrow();
    StepWords words = StepWords.in(Locale.ENGLISH);
    assertEquals(List.of("Start at 14.", "Jump 6 forward to 20, a friendly ten.", "Jump 30 forward. That is 50.",
            "Jump 2 forward. That is 52.", "Put the jumps together: 38."),
        solution.steps().stream().map(step -> words.say(step.says())).toList());
  }

  @Test
  void aTradeIsToldWithItsReason() {
    WorkedSolution solution =
        WorkedSolutions.of(new Calculation(52, Operation.SUBTRACT, 14), Way.TRADE_FIRST).orElseThrow();
    StepWords words = StepWords.in(Locale.ENGLISH);
    assertEquals(List.of("52: lay out 5 tens.", "52: lay out 2 ones.",
            "There are not enough ones. Trade a ten for ten ones.", "Take away 4 ones.", "Take away 1 ten.",
            "Count what is left: 38."),
        solution.steps().stream().map(step -> words.say(step.says())).toList());
  }

  @Test
  void everySentenceAndEveryPictureIsThereInEnglishAndSpanish() {
    for (Locale language : List.of(Locale.ENGLISH, Locale.forLanguageTag("es"))) {
      StepWords words = StepWords.in(language);
      everyCalculation(calculation -> WorkedSolutions.of(calculation).forEach(solution -> {
        assertFalse(words.name(solution.way()).isBlank());
        solution.steps().forEach(step -> {
          assertFalse(words.say(step.says()).contains("{"), () -> words.say(step.says()));
          assertFalse(words.say(step.state()).contains("{"), () -> words.say(step.state()));
        });
      }));
    }
    assertEquals(StepWords.in(Locale.ENGLISH).texts().keySet(),
        StepWords.in(Locale.forLanguageTag("es")).texts().keySet());
  }

  /**
   * Worked examples of a published leaflet for families, "Developing Computational Fluency, Grade 2"
   * (scribd.com/doc/270749950): 64 − 27 counted back on the number line lands on 37; 52, of which 28 is to be taken,
   * regrouped is 4 tens and 12 ones.
   */
  @Test
  void publishedWorkedExamplesComeOutAsPublished() {
    Calculation back = new Calculation(64, Operation.SUBTRACT, 27);
    NumberLine line = (NumberLine) WorkedSolutions.of(back, Way.TENS_FIRST).orElseThrow().working().state();
    assertEquals(64, line.start().orElse(-1));
    assertEquals(37, line.at().orElse(-1));
    Calculation regrouped = new Calculation(52, Operation.SUBTRACT, 28);
    Expanded expanded = (Expanded) WorkedSolutions.of(regrouped, Way.REGROUP).orElseThrow().working().state();
    assertEquals(new Expanded.Parts(40, 12), expanded.first().standing().orElseThrow());
    WorkedSolution pieces = WorkedSolutions.of(regrouped, Way.TRADE_FIRST).orElseThrow();
    assertTrue(pieces.steps().stream().anyMatch(step -> step.state() instanceof Mat mat
        && mat.first().equals(new Pile(0, 4, 12))));
  }
}
