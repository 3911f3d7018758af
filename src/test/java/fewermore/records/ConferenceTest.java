package fewermore.records;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.SlipRule;
import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.Made;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerMark;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.prediction.WayOfReasoning;
import fewermore.records.Conference.Place;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class ConferenceTest {
  private static final Child NOOR = Made.child("Noor");
  private static final LocalDate TODAY = Made.MONDAY.plusDays(4);
  private static final AnswerMark RIGHT = AnswerMark.of(AnswerVerdict.RIGHT);

  private static PieceOfWork fits(long problem, Kind kind, LocalDate day) {
    return Made.work("Noor", problem, kind, day, "28 + 15 = x", "fits", RIGHT, "43", BarsVerdict.FITS);
  }

  private static PieceOfWork byTheWord(long problem, LocalDate day) {
    return Made.work("Noor", problem, Kind.LARGER_FEWER, day, "28 - 15 = x", "opposite-operation+word",
        AnswerMark.of(AnswerVerdict.OTHER), "13", BarsVerdict.BLANK);
  }

  private static Conference of(List<PieceOfWork> work) {
    return Conference.of(NOOR, work, List.of(), TODAY, "en");
  }

  @Test
  void aStrengthIsOfHerOwnWorkWhereTheWordPointsTheOtherWay() {
    Conference page = of(List.of(fits(1, Kind.SMALLER_FEWER, TODAY), fits(2, Kind.LARGER_FEWER, Made.MONDAY)));
    assertEquals(2, page.own().piece().problem().id());
    assertEquals("In this story Noor drew bars that fit, wrote an equation that says what the story says, worked out the "
        + "answer, and said what the number counts.", page.sentence(Place.SHOWS));
    assertEquals("Noor’s own work, Monday, November 16, 2026. The words of the story point the other way, and Noor "
        + "still saw which amount is the larger one.", page.sentence(Place.CAPTION));
  }

  @Test
  void theComparingWordIsQuotedAsTheStorySaysIt() {
    PieceOfWork fits = fits(1, Kind.LARGER_FEWER, TODAY);
    var problem = new AssignedProblem(1, fits.problem().story(), "fruit", 7, List.of("The orange costs 28 cents.",
        "It costs 15 cents less than the apple.", "How much does the apple cost?"),
        List.of("La naranja cuesta 28 centavos.", "Cuesta 15 centavos menos que la manzana.", "¿Cuánto cuesta la manzana?"));
    List<PieceOfWork> work = List.of(new PieceOfWork(NOOR, problem, fits.handIns()));
    assertTrue(of(work).sentence(Place.CAPTION).contains("The word “less” is in the story"));
    assertTrue(Conference.of(NOOR, work, List.of(), TODAY, "es").sentence(Place.CAPTION).contains("«menos»"));
  }

  @Test
  void workTheTeacherChoseComesBeforeTheAppsChoice() {
    List<PieceOfWork> work = List.of(fits(1, Kind.SMALLER_FEWER, TODAY), fits(2, Kind.LARGER_FEWER, Made.MONDAY));
    assertEquals(1, Conference.of(NOOR, work, List.of(1L), TODAY, "en").own().piece().problem().id());
  }

  @Test
  void withoutAnEquationThatFitsAnotherPartIsTheStrength() {
    Conference page = of(List.of(byTheWord(1, TODAY)));
    assertEquals(Set.of(Part.LABEL), page.own().good());
    assertEquals("In this story Noor said what the number counts.", page.sentence(Place.SHOWS));
    assertFalse(page.sentence(Place.CAPTION).contains("still saw"), "only an equation that fits shows it");
  }

  @Test
  void storiesForOthersAreTheNextStepOnlyWhereTheWorkShowsIt() {
    assertTrue(of(List.of(byTheWord(1, TODAY))).sentence(Place.NEXT).startsWith("We go on with stories"),
        "one story read by its word");
    assertTrue(of(List.of(fits(1, Kind.LARGER_FEWER, TODAY))).sentence(Place.NEXT).startsWith("We go on with stories"),
        "one story is too little");
    assertTrue(of(List.of(fits(1, Kind.LARGER_FEWER, TODAY), fits(2, Kind.SMALLER_MORE, TODAY),
        fits(3, Kind.LARGER_FEWER, TODAY), fits(4, Kind.SMALLER_FEWER, TODAY))).sentence(Place.NEXT).contains("make up stories"));
  }

  @Test
  void withNothingAsItShouldBeThePageSaysWhatSheTriedAndKeptAt() {
    PieceOfWork nothing = byTheWord(1, TODAY);
    Marks none = new Marks(nothing.last().marks().equation(), AnswerMark.of(AnswerVerdict.OTHER), LabelVerdict.BLANK,
        BarsVerdict.BLANK, null);
    PieceOfWork twice = new PieceOfWork(NOOR, nothing.problem(),
        List.of(Made.handIn(TODAY, "28 - 15 = x", "13", none), Made.handIn(TODAY, "28 - 15 = x", "13", none)));
    Conference page = of(List.of(twice));
    assertNull(page.own());
    assertEquals("Noor has tried one story about two amounts, and went back to one of them to look again.",
        page.sentence(Place.SHOWS));
    assertTrue(of(List.of()).sentence(Place.SHOWS).contains("no work in this class yet"));
  }

  @Test
  void aSlipIsSpokenOfOnlyWhenItWasSeenTwice() {
    AnswerMark slip = new AnswerMark(AnswerVerdict.SLIP, null, List.of(SlipRule.CARRIED_TEN_DROPPED));
    PieceOfWork one = Made.work("Noor", 1, Kind.LARGER_MORE, TODAY, "28 + 15 = x", "fits", slip, "33", BarsVerdict.FITS);
    PieceOfWork two = Made.work("Noor", 2, Kind.LARGER_MORE, TODAY, "28 + 15 = x", "fits", slip, "33", BarsVerdict.FITS);
    assertFalse(of(List.of(one)).sentence(Place.NEXT).contains("ten"), of(List.of(one)).sentence(Place.NEXT));
    assertTrue(of(List.of(one, two)).sentence(Place.NEXT).contains("traded"), of(List.of(one, two)).sentence(Place.NEXT));
    assertTrue(of(List.of(one, two)).sentence(Place.HOME).contains("dimes"));
  }

  @Test
  void aMonthWithFewerThanFourStoriesIsNotDrawn() {
    List<PieceOfWork> work = new ArrayList<>();
    for (int at = 1; at <= 3; at++) {
      work.add(fits(at, Kind.LARGER_FEWER, LocalDate.of(2026, 10, at)));
    }
    for (int at = 4; at <= 7; at++) {
      work.add(at < 6 ? fits(at, Kind.LARGER_FEWER, LocalDate.of(2026, 11, at)) : byTheWord(at, LocalDate.of(2026, 11, at)));
    }
    assertEquals(List.of(new Conference.Month("November", 2, 4)), of(work).months());
    work.add(fits(8, Kind.LARGER_FEWER, LocalDate.of(2026, 10, 9)));
    assertEquals(2, of(work).months().size());
  }

  @Test
  void workDoneWithHelpIsNotRead() {
    PieceOfWork own = fits(1, Kind.LARGER_FEWER, TODAY);
    PieceOfWork helped = new PieceOfWork(NOOR, own.problem(), own.handIns(), true);
    assertNotNull(of(List.of(own)).own());
    assertNull(of(List.of(helped)).own());
  }

  @Test
  void noSentenceNamesAWayOfReasoningOrAnotherChild() {
    Set<String> forbidden = new TreeSet<>();
    for (WayOfReasoning way : WayOfReasoning.values()) {
      forbidden.add(way.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      forbidden.add(way.name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }
    forbidden.addAll(List.of("keyword", "cue", "misconception", "disability", "classmate", "other children",
        "average", "below", "behind", "grade level", "smart", "palabra clave", "otros niños", "promedio"));
    for (String language : List.of("en", "es")) {
      FamilyTexts texts = FamilyTexts.in(language);
      for (String key : texts.all().keySet()) {
        String text = texts.of(key, "Noor", 3, 4).toLowerCase(Locale.ROOT);
        forbidden.forEach(word -> assertFalse(text.matches("(?s).*\\b" + word + "\\b.*"), key + " in " + language + ": " + word));
      }
    }
  }

  @Test
  void englishAndSpanishHaveTheSameTextsAndEveryApostropheIsSafe() {
    assertEquals(new TreeSet<>(FamilyTexts.in("en").all().keySet()), new TreeSet<>(FamilyTexts.in("es").all().keySet()));
    for (String language : List.of("en", "es")) {
      FamilyTexts texts = FamilyTexts.in(language);
      texts.all().keySet().forEach(key -> {
        assertFalse(texts.all().getString(key).contains("'"), key + ": a straight apostrophe is lost");
        assertFalse(texts.of(key, "Noor", 3, 4).contains("{"), key + ": a place was left open");
      });
    }
    Conference page = Conference.of(NOOR, List.of(fits(1, Kind.LARGER_FEWER, TODAY)), List.of(), TODAY, "es");
    assertTrue(page.sentence(Place.CAPTION).contains("noviembre"), page.sentence(Place.CAPTION));
    assertEquals("En este problema Noor dibujó barras que corresponden al problema, escribió una ecuación que dice lo que "
        + "dice el problema, calculó la respuesta y dijo qué cuenta el número.", page.sentence(Place.SHOWS));
  }
}
