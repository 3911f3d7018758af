package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Role;
import org.junit.jupiter.api.Test;

/** The marker reads every scenario's own words: what a problem writes, a child may write back. */
class GeneratedProblemMarkingTest {

  @Test
  void theThingItselfNamesItAndTheOtherKindDoesNot() {
    for (Kind kind : Kind.values()) {
      for (long seed = 0; seed < 400; seed++) {
        Problem problem = ProblemWriter.generate(kind, NumberRange.WITHIN_100, Regrouping.EITHER, seed);
        Comparison story = problem.story();
        String which = kind + " seed " + seed + " " + problem.english().text();
        assertEquals(LabelVerdict.NAMES_IT, LabelMarker.mark(story, problem.english().label()), which);
        String counted = story.answer() + " " + story.thing().many();
        assertEquals(LabelVerdict.NAMES_IT, LabelMarker.mark(story, counted), which);
        if (story.otherThing() != null) {
          assertEquals(LabelVerdict.OTHER_THING, LabelMarker.mark(story, story.otherThing().many()), which);
        }
      }
    }
  }

  @Test
  void theStorysOwnBarsFit() {
    for (Kind kind : Kind.values()) {
      for (long seed = 0; seed < 100; seed++) {
        Comparison story = ProblemWriter.generate(kind, NumberRange.WITHIN_100, Regrouping.EITHER, seed).story();
        Bars bars = new Bars(story.persons().larger(), place(story, Role.LARGER),
            place(story, Role.SMALLER), place(story, Role.DIFFERENCE));
        assertEquals(BarsVerdict.FITS, BarsMarker.mark(story, bars), kind + " seed " + seed);
      }
    }
  }

  private static String place(Comparison story, Role role) {
    return role == story.unknown() ? "x" : Integer.toString(story.value(role));
  }
}
