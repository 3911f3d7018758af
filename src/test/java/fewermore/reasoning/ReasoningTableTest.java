package fewermore.reasoning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.story.Kind;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReasoningTableTest {
  private static String file() throws IOException {
    try (var in = ReasoningTable.class.getResourceAsStream("/reasoning/table.tsv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void theChancesOfThePlansSumToOneForEachWayAndKind() {
    for (WayOfReasoning way : WayOfReasoning.values()) {
      for (Kind kind : Kind.values()) {
        double sum = 0;
        for (Plan plan : Plan.values()) {
          double chance = ReasoningTable.standard().chance(way, kind, plan);
          assertTrue(chance >= 0, way + " " + kind + " " + plan);
          sum += chance;
        }
        assertEquals(1, sum, 1e-9, way + " " + kind);
      }
    }
  }

  @Test
  void onAgreeingProblemsTheCueWordsRowIsTheStorysOwn() {
    for (Kind kind : Kind.values()) {
      for (Plan plan : Plan.values()) {
        double story = ReasoningTable.standard().chance(WayOfReasoning.FROM_THE_STORY, kind, plan);
        double cue = ReasoningTable.standard().chance(WayOfReasoning.BY_THE_CUE_WORD, kind, plan);
        assertTrue(!kind.agrees() || story == cue, kind + " " + plan);
      }
    }
  }

  @Test
  void everyConstantHasItsSource() {
    assertTrue(ReasoningTable.standard().constants().size() > 80);
    ReasoningTable.standard().constants().forEach(each -> assertFalse(each.source().isBlank(), each.name()));
  }

  @Test
  void aChangedTableIsReadAndUsed() throws IOException {
    ReasoningTable changed = ReasoningTable.read(new StringReader(
        file().replace("say/looks-as-if\t0.80", "say/looks-as-if\t0.70")));
    assertEquals(.70, changed.value("say/looks-as-if"));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "share/from-the-story\\t0.40 | share/from-the-story\\t0.50 | share/…: the starting shares were expected to sum to 1",
    "say/clear\\t0.90            | say/clear\\tvery            | line",
    "say/clear\\t0.90            | say/clear                   | line",
    "work/floor\\t0.000001       | work/roof\\t0.000001        | work/floor: expected in the table",
    "chance/always-adds/any/adds\\t0.90 | chance/always-adds/any/adds\\t0.99 | chances of always-adds",
  })
  void aTableThatCannotBeUsedSaysWhere(String what, String with, String says) throws IOException {
    String text = file();
    String from = what.strip().replace("\\t", "\t");
    assertTrue(text.contains(from), from);
    var problem = assertThrows(ReasoningTable.Unusable.class, () -> ReasoningTable.read(
        new StringReader(text.replace(from, with.strip().replace("\\t", "\t")))));
    assertTrue(problem.getMessage().startsWith(says), problem.getMessage());
  }
}
