package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Persons;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import fewermore.wording.Correction.Use;
import fewermore.wording.ReadText.Declined;
import fewermore.wording.ReadText.Part;
import fewermore.wording.ReadText.Reason;
import fewermore.wording.ReadText.Understood;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Roles set by hand, and several problems at once. */
class CorrectionTest {
  private static final String SHELLS =
      "Ines has 14 fewer shells than Tomas. Tomas has 52 shells. How many shells does Ines have?";
  /** Declined: "5 more" without "than". */
  private static final String UNSAID = "Ana has 12 shells. Ben has 5 more. How many shells does Ben have?";

  @Test
  void whatWasUnderstoodIsWhereATeacherBegins() {
    ReadText read = WordingReader.read(SHELLS);
    Correction correction = Correction.of(read);
    assertEquals(List.of(Use.DIFFERENCE, Use.LARGER), correction.numbers());
    Understood again = assertInstanceOf(Understood.class, WordingReader.corrected(read, correction));
    assertEquals(((Understood) read).story(), again.story());
    assertEquals(((Understood) read).places(), again.places());
    assertTrue(again.byHand());
  }

  @Test
  void aDeclinedTextIsUnderstoodOnceItsRolesAreSaid() {
    ReadText read = WordingReader.read(UNSAID);
    Correction correction = Correction.of(assertInstanceOf(Declined.class, read));
    assertEquals(new Persons("Ana", "Ben"), correction.persons());
    assertEquals(new Thing("shell", "shells"), correction.thing());
    correction = correction.withNumber(0, Use.SMALLER).withNumber(1, Use.DIFFERENCE).withUnknown(Role.LARGER)
        .withWording(Wording.MORE).turned();
    Understood understood = assertInstanceOf(Understood.class, WordingReader.corrected(read, correction));
    assertEquals(17, understood.story().answer());
    assertEquals(new Persons("Ben", "Ana"), understood.story().persons());
    assertEquals("5", understood.places(Part.DIFFERENCE).get(0).of(UNSAID));
  }

  @Test
  void turningWhoHasMoreTurnsThePlacesToo() {
    ReadText read = WordingReader.read(SHELLS);
    Understood turned = assertInstanceOf(Understood.class,
        WordingReader.corrected(read, Correction.of(read).turned()));
    assertEquals(new Persons("Ines", "Tomas"), turned.story().persons());
    assertTrue(turned.places(Part.LARGER_HOLDER).stream().allMatch(at -> at.of(SHELLS).equals("Ines")));
  }

  @Test
  void rolesThatMakeNoStoryAreDeclinedWithThePlace() {
    ReadText read = WordingReader.read(SHELLS);
    Correction whole = Correction.of(read);
    assertDeclined(read, whole.withNumber(0, Use.LARGER), "Two numbers are the larger.", "52");
    assertDeclined(read, whole.withNumber(0, Use.EXTRA), "The comparison has one number.", SHELLS);
    assertDeclined(read, whole.withNumber(0, Use.SMALLER), "The smaller is asked and has a number.", SHELLS);
    assertDeclined(read, whole.withNumber(0, Use.LARGER).withNumber(1, Use.DIFFERENCE),
        "The larger number is below the other.", SHELLS);
    assertDeclined(read, whole.withWording(Wording.DIFFERENCE), "It is not said how the text compares.", SHELLS);
    assertDeclined(read, whole.withUnknown(null), "It is not said what is asked.", SHELLS);
    assertDeclined(read, whole.withThings(null, null), "It is not said what the answer counts.", SHELLS);
    assertDeclined(read, whole.withPersons(new Persons("Ines", "ines")), "Ines has both amounts.", SHELLS);
  }

  @Test
  void aUseForEachNumberIsTheCallersDuty() {
    ReadText read = WordingReader.read(SHELLS);
    Correction short1 = new Correction(List.of(Use.LARGER), Role.SMALLER, Wording.MORE, null, null, null);
    assertThrows(IllegalArgumentException.class, () -> WordingReader.corrected(read, short1));
  }

  @Test
  void problemsArePartedByEmptyLines() {
    String text = "  " + SHELLS + "\r\n\r\n" + UNSAID.replace(". ", ".\n") + "\n \n\n";
    List<WordingReader.Paragraph> paragraphs = WordingReader.readAll(text);
    assertEquals(2, paragraphs.size());
    assertEquals(SHELLS, paragraphs.get(0).at().of(text));
    assertInstanceOf(Understood.class, paragraphs.get(0).read());
    assertEquals(Reason.MORE_WITHOUT_THAN, ((Declined) paragraphs.get(1).read()).reason());
  }

  @Test
  void linesThatAllAskAreProblemsOfTheirOwn() {
    assertEquals(3, WordingReader.readAll(SHELLS + "\n" + UNSAID + "\n" + SHELLS).size());
    assertEquals(1, WordingReader.readAll(SHELLS.replace(". ", ".\n")).size());
  }

  private static void assertDeclined(ReadText read, Correction correction, String found, String at) {
    Declined declined = assertInstanceOf(Declined.class, WordingReader.corrected(read, correction));
    assertEquals(Reason.ROLES, declined.reason());
    assertEquals(found, declined.found());
    assertEquals(at, declined.at().get(0).of(read.text()));
  }
}
