package fewermore.classroom;

import static fewermore.classroom.Made.MONDAY;
import static fewermore.classroom.Made.work;
import static fewermore.story.Kind.DIFFERENCE_FEWER;
import static fewermore.story.Kind.DIFFERENCE_MORE;
import static fewermore.story.Kind.LARGER_FEWER;
import static fewermore.story.Kind.LARGER_MORE;
import static fewermore.story.Kind.SMALLER_MORE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.marking.AnswerMark;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.Focus;
import fewermore.reasoning.GroupPlace;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Strength;
import fewermore.story.Kind;
import fewermore.text.SourceSpan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FindingsTest {
  private static final LocalDate TUESDAY = MONDAY.plusDays(1);
  private static final String WORD = "opposite-operation+word";

  private static Findings read(List<PieceOfWork> work) {
    List<Child> all = work.stream().map(PieceOfWork::child).distinct().toList();
    return Findings.of(all, work, MONDAY.plusDays(4));
  }

  private static Finding only(List<PieceOfWork> work) {
    Findings findings = read(work);
    assertEquals(1, findings.statements().size(), () -> findings.statements().toString());
    return findings.statements().get(0);
  }

  /** Work of one child, one piece for each {@code kind=reason}, two pieces a day from Monday on. */
  private static List<PieceOfWork> child(String name, String pieces) {
    List<PieceOfWork> work = new ArrayList<>();
    for (String piece : pieces.split(" ")) {
      String[] two = piece.split("=");
      Kind kind = Kind.of(two[0]).orElseThrow();
      String sign = two[1].equals("fits") == (kind.unknown() == fewermore.story.Role.LARGER) ? "+" : "-";
      int at = work.size();
      work.add(work(name, at + 1, kind, MONDAY.plusDays(at / 2), "43 " + sign + " 15 = x", two[1]));
    }
    return work;
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    // two of one kind fit more than one way
    "TOO_EARLY | TOO_EARLY | larger-fewer=opposite-operation+word larger-fewer=opposite-operation+word",
    // where the word agrees, nothing is said of story or word
    "TOO_EARLY | TOO_EARLY | smaller-fewer=fits larger-more=fits difference-fewer=fits smaller-fewer=fits",
    // both words, on one day and on two
    "TOOK_AWAY_AT_FEWER | LOOKS_AS_IF | larger-fewer=opposite-operation+word smaller-more=opposite-operation+word",
    "TOOK_AWAY_AT_FEWER | CLEAR | larger-fewer=opposite-operation+word smaller-more=opposite-operation+word larger-fewer=opposite-operation+word smaller-more=opposite-operation+word",
    // one kind alone never tells the word from always taking away, or from always adding
    "TOO_EARLY | TOO_EARLY | larger-fewer=opposite-operation+word larger-fewer=opposite-operation+word larger-fewer=opposite-operation+word smaller-more=opposite-operation+word",
    "TOO_EARLY | TOO_EARLY | smaller-more=opposite-operation+word difference-more=opposite-operation+word smaller-more=opposite-operation+word smaller-more=opposite-operation+word",
    "TOOK_AWAY_ANYWAY | LOOKS_AS_IF | larger-fewer=opposite-operation+word larger-fewer=opposite-operation+word larger-fewer=opposite-operation+word smaller-more=fits smaller-more=fits difference-more=fits",
    "ADDED_AT_MORE | CLEAR | smaller-more=opposite-operation+word smaller-fewer=fits smaller-more=opposite-operation+word smaller-fewer=fits",
    // a subtraction turned round
    "TURNED_ROUND | CLEAR | smaller-fewer=turned-round smaller-more=turned-round difference-fewer=turned-round",
    // one operation whatever the word
    "ADDED_ANYWAY | CLEAR | smaller-fewer=opposite-operation smaller-fewer=opposite-operation difference-fewer=opposite-operation",
    "TOOK_AWAY_ANYWAY | CLEAR | larger-more=opposite-operation larger-more=opposite-operation larger-more=opposite-operation",
    // the story
    "FROM_THE_STORY | CLEAR | larger-fewer=fits smaller-more=fits difference-more=fits larger-fewer=fits",
    "TOO_EARLY | TOO_EARLY | larger-fewer=fits smaller-more=fits difference-more=other-numbers",
    // six problems or more, and no one way comes back
    "NO_ONE_WAY | MIXED | larger-fewer=fits smaller-more=other-numbers difference-more=opposite-operation+word larger-fewer=other-numbers smaller-more=fits difference-more=missing-number",
    "TOO_EARLY | TOO_EARLY | larger-fewer=fits smaller-more=other-numbers difference-more=opposite-operation+word larger-fewer=other-numbers",
  })
  void theEstimateDecidesWhatIsSaidAndHowSure(Topic topic, Strength strength, String pieces) {
    Finding finding = only(child("Elsie", pieces));
    assertEquals(topic, finding.topic());
    assertEquals(strength, finding.children().get(0).strength());
  }

  @Test
  void agreeingWorkIsNeverEvidenceForFollowingTheWord() {
    long seed = 20261116;
    Random random = new Random(seed);
    List<Kind> agreeing = Stream.of(Kind.values()).filter(Kind::agrees).toList();
    List<Kind> disagreeing = Stream.of(Kind.values()).filter(kind -> !kind.agrees()).toList();
    for (int round = 0; round < 500; round++) {
      List<PieceOfWork> work = new ArrayList<>();
      for (int i = 0; i < random.nextInt(6); i++) {
        work.add(work("Elsie", i, disagreeing.get(random.nextInt(3)), MONDAY.plusDays(random.nextInt(4)), "28 - 15",
            random.nextInt(3) == 0 ? "fits" : WORD));
      }
      List<PieceOfWork> more = new ArrayList<>(work);
      for (int i = 0; i < random.nextInt(12); i++) {
        more.add(work("Elsie", 100 + i, agreeing.get(random.nextInt(3)), MONDAY.plusDays(random.nextInt(4)), "28 - 15",
            List.of("fits", "other-numbers", "turned-round", "blank").get(random.nextInt(4))));
      }
      Findings without = Findings.of(List.of(Made.child("Elsie")), work, MONDAY.plusDays(4));
      Findings with = Findings.of(List.of(Made.child("Elsie")), more, MONDAY.plusDays(4));
      for (Topic topic : List.of(Topic.TOOK_AWAY_AT_FEWER, Topic.ADDED_AT_MORE, Topic.FROM_THE_STORY)) {
        String where = "seed " + seed + " round " + round + " " + topic;
        with.about(topic).ifPresent(finding -> {
          ChildFinding said = finding.children().get(0);
          without.about(topic).ifPresent(
              alone -> assertEquals(alone.children().get(0).tally(), said.tally(), where));
          assertTrue(said.tally().of() > 0, where);
          assertTrue(said.evidence().stream().noneMatch(quote -> quote.problem().kind().agrees()), where);
          assertTrue(said.apart().stream().allMatch(quote -> quote.says() == Says.NOTHING), where);
        });
      }
    }
  }

  @Test
  void whoAlsoAddsWhereNoWordPullsIsNotSaidToFollowTheWord() {
    List<PieceOfWork> work = child("Bo", "smaller-more=opposite-operation+word difference-more=opposite-operation+word "
        + "smaller-more=opposite-operation+word smaller-fewer=opposite-operation difference-fewer=opposite-operation "
        + "smaller-fewer=opposite-operation");
    assertEquals(Topic.ADDED_ANYWAY, only(work).topic());
  }

  @Test
  void aFirstHandInCountsAndLaterTriesDoNot() {
    PieceOfWork first = work("Bo", 1, LARGER_FEWER, MONDAY, "28 - 15 = x", WORD);
    HandIn told = first.handIns().get(0);
    HandIn again = Made.handIn(MONDAY, "28 + 15 = x", "43", work("Bo", 1, LARGER_FEWER, MONDAY, "", "fits").last().marks());
    HandIn prompted = new HandIn(told.work(), told.page(), 1, told.at(), told.day(), told.sitting(), told.tablet(),
        false, told.at(), told.parts(), told.marks());
    PieceOfWork both = new PieceOfWork(first.child(), first.problem(), List.of(prompted, again));
    assertEquals(Says.SO, Pattern.TOOK_AWAY_AT_FEWER.quote(both).says());
    assertEquals("28 - 15 = x", Pattern.TOOK_AWAY_AT_FEWER.quote(both).text());
  }

  @Test
  void theSignThatTellsIsMarkedInTheQuote() {
    Quote quote = Pattern.TOOK_AWAY_AT_FEWER.quote(work("Bo", 1, LARGER_FEWER, MONDAY, "28 − 15 = 13", WORD));
    assertEquals(new SourceSpan(3, 4), quote.telling());
  }

  @ParameterizedTest
  @CsvSource({
    // equation, reason,            answer says, bars,                 expected
    "x = 15,     number-only,        OTHER,       BLANK,                SO",
    "15,         number-only,        RIGHT,       BLANK,                SO",
    "x = 43,     number-only,        DIFFERENCE,  BLANK,                SO",
    "'',         blank,              DIFFERENCE,  BLANK,                SO",
    "'',         blank,              RIGHT,       BLANK,                AGAINST",
    "'',         blank,              OTHER,       BLANK,                NEITHER",
    "'',         blank,              BLANK,       BLANK,                NOTHING",
    "28 - 15,    opposite-operation, DIFFERENCE,  BLANK,                NEITHER",
    "28 - 15,    opposite-operation, OTHER,       DIFFERENCE_AS_AMOUNT, SO",
    "28 + 15,    fits,               DIFFERENCE,  DIFFERENCE_AS_AMOUNT, AGAINST",
  })
  void theDifferenceStandsForAnAmountInEquationBarsOrAnswer(
      String equation, String reason, String answer, BarsVerdict bars, Says expected) {
    AnswerMark mark = answer.equals("DIFFERENCE")
        ? Made.repeatsTheDifference() : AnswerMark.of(AnswerVerdict.valueOf(answer));
    PieceOfWork piece = work("Nils", 1, LARGER_FEWER, MONDAY, equation, reason, mark, "15", bars);
    assertEquals(expected, Pattern.DIFFERENCE_AS_AMOUNT.quote(piece).says());
  }

  /** Larger 43, smaller 28: "how many more has Theo" heard as "how many has Theo". */
  @ParameterizedTest
  @CsvSource({
    "DIFFERENCE_MORE,  x = 43,  number-only,        SO",
    "DIFFERENCE_FEWER, x = 28,  number-only,        SO",
    "DIFFERENCE_MORE,  x = 28,  number-only,        NEITHER",
    "DIFFERENCE_MORE,  43 - 28, fits,               AGAINST",
    "DIFFERENCE_MORE,  43 + 28, opposite-operation, NEITHER",
  })
  void whereTheDifferenceIsAskedTheNumberOfTheOneNamedStandsForIt(Kind kind, String equation, String reason, Says expected) {
    PieceOfWork piece = work("Nils", 1, kind, MONDAY, equation, reason);
    assertEquals(expected, Pattern.DIFFERENCE_AS_AMOUNT.quote(piece).says());
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "SMALLER_MORE LARGER_FEWER SMALLER_FEWER DIFFERENCE_MORE | “15 fewer” became “15”",
    "DIFFERENCE_MORE DIFFERENCE_FEWER DIFFERENCE_FEWER DIFFERENCE_MORE | “how many more” became “43”",
  })
  void theSentenceShowsHowTheDifferenceAndAnAmountWereTakenForEachOther(String kinds, String became) {
    List<PieceOfWork> work = new ArrayList<>();
    for (String id : kinds.split(" ")) {
      Kind kind = Kind.valueOf(id);
      int number = Pattern.takenForAnAmount(Made.problem(1, kind).story());
      work.add(work("Nils", work.size(), kind, MONDAY.plusDays(work.size() / 2), "x = " + number, "number-only",
          AnswerMark.of(AnswerVerdict.OTHER), Integer.toString(number), BarsVerdict.BLANK));
    }
    Finding finding = only(work);
    assertEquals("1 child took the difference for an amount: " + became + ".", FindingWords.headline(finding).toString());
    assertEquals("4 of 4", finding.tally().words());
  }

  @Test
  void workThatSpeaksAgainstIsKeptBesideTheStatement() {
    Finding finding = only(child("Hana", "difference-more=fits larger-fewer=opposite-operation+word "
        + "larger-fewer=opposite-operation+word larger-more=fits larger-fewer=opposite-operation+word larger-more=fits"));
    ChildFinding hana = finding.children().get(0);
    assertEquals(1, hana.evidence().stream().filter(quote -> quote.says() == Says.AGAINST).count());
    EvidenceTable table = EvidenceTable.of(finding);
    assertTrue(table.rows().get(0).cells().stream().flatMap(java.util.Optional::stream)
        .anyMatch(quote -> quote.says() == Says.AGAINST));
  }

  @Test
  void whoWroteTheStoryOnTheLatestDayHasChanged() {
    List<PieceOfWork> work = new ArrayList<>(child("Yara",
        "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word larger-fewer=opposite-operation+word"));
    work.add(work("Yara", 12, SMALLER_MORE, MONDAY.plusDays(3), "43 - 15 = x", "fits"));
    work.add(work("Yara", 13, SMALLER_MORE, MONDAY.plusDays(3), "43 - 15 = x", "fits"));
    work.add(work("Yara", 10, LARGER_FEWER, MONDAY.plusDays(3), "28 + 15 = x", "fits"));
    work.add(work("Yara", 11, LARGER_FEWER, MONDAY.plusDays(3), "28 + 15 = x", "fits"));
    Finding finding = only(work);
    assertEquals(Topic.CHANGED, finding.topic());
    assertEquals(WayOfReasoning.BY_THE_CUE_WORD, finding.children().get(0).reasoning().says().was());
    assertEquals(Strength.CHANGED, finding.children().get(0).strength());
  }

  @Test
  void whichWordIsSaidIsReadFromTheWorkSinceItBeganToShow() {
    List<PieceOfWork> work = new ArrayList<>();
    for (int day = 0; day < 2; day++) {
      for (int piece = 0; piece < 4; piece++) {
        work.add(work("Yara", 10 * day + piece, LARGER_FEWER, MONDAY.plusDays(day), "28 + 15 = x", "fits"));
      }
    }
    for (int day = 2; day < 4; day++) {
      work.add(work("Yara", 10 * day, LARGER_FEWER, MONDAY.plusDays(day), "28 - 15 = x", WORD));
      work.add(work("Yara", 10 * day + 1, SMALLER_MORE, MONDAY.plusDays(day), "43 + 15 = x", WORD));
    }
    Finding finding = only(work);
    assertEquals(Optional.of(MONDAY.plusDays(2)), finding.children().get(0).reasoning().since());
    assertEquals("1 child took away where the word was fewer.", FindingWords.headline(finding).toString());
    assertTrue(FindingWords.lead(finding).toString().endsWith("in 4 of 4 equations. Yara did the same with more."),
        FindingWords.lead(finding).toString());
  }

  @Test
  void theWordIsTheOneInTheStoriesRead() {
    List<PieceOfWork> work = child("Ben",
        "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word").stream().map(piece -> new PieceOfWork(piece.child(),
            new AssignedProblem(piece.problem().id(), piece.problem().story(), "savings", 7,
                List.of("Mara saved 15 dollars less than Theo.", "How much money did Theo save?"), List.of()),
            piece.handIns())).toList();
    assertEquals("1 child took away where the word was less.", FindingWords.headline(only(work)).toString());
  }

  @Test
  void whoseWorkAsksForAnotherPlaceIsSaidToMakeTheGroupLargeEnough() {
    List<PieceOfWork> work = new ArrayList<>(child("Ana", "larger-fewer=fits smaller-more=fits difference-more=fits larger-fewer=fits"));
    work.addAll(child("Ben", "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word larger-fewer=opposite-operation+word"));
    List<ChildReasoning> children = Findings.of(List.of(Made.child("Ana"), Made.child("Ben")), work, MONDAY.plusDays(4)).children();
    GroupPlace place = new GroupPlace(Focus.WHO_HAS_MORE, 1);
    Map<Long, GroupPlace> places = Map.of(Made.child("Ana").id(), place, Made.child("Ben").id(), place);
    assertEquals(List.of(true, false), makeThree(children, places, List.of()));
    assertEquals(List.of(false, false), makeThree(children, places, List.of(Made.child("Ana").id())));
  }

  private static List<Boolean> makeThree(List<ChildReasoning> children, Map<Long, GroupPlace> places, List<Long> byHand) {
    return ClassGroups.of(children, places, false, byHand, Map.of(), Map.of(), ReasoningTable.standard()).groups().stream()
        .flatMap(group -> group.children().stream()).map(ClassGroups.Seat::makesThree).toList();
  }

  @Test
  void afterDaysOfWorkThatFitMoreThanOneWayTheLatestIsMeant() {
    List<PieceOfWork> work = new ArrayList<>(child("Bo", "larger-fewer=fits"));
    assertEquals("1 problem so far; it fits more than one way.", early(work));
    work.add(work("Bo", 20, LARGER_FEWER, MONDAY.plusDays(2), "28 - 15 = x", WORD));
    assertEquals("2 problems so far; the latest fit more than one way.", early(work));
  }

  private static String early(List<PieceOfWork> work) {
    return FindingWords.early(only(work).children().get(0).reasoning()).toString();
  }

  @Test
  void everyChildOfTheClassStandsInOneStatement() {
    List<PieceOfWork> work = new ArrayList<>();
    work.addAll(child("Ana", "larger-fewer=fits smaller-more=fits difference-more=fits"));
    work.addAll(child("Bo", "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word "
        + "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word"));
    List<Child> classList = List.of(Made.child("Ana"), Made.child("Bo"), Made.child("Cy"));
    Findings findings = Findings.of(classList, work, MONDAY.plusDays(4));
    assertEquals(classList, findings.statements().stream().flatMap(finding -> finding.children().stream())
        .map(ChildFinding::child).sorted(java.util.Comparator.comparing(Child::name)).toList());
    assertEquals(3, findings.grid().rows().size());
    assertEquals(Topic.TOOK_AWAY_AT_FEWER, findings.statements().get(0).topic(), "what needs the teacher comes first");
  }

  @Test
  void tooLittleWorkThatPointsTheSameWayIsShownAndNotCounted() {
    List<PieceOfWork> work = new ArrayList<>(child("Elsie",
        "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word "
        + "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word"));
    work.addAll(child("Dario", "larger-fewer=opposite-operation+word larger-fewer=opposite-operation+word"));
    Finding finding = read(work).about(Topic.TOOK_AWAY_AT_FEWER).orElseThrow();
    assertEquals(List.of("Elsie"), finding.children().stream().map(each -> each.child().name()).toList());
    assertEquals(List.of("Dario"), finding.early().stream().map(each -> each.child().name()).toList());
    assertEquals(Strength.TOO_EARLY, finding.early().get(0).strength());
    assertTrue(FindingWords.headline(finding).toString().startsWith("1 child took away"));
  }

  @Test
  void workOfADayToComeOrOfLongAgoIsNotRead() {
    PieceOfWork tomorrow = work("Bo", 1, LARGER_FEWER, MONDAY.plusDays(9), "28 - 15 = x", WORD);
    PieceOfWork longAgo = work("Bo", 2, LARGER_FEWER, MONDAY.minusDays(Findings.DAYS_READ), "28 - 15 = x", WORD);
    assertEquals(0, read(List.of(tomorrow, longAgo)).pieces());
  }

  @Test
  void theSentencesSayWhatTheWorkDidWithItsCount() {
    List<PieceOfWork> work = new ArrayList<>();
    for (String name : List.of("Elsie", "Kofi")) {
      work.addAll(child(name, "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word "
          + "larger-fewer=opposite-operation+word smaller-more=opposite-operation+word"));
    }
    work.addAll(child("Hana", "difference-more=fits larger-fewer=opposite-operation+word "
        + "larger-fewer=opposite-operation+word larger-more=fits larger-fewer=opposite-operation+word larger-more=fits"));
    Finding finding = only(work);
    assertEquals("3 children took away where they read fewer.", FindingWords.headline(finding).toString());
    assertEquals("Where the word and the story part ways, the sign the word pulls to was written in 11 of 12 "
        + "equations. Elsie and Kofi did the same with more.", FindingWords.lead(finding).toString());
  }

  @Test
  void theGridSaysWhatMostEquationsOfAKindWere() {
    List<PieceOfWork> work = child("Bo", "larger-fewer=opposite-operation+word larger-fewer=opposite-operation+word "
        + "larger-fewer=fits smaller-fewer=turned-round larger-more=fits");
    ClassGrid.Row row = read(work).grid().rows().get(0);
    assertEquals(new ClassGrid.Cell(LARGER_FEWER, ClassGrid.Seen.WORD, 2, 3), row.cells().get(0));
    assertEquals(new ClassGrid.Cell(SMALLER_MORE, ClassGrid.Seen.NONE, 0, 0), row.cells().get(1));
    assertEquals(ClassGrid.Seen.TURNED, row.cells().get(3).seen());
    assertEquals(new ClassGrid.Cell(LARGER_MORE, ClassGrid.Seen.FITS, 1, 1), row.cells().get(4));
    assertEquals(DIFFERENCE_FEWER, row.cells().get(5).kind());
  }

  @Test
  void aClassWithoutWorkHasNothingSaidOfIt() {
    Findings findings = Findings.of(List.of(Made.child("Ana")), List.of(), TUESDAY);
    assertEquals(Topic.TOO_EARLY, findings.statements().get(0).topic());
    assertFalse(findings.about(Topic.FROM_THE_STORY).isPresent());
    assertEquals(TUESDAY, findings.from());
  }
}
