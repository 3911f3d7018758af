package fewermore.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.wording.ChildNames;
import fewermore.wording.Holder;
import fewermore.wording.Language;
import fewermore.wording.Lexicon;
import fewermore.wording.Scenario;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ProblemWriterTest {

  @Test
  void everyProblemIsWhatWasWishedForAndKeepsItsAnswerToItself() {
    for (Kind kind : Kind.values()) {
      for (NumberRange range : NumberRange.values()) {
        for (Regrouping regrouping : Regrouping.values()) {
          for (long seed = 0; seed < 60; seed++) {
            Problem problem = ProblemWriter.generate(kind, range, regrouping, seed);
            String which = kind + " " + range + " " + regrouping + " seed " + seed + "\n" + problem.english().text();
            Comparison story = problem.story();
            assertEquals(kind, problem.kind(), which);
            assertTrue(story.amounts().total() <= range.limit(), which);
            assertTrue(story.amounts().total() > range.limit() / 2, which);
            assertNotEquals(story.amounts().firstPart(), story.amounts().secondPart(), which);
            if (regrouping != Regrouping.EITHER) {
              assertEquals(regrouping == Regrouping.NEEDED, tradesATen(story), which);
            }
            assertTrue(problem.notSeparated().isEmpty(), which);
            for (Language language : Language.values()) {
              String text = problem.written(language).orElseThrow().text();
              List<Integer> numbers = numbers(text);
              assertEquals(story.given().stream().map(story::value).sorted().toList(), numbers, which);
              assertFalse(numbers.contains(story.answer()), which);
            }
          }
        }
      }
    }
  }

  /** Whether the ones alone would not do, in the calculation that finds the unknown. */
  private static boolean tradesATen(Comparison story) {
    int first = story.value(story.given().get(0)) % 10;
    int second = story.value(story.given().get(1)) % 10;
    return story.unknown() == Role.LARGER ? first + second > 9 : first < second;
  }

  @Test
  void theSameSeedGivesTheSameProblem() {
    for (long seed = 0; seed < 200; seed++) {
      Kind kind = Kind.values()[(int) (seed % 6)];
      assertEquals(ProblemWriter.generate(kind, NumberRange.WITHIN_100, Regrouping.NEEDED, seed),
          ProblemWriter.generate(kind, NumberRange.WITHIN_100, Regrouping.NEEDED, seed), "seed " + seed);
    }
  }

  @Test
  void neighboringSeedsGiveDifferentProblems() {
    Set<String> texts = new HashSet<>();
    Set<String> scenarios = new HashSet<>();
    for (long seed = 0; seed < 300; seed++) {
      Problem problem = ProblemWriter.generate(Kind.LARGER_FEWER, NumberRange.WITHIN_100, Regrouping.NEEDED, seed);
      texts.add(problem.english().text());
      scenarios.add(problem.scenario());
    }
    assertTrue(texts.size() >= 298, "only " + texts.size());
    assertTrue(scenarios.size() >= 54, "only " + scenarios.size());
  }

  @Test
  void everyScenarioIsDrawnAboutEquallyOften() {
    Map<String, Integer> counts = new HashMap<>();
    for (long seed = 0; seed < 6_000; seed++) {
      counts.merge(ProblemWriter.generate(Kind.SMALLER_MORE, NumberRange.WITHIN_20, Regrouping.EITHER, seed).scenario(),
          1, Integer::sum);
    }
    double even = 6_000.0 / Lexicon.scenarios().size();
    for (Scenario scenario : Lexicon.scenarios()) {
      assertEquals(even, counts.getOrDefault(scenario.id(), 0), even * 0.4, scenario.id());
    }
  }

  @Test
  void whatIsTheDifferenceCanBeAskedFor() {
    Problem problem = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.NEEDED, Set.of())
        .write(Role.DIFFERENCE, Wording.DIFFERENCE, 3);
    assertTrue(problem.english().text().contains("What is the difference"), problem.english().text());
    assertEquals(Kind.DIFFERENCE_FEWER, problem.kind());
  }

  @Test
  void theClassesOwnNamesAreInNoProblem() {
    Set<String> own = Set.of("Zoe", "kofi", "MEI", "Jonáh", "Priya", "Omar", "Nadia", "Theo", "Wren", "Diego");
    Pattern any = Pattern.compile("\\b(Zoe|Kofi|Mei|Jonah|Priya|Omar|Nadia|Theo|Wren|Diego)\\b");
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, own);
    for (long seed = 0; seed < 150; seed++) {
      for (Problem problem : writer.writeSet(ProposedMix.of(8), seed).problems()) {
        assertFalse(any.matcher(problem.english().text()).find(), seed + " " + problem.english().text());
      }
    }
  }

  @Test
  void aClassWithEveryNameStillGetsProblems() {
    Set<String> all = new HashSet<>();
    ChildNames.all().stream().map(Holder::english).forEach(all::add);
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.EITHER, all);
    for (Problem problem : writer.writeSet(ProposedMix.of(12), 5).problems()) {
      for (String name : all) {
        assertFalse(problem.english().text().matches(".*\\b" + name + "\\b.*"), problem.english().text());
      }
    }
  }

  @Test
  void noScenarioChildOrNumbersComeTwiceInASet() {
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_100, Regrouping.NEEDED, Set.of());
    for (long seed = 0; seed < 200; seed++) {
      List<Problem> problems = writer.writeSet(ProposedMix.of(12), seed).problems();
      Set<String> scenarios = new HashSet<>();
      Set<Relation> amounts = new HashSet<>();
      Set<String> children = new HashSet<>();
      for (Problem problem : problems) {
        assertTrue(scenarios.add(problem.scenario()), "seed " + seed);
        assertTrue(amounts.add(problem.story().amounts()), "seed " + seed);
        Set<String> here = new HashSet<>(List.of(problem.english().text().split("[^A-Za-z]+")));
        here.retainAll(ChildNames.all().stream().map(Holder::english).toList());
        for (String child : here) {
          assertTrue(children.add(child), child + " seed " + seed);
        }
      }
    }
  }

  @Test
  void aVeryLongSetIsStillWritten() {
    ProblemWriter writer = new ProblemWriter(NumberRange.WITHIN_20, Regrouping.NEEDED, Set.of());
    assertEquals(150, writer.writeSet(ProposedMix.of(150), 1).problems().size());
  }

  private static List<Integer> numbers(String text) {
    List<Integer> numbers = new ArrayList<>(
        Pattern.compile("\\d+").matcher(text).results().map(MatchResult::group).map(Integer::valueOf).toList());
    numbers.sort(null);
    return numbers;
  }
}
