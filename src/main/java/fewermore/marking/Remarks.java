package fewermore.marking;

import fewermore.calculation.Calculation;
import fewermore.calculation.SlipRule;
import fewermore.calculation.StepWords;
import fewermore.calculation.Working;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One plain sentence a part for the teacher: it quotes the child's own work and says what it shows, as
 * evidence and not as a verdict. American English. Texts come from the bundle
 * {@code fewermore/marking/remarks}.
 */
public final class Remarks {
  /** Longest quotation, in characters; more is cut, with an ellipsis. */
  private static final int LONGEST_QUOTE = 60;

  private Remarks() {}

  /** A sentence for each part that was asked, in the order of {@link Part}; each starts with the verb: "Writes …". */
  public static Map<Part, String> of(Comparison story, Work work, Marks marks) {
    Sentences sentences = new Sentences(story, work, marks);
    Map<Part, String> remarks = new EnumMap<>(Part.class);
    if (marks.bars() != null) {
      remarks.put(Part.BARS, sentences.bars());
    }
    if (marks.equation() != null) {
      remarks.put(Part.EQUATION, sentences.equation());
    }
    if (marks.strategy() != null) {
      remarks.put(Part.STRATEGY, sentences.strategy());
    }
    if (marks.answer() != null) {
      remarks.put(Part.ANSWER, sentences.answer());
    }
    if (marks.label() != null) {
      remarks.put(Part.LABEL, sentences.label());
    }
    if (marks.estimate() != null) {
      remarks.put(Part.ESTIMATE, sentences.estimate());
    }
    return remarks;
  }

  /** The sentences on one piece of work. */
  private static final class Sentences {
    private final Phrases phrases = Phrases.of("remarks", Locale.ENGLISH);
    private final Comparison story;
    private final Work work;
    private final Marks marks;
    private final Map<String, String> places = new HashMap<>();

    Sentences(Comparison story, Work work, Marks marks) {
      this.story = story;
      this.work = work;
      this.marks = marks;
      places.put("first", Integer.toString(story.value(story.given().get(0))));
      places.put("second", Integer.toString(story.value(story.given().get(1))));
      places.put("answer", Integer.toString(story.answer()));
      places.put("difference", Integer.toString(story.value(Role.DIFFERENCE)));
      places.put("larger", BarsMarker.name(story, Role.LARGER));
      places.put("unknown", phrases.say("unknown." + story.unknown().id(), Map.of()));
      places.put("thing", story.thing().many());
      places.put("cue", story.wording() == Wording.DIFFERENCE ? "difference" : story.wording().id());
    }

    private String say(String key, String... more) {
      Map<String, String> all = new HashMap<>(places);
      for (int i = 0; i < more.length; i += 2) {
        all.put(more[i], more[i + 1]);
      }
      return phrases.say(key, all);
    }

    String bars() {
      boolean exchanged = marks.bars() == BarsVerdict.LONGER_SHORTER_SWAPPED
          && BarsMarker.longerIsRight(story, work.bars());
      return say("bars." + (exchanged ? "amounts-exchanged" : marks.bars().id()), "work", drawn(work.bars()));
    }

    private String drawn(Bars bars) {
      boolean equal = Visible.blank(bars.longer());
      return say(equal ? "bars.equal-drawn" : "bars.drawn", "equal", say("bars.equal"),
          "longer", equal ? "" : say("bars.longer-one", "name", cut(bars.longer())),
          "longer-bar", place(bars.longerBar()), "shorter-bar", place(bars.shorterBar()), "gap", place(bars.gap()));
    }

    private String place(String written) {
      String seen = cut(written);
      return seen.isEmpty() ? say("bars.nothing") : seen.equals("x") ? "?" : seen;
    }

    String equation() {
      EquationMark mark = marks.equation();
      String key = "equation." + mark.reason().id();
      String quoted = quote(work.equation());
      return switch (mark.reason()) {
        case FITS -> say(key + fitsHow(mark), "work", quoted);
        case UNREADABLE -> say(key, "work", quoted, "expected", mark.problem().expected(), "found",
            mark.problem().found().isBlank() ? say("bars.nothing") : mark.problem().found());
        case NO_EQUALS -> say(key + (mark.cueLed() ? ".cue-led" : ""), "work", quoted, "expression",
            expression(mark.expression()));
        case OPPOSITE_OPERATION -> say(key + (mark.cueLed() ? ".cue-led" : ""), "work", quoted,
            "opposite", say("opposite." + right()), "right", say("right." + right()));
        case BLANK, NUMBER_ONLY, TURNED_ROUND, UNKNOWN_MISPLACED, EXTRA_NUMBER, MISSING_NUMBER, MISCOPIED_NUMBER,
            OTHER_NUMBERS -> say(key, "work", quoted);
      };
    }

