package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.equation.Equation;
import fewermore.equation.EquationReader;
import fewermore.equation.SyntaxProblem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs every example of {@code spec/equations.md}, and on each of them what must hold of all. */
class EquationSpecTest {
  private static final Set<String> NOTES = Set.of("solved", "not-true", "cue-led", "equals-chain");

  @TestFactory
  Stream<DynamicTest> everyExampleIsMarkedAsTheFileSays() {
    return each(example -> {
      EquationMark mark = mark(example, example.written());
      assertEquals(example.reason() + new java.util.TreeSet<>(example.notes()), describe(mark));
      if (example.at() != null) {
        assertEquals(example.at(), mark.at() == null ? "null" : mark.at().of(example.written()), "at");
      }
    });
  }

  @TestFactory
  Stream<DynamicTest> spacesBetweenSymbolsChangeNothing() {
    return each(example -> {
      String written = example.written();
      assertSame(example, written.replace(" ", "  "));
      if (EquationReader.read(written).equation().isPresent()) {
        assertSame(example, written.replace(" ", ""));
        assertSame(example, "\t" + written.replaceAll("([^0-9_])", " $1 ") + "\u00A0");
      }
    });
  }

  @TestFactory
  Stream<DynamicTest> theMinusSignUsedChangesNothing() {
    return each(example -> {
      for (String minus : List.of("-", "–", "−", "‒", "—", "－")) {
        assertSame(example, example.written().replaceAll("[-–−—]", minus));
      }
    });
  }

  @TestFactory
  Stream<DynamicTest> capitalLettersChangeNothing() {
    return each(example -> assertSame(example, example.written().toUpperCase(Locale.ROOT)));
  }

  @TestFactory
  Stream<DynamicTest> swappingTheSidesOfAnEquationChangesNothing() {
    return each(example -> {
      String[] sides = example.written().split("=", -1);
      if (sides.length == 2 && EquationReader.read(example.written()).equation().isPresent()) {
        assertSame(example, sides[1] + "=" + sides[0]);
      }
    });
  }

  @TestFactory
  Stream<DynamicTest> anEquationThatFitsHasTheTrueSolution() {
    return each(example -> {
      EquationMark mark = mark(example, example.written());
      Equation equation = EquationReader.read(example.written()).equation().orElse(null);
      if (equation != null && equation.sides().size() == 2 && mark.fits() && !mark.solvedForm()
          && !mark.equalsChain()) {
        assertEquals(OptionalLong.of(example.story().answer()), equation.solution());
      }
    });
  }

  @TestFactory
  Stream<DynamicTest> whatIsNotedBelongsToTheReason() {
    return each(example -> {
      String written = example.written();
      EquationMark mark = mark(example, written);
      assertNotNull(mark.reason());
      assertEquals(mark.reason() == EquationReason.NO_EQUALS, mark.expression() != null, "expression");
      assertEquals(mark.reason() == EquationReason.UNREADABLE, mark.problem() != null, "problem");
      assertTrue(!mark.solvedForm() || mark.fits(), "solved");
      assertTrue(!mark.notTrue() || mark.fits() && (mark.solvedForm() || written.split("=").length > 1), "not-true");
      assertTrue(!mark.cueLed() || mark.reason() == EquationReason.OPPOSITE_OPERATION
          || mark.expression() == EquationReason.OPPOSITE_OPERATION, "cue-led");
      assertTrue(mark.at() == null || mark.at().end() <= written.length(), "at");
    });
  }

  @Test
  void noReasonNoNoteAndNoSyntaxProblemLacksAnExample() {
    Set<String> missing = new HashSet<>(NOTES);
    Arrays.stream(EquationReason.values()).map(EquationReason::id).forEach(missing::add);
    Stream.of("fits", "turned-round", "opposite-operation", "unknown-misplaced", "extra-number", "missing-number",
        "miscopied-number", "other-numbers").forEach(id -> missing.add("no-equals (" + id + ")"));
    Arrays.stream(SyntaxProblem.Kind.values())
        .filter(kind -> kind != SyntaxProblem.Kind.NOTHING_WRITTEN && kind != SyntaxProblem.Kind.LINE_TOO_LONG)
        .forEach(kind -> missing.add("unreadable (" + id(kind) + ")"));
    for (EquationExample example : EquationExample.all()) {
      missing.remove(example.reason());
      missing.remove(example.reason().replaceFirst(" \\(.*", ""));
      missing.removeAll(example.notes());
    }
    assertEquals(Set.of(), missing);
  }

  @Test
  void theFileHasNotShrunk() {
    assertTrue(EquationExample.all().size() >= 470, "examples: " + EquationExample.all().size());
  }

  @Test
  void noExampleIsThereTwice() {
    Set<String> seen = new HashSet<>();
    List<String> twice = new ArrayList<>();
    for (EquationExample example : EquationExample.all()) {
      if (!seen.add(example.story() + example.written())) {
        twice.add(example.name());
      }
    }
    assertEquals(List.of(), twice);
  }

  private interface Check {
    void check(EquationExample example);
  }

  private static Stream<DynamicTest> each(Check check) {
    return EquationExample.all().stream()
        .map(example -> DynamicTest.dynamicTest(example.name(), () -> check.check(example)));
  }

  private static void assertSame(EquationExample example, String otherwise) {
    String as = describe(mark(example, example.written()));
    String now = describe(mark(example, otherwise));
    boolean unreadable = as.startsWith("unreadable");
    assertEquals(unreadable ? "unreadable" : as, unreadable ? now.substring(0, 10) : now,
        () -> example.name() + " written " + otherwise);
  }

  private static EquationMark mark(EquationExample example, String written) {
    return EquationMarker.mark(example.story(), written);
  }

  private static String describe(EquationMark mark) {
    Set<String> notes = new java.util.TreeSet<>();
    if (mark.solvedForm()) {
      notes.add("solved");
    }
    if (mark.notTrue()) {
      notes.add("not-true");
    }
    if (mark.cueLed()) {
      notes.add("cue-led");
    }
    if (mark.equalsChain()) {
      notes.add("equals-chain");
    }
    String beside = mark.expression() != null ? mark.expression().id()
        : mark.problem() != null ? id(mark.problem().kind()) : null;
    return mark.reason().id() + (beside == null ? "" : " (" + beside + ")") + notes;
  }

  private static String id(SyntaxProblem.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
