package fewermore.store;

import fewermore.calculation.SlipRule;
import fewermore.calculation.Way;
import fewermore.calculation.Working;
import fewermore.equation.EquationReader;
import fewermore.equation.SyntaxProblem;
import fewermore.marking.AnswerMark;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.EquationMark;
import fewermore.marking.EquationReason;
import fewermore.marking.EstimateVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.marking.StrategyMark;
import fewermore.story.Role;
import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Marks as rows and back: a verdict a part, and its notes by id. Places in the text are not kept: marking again
 * gives them. Why a line can't be read is found by reading it again.
 */
final class MarkRows {
  /** One part's mark as it stands in a row. */
  record Row(Part part, String verdict, String notes) {}

  private MarkRows() {}

  static List<Row> of(Marks marks) {
    List<Row> rows = new ArrayList<>();
    if (marks.bars() != null) {
      rows.add(new Row(Part.BARS, marks.bars().id(), ""));
    }
    if (marks.equation() != null) {
      rows.add(new Row(Part.EQUATION, marks.equation().reason().id(), notes(marks.equation())));
    }
    if (marks.answer() != null) {
      rows.add(new Row(Part.ANSWER, marks.answer().verdict().id(), notes(marks.answer())));
    }
    if (marks.label() != null) {
      rows.add(new Row(Part.LABEL, marks.label().id(), ""));
    }
    if (marks.estimate() != null) {
      rows.add(new Row(Part.ESTIMATE, marks.estimate().id(), ""));
    }
    if (marks.strategy() != null) {
      rows.add(new Row(Part.STRATEGY, marks.strategy().verdict().id(), notes(marks.strategy())));
    }
    return rows;
  }

  private static String notes(EquationMark mark) {
    List<String> notes = new ArrayList<>();
    if (mark.solvedForm()) {
      notes.add("solved-form");
    }
    if (mark.cueLed()) {
      notes.add("cue-led");
    }
    if (mark.equalsChain()) {
      notes.add("equals-chain");
    }
    if (mark.notTrue()) {
      notes.add("not-true");
    }
    if (mark.expression() != null) {
      notes.add("expression:" + mark.expression().id());
    }
    return String.join(" ", notes);
  }

  private static String notes(AnswerMark mark) {
    List<String> notes = new ArrayList<>();
    if (mark.repeats() != null) {
      notes.add("repeats:" + mark.repeats().id());
    }
    mark.slips().forEach(slip -> notes.add("slip:" + slip.id()));
    return String.join(" ", notes);
  }

  private static String notes(StrategyMark mark) {
    List<String> notes = new ArrayList<>();
    mark.slips().forEach(slip -> notes.add("slip:" + slip.id()));
    if (mark.way() != null) {
      notes.add("way:" + mark.way().id());
    }
    if (mark.firstWrong() >= 0) {
      notes.add("wrong:" + mark.firstWrong());
    }
    if (mark.agrees() != null) {
      notes.add("check:" + (mark.agrees() ? "agrees" : "differs"));
    }
    return String.join(" ", notes);
  }

  private static StrategyMark strategy(Row row) {
    if (row == null) {
      return null;
    }
    List<String> notes = words(row.notes());
    return new StrategyMark(
        one(row.verdict(), Working.Verdict.values(), Working.Verdict::id),
        after(notes, "slip:").stream().map(id -> one(id, SlipRule.values(), SlipRule::id)).toList(),
        after(notes, "way:").stream().findFirst().flatMap(Way::of).orElse(null),
        after(notes, "wrong:").stream().findFirst().map(Integer::valueOf).orElse(-1),
        after(notes, "check:").stream().findFirst().map("agrees"::equals).orElse(null));
  }

  /** The marks of one piece of work with this written equation. {@code overruled} verdicts stand in the place of the app's own. */
  static Marks marks(List<Row> rows, Map<Part, String> overruled, String written) {
    Map<Part, Row> byPart = new EnumMap<>(Part.class);
    rows.forEach(row -> byPart.put(row.part(), row));
    overruled.forEach((part, verdict) -> {
      Row own = byPart.get(part);
      byPart.put(part, own != null && own.verdict().equals(verdict) ? own : new Row(part, verdict, ""));
    });
    return new Marks(
        equation(byPart.get(Part.EQUATION), written),
        answer(byPart.get(Part.ANSWER)),
        verdict(byPart.get(Part.LABEL), LabelVerdict.values(), LabelVerdict::id),
        verdict(byPart.get(Part.BARS), BarsVerdict.values(), BarsVerdict::id),
        verdict(byPart.get(Part.ESTIMATE), EstimateVerdict.values(), EstimateVerdict::id),
        strategy(byPart.get(Part.STRATEGY)));
  }

  private static EquationMark equation(Row row, String written) {
    if (row == null) {
      return null;
    }
    List<String> notes = words(row.notes());
    EquationReason reason = one(row.verdict(), EquationReason.values(), EquationReason::id);
    return new EquationMark(
        reason,
        after(notes, "expression:").stream().findFirst()
            .map(id -> one(id, EquationReason.values(), EquationReason::id)).orElse(null),
        notes.contains("solved-form"), notes.contains("cue-led"), notes.contains("equals-chain"),
        notes.contains("not-true"), reason == EquationReason.UNREADABLE ? problem(written) : null, null);
  }

  /** Why a line can't be read; a line that a teacher alone calls unreadable gets her word for it. */
  private static SyntaxProblem problem(String written) {
    String line = written == null ? "" : written;
    return EquationReader.read(line) instanceof SyntaxProblem problem ? problem
        : new SyntaxProblem(SyntaxProblem.Kind.OTHER_SIGN, new SourceSpan(0, line.length()), "an equation",
            "a line the teacher could not read", "Ask the child to read it aloud.");
  }

  private static AnswerMark answer(Row row) {
    if (row == null) {
      return null;
    }
    List<String> notes = words(row.notes());
    return new AnswerMark(
        one(row.verdict(), AnswerVerdict.values(), AnswerVerdict::id),
        after(notes, "repeats:").stream().findFirst().flatMap(Role::of).orElse(null),
        after(notes, "slip:").stream().map(id -> one(id, SlipRule.values(), SlipRule::id)).toList());
  }

  private static <V> V verdict(Row row, V[] values, Function<V, String> id) {
    return row == null ? null : one(row.verdict(), values, id);
  }

  private static <V> V one(String id, V[] values, Function<V, String> ids) {
    return Arrays.stream(values).filter(value -> ids.apply(value).equals(id)).findFirst()
        .orElseThrow(() -> new IllegalStateException("no mark is called " + id));
  }

  private static List<String> words(String notes) {
    return notes.isEmpty() ? List.of() : List.of(notes.split(" "));
  }

  private static List<String> after(List<String> notes, String prefix) {
    return notes.stream().filter(note -> note.startsWith(prefix)).map(note -> note.substring(prefix.length())).toList();
  }
}
