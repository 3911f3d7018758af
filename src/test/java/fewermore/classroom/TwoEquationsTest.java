package fewermore.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.marking.EquationMarker;
import fewermore.marking.EquationReason;
import fewermore.marking.Marker;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class TwoEquationsTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  private static final AssignedProblem SHELLS = new AssignedProblem(1,
      new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null, List.of(),
          new Relation(52, 38, 14), Role.SMALLER, Wording.FEWER, List.of()), "shells", 1,
      List.of("Tomas has 52 shells.", "Ines has 14 fewer shells than Tomas.", "How many shells does Ines have?"), List.of());

  private final List<Child> children = new ArrayList<>();
  private final List<PieceOfWork> work = new ArrayList<>();

  private TwoEquationsTest wrote(String... equations) {
    for (String equation : equations) {
      Child child = new Child(children.size() + 1, 1, "Child" + children.size(), "shell", "sea", "en");
      children.add(child);
      Work parts = new Work(equation, null, null, null, null);
      work.add(new PieceOfWork(child, SHELLS, List.of(new HandIn("w" + child.id(), "p", 1, Instant.EPOCH, TODAY, "s",
          "t", false, null, parts, Marker.mark(SHELLS.story(), parts)))));
    }
    return this;
  }

  private List<String> lines() {
    return TwoEquations.of(children, work, TODAY).stream().flatMap(each -> each.lines().stream()).toList();
  }

  @Test
  void aWrongLineOfTwoChildrenIsOfferedAsWrittenAndOneOfOnlyOneIsNot() {
    wrote("52 - 14 = x", "52+14=x", "52 + 14 = ?", "14 - 52 = x", "52 - 14 = 38", "52 - 14 = x");
    List<String> lines = lines();
    assertTrue(lines.contains("52 + 14 = □"), lines.toString());
    assertTrue(lines.contains("52 − 14 = □"), lines.toString());
    assertFalse(lines.contains("14 − 52 = □"), "one child's own line");
    List<String> turned = lines.stream().filter(line ->
        EquationMarker.mark(SHELLS.story(), line).reason() == EquationReason.TURNED_ROUND).toList();
    assertEquals(1, turned.size(), "an invented one with the same reason: " + lines);
    assertFalse(lines.contains("52 − 14 = 38"), "a fitting line of one child is not offered either");
  }

  @Test
  void fewerThanFiveChildrenGiveNothing() {
    assertEquals(List.of(), wrote("52 - 14 = x", "52+14=x", "52+14=x", "52 - 14 = x").lines());
  }

  @Test
  void aStoryWithANameOfTheClassIsNotOffered() {
    wrote("52 - 14 = x", "52+14=x", "52+14=x", "52 - 14 = x", "52 - 14 = x");
    children.set(0, new Child(99, 1, "Ines", "shell", "sea", "en"));
    assertEquals(List.of(), lines());
  }
}
