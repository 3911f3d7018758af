package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RemarksTest {
  private static final Comparison STORY = SpecFile.story("Theo 62, Mara ?, 28 fewer; shell/shells");

  private static String remark(Part part, Work work) {
    return Remarks.of(STORY, work, Marker.mark(STORY, work)).get(part);
  }

  private static Work equation(String written) {
    return new Work(written, null, null, null, null);
  }

  @Test
  void aSlipIsQuotedWithItsCalculationAndCalledAHint() {
    assertEquals("Answers “46” for 62 − 28, which is 34; “46” comes out if the child took the smaller digit from the"
        + " larger in each place; one answer alone is only a hint.", remark(Part.ANSWER, new Work("62 - 28 = x", "46", null,
        null, null)));
    assertEquals("Answers “44” for 62 − 28, which is 34; “44” comes out if the child borrowed a ten but left the tens"
        + " as they were, or took one ten too few; one answer alone can’t tell, and is only a hint.",
        remark(Part.ANSWER, new Work("28 - 62 = x", "44", null, null, null)));
  }

  @Test
  void theDifferenceRepeatedIsSaidToMayHaveBeenReadAsAnAmount() {
    assertEquals("Answers “28”, which the story gives as the difference: it may have been read as how many somebody"
        + " has; the answer is 34.", remark(Part.ANSWER, new Work(null, "28", null, null, null)));
  }

  @Test
  void theOtherOperationIsSaidInWords() {
    assertEquals("Writes “62 + 28 = x”, which puts 62 and 28 together; the story asks for their difference.",
        remark(Part.EQUATION, equation("62 + 28 = x")));
  }

  @Test
  void bothBarsAndTheGapAreTold() {
    assertEquals("Draws the longer bar for Theo, with 62 on it, 28 on the shorter bar and ? on the gap; 28 is how far"
        + " apart the amounts are, not an amount: “28 more” or “28 fewer” may have been read as “has 28”.",
        remark(Part.BARS, new Work(null, null, null, new Bars("Theo", "62", "28", "x"), null)));
    assertEquals("Draws two bars of the same length, with 62 on the first, ? on the second and nothing on the gap; a"
        + " place is empty, or holds what belongs to another place.",
        remark(Part.BARS, new Work(null, null, null, new Bars("", "62", "x", ""), null)));
  }

  @Test
  void aLongWritingIsCutAndWhatCannotBeSeenIsLeftOut() {
    String remark = remark(Part.LABEL, new Work(null, null, "\u202Ea\u0000b" + "c".repeat(500), null, null));
    assertTrue(remark.startsWith("Writes “abccc") && remark.contains("c…”"), remark);
    assertTrue(remark.length() < 200, remark);
  }

  @Test
  void aPartThatWasNotAskedHasNoSentence() {
    assertEquals(Map.of(), Remarks.of(STORY, Work.NOT_ASKED, Marker.mark(STORY, Work.NOT_ASKED)));
  }

  /** Every example of the specs: one sentence, all its places filled, with the child's own work in it. */
  @Test
  void everyExampleHasOneSentenceThatQuotesTheWork() {
    List<String> seen = new ArrayList<>();
    SpecFile.read("labels.md").forEach(example -> seen.add(checked(example, Part.LABEL,
        new Work(null, null, example.cell("written"), null, null), example.cell("written"))));
    SpecFile.read("answers.md").forEach(example -> seen.add(checked(example, Part.ANSWER,
        new Work(example.cell("equation"), example.cell("written"), null, null, null), example.cell("written"))));
    SpecFile.read("estimates.md").forEach(example -> seen.add(checked(example, Part.ESTIMATE,
        new Work(null, null, null, null, example.cell("written")), example.cell("written"))));
    SpecFile.read("bars.md").forEach(example -> seen.add(checked(example, Part.BARS, new Work(null, null, null,
        new Bars(example.cell("longer"), example.cell("longer bar"), example.cell("shorter bar"),
            example.cell("gap")), null),
        example.cell("gap").replace("x", "?"))));
    assertTrue(seen.size() > 400, seen.size() + " sentences");
  }

  private static String checked(SpecFile.Example example, Part part, Work work, String quoted) {
    String remark = Remarks.of(example.story(), work, Marker.mark(example.story(), work)).get(part);
    assertTrue(remark.endsWith("."), remark);
    assertFalse(remark.contains("{") || remark.contains("null"), remark);
    assertTrue(remark.contains(Visible.of(quoted)), remark + " of " + example);
    return remark;
  }
}
