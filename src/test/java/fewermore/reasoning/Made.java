package fewermore.reasoning;

import fewermore.marking.Marker;
import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Relation;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Evidence for tests, always from written work through the real marking. */
final class Made {
  static final ReasoningTable TABLE = ReasoningTable.standard();
  static final LocalDate MONDAY = LocalDate.of(2026, 10, 5);
  static final Relation NUMBERS = new Relation(62, 34, 28);

  private Made() {}

  static Comparison story(Kind kind) {
    return SimulatedChild.story(kind, NUMBERS);
  }

  static Evidence evidence(LocalDate day, Kind kind, String equation, String answer) {
    return evidence(day, story(kind), SimulatedChild.written(equation, answer)).orElseThrow();
  }

  static Optional<Evidence> evidence(LocalDate day, Comparison story, Work work) {
    return Evidence.of(day, story, work, Marker.mark(story, work), TABLE);
  }

  /** What that way would write, by its own prediction. */
  static Evidence predicted(LocalDate day, WayOfReasoning way, Kind kind) {
    var prediction = way.predict(story(kind)).orElseThrow();
    return evidence(day, kind, prediction.equation(), Integer.toString(prediction.answer()));
  }

  /** Anything a child may write: the ways' own predictions, numbers, nothing, nonsense. */
  static Work anyWork(Comparison story, Random random) {
    int first = story.value(story.given().get(0));
    int second = story.value(story.given().get(1));
    List<String> equations = new ArrayList<>(List.of("", "□", "= =", "52 - ", "hello", "□ = " + second, "" + first,
        first + " − □ = " + second, "□ + " + second + " = " + first, first + " + 1 = □", first + " − " + second));
    for (WayOfReasoning way : WayOfReasoning.values()) {
      way.predict(story).ifPresent(each -> equations.add(each.equation()));
    }
    List<String> answers = List.of("", "" + story.answer(), "" + first, "" + second, "" + (first + second), "7", "many",
        "999999999");
    return new Work(random.nextInt(12) == 0 ? null : equations.get(random.nextInt(equations.size())),
        random.nextInt(12) == 0 ? null : answers.get(random.nextInt(answers.size())), "shells", null, null);
  }

  static List<Evidence> anyEvidence(LocalDate day, int problems, Random random) {
    SimulatedChild stories = new SimulatedChild(TABLE, random);
    List<Evidence> evidence = new ArrayList<>();
    while (evidence.size() < problems) {
      Comparison story = stories.story(Kind.values()[random.nextInt(6)]);
      evidence(day, story, anyWork(story, random)).ifPresent(evidence::add);
    }
    return evidence;
  }

  static List<Kind> kindsInTurn(int problems, Random random) {
    List<Kind> kinds = new ArrayList<>();
    while (kinds.size() < problems) {
      List<Kind> six = new ArrayList<>(List.of(Kind.values()));
      Collections.shuffle(six, random);
      kinds.addAll(six);
    }
    return kinds.subList(0, problems);
  }
}
