package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.Calculation;
import fewermore.calculation.Expanded;
import fewermore.calculation.Mat;
import fewermore.calculation.NumberLine;
import fewermore.calculation.State;
import fewermore.calculation.StepSamples;
import fewermore.calculation.WorkedSolution;
import fewermore.calculation.WorkedSolutions;
import fewermore.calculation.Working;
import fewermore.story.Operation;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

/** The picture of a state, and the words that stand for it, say the same. */
class StrategyPictureTest {
  private static final Pattern COUNT = Pattern.compile("(\\d+) (hundred|ten|one)s?");

  private static int drawn(String svg, String kind) {
    return (int) Pattern.compile("<g class=\"" + kind + "\">").matcher(svg).results().count();
  }

  private static List<String> numbersIn(String svg, String kind) {
    return Pattern.compile("<text class=\"" + kind + "\"[^>]*>([^<]*)<").matcher(svg).results()
        .map(found -> found.group(1)).toList();
  }

  private static List<State> states() {
    List<State> states = new ArrayList<>();
    StepSamples.anyWorkings(900).stream().map(Working::state).forEach(states::add);
    for (Calculation calculation : List.of(new Calculation(52, Operation.SUBTRACT, 14),
        new Calculation(38, Operation.ADD, 25), new Calculation(100, Operation.SUBTRACT, 37),
        new Calculation(99, Operation.ADD, 99))) {
      WorkedSolutions.of(calculation).forEach(solution ->
          solution.steps().forEach(step -> states.add(step.state())));
    }
    return states;
  }

  @Test
  void theWordsCountThePiecesThatAreDrawn() {
    int looked = 0;
    for (State state : states()) {
      if (state instanceof Mat) {
        StrategyPicture picture = StrategyPicture.of(state, Locale.ENGLISH);
        String[] parts = picture.aloud().split("Crossed out:");
        for (String piece : List.of("hundred", "ten", "one")) {
          assertEquals(said(parts[0], piece), drawn(picture.svg(), "keep " + piece)
              + drawn(picture.svg(), "keep two " + piece), picture.aloud());
          assertEquals(parts.length == 1 ? 0 : said(parts[1], piece), drawn(picture.svg(), "away " + piece),
              picture.aloud());
        }
        looked++;
      }
    }
    assertTrue(looked > 200, looked + " mats");
  }

  private static int said(String words, String piece) {
    int sum = 0;
    Matcher count = COUNT.matcher(words);
    while (count.find()) {
      sum += count.group(2).equals(piece) ? Integer.parseInt(count.group(1)) : 0;
    }
    return sum;
  }

  @Test
  void everyJumpAndEveryStopOfTheLineIsDrawnWithItsNumber() {
    for (State state : states()) {
      if (state instanceof NumberLine line && line.start().isPresent()) {
        String svg = StrategyPicture.of(line, Locale.ENGLISH).svg();
        assertEquals(line.jumps().stream().map(jump -> (jump.by() > 0 ? "+ " : "− ") + Math.abs(jump.by())).toList(),
            numbersIn(svg, "size"));
        List<String> stops = new ArrayList<>(List.of(Integer.toString(line.start().getAsInt())));
        line.jumps().forEach(jump -> stops.add(Integer.toString(jump.to())));
        assertEquals(stops.stream().distinct().sorted().toList(), numbersIn(svg, "stop").stream().sorted().toList());
      }
    }
  }

  @Test
  void everyPartOfExpandedFormIsDrawnAndStruckOnesAreStruck() {
    for (State state : states()) {
      if (state instanceof Expanded expanded) {
        String svg = StrategyPicture.of(expanded, Locale.ENGLISH).svg();
        int struck = Math.max(0, expanded.first().parts().size() - 1)
            + Math.max(0, expanded.second().parts().size() - 1) + expanded.resultRow().size();
        assertEquals(struck, svg.split("strike-out", -1).length - 1);
      }
    }
  }

  @Test
  void everyPictureIsWellFormedAndNothingLiesOutsideIt() throws Exception {
    for (State state : states()) {
      StrategyPicture picture = StrategyPicture.of(state, Locale.forLanguageTag("es"));
      DocumentBuilderFactory.newInstance().newDocumentBuilder()
          .parse(new InputSource(new StringReader(picture.svg())));
      assertFalse(picture.aloud().contains("{"), picture.aloud());
      if (state instanceof NumberLine) {
        Pattern.compile(" x=\"(-?\\d+)\"").matcher(picture.svg()).results()
            .forEach(x -> assertTrue(Integer.parseInt(x.group(1)) >= 0 && Integer.parseInt(x.group(1)) <= 640,
                picture.svg()));
      }
    }
  }

  @Test
  void aWorkedSolutionIsToldWithOneSentenceAndOnePictureAStep() {
    WorkedSolution solution = WorkedSolutions.of(new Calculation(52, Operation.SUBTRACT, 14)).get(0);
    StrategyReplay replay = StrategyReplay.of(solution, Locale.ENGLISH);
    assertEquals("52 − 14", replay.calculation());
    assertEquals(solution.steps().size(), replay.steps().size());
    replay.steps().forEach(step -> assertTrue(step.says().endsWith(".") && step.picture().svg().startsWith("<svg")));
  }

  @Test
  void aNumberKeepsItsPlaceOnTheLineFromStepToStep() {
    for (Calculation calculation : List.of(new Calculation(59, Operation.SUBTRACT, 17), new Calculation(61, Operation.ADD, 29))) {
      for (WorkedSolution solution : WorkedSolutions.of(calculation)) {
        List<State> lines = solution.steps().stream().map(WorkedSolution.WorkedStep::state)
            .filter(NumberLine.class::isInstance).toList();
        Map<String, String> places = new HashMap<>();
        for (StrategyPicture picture : StrategyPicture.ofOneSize(lines, Locale.ENGLISH)) {
          Pattern.compile("<text class=\"stop\" x=\"(\\d+)\"[^>]*>(\\d+)<").matcher(picture.svg()).results()
              .forEach(stop -> assertEquals(places.computeIfAbsent(stop.group(2), number -> stop.group(1)), stop.group(1)));
        }
        assertEquals(lines.isEmpty(), places.isEmpty());
      }
    }
  }
}
