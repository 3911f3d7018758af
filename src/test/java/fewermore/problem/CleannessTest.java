package fewermore.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Relation;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CleannessTest {

  /**
   * Counts worked out for this project by another program: first given 11-89, second 6-89, a ten traded, result 2-100,
   * equal parts left out.
   */
  @Test
  void asManyPairsAreCleanAsAnIndependentCountFound() {
    int larger = 0;
    int cleanLarger = 0;
    int smaller = 0;
    int cleanSmaller = 0;
    int cleanDifference = 0;
    for (int first = 11; first <= 89; first++) {
      for (int second = 6; second <= 89; second++) {
        if (first + second <= 100 && first != second && first % 10 + second % 10 >= 10) {
          larger++;
          cleanLarger += Cleanness.isClean(new Relation(first + second, first, second), Role.LARGER) ? 1 : 0;
        }
        if (first - second >= 2 && first % 10 < second % 10) {
          smaller++;
          cleanSmaller += Cleanness.isClean(new Relation(first, first - second, second), Role.SMALLER) ? 1 : 0;
          cleanDifference += Cleanness.isClean(new Relation(first, second, first - second), Role.DIFFERENCE) ? 1 : 0;
        }
      }
    }
    assertEquals(List.of(1552, 1228, 1489, 1030, 1030),
        List.of(larger, cleanLarger, smaller, cleanSmaller, cleanDifference));
  }

  @Test
  void everyRivalOfASmallerProblemIsWorkedOut() {
    // 52 − 39: right 13, added 91, the two numbers, 5−3 tens and 9−2 ones, ten left 23, added without the new ten 81
    assertEquals(List.of(13, 91, 52, 39, 27, 23, 81),
        Cleanness.rivals(new Relation(52, 13, 39), Role.SMALLER).stream().map(Rival::number).toList());
  }

  @Test
  void aGapOfFiveInTheOnesMixesTwoSlips() {
    List<NotSeparated> pairs = Cleanness.notSeparated(new Relation(62, 45, 17), Role.SMALLER);
    String says = "Both a child who took the smaller digit from the larger in each place and a child who borrowed "
        + "a ten but left the tens as they were give 55.";
    assertTrue(pairs.stream().anyMatch(pair -> pair.says().equals(says)), pairs::toString);
  }

  @Test
  void candidatesNeverHaveEqualParts() {
    for (Role unknown : Role.values()) {
      for (NumberRange range : NumberRange.values()) {
        List<Relation> candidates = NumberChooser.candidates(unknown, range, Regrouping.EITHER);
        assertTrue(candidates.stream().noneMatch(each -> each.firstPart() == each.secondPart()), range::id);
        assertTrue(candidates.size() >= 60, () -> range.id() + " has " + candidates.size());
      }
    }
  }

  @Test
  void betterNumbersAreCleanNearAndTradeATenWhenTheTeachersDo() {
    // The nearest by trying all: 62 − 17 has two slips on one number, 62 − 16 has none.
    Relation better = NumberChooser.better(new Relation(62, 45, 17), Role.SMALLER).orElseThrow();
    assertTrue(Cleanness.isClean(better, Role.SMALLER));
    assertTrue(Regrouping.isNeeded(better));
    assertTrue(Math.abs(better.firstPart() - 45) + Math.abs(better.secondPart() - 17) <= 2, better::toString);
    assertTrue(NumberChooser.better(new Relation(52, 13, 39), Role.SMALLER).isEmpty());
    assertTrue(NumberChooser.better(new Relation(500, 250, 250), Role.SMALLER).isEmpty());
  }

  @Test
  void chosenNumbersAreCleanByASlowCheckWrittenOutOnPaper() {
    for (Role unknown : Role.values()) {
      for (NumberRange range : NumberRange.values()) {
        for (Regrouping regrouping : Regrouping.values()) {
          for (long seed = 0; seed < 40; seed++) {
            var choice = NumberChooser.choose(unknown, range, regrouping, new Random(seed), Set.of());
            assertEquals(choice.clean(), slowlyClean(choice.amounts(), unknown),
                unknown + " " + range + " " + regrouping + " seed " + seed + ": " + choice);
            assertTrue(choice.clean(), unknown + " " + range + " " + regrouping + " seed " + seed + ": " + choice);
          }
        }
      }
    }
  }

  /** Column by column on digits, sharing nothing with the code under test. */
  private static boolean slowlyClean(Relation amounts, Role unknown) {
    int a = unknown == Role.LARGER ? amounts.firstPart() : amounts.total();
    int b = unknown == Role.DIFFERENCE ? amounts.firstPart() : amounts.secondPart();
    String top = String.format("%03d", Math.max(a, b));
    String bottom = String.format("%03d", Math.min(a, b));
    List<Integer> answers = new ArrayList<>(List.of(a + b, Math.abs(a - b), a, b));
    if (top.charAt(2) < bottom.charAt(2)) {
      StringBuilder columns = new StringBuilder();
      for (int i = 0; i < 3; i++) {
        columns.append(Math.abs(top.charAt(i) - bottom.charAt(i)));
      }
      answers.add(Integer.parseInt(columns.toString()));
      answers.add(Math.abs(a - b) + 10);
    }
    if (top.charAt(2) - '0' + bottom.charAt(2) - '0' > 9) {
      answers.add(a + b - 10);
    }
    for (int i = 0; i < answers.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (Math.abs(answers.get(i) - answers.get(j)) < 2) {
          return false;
        }
      }
    }
    return true;
  }
}
