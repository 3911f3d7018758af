package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SpacheTest {
  private final Spache spache = new Spache();

  /** 24 words, 3 sentences, 1 unfamiliar: 1.97; 27 words, 3 sentences, 2 unfamiliar: 2.36 (worked out by hand). */
  @Test
  void theFormulaGivesTheCheckValues() {
    List<String> one = List.of("we saw the big red dog run home.", "we saw the big red dog run home.",
        "we saw the big red dog run zigzag.");
    assertEquals(1.97, spache.grade(one, List.of()), 0.005);
    List<String> two = List.of("we saw the big red dog run home now.", "we saw the big red dog run home now.",
        "we saw the big red zebu run zigzag now.");
    assertEquals(2.36, spache.grade(two, List.of()), 0.005);
  }

  @Test
  void everyWrittenProblemIsReadableInGradeTwo() {
    Hardest hardest = new Hardest();
    int everyShape = Telling.forEach(3, hardest::meet);
    int manySeeds = 0;
    for (Scenario scenario : Lexicon.scenarios()) {
      for (long seed = 0; seed < 50; seed++) {
        Random random = new Random(seed * 31 + scenario.id().hashCode());
        for (Telling telling : Telling.oneOfEachKind(scenario, random, seed)) {
          hardest.meet(telling);
          manySeeds++;
        }
      }
    }
    assertTrue(everyShape >= 8_000, "told only " + everyShape);
    assertEquals(Lexicon.scenarios().size() * 50 * 7, manySeeds);
    assertTrue(hardest.grade <= 2.5, hardest.grade + " " + hardest.telling);
  }

  private final class Hardest {
    private double grade;
    private Telling telling;

    void meet(Telling met) {
      List<String> names = met.scene().holders().stream().map(Holder::english).toList();
      double found = spache.grade(met.english().sentences().stream().map(Sentence::text).toList(), names);
      if (found > grade) {
        grade = found;
        telling = met;
      }
    }
  }
}
