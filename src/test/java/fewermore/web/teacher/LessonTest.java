package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.AssignedProblem;
import fewermore.marking.BarsMarker;
import fewermore.marking.EquationMarker;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.wording.Sentence;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What stands on the Board, beside the solution, for every kind and wording. */
class LessonTest {
  private static final Pattern SENTENCE = Pattern.compile("(About )?(\\d+) ([+−]) (\\d+) = (\\d+)\\.?");
  private static final Pattern COMPARES = Pattern.compile("(\\d+) is (more|less) than (\\d+)\\.");

  private static final Map<AssignedProblem, Lesson> ALL = all();

  private static void forAll(BiConsumer<AssignedProblem, Lesson> check) {
    ALL.forEach(check);
  }

  private static Map<AssignedProblem, Lesson> all() {
    Map<AssignedProblem, Lesson> lessons = new LinkedHashMap<>();
    int many = 0;
    for (Role unknown : Role.values()) {
      for (Wording wording : Wording.values()) {
        if (wording == Wording.DIFFERENCE && unknown != Role.DIFFERENCE) {
          continue;
        }
        for (NumberRange range : NumberRange.values()) {
          ProblemWriter writer = new ProblemWriter(range, Regrouping.EITHER, Set.of());
          for (long seed = 0; seed < 60; seed++) {
            Problem problem = writer.write(unknown, wording, seed);
            AssignedProblem assigned = new AssignedProblem(many, problem.story(), problem.scenario(), seed,
                problem.english().sentences().stream().map(Sentence::text).toList(), List.of());
            lessons.put(assigned, Lesson.of(assigned));
            many++;
          }
        }
      }
    }
    assertEquals(7 * NumberRange.values().length * 60, many);
    return lessons;
  }

  @Test
  void bothEquationsFitTheStoryAndAreTrueWithTheAnswerInTheBox() {
    forAll((problem, lesson) -> {
      assertEquals(2, lesson.equations().size());
      Set<String> lines = new HashSet<>();
      for (Lesson.Fitting each : lesson.equations()) {
        String line = text(each.line());
        assertTrue(EquationMarker.mark(problem.story(), line).fits(), line + " for " + problem.text());
        assertTrue(holds(text(each.filled())), text(each.filled()));
        lines.add(line);
      }
      assertEquals(2, lines.size(), "another equation");
      assertEquals(problem.story().answer(), lesson.answer());
    });
  }

  private static String text(WrittenLine line) {
    return line.pieces().stream().map(piece -> piece.box() ? "□" : piece.text()).collect(Collectors.joining(" "))
        .replaceAll("\\s+", " ").strip();
  }

  private static boolean holds(String line) {
    Matcher sentence = SENTENCE.matcher(line);
    if (!sentence.matches()) {
      return false;
    }
    int one = Integer.parseInt(sentence.group(2));
    int other = Integer.parseInt(sentence.group(4));
    return (sentence.group(3).equals("+") ? one + other : one - other) == Integer.parseInt(sentence.group(5));
  }

  @Test
  void theBarsShowWhoHasMoreAndEachNumberInItsPlace() {
    forAll((problem, lesson) -> {
      Comparison story = problem.story();
      Lesson.Bar longer = lesson.lanes().stream().filter(Lesson.Bar::longer).findFirst().orElseThrow();
      Lesson.Bar shorter = lesson.lanes().stream().filter(lane -> !lane.longer()).findFirst().orElseThrow();
      assertEquals(BarsMarker.name(story, Role.LARGER), longer.who());
      assertEquals(BarsMarker.name(story, Role.SMALLER), shorter.who());
      number(story, Role.LARGER, longer.number());
      number(story, Role.SMALLER, shorter.number());
      number(story, Role.DIFFERENCE, lesson.gap());
      assertTrue(shorter.width() < longer.width(), problem.text());
      assertEquals(longer.width(), shorter.width() + lesson.gapWidth(), "the gap ends where the longer bar ends");
    });
  }

  private static void number(Comparison story, Role role, Lesson.Number number) {
    assertEquals(story.value(role), number.value());
    assertEquals(story.unknown() == role, number.unknown());
    assertEquals(story.unknown() == role ? "?" : Integer.toString(story.value(role)), number.text());
  }

