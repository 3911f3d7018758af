package fewermore.classroom;

import static fewermore.classroom.Made.MONDAY;
import static fewermore.story.Kind.LARGER_FEWER;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.marking.EquationMarker;
import fewermore.marking.EquationReason;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The made story: larger 43, smaller 28, difference 15. */
class WallTest {
  private static final List<String> NAMES = List.of("Ana", "Bo", "Cy", "Dee", "Eli", "Fay");
  private static final String WORD = "opposite-operation+word";

  private static Wall wall(List<PieceOfWork> work) {
    return Wall.of(work.stream().map(PieceOfWork::child).distinct().toList(), work, MONDAY.plusDays(2));
  }

  /** One piece a child on problem 1, larger asked, "fewer": an equation and its mark's reason. */
  private static List<PieceOfWork> work(String... equations) {
    List<PieceOfWork> work = new ArrayList<>();
    for (String equation : equations) {
      String reason = equation.contains("+") ? "fits" : equation.isEmpty() ? "blank" : WORD;
      work.add(Made.work(NAMES.get(work.size()), 1, LARGER_FEWER, MONDAY, equation, reason));
    }
    return work;
  }

  @Test
  void aKindIsCountedFromFiveChildrenOn() {
    assertEquals(List.of(), wall(work("28 + 15 = x", "28 + 15 = x", "28 - 15 = x", "28 - 15 = x")).counts());
    assertEquals(List.of(new Wall.KindCount(LARGER_FEWER, 3, 5)),
        wall(work("28 + 15 = x", "28 + 15 = x", "28 + 15 = 43", "28 - 15 = x", "28 - 15 = x")).counts());
  }

  @Test
  void aChildIsCountedOnceWithHerLatestWork() {
    List<PieceOfWork> work = new ArrayList<>(work("28 + 15 = x", "28 + 15 = x", "28 + 15 = x", "28 - 15 = x", "28 - 15 = x"));
    work.add(Made.work("Dee", 2, LARGER_FEWER, MONDAY.plusDays(1), "28 + 15 = x", "fits"));
    assertEquals(List.of(new Wall.KindCount(LARGER_FEWER, 4, 5)), wall(work).counts());
  }

  @Test
  void aWrongEquationOfTwoChildrenIsShownAsTheyWroteIt() {
    Wall.Pair pair = wall(work("28 + 15 = x", "28+15=□", "28 + 15 = 43", "28 - 15 = x", "28−15 = □")).pairs().get(0);
    assertEquals(Set.of("28 + 15 = □", "28 − 15 = □"), Set.of(pair.a(), pair.b()));
  }

  @Test
  void aWrongEquationOfOneChildIsNeverShown() {
    Wall.Pair pair = wall(work("28 + 15 = x", "28 + 15 = x", "28 + 15 = 43", "28 + 15 = 43", "28 - 15 = x")).pairs().get(0);
    List<String> shown = List.of(pair.a(), pair.b());
    assertFalse(shown.contains("28 − 15 = □"), shown.toString());
    String invented = shown.stream().filter(line -> line.contains("−")).findFirst().orElseThrow();
    assertEquals(EquationReason.OPPOSITE_OPERATION, EquationMarker.mark(pair.problem().story(), invented).reason());
  }

  @Test
  void withNothingWrongToDiscussThereIsNoPair() {
    assertEquals(List.of(), wall(work("28 + 15 = x", "28 + 15 = x", "28 + 15 = 43", "28 + 15 = 43", "")).pairs());
  }

  @Test
  void fewerThanFiveChildrenGiveNoPair() {
    assertEquals(List.of(), wall(work("28 + 15 = x", "28 + 15 = x", "28 - 15 = x", "28 - 15 = x")).pairs());
  }

  @Test
  void aStoryWithAChildOfTheClassInItStaysOffTheWall() {
    List<PieceOfWork> work = work("28 + 15 = x", "28 + 15 = x", "28 + 15 = 43", "28 - 15 = x", "28 - 15 = x");
    List<Child> withMara = new ArrayList<>(work.stream().map(PieceOfWork::child).toList());
    assertEquals(1, Wall.of(withMara, work, MONDAY).pairs().size());
    withMara.add(Made.child("Mara"));
    assertEquals(List.of(), Wall.of(withMara, work, MONDAY).pairs());
  }

  @Test
  void whichOfTheTwoIsASaysNothingOfRight() {
    int fittingFirst = 0;
    int pairs = 0;
    for (long seed = 1; seed <= 60; seed++) {
      InventedPieces made = InventedPieces.of(12, LocalDate.of(2026, 11, 20), ZoneId.of("America/Chicago"), seed);
      for (Wall.Pair pair : Wall.of(made.children, made.pieces, LocalDate.of(2026, 11, 20)).pairs()) {
        pairs++;
        boolean first = EquationMarker.mark(pair.problem().story(), pair.a()).fits();
        assertNotEquals(first, EquationMarker.mark(pair.problem().story(), pair.b()).fits(), "one of the two fits");
        fittingFirst += first ? 1 : 0;
      }
    }
    assertTrue(pairs >= 120, pairs + " pairs");
    assertTrue(fittingFirst > pairs * .37 && fittingFirst < pairs * .63, fittingFirst + " of " + pairs);
  }

  @Test
  void noWrongEquationOnTheWallHasASingleWriter() {
    for (long seed = 1; seed <= 40; seed++) {
      InventedPieces made = InventedPieces.of(8, LocalDate.of(2026, 11, 20), ZoneId.of("America/Chicago"), seed);
      for (Wall.Pair pair : Wall.of(made.children, made.pieces, LocalDate.of(2026, 11, 20)).pairs()) {
        for (String line : List.of(pair.a(), pair.b())) {
          long writers = made.pieces.stream().filter(piece -> piece.problem().equals(pair.problem()))
              .filter(piece -> Wall.line(piece.evidence().parts().equation()).equals(line)).count();
          boolean wrong = !EquationMarker.mark(pair.problem().story(), line).fits();
          assertFalse(wrong && writers == 1, "seed " + seed + ": " + line);
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void anInventedEquationHasTheReasonItStandsFor(Kind kind) {
    var story = Made.problem(1, kind).story();
    for (EquationReason reason : List.of(EquationReason.OPPOSITE_OPERATION, EquationReason.UNKNOWN_MISPLACED)) {
      var line = StandIn.of(story, reason, Set.of());
      assertTrue(line.isPresent(), kind + " " + reason);
      assertEquals(reason, EquationMarker.mark(story, line.get()).reason());
    }
    boolean takenAway = kind.unknown() != fewermore.story.Role.LARGER;
    assertEquals(takenAway, StandIn.of(story, EquationReason.TURNED_ROUND, Set.of()).isPresent());
    assertTrue(EquationMarker.mark(story, StandIn.fitting(story)).fits());
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "52-14=x      | 52 − 14 = □",
    "52 – 14 = ?  | 52 − 14 = □",
    "52  − 14 =__ | 52 − 14 = □",
    "X = 52 - 14  | □ = 52 − 14",
  })
  void linesThatDifferInSpacesAndSignsAreOne(String written, String line) {
    assertEquals(line, Wall.line(written));
  }
}
