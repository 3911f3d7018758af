package fewermore.web.teacher;

import fewermore.calculation.Working;
import fewermore.classroom.HandIn;
import fewermore.classroom.Overrule;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.Bars;
import fewermore.marking.BarsVerdict;
import fewermore.marking.EquationMark;
import fewermore.marking.EquationReason;
import fewermore.marking.EstimateVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marker;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.marking.Remarks;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.text.SourceSpan;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * One hand-in, part by part: what the child wrote, its mark, why, and a way to overrule it.
 * {@code pages/teacher/work.html}, {@code GET /work/{work}/{page}/{seq}}. The form posts {@code part},
 * {@code verdict} and {@code note} to the same address with {@code /overrule}.
 *
 * @param when for example {@code Wed, Nov 25, 10:12 AM}
 * @param counts whether this hand-in is the one that counts as evidence
 * @param tries every hand-in of the child on this problem
 * @param reading what the child pointed at in the story, or null when that was not asked
 */
public record WorkView(
    ShownChild child, List<String> sentences, KindWords kind, BarsPicture key, String equationKey, int answerKey,
    String labelKey, String when, boolean counts, boolean late, List<Try> tries, List<PartView> parts, String action,
    ReadingView reading) {
  /** Longest note kept with an overruled mark, in characters. */
  public static final int LONGEST_NOTE = 300;

  public record Try(String word, String href, boolean current) {}

  /** One choice of the overrule form. */
  public record Verdict(String id, String word, boolean current) {}

  /**
   * One part as handed in.
   *
   * @param line the equation; null for other parts
   * @param text the answer or label; null for other parts
   * @param bars three places and who is longer; null for other parts
   * @param fits whether the mark says there is nothing to look at again
   * @param verdict the mark's word; @param says the sentence why; @param slips what the child may have done
   * @param overruled what the teacher set aside, oldest first
   * @param replays a strategy step by step, and the one that checks it; empty for other parts
   */
  public record PartView(
      String id, WrittenLine line, String text, DrawnBars bars, boolean blank, boolean fits, String verdict,
      String says, List<String> overruled, List<Verdict> choices, List<StrategyReplay> replays) {}

  /** What a child drew: which is longer, and what stands where. */
  public record DrawnBars(String longer, Slot longerBar, String shorter, Slot shorterBar, Slot gap) {}

  /** @param text what stands there; {@code ?} for the unknown's sign, {@code empty} for nothing */
  public record Slot(String text, boolean unknown) {}

  /** @param overrules of this hand-in, oldest first; @return empty when the piece has no such hand-in */
  public static Optional<WorkView> of(
      PieceOfWork piece, String work, String page, int seq, List<Overrule> overrules, ZoneId zone) {
    return piece.handIns().stream()
        .filter(each -> each.work().equals(work) && each.page().equals(page) && each.seq() == seq)
        .findFirst()
        .map(handIn -> of(piece, handIn, overrules, zone));
  }

  private static WorkView of(PieceOfWork piece, HandIn handIn, List<Overrule> overrules, ZoneId zone) {
    Comparison story = piece.problem().story();
    List<Try> tries = new ArrayList<>();
    for (HandIn each : piece.handIns()) {
      String word = each == piece.evidence() ? "first try: counts"
          : !each.sitting().equals(piece.evidence().sitting()) && !each.tablet().equals(piece.evidence().tablet())
          ? "also from " + each.tablet() + ", " + AmericanDates.clock(each.at(), zone)
          : "try " + (tries.size() + 1);
      tries.add(new Try(word, FindingsPage.href(each), each == handIn));
    }
    return new WorkView(ShownChild.of(piece.child()), piece.problem().sentences(), KindWords.of(story),
        BarsPicture.of(story), StoryEquation.of(story), story.answer(), story.thing().many(),
        AmericanDates.moment(handIn.at(), zone), handIn == piece.evidence(), handIn.late(), tries,
        parts(story, handIn, overrules), FindingsPage.href(handIn) + "/overrule",
        ReadingView.of(piece.problem(), handIn.parts().reading()));
  }

  private static List<PartView> parts(Comparison story, HandIn handIn, List<Overrule> overrules) {
    Work written = handIn.parts();
    Marks marks = handIn.marks();
    Map<Part, String> says = Remarks.of(story, written, marks);
    List<PartView> parts = new ArrayList<>();
    if (marks.bars() != null) {
      parts.add(part(Part.BARS, null, null, drawn(story, written.bars()), written.bars().blank(),
          marks.bars() == BarsVerdict.FITS, marks.bars().id(), says, overrules,
          ids(BarsVerdict.values(), BarsVerdict::id)));
    }
    if (marks.equation() != null) {
      SourceSpan telling = marks.equation().fits() ? null : telling(story, written.equation(), marks.equation());
      parts.add(part(Part.EQUATION, WrittenLine.of(written.equation(), telling), null, null,
          written.equation().isBlank(), marks.equation().fits(), marks.equation().reason().id(), says, overrules,
          ids(EquationReason.values(), EquationReason::id)));
    }
    if (marks.strategy() != null && written.strategy() != null) {
      PartView own = part(Part.STRATEGY, null, null, null, written.strategy().blank(), marks.strategy().fits(),
          marks.strategy().verdict().id(), says, overrules, ids(Working.Verdict.values(), Working.Verdict::id));
      parts.add(new PartView(own.id(), null, null, null, own.blank(), own.fits(), own.verdict(), own.says(),
          own.overruled(), own.choices(), StrategyReplay.of(story, written)));
    }
    if (marks.answer() != null) {
      parts.add(part(Part.ANSWER, null, written.answer(), null, written.answer().isBlank(),
          marks.answer().verdict() == AnswerVerdict.RIGHT, marks.answer().verdict().id(), says, overrules,
          ids(AnswerVerdict.values(), AnswerVerdict::id)));
    }
    if (marks.label() != null) {
      parts.add(part(Part.LABEL, null, written.label(), null, written.label().isBlank(),
          marks.label() == LabelVerdict.NAMES_IT, marks.label().id(), says, overrules,
          ids(LabelVerdict.values(), LabelVerdict::id)));
    }
    if (marks.estimate() != null) {
      parts.add(part(Part.ESTIMATE, null, written.estimate(), null, written.estimate().isBlank(),
          marks.estimate() == EstimateVerdict.FITS, marks.estimate().id(), says, overrules,
          ids(EstimateVerdict.values(), EstimateVerdict::id)));
    }
    return parts;
  }

  private static PartView part(
      Part part, WrittenLine line, String text, DrawnBars bars, boolean blank, boolean fits, String verdict,
      Map<Part, String> says, List<Overrule> overrules, List<String> all) {
    List<String> overruled = overrules.stream().filter(each -> each.part() == part)
        .map(each -> "The app said " + word(each.was()) + ". You said " + word(each.verdict())
            + (each.note().isBlank() ? "." : ": “" + each.note() + "”"))
        .toList();
    return new PartView(part.id(), line, text, bars, blank, fits, word(verdict),
        says.getOrDefault(part, ""), overruled,
        all.stream().map(id -> new Verdict(id, word(id), id.equals(verdict))).toList(), List.of());
  }

  private static <V> List<String> ids(V[] verdicts, Function<V, String> id) {
    return Stream.of(verdicts).map(id).toList();
  }

  /** {@code opposite-operation} as a teacher reads it. */
  static String word(String id) {
    return id.replace('-', ' ');
  }

  /** The stretch the mark rests on, asked anew where the store did not keep it. */
  private static SourceSpan telling(Comparison story, String equation, EquationMark mark) {
    if (mark.at() != null) {
      return mark.at();
    }
    EquationMark own = Marker.mark(story, new Work(equation, null, null, null, null)).equation();
    return own.reason() == mark.reason() ? own.at() : null;
  }

  static DrawnBars drawn(Comparison story, Bars bars) {
    String larger = BarsPicture.name(story, Role.LARGER);
    String smaller = BarsPicture.name(story, Role.SMALLER);
    boolean known = !bars.longer().isBlank();
    String other = bars.longer().equalsIgnoreCase(larger) ? smaller : larger;
    return new DrawnBars(known ? bars.longer() : "longer bar", place(bars.longerBar()), known ? other : "shorter bar",
        place(bars.shorterBar()), place(bars.gap()));
  }

  private static Slot place(String written) {
    boolean unknown = written.strip().equals("x");
    return new Slot(unknown ? "?" : written.isBlank() ? "empty" : written.strip(), unknown);
  }

  public int longestNote() {
    return LONGEST_NOTE;
  }
}
