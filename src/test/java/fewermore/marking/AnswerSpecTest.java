package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.SlipRule;
import fewermore.marking.SpecFile.Example;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AnswerSpecTest {
  private static final List<Example> ANSWERS = SpecFile.read("answers.md");

  static Stream<Example> examples() {
    return ANSWERS.stream();
  }

  @ParameterizedTest
  @MethodSource("examples")
  void everyAnswerOfTheSpecIsMarkedAsItSays(Example example) {
    String equation = example.cell("equation");
    AnswerMark mark = AnswerMarker.mark(example.story(), equation.equals("(none)") ? null : equation,
        example.cell("written"));
    assertEquals(example.cell("mark"), written(mark), example::toString);
  }

  private static String written(AnswerMark mark) {
    String more = mark.repeats() != null ? mark.repeats().id()
        : mark.slips().stream().map(SlipRule::id).collect(Collectors.joining(", "));
    return mark.verdict().id() + (more.isEmpty() ? "" : ": " + more);
  }

  @Test
  void everyMarkAndEverySlipRuleHasAnExampleAndTheFileHasNotShrunk() {
    Set<String> marks = new TreeSet<>();
    Set<String> slips = new TreeSet<>();
    for (Example example : ANSWERS) {
      String[] mark = example.cell("mark").split(": ");
      marks.add(mark[0]);
      if (mark[0].equals("slip")) {
        slips.addAll(List.of(mark[1].split(", ")));
      }
    }
    assertEquals(Arrays.stream(AnswerVerdict.values()).map(AnswerVerdict::id)
        .collect(Collectors.toCollection(TreeSet::new)), marks);
    assertEquals(Arrays.stream(SlipRule.values()).map(SlipRule::id).collect(Collectors.toCollection(TreeSet::new)),
        slips);
    assertTrue(ANSWERS.size() >= 60, ANSWERS.size() + " answers");
  }
}