    private static String fitsHow(EquationMark mark) {
      if (mark.equalsChain()) {
        return mark.notTrue() ? ".chain-not-true" : ".chain";
      }
      return mark.notTrue() ? ".not-true" : mark.solvedForm() ? ".solved" : "";
    }

    private String expression(EquationReason reason) {
      String key = reason == null ? "other" : reason.id();
      boolean known = List.of("fits", "turned-round", "opposite-operation", "unknown-misplaced", "extra-number",
          "missing-number", "miscopied-number").contains(key);
      return say("expression." + (known ? key : "other"));
    }

    private String right() {
      return story.kind().operation() == Operation.ADD ? "add" : "subtract";
    }

    String answer() {
      AnswerMark mark = marks.answer();
      String quoted = quote(work.answer());
      return switch (mark.verdict()) {
        case RIGHT, BLANK -> say("answer." + mark.verdict().id(), "work", quoted);
        case STORY_NUMBER -> mark.repeats() == Role.DIFFERENCE ? say("answer.story-number.difference", "work", quoted)
            : say("answer.story-number", "work", quoted, "role", say("role." + mark.repeats().id()));
        case OWN_EQUATION -> say("answer.own-equation", "work", quoted, "equation", quote(work.equation()));
        case SLIP -> slip(mark, quoted);
        case OTHER -> say(
            Visible.number(work.answer()).isPresent() ? "answer.other" : "answer.no-number", "work", quoted);
      };
    }

    private String slip(AnswerMark mark, String quoted) {
      OwnCalculation own = AnswerMarker.calculation(story, work.equation())
          .orElseThrow(() -> new IllegalStateException("a slip without a calculation"));
      boolean turned = own.value() < 0;
      int first = turned ? own.second() : own.first();
      int second = turned ? own.first() : own.second();
      return say("answer.slip." + (mark.slips().size() == 1 ? "one" : "several"), "work", quoted,
          "calculation", first + " " + own.operation().sign() + " " + second,
          "result", Integer.toString(Math.abs(own.value())),
          "slips", mark.slips().stream().map(SlipRule::says).collect(Collectors.joining(", or ")));
    }

    String label() {
      return say("label." + marks.label().id(), "work", quote(work.label()));
    }

    String estimate() {
      boolean more = story.unknown() == Role.LARGER;
      return say("estimate." + marks.estimate().id(), "work", quote(work.estimate()),
          "calculation", places.get("first") + " " + story.kind().operation().sign() + " " + places.get("second"),
          "direction", say(more ? "direction.more" : "direction.less"),
          "amount", Integer.toString(EstimateMarker.amount(story)));
    }

    /** What the steps show; an overruled mark keeps no slips, and is said without. */
    String strategy() {
      StrategyMark mark = marks.strategy();
      StrategyWork own = work.strategy() == null ? StrategyWork.EMPTY : work.strategy();
      Optional<Calculation> calculation = StrategyMarker.calculation(story, work.equation());
      String key = "strategy." + mark.verdict().id();
      if (own.blank() || calculation.isEmpty()) {
        return say(own.blank() ? "strategy.blank" : "strategy.too-large");
      }
      StepWords words = StepWords.in(Locale.ENGLISH);
      Working working = new Working(own.kind(), calculation.get(), own.steps());
      String comes = working.result().isPresent() ? Integer.toString(working.result().getAsInt()) : say("bars.nothing");
      String with = say("strategy.with." + own.kind().id());
      String agrees = mark.agrees() == null ? ""
          : " " + say(mark.agrees() ? "strategy.check.agrees" : "strategy.check.differs");
      String sentence = switch (mark.verdict()) {
        case BLANK, UNFINISHED, OTHER_CALCULATION -> say(key, "with", with, "calculation", calculation.get().text(),
            "comes", comes);
        case FITS -> mark.way() == null
            ? say(key, "with", with, "calculation", calculation.get().text(), "comes", comes)
            : say(key + ".way", "with", with, "calculation", calculation.get().text(), "comes", comes,
                "way", words.name(mark.way()).toLowerCase(Locale.ROOT));
        case SLIP -> mark.slips().isEmpty()
            ? say("strategy.other-calculation", "with", with, "calculation", calculation.get().text(), "comes", comes)
            : say(key, "with", with, "calculation", calculation.get().text(), "comes", comes, "slips",
                mark.slips().stream().map(SlipRule::says).collect(Collectors.joining(", or ")));
      };
      return sentence + agrees;
    }

    private static String quote(String written) {
      return written == null ? "" : "“" + cut(written) + "”";
    }

    private static String cut(String written) {
      String seen = Visible.of(written);
      int end = seen.offsetByCodePoints(0, Math.min(LONGEST_QUOTE, seen.codePointCount(0, seen.length())));
      return end < seen.length() ? seen.substring(0, end) + "…" : seen;
    }
  }
}
