package fewermore.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.StrategyKind;
import fewermore.calculation.Working.Verdict;
import fewermore.equation.SyntaxProblem;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.ResourceBundle;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class PromptsTest {
  private static final Locale SPANISH = Locale.forLanguageTag("es");
  private static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH, SPANISH);
  private static final Pattern EQUATION = Pattern.compile("[0-9]\\s*[-+−=]|[-+−=]\\s*[0-9]");

  /** Every prompt of every mark, against each story, with bars asked and without, in both languages. */
  @Test
  void noPromptHoldsTheAnswerTheRightEquationOrTheLabel() {
    int tried = 0;
    for (Comparison story : stories()) {
      for (Case each : cases()) {
        for (Locale language : LANGUAGES) {
          for (Part part : each.parts()) {
            String prompt = Prompts.of(story, each.work(), each.marks(), part, language);
            String where = language + " " + part + " " + each.marks() + " " + story + ": " + prompt;
            assertFalse(Arrays.asList(prompt.split("[^0-9]+")).contains(Integer.toString(story.answer())), where);
            assertFalse(EQUATION.matcher(prompt).find(), where);
            assertFalse(prompt.contains("{") || prompt.contains("??") || prompt.contains("null"), where);
            assertTrue(prompt.length() <= 130 && !prompt.isBlank(), where);
            if (part == Part.LABEL) {
              assertFalse(prompt.matches("(?i).*\\b(shells?|striped|plain)\\b.*"), where);
            }
            tried++;
          }
        }
      }
    }
    assertTrue(tried > 50_000, tried + " prompts");
  }

  @Test
  void atMostTwoPromptsAreGivenAndOnlyTheFirstPartThatDoesNotFitIsTold() {
    Comparison story = SpecFile.story("Theo 52, Mara ?, 14 fewer; shell/shells");
    Work work = new Work("52 + 14 = x", "66", "Mara", new Bars("Theo", "52", "14", "x"), "70");
    Marks marks = Marker.mark(story, work);
    assertEquals(Map.of(Part.BARS, "Read the story again. What does 14 tell you?",
        Part.LABEL, "That tells who. What does your number count?"),
        Prompts.of(story, work, marks, false, Locale.ENGLISH));
    assertEquals(Map.of(), Prompts.of(story, work, marks, true, Locale.ENGLISH));
  }

  @Test
  void whatFitsGetsNoPrompt() {
    Comparison story = SpecFile.story("Theo 52, Mara ?, 14 fewer; shell/shells");
    Work work = new Work("52 - 14 = x", "38", "shells", new Bars("Theo", "52", "x", "14"), "40");
    assertEquals(Map.of(), Prompts.of(story, work, Marker.mark(story, work), false, Locale.ENGLISH));
  }

  /** 28 is 14 more than 14: to quote the difference would be to tell the answer. */
  @Test
  void aGivenNumberThatIsTheAnswerTooIsNotQuoted() {
    Comparison story = SpecFile.story("Theo 28, Mara ?, 14 fewer; shell/shells");
    Work work = new Work(null, null, null, new Bars("Theo", "14", "", "x"), null);
    assertEquals("Read the story again. What tells you how much longer one bar is?",
        Prompts.of(story, work, Marker.mark(story, work), false, Locale.ENGLISH).get(Part.BARS));
  }

  @Test
  void theMachinesOwnLanguageDoesNotShowThrough() {
    Comparison story = SpecFile.story("Theo 52, Mara ?, 14 fewer; shell/shells");
    Work work = new Work(null, null, "Mara", null, null);
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(SPANISH);
      assertEquals("That tells who. What does your number count?",
          Prompts.of(story, work, Marker.mark(story, work), false, Locale.ENGLISH).get(Part.LABEL));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void everyPromptIsThereInSpanish() {
    ResourceBundle english = ResourceBundle.getBundle("fewermore.marking.prompts", Locale.ROOT);
    ResourceBundle spanish = ResourceBundle.getBundle("fewermore.marking.prompts", SPANISH);
    assertEquals(SPANISH, spanish.getLocale());
    assertEquals(new TreeSet<>(english.keySet()), new TreeSet<>(spanish.keySet()));
    english.keySet().forEach(key -> {
      assertNotEquals(english.getString(key), spanish.getString(key), key);
      assertEquals(places(english.getString(key)), places(spanish.getString(key)), key);
    });
  }

  private static List<String> places(String text) {
    return Pattern.compile("\\{[a-z]+}").matcher(text).results().map(found -> found.group()).sorted().toList();
  }

  private record Case(Work work, Marks marks, List<Part> parts) {}

  private static List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (BarsVerdict bars : BarsVerdict.values()) {
      if (bars != BarsVerdict.FITS) {
        for (String longer : List.of("Theo", "Mara")) {
          cases.add(new Case(new Work(null, null, null, new Bars(longer, "", "", ""), null),
              new Marks(null, null, null, bars, null), List.of(Part.BARS)));
        }
      }
    }
    for (EquationMark mark : equationMarks()) {
      for (BarsVerdict bars : new BarsVerdict[] {null, BarsVerdict.FITS}) {
        cases.add(new Case(new Work("38", null, null, bars == null ? null : Bars.EMPTY, null),
            new Marks(mark, null, null, bars, null), List.of(Part.EQUATION)));
      }
    }
    for (AnswerVerdict answer : AnswerVerdict.values()) {
      if (answer != AnswerVerdict.RIGHT) {
        for (String written : List.of("38", "38 shells")) {
          cases.add(new Case(new Work(null, written, null, null, null),
              new Marks(null, AnswerMark.of(answer), null, null, null), List.of(Part.ANSWER)));
        }
      }
    }
    for (LabelVerdict label : LabelVerdict.values()) {
      if (label != LabelVerdict.NAMES_IT) {
        cases.add(new Case(new Work(null, null, "38 shells", null, null), new Marks(null, null, label, null, null),
            List.of(Part.LABEL)));
      }
    }
    for (EstimateVerdict estimate : EstimateVerdict.values()) {
      if (estimate != EstimateVerdict.FITS) {
        cases.add(new Case(new Work(null, null, null, null, "38"), new Marks(null, null, null, null, estimate),
            List.of(Part.ESTIMATE)));
      }
    }
    for (Verdict verdict : Verdict.values()) {
      if (verdict != Verdict.FITS) {
        for (StrategyKind kind : StrategyKind.values()) {
          cases.add(new Case(new Work(null, null, null, null, null, new StrategyWork(kind, List.of(), null)),
              new Marks(null, null, null, null, null, StrategyMark.of(verdict)), List.of(Part.STRATEGY)));
        }
      }
    }
    return cases;
  }

  private static List<EquationMark> equationMarks() {
    List<EquationMark> marks = new ArrayList<>();
    for (EquationReason reason : EquationReason.values()) {
      if (reason == EquationReason.UNREADABLE) {
        for (SyntaxProblem.Kind kind : SyntaxProblem.Kind.values()) {
          if (kind != SyntaxProblem.Kind.NOTHING_WRITTEN) {
            marks.add(new EquationMark(reason, null, false, false, false, false,
                new SyntaxProblem(kind, new SourceSpan(0, 1), "a number", "38", "Try."), null));
          }
        }
      } else if (reason != EquationReason.FITS) {
        marks.add(EquationMark.of(reason));
      }
    }
    marks.add(new EquationMark(EquationReason.OPPOSITE_OPERATION, null, false, true, false, false, null, null));
    return marks;
  }

  /** Every kind, many numbers, among them answers that are given numbers too, 0, and names with numbers. */
  private static List<Comparison> stories() {
    Random random = new Random(38);
    List<Relation> amounts = new ArrayList<>(List.of(new Relation(28, 14, 14), new Relation(14, 0, 14),
        new Relation(14, 14, 0), new Relation(0, 0, 0), new Relation(100, 1, 99), new Relation(52, 38, 14)));
    for (int i = 0; i < 60; i++) {
      int smaller = random.nextInt(90);
      int difference = random.nextInt(100 - smaller);
      amounts.add(new Relation(smaller + difference, smaller, difference));
    }
    List<Comparison> stories = new ArrayList<>();
    for (Relation relation : amounts) {
      for (Role unknown : Role.values()) {
        for (Wording wording : Wording.values()) {
          if (wording != Wording.DIFFERENCE || unknown == Role.DIFFERENCE) {
            for (Persons persons : List.of(new Persons("Theo", "Mara"), Persons.UNNAMED, new Persons("Table 38",
                "Table 14"))) {
              stories.add(new Comparison(persons, new Thing("striped shell", "striped shells"),
                  new Thing("plain shell", "plain shells"), List.of(), relation, unknown, wording, List.of()));
            }
          }
        }
      }
    }
    return stories;
  }
}
