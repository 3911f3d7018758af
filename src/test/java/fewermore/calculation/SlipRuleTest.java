package fewermore.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Operation;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SlipRuleTest {
  /**
   * The list of rules with a worked example each. Names S1, S2, S4, S6, S7, S8, S10, S11 follow VanLehn (1990)
   * and Brown and Burton (1978), from memory; every number was computed for this project, by hand.
   */
  @ParameterizedTest
  @CsvSource({
    "S1,  62, -, 28, 46", "S2,  62, -, 28, 44", "S3,  62, -, 28, 36", "S4,  62, -, 28, 40", "S5,  62, -, 28, 24",
    "S6,  70, -, 34, 44", "S7,  70, -, 34, 40", "S8,  57, -, 20, 30", "S9,  57, -, 23, 24", "S10, 47, -, 3,  14",
    "S11, 47, -, 3,  4",  "S12, 62, -, 28, 42", "S13, 62, -, 28, 54", "S14, 62, -, 28, 30", "S15, 34, -, 5,  30",
    "S16, 52, -, 45, 8",  "S16, 52, -, 45, 6",  "S17, 62, -, 28, 44", "S17, 62, -, 28, 24", "S18, 62, -, 28, 43",
    "S19, 62, -, 28, 90",
    "A1,  34, +, 28, 52", "A2,  34, +, 28, 512", "A3, 34, +, 28, 71", "A4,  32, +, 25, 67", "A5,  34, +, 28, 17",
    "A6,  47, +, 6,  107", "A7, 47, +, 6,  113", "A8, 34, +, 28, 74", "A9,  28, +, 5,  32", "A10, 34, +, 28, 72",
    "A10, 34, +, 28, 52", "A11, 34, +, 28, 26", "A12, 34, +, 28, 6",
  })
  void everyWorkedExampleIsPredictedByItsRule(String catalog, int first, String sign, int second, int written) {
    Operation op = sign.equals("+") ? Operation.ADD : Operation.SUBTRACT;
    List<String> found = SlipRule.predicting(first, op, second, written).stream().map(SlipRule::catalog).toList();
    assertTrue(found.contains(catalog), first + sign + second + " = " + written + " gives " + found);
  }

  @ParameterizedTest
  @EnumSource(SlipRule.class)
  void everyRuleSaysWhatItIsAndWorksItsOwnExample(SlipRule rule) {
    SlipRule.Example example = rule.example();
    assertEquals(OptionalInt.of(example.writes()), rule.predicts(example.first(), example.operation(),
        example.second()));
    assertTrue(rule.source().contains("computed for this project"), rule.source());
    assertFalse(rule.says().isBlank());
    assertEquals(rule, SlipRule.of(rule.id()).orElseThrow());
  }

  @Test
  void noTwoRulesShareAnId() {
    assertEquals(SlipRule.values().length,
        Arrays.stream(SlipRule.values()).map(SlipRule::id).collect(Collectors.toSet()).size());
  }

  @Test
  void noRulePredictsTheRightResultOrANumberBelowZero() {
    for (int first = 0; first <= SlipRule.LARGEST; first++) {
      for (int second = 0; second <= SlipRule.LARGEST; second++) {
        assertEquals(List.of(), SlipRule.predicting(first, Operation.ADD, second, first + second));
        assertEquals(List.of(), SlipRule.predicting(first, Operation.SUBTRACT, second, Math.abs(first - second)));
        for (SlipRule rule : SlipRule.values()) {
          assertTrue(rule.predicts(first, rule.operation(), second).orElse(0) >= 0, rule + " " + first + " " + second);
        }
      }
    }
  }

  @Test
  void aSubtractionWrittenTheOtherWayRoundHasTheSameSlips() {
    for (int first = 0; first <= SlipRule.LARGEST; first++) {
      for (int second = 0; second < first; second++) {
        for (SlipRule rule : SlipRule.values()) {
          assertEquals(rule.predicts(first, Operation.SUBTRACT, second), rule.predicts(second, Operation.SUBTRACT,
              first));
        }
      }
    }
  }

  @Test
  void numbersOutsideTheTwoDigitsHaveNoSlips() {
    assertEquals(List.of(), SlipRule.predicting(101, Operation.SUBTRACT, 28, 83));
    assertEquals(List.of(), SlipRule.predicting(-1, Operation.ADD, 28, 37));
    assertEquals(List.of(), SlipRule.predicting(62, Operation.SUBTRACT, 28, Integer.MAX_VALUE));
    assertEquals(List.of(), SlipRule.predicting(34, Operation.SUBTRACT, 34, 1));
  }

  /** What an answer alone cannot tell: "ten too many" and "ten too few" always come with the rules of the trade. */
  @Test
  void rulesThatAlwaysPredictTheSameAreReportedTogether() {
    for (int first = 11; first <= 99; first++) {
      for (int second = 11; second < first; second++) {
        assertTogether(first, second, SlipRule.BORROW_TENS_LEFT, SlipRule.TEN_TOO_FEW_TAKEN);
        assertTogether(first, second, SlipRule.BORROWED_TWICE, SlipRule.TEN_TOO_MANY_TAKEN);
        assertTogether(first, second, SlipRule.BORROWED_WITHOUT_NEED, SlipRule.TEN_TOO_MANY_TAKEN);
        assertTogether(first, second, SlipRule.CARRIED_TEN_DROPPED, SlipRule.TEN_TOO_FEW_ADDED);
      }
    }
  }

  /** Computed for this project: 180 of the 1,620 two-digit borrow pairs have a ones gap of 5, where S1 = S2. */
  @Test
  void smallerFromLargerIsBorrowWithTensLeftExactlyWhereTheOnesAreFiveApart() {
    int borrows = 0;
    int same = 0;
    for (int first = 11; first <= 99; first++) {
      for (int second = 11; second < first; second++) {
        if (first % 10 < second % 10) {
          borrows++;
          boolean equal = SlipRule.SMALLER_FROM_LARGER.predicts(first, Operation.SUBTRACT, second)
              .equals(SlipRule.BORROW_TENS_LEFT.predicts(first, Operation.SUBTRACT, second));
          same += equal ? 1 : 0;
          assertEquals(second % 10 - first % 10 == 5, equal, first + " - " + second);
        }
      }
    }
    assertEquals(1620, borrows);
    assertEquals(180, same);
  }

  /** 62 - 17, the example to avoid: S1 = S2 = S13 = 55. */
  @Test
  void oneNumberMayBePredictedBySeveralRules() {
    Set<String> catalog = SlipRule.predicting(62, Operation.SUBTRACT, 17, 55).stream().map(SlipRule::catalog)
        .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(new TreeSet<>(Set.of("S1", "S2", "S13", "S17")), catalog);
  }

  @Test
  void zeroRulesComeWithTheirWiderRules() {
    for (int first = 20; first <= 100; first += 10) {
      for (int second = 11; second < first; second++) {
        if (second % 10 > 0) {
          assertTogether(first, second, SlipRule.ZERO_LESS_N_IS_N, SlipRule.SMALLER_FROM_LARGER);
          assertTogether(first, second, SlipRule.ZERO_LESS_N_IS_ZERO, SlipRule.ZERO_FOR_BORROW);
        }
      }
    }
  }

  private static void assertTogether(int first, int second, SlipRule narrow, SlipRule wide) {
    OptionalInt wrong = narrow.predicts(first, narrow.operation(), second);
    if (wrong.isPresent()) {
      assertTrue(new HashSet<>(SlipRule.predicting(first, narrow.operation(), second, wrong.getAsInt()))
          .containsAll(Set.of(narrow, wide)), first + " " + second + " " + narrow);
    }
  }
}
