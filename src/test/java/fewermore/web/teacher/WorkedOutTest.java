package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.Calculation;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.WorkedSolution;
import fewermore.calculation.WorkedSolutions;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What stands on the Board while numbers are worked out, read back from its pictures and held against arithmetic. */
class WorkedOutTest {
  private static final Pattern GROUP = Pattern.compile("<g class=\"([a-z ]+) (hundred|ten|one)\">");
  private static final Map<String, Integer> WORTH = Map.of("hundred", 100, "ten", 10, "one", 1);

  /** Every way of a kind, for numbers of each sort: all pairs up to 100 in steps that meet every pair of ones. */
  private static int forAll(StrategyKind kind, BiConsumer<WorkedSolution, WorkedOut.Told> check) {
    int many = 0;
    for (int first = 0; first <= 100; first++) {
      for (int second = first % 7; second <= 100; second += 7) {
        for (Operation operation : Operation.values()) {
          for (WorkedSolution solution : WorkedSolutions.of(Calculation.of(first, operation, second).orElseThrow(), kind)) {
            check.accept(solution, WorkedOut.of(List.of(solution), 1).ways().get(0));
            many++;
          }
        }
      }
    }
    return many;
  }

  /** What lies there by how it is drawn: {@code keep}, {@code keep two}, {@code away}, {@code traded}. */
  private static Map<String, Integer> lies(StrategyPicture picture) {
    Map<String, Integer> lies = new TreeMap<>();
    Matcher group = GROUP.matcher(picture.svg());
    while (group.find()) {
      lies.merge(group.group(1), WORTH.get(group.group(2)), Integer::sum);
    }
    return lies;
  }

  private static List<String> texts(StrategyPicture picture, String kind) {
    List<String> texts = new ArrayList<>();
    Matcher text = Pattern.compile("<text class=\"" + kind + "\"[^>]*>([^<]*)<").matcher(picture.svg());
    while (text.find()) {
      texts.add(text.group(1));
    }
    return texts;
  }

  @Test
  void thePiecesAreWorthTheNumbersAtEveryStep() {
    int many = forAll(StrategyKind.PIECES, (solution, told) -> {
      Calculation calculation = solution.calculation();
      Map<String, Integer> last = lies(told.last().picture());
      int there = last.getOrDefault("keep", 0) + last.getOrDefault("keep two", 0);
      switch (solution.way()) {
        case TRADE_FIRST, TRADE_WHEN_NEEDED -> {
          assertEquals(calculation.result(), last.getOrDefault("keep", 0), told.title());
          assertEquals(calculation.second(), last.getOrDefault("away", 0), told.title());
        }
        case BUILD_UP -> assertEquals(calculation.first(), there);
        default -> assertEquals(calculation.result(), there);
      }
      for (WorkedOut.Shown shown : told.shown()) {
        if (shown.trade() != null) {
          Map<String, Integer> now = lies(shown.picture());
          Map<String, Integer> before = lies(told.shown().get(shown.step() - 2).picture());
          assertEquals(before.getOrDefault("keep", 0) + before.getOrDefault("away", 0),
              now.getOrDefault("keep", 0) + now.getOrDefault("away", 0), "a trade leaves the number as it is");
          boolean opens = shown.trade().equals("ten-one") || shown.trade().equals("hundred-ten");
          assertEquals(opens, now.getOrDefault("traded", 0) > before.getOrDefault("traded", 0), "what was opened is to be seen");
        }
      }
      assertEquals(List.of("= " + calculation.result()), texts(told.last().picture(), "sum-of-all"));
    });
    assertTrue(many > 3500, many + " solutions");
  }

  @Test
  void theJumpsOnTheLineGoFromNumberToNumber() {
    int many = forAll(StrategyKind.LINE, (solution, told) -> {
      List<Integer> stops = texts(told.last().picture(), "stop").stream().map(Integer::parseInt).toList();
      int sum = texts(told.last().picture(), "size").stream()
          .mapToInt(size -> Integer.parseInt(size.substring(2)) * (size.startsWith("−") ? -1 : 1)).sum();
      Calculation calculation = solution.calculation();
      switch (solution.way()) {
        case COUNT_UP -> {
          assertEquals(calculation.result(), sum);
          assertTrue(stops.contains(calculation.first()) && stops.contains(calculation.second()));
        }
        case SAME_DIFFERENCE -> assertTrue(stops.contains(calculation.result()));
        default -> {
          assertEquals(calculation.adds() ? calculation.second() : -calculation.second(), sum);
          assertTrue(stops.contains(calculation.first()) && stops.contains(calculation.result()), stops + calculation.text());
        }
      }
      assertEquals(List.of("= " + calculation.result()), texts(told.last().picture(), "sum-of-all"));
    });
    assertTrue(many > 6000, many + " solutions");
  }

  @Test
  void tensAndOnesAreWrittenOutAndPutTogether() {
    int many = forAll(StrategyKind.EXPANDED, (solution, told) -> {
      List<String> whole = texts(told.last().picture(), "whole");
      assertEquals(Integer.toString(solution.calculation().result()), whole.get(whole.size() - 1));
      assertTrue(told.last().says().endsWith("make " + solution.calculation().result() + "."), told.last().says());
      assertTrue(!told.broad());
    });
    assertTrue(many > 2500, many + " solutions");
  }

  @Test
  void everyPictureOfAWayHasOneSizeAndEveryStepItsOwnPlace() {
    for (StrategyKind kind : StrategyKind.values()) {
      forAll(kind, (solution, told) -> {
        assertEquals(1, told.shown().stream().map(each -> each.picture().svg().replaceAll(".*viewBox=\"([^\"]*)\".*", "$1"))
            .distinct().count());
        for (int at = 0; at < told.shown().size(); at++) {
          assertEquals(at + 1, told.shown().get(at).step());
          assertEquals(at + 2, told.shown().get(at).until());
        }
      });
    }
  }

  @Test
  void aPageOfAnyTwoNumbersHasItsStepsAndSaysWhatItExpected() {
    Map<String, String> asked = new TreeMap<>(Map.of("first", "52", "op", "minus", "second", "14", "kind", "pieces",
        "check", "count-up"));
    StrategyPage page = StrategyPage.of(asked, List.of());
    assertNotNull(page.worked());
    assertEquals("52 − 14", page.worked().calculation().text());
    assertEquals(page.worked().both().step(), page.steps());
    assertEquals("/board/strategy?first=52&op=minus&second=14&kind=pieces&check=count-up", page.path());
    for (String[] wrong : new String[][] {{"second", "101", "from 0 to 100"}, {"second", "x", "from 0 to 100"},
        {"check", "pieces", "can’t check itself"}, {"kind", "join-and-trade", "These do: trade first;"}}) {
      Map<String, String> other = new TreeMap<>(asked);
      other.put(wrong[0], wrong[1]);
      StrategyPage said = StrategyPage.of(other, List.of());
      assertNull(said.worked(), wrong[1]);
      assertTrue(said.problem().contains(wrong[2]), said.problem());
    }
  }
}
