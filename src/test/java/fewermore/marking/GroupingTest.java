package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.equation.Term;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GroupingTest {
  /** Long sides are grouped by another way of reckoning than short ones: both against all groupings. */
  @Test
  void longSidesAreGroupedAsIfEveryGroupingWereTried() {
    long seed = 496;
    Random random = new Random(seed);
    Grouping.Others fewOthers = new Grouping.Others() {
      @Override
      public boolean may(Term term) {
        return term.sign() > 0;
      }

      @Override
      public boolean suffices(Term term) {
        return term.value() % 5 == 0;
      }
    };
    int found = 0;
    for (int i = 0; i < 600; i++) {
      Side side = side(random, 8 + random.nextInt(6));
      long target = random.nextInt(140) - 40;
      boolean expected = any(side, target, fewOthers);
      found += expected ? 1 : 0;
      assertEquals(expected, Grouping.makes(side, target, fewOthers), () -> "seed " + seed + ": " + side.terms());
    }
    assertTrue(found > 100 && found < 500, "to tell, some must be found and some not: " + found);
  }

  @ParameterizedTest
  @CsvSource({
    "25, 52, true", "41, 14, true", "12, 14, true", "53, 52, true", "2, 52, true", "5, 52, true", "92, 52, true",
    "52, 52, false", "152, 52, false", "520, 52, false", "35, 52, false", "14, 52, false", "22, 52, true",
    "3, 7, true", "17, 7, false", "0, 7, true", "10, 100, true", "2, 100, false", "201, 102, true",
    "120, 102, true", "12, 102, true", "101, 110, true", "0, 20, true", "2, 20, true", "33, 24, false"})
  void aMiscopyIsOneSwapOneWrongDigitOrOneDropped(int written, int given, boolean is) {
    assertEquals(is, Miscopy.is(written, given));
  }

  @Test
  void miscopiesAreThoseThatChangingEachDigitGives() {
    for (int given = 0; given <= 1200; given++) {
      var all = SlowEquationMarker.miscopies(given);
      for (int written = 0; written <= 2000; written++) {
        assertEquals(all.contains(written), Miscopy.is(written, given), written + " for " + given);
      }
    }
  }

  private static boolean any(Side side, long target, Grouping.Others others) {
    for (int way = 1; way < (1 << side.size()) - 1; way++) {
      long sum = 0;
      boolean may = true;
      boolean enough = false;
      for (int i = 0; i < side.size(); i++) {
        Term term = side.terms().get(i);
        if ((way >> i & 1) == 1) {
          sum += term.signed();
        } else {
          may &= others.may(term);
          enough |= others.suffices(term);
        }
      }
      if (sum == target && may && enough) {
        return true;
      }
    }
    return false;
  }

  private static Side side(Random random, int size) {
    List<Term> terms = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      terms.add(new Term(random.nextInt(3) == 0 ? -1 : 1, false, random.nextInt(20), new SourceSpan(0, 0), null));
    }
    return new Side(terms);
  }
}
