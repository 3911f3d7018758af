package fewermore.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.Calculation;
import fewermore.calculation.Step;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.WorkedSolutions;
import fewermore.marking.StrategyWork;
import fewermore.marking.Work;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Steps go out and come back bit for bit: what is replayed is what was done. */
class StrategyJsonTest {

  private static Work with(StrategyWork strategy) {
    return new Work("52 − 14 = x", "38", "shells", null, null, strategy);
  }

  @Test
  void everyWorkedSolutionComesBackAsItWent() {
    List<Class<?>> seen = new ArrayList<>();
    for (Calculation calculation : List.of(new Calculation(52, Operation.SUBTRACT, 14),
        new Calculation(47, Operation.ADD, 85), new Calculation(100, Operation.SUBTRACT, 37))) {
      WorkedSolutions.of(calculation).forEach(solution -> {
        StrategyWork one = new StrategyWork(solution.way().kind(), solution.working().steps(), null);
        Work work = with(new StrategyWork(one.kind(), one.steps(), one));
        String written = Json.write(WorkJson.write(work));
        assertEquals(work, WorkJson.read(Json.read(written)));
        assertEquals(written, Json.write(WorkJson.write(WorkJson.read(Json.read(written)))));
        one.steps().forEach(step -> seen.add(step.getClass()));
      });
    }
    Work lifted = with(new StrategyWork(StrategyKind.PIECES,
        List.of(new Step.Put(1, fewermore.calculation.Piece.TEN, 2), new Step.PutBack(1, fewermore.calculation.Piece.TEN, 1)),
        null));
    assertEquals(lifted, WorkJson.read(Json.read(Json.write(WorkJson.write(lifted)))));
    seen.add(Step.PutBack.class);
    for (Class<?> step : Step.class.getPermittedSubclasses()) {
      assertTrue(seen.contains(step), step.getSimpleName());
    }
  }

  @Test
  void aStrategyNotChosenIsKeptAsBlank() {
    Work work = with(StrategyWork.EMPTY);
    assertEquals(work, WorkJson.read(Json.read(Json.write(WorkJson.write(work)))));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "{'kind':'abacus','steps':[]}                                   | work.strategy.kind",
    "{'kind':'line','steps':{}}                                     | work.strategy.steps",
    "{'kind':'line','steps':[{'do':'hop','by':1,'to':2}]}           | work.strategy.steps[0].do",
    "{'kind':'line','steps':[{'do':'start','at':'52'}]}             | work.strategy.steps[0].at",
    "{'kind':'line','steps':[{'do':'jump','by':-1000,'to':2}]}      | work.strategy.steps[0].by",
    "{'kind':'line','steps':[{'do':'jump','by':1,'to':-2}]}         | work.strategy.steps[0].to",
    "{'kind':'pieces','steps':[{'do':'put','pile':3,'piece':'ten','count':1}]} | work.strategy.steps[0].pile",
    "{'kind':'pieces','steps':[{'do':'cross-out','piece':'cube','count':1}]} | work.strategy.steps[0].piece",
    "{'kind':'expanded','steps':[{'do':'combine','place':'hundreds','to':1}]} | work.strategy.steps[0].place",
    "{'kind':'expanded','steps':[{'do':'regroup','row':'third','tens':1,'ones':1}]} | work.strategy.steps[0].row",
    "42                                                             | work.strategy"})
  void whatCannotBeUsedIsNamedWithItsPlace(String strategy, String where) {
    String work = ("{'strategy':" + strategy + "}").replace('\'', '"');
    Json.Unusable problem = assertThrows(Json.Unusable.class, () -> WorkJson.read(Json.read(work)));
    assertTrue(problem.getMessage().startsWith(where + ":"), problem.getMessage());
  }
}
