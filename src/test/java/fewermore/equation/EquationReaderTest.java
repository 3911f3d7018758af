package fewermore.equation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.text.SourceSpan;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EquationReaderTest {
  /** Whole messages, word for word: what is changed here is changed for every teacher. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      44 and 28 = x  | 3  | 6  |\
        Expected numbers and signs only, found the word “and”. Write signs in place of words: +, −, =, and ?\
        for what is not known.
      85 - = x       | 3  | 6  |\
        Expected a number or ? after -, found “=”. Write a number or ? between the two signs, or leave one of\
        them out.
      -14 + 52 = x   | 0  | 1  |\
        Expected a number or ? before -, found “-” first. Write the number that comes before -.
      52 −           | 3  | 4  |\
        Expected a number or ? after −, found the end of the line. Write the number that comes after −.
      52 − x =       | 7  | 8  |\
        Expected something on both sides of =, found nothing on one side. Write what belongs on the empty side\
        of =.
      5 2 − 14 = x   | 0  | 3  |\
        Expected +, − or = after 5, found another number, “2”. If it is one number, close the gap; if there are\
        two, write + or − between them.
      52 − 14 x      | 8  | 9  |\
        Expected +, − or = after 14, found “x”. Write + or − between them.
      52 − 14 = 38.  | 12 | 13 |\
        Expected numbers, +, −, =, ? or parentheses, found “.”. Leave it out.
      52 × 14 = x    | 3  | 4  |\
        Expected numbers, +, −, =, ? or parentheses, found “×”. Write + or − in its place.
      (52 − 14 = x   | 0  | 1  |\
        Expected a ) for this (, found “=”. Write ) before the = sign, or leave ( out.
      (52 − 14       | 0  | 1  |\
        Expected a ) for this (, found the end of the line. Write ) where the part that belongs together ends.
      52 − 14) = x   | 7  | 8  |\
        Expected a ( before this ), found none. Write ( where the part that belongs together starts, or leave )\
        out.
      52 − ()        | 6  | 7  |\
        Expected a number or ?, found “)”. Write what belongs before ), or leave it out.
      52 − (         | 6  | 6  |\
        Expected a number or ? after (, found the end of the line. Write what belongs in the parentheses, and a\
        ) after it.
      52 = 1234567890 | 5 | 15 |\
        Expected a number of at most 9 digits, found one of 10 digits. Write the number as it stands in the\
        story.
      """)
  void whatCannotBeReadIsSaidWithPlaceExpectationFindAndOneThingToTry(
      String line, int start, int end, String says) {
    SyntaxProblem problem = EquationReader.read(line).problem().orElseThrow();
    assertEquals(says.replaceAll(" +", " "), problem.says());
    assertEquals(new SourceSpan(start, end), problem.at());
  }

  @Test
  void aSignThatCannotBeSeenIsNamedByItsNumber() {
    assertEquals("Expected numbers and signs only, found a sign that cannot be seen (U+202E). "
        + "Erase the line and write it again.", says("52 \u202E− 14 = x"));
  }

  @Test
  void aLongWordIsCut() {
    assertTrue(says("a".repeat(500)).contains("found the word “aaaaaaaaaaaaaaaaaaaa…”."), says("a".repeat(500)));
  }

  @Test
  void aLineOfTooManySignsIsNotReadToItsEnd() {
    SyntaxProblem problem = EquationReader.read("1+".repeat(50_000) + "1").problem().orElseThrow();
    assertEquals("Expected a line of at most 1000 signs, found a line of 100001. Write one equation on the line.",
        problem.says());
  }

  @Test
  void nothingWrittenIsAKindOfItsOwn() {
    assertEquals(SyntaxProblem.Kind.NOTHING_WRITTEN, EquationReader.read(" \t").problem().orElseThrow().kind());
  }

  @Test
  void termsKeepTheirPlacesAndTheirSignsThroughParentheses() {
    Equation equation = EquationReader.read("52 − (20 − x) = 7").equation().orElseThrow();
    assertEquals(List.of(
        new Term(1, false, 52, new SourceSpan(0, 2), null),
        new Term(-1, false, 20, new SourceSpan(6, 8), new SourceSpan(3, 4)),
        new Term(1, true, 0, new SourceSpan(11, 12), new SourceSpan(9, 10))), equation.sides().get(0).terms());
    assertEquals(new SourceSpan(0, 13), equation.sides().get(0).at());
  }

  @Test
  void anEmptySideIsAnUnknownSignWithoutWidth() {
    Expression right = EquationReader.read("52 − 14 = ").equation().orElseThrow().sides().get(1);
    assertTrue(right instanceof Expression.Unknown unknown && unknown.isEmptySide());
    assertEquals(new SourceSpan(9, 9), right.at());
  }

  @ParameterizedTest
  @CsvSource({
    "52 − 14 = x, 38", "52 − x = 14, 38", "x + x = 38, 19", "14 − 52 = x, -38", "x − (14 − x) = 62, 38",
    "52 − 14 =, 38", "52 = X + x, 26"})
  void theSolutionIsTheOneValueOfTheUnknownSign(String line, long solution) {
    assertEquals(OptionalLong.of(solution), EquationReader.read(line).equation().orElseThrow().solution());
  }

  @ParameterizedTest
  @CsvSource({"x + x = 39", "x = y", "x = x", "x + 1 = x", "52 = 14", "52 − 14", "52 − 14 = x = 38"})
  void thereMayBeNoOneSolution(String line) {
    assertEquals(OptionalLong.empty(), EquationReader.read(line).equation().orElseThrow().solution());
  }

  @Test
  void aPlainExpressionHasAValue() {
    assertEquals(OptionalLong.of(36), EquationReader.read("52 − (14 + 2)").equation().orElseThrow().value());
    assertEquals(OptionalLong.empty(), EquationReader.read("52 − x").equation().orElseThrow().value());
  }

  private static String says(String line) {
    return EquationReader.read(line).problem().orElseThrow().says();
  }
}