  @Test
  void theStoryIsToldWholeWithItsQuestionAndItsTwoGivenNumbersFound() {
    forAll((problem, lesson) -> {
      assertEquals(problem.sentences(), lesson.sentences().stream().map(Lesson.Told::text).toList());
      assertEquals(1, lesson.sentences().stream().filter(Lesson.Told::question).count(), problem.text());
      List<Integer> given = lesson.sentences().stream().flatMap(told -> told.pieces().stream())
          .filter(Lesson.Piece::given).map(piece -> Integer.parseInt(piece.text())).sorted().toList();
      assertEquals(problem.story().given().stream().map(problem.story()::value).sorted().toList(), given, problem.text());
    });
  }

  @Test
  void whatSpeaksForTheAnswerIsTrueAndTheRoughSumIsNear() {
    forAll((problem, lesson) -> {
      assertTrue(lesson.checks().size() >= 2, problem.text());
      for (Lesson.Said said : lesson.checks()) {
        Matcher compares = COMPARES.matcher(said.text());
        if (compares.matches()) {
          int answer = Integer.parseInt(compares.group(1));
          int other = Integer.parseInt(compares.group(3));
          assertEquals(lesson.answer(), answer);
          assertTrue(compares.group(2).equals("more") ? answer > other : answer < other, said.text());
        } else {
          assertTrue(holds(said.text()), said.text());
          if (said.text().startsWith("About")) {
            int rough = Integer.parseInt(said.text().replaceAll(".*= (\\d+)\\.", "$1"));
            assertTrue(Math.abs(rough - lesson.answer()) <= 10, said.text() + " for " + lesson.answer());
          } else {
            assertTrue(said.text().matches(".*\\b" + lesson.answer() + "\\b.*"), said.text());
          }
        }
      }
    });
  }

  @Test
  void theAnswerIsCountedInWhatTheQuestionAsks() {
    forAll((problem, lesson) -> assertEquals(lesson.answer() == 1 ? problem.story().thing().one()
        : problem.story().thing().many(), lesson.label()));
  }

  @Test
  void everyStepShowsSomethingNew() {
    forAll((problem, lesson) -> {
      TreeSet<Integer> steps = new TreeSet<>(List.of(1, lesson.questionStep(), lesson.numbersStep(), lesson.barsStep(),
          lesson.gapStep(), lesson.answerStep(), lesson.checkStep(), lesson.labelStep(), lesson.reasonableStep()));
      lesson.asks().forEach(ask -> steps.add(ask.step()));
      lesson.lanes().forEach(lane -> steps.addAll(List.of(lane.step(), lane.number().step())));
      steps.add(lesson.gap().step());
      lesson.equations().forEach(each -> steps.add(each.step()));
      lesson.checks().forEach(each -> steps.add(each.step()));
      lesson.worked().ways().forEach(way -> way.shown().forEach(each -> steps.add(each.step())));
      steps.add(lesson.worked().both().step());
      List<Integer> all = new ArrayList<>();
      for (int step = 1; step <= lesson.steps(); step++) {
        all.add(step);
      }
      assertEquals(all, List.copyOf(steps), problem.text());
    });
  }

  @Test
  void theNumbersAreWorkedOutInTwoWaysThatBothComeToTheAnswer() {
    forAll((problem, lesson) -> {
      WorkedOut worked = lesson.worked();
      assertEquals(problem.story().answer(), worked.calculation().result());
      assertEquals(2, worked.ways().size());
      assertTrue(worked.both().says().endsWith(" = " + problem.story().answer()), worked.both().says());
      worked.ways().forEach(way -> assertTrue(way.last().says().matches(".*\\b" + problem.story().answer() + "\\b.*"),
          way.last().says()));
      assertTrue(lesson.equations().stream().allMatch(each -> each.step() < worked.from()), "after the equations");
      assertEquals(worked.until(), lesson.answerStep(), "then the answer");
    });
  }

  @Test
  void whoHasMoreIsAskedInTheStorysWords() {
    Set<String> asked = new TreeSet<>();
    forAll((problem, lesson) -> {
      String ask = lesson.asksOn(2).get(0).text();
      asked.add(ask);
      if (ask.endsWith(" more?") && !ask.equals("Which is more?")) {
        String verb = ask.split(" ")[1];
        assertTrue(problem.text().contains(" " + verb + " "), ask + " for " + problem.text());
      }
    });
    assertTrue(asked.containsAll(Set.of("Who has more?", "Which is more?")), asked.toString());
    assertTrue(asked.stream().noneMatch(ask -> ask.matches("Wh\\w+ (on|in|at|is|are) more\\?") && !ask.equals("Which is more?")),
        asked.toString());
  }
}
