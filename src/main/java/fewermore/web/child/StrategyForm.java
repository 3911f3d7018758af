package fewermore.web.child;

import fewermore.calculation.Calculation;
import fewermore.calculation.Expanded;
import fewermore.calculation.Expanded.Broken;
import fewermore.calculation.Expanded.Parts;
import fewermore.calculation.NumberLine;
import fewermore.calculation.Piece;
import fewermore.calculation.State;
import fewermore.calculation.Step;
import fewermore.calculation.Step.Row;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Working;
import fewermore.marking.StrategyWork;
import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;

/**
 * A strategy as numbers in fields, for a tablet without script: the fields become steps in the order a child would do
 * them. A field that holds no number from 0 to 999 counts as empty.
 */
public final class StrategyForm {
  /** Jumps a form has room for. */
  public static final int JUMPS = 6;

  private final UnaryOperator<String> field;
  private final List<Step> steps = new ArrayList<>();

  private StrategyForm(UnaryOperator<String> field) {
    this.field = field;
  }

  /** @param field what was sent in a field; the empty text when it was not */
  public static StrategyWork read(UnaryOperator<String> field) {
    return StrategyKind.of(field.apply("way")).map(kind -> {
      StrategyForm form = new StrategyForm(field);
      switch (kind) {
        case PIECES -> form.pieces();
        case LINE -> form.line();
        case EXPANDED -> form.expanded();
      }
      return form.steps.isEmpty() ? StrategyWork.EMPTY : new StrategyWork(kind, form.steps, null);
    }).orElse(StrategyWork.EMPTY);
  }

  private OptionalInt number(String name) {
    String text = field.apply(name).strip();
    return text.matches("[0-9]{1,3}") ? OptionalInt.of(Integer.parseInt(text)) : OptionalInt.empty();
  }

  private void some(String name, java.util.function.IntFunction<Step> step) {
    number(name).ifPresent(count -> {
      if (count > 0) {
        steps.add(step.apply(count));
      }
    });
  }

  private void times(String name, Step step) {
    number(name).ifPresent(count -> {
      for (int at = 0; at < Math.min(count, 20); at++) {
        steps.add(step);
      }
    });
  }

  private void pieces() {
    some("laidTens", count -> new Step.Put(1, Piece.TEN, count));
    some("laidOnes", count -> new Step.Put(1, Piece.ONE, count));
    int alone = steps.size();
    some("moreTens", count -> new Step.Put(2, Piece.TEN, count));
    some("moreOnes", count -> new Step.Put(2, Piece.ONE, count));
    if (steps.size() > alone) {
      steps.add(new Step.Join());
    }
    times("trades", new Step.Trade(Piece.TEN, Piece.ONE));
    times("gathers", new Step.Trade(Piece.ONE, Piece.TEN));
    some("outOnes", count -> new Step.CrossOut(Piece.ONE, count));
    some("outTens", count -> new Step.CrossOut(Piece.TEN, count));
    number("piecesWritten").ifPresent(number -> steps.add(new Step.Write(number)));
  }

  private void line() {
    number("start").ifPresent(at -> steps.add(new Step.Start(at)));
    for (int at = 1; at <= JUMPS; at++) {
      OptionalInt by = number("by" + at);
      OptionalInt to = number("to" + at);
      if (by.isPresent() && by.getAsInt() > 0 && to.isPresent()) {
        boolean back = field.apply("way" + at).equals("back");
        steps.add(new Step.Jump(back ? -by.getAsInt() : by.getAsInt(), to.getAsInt()));
      }
    }
    number("lineWritten").ifPresent(number -> steps.add(new Step.Write(number)));
  }

  private void expanded() {
    row("first", Row.FIRST);
    row("second", Row.SECOND);
    number("resultTens").ifPresent(to -> steps.add(new Step.Combine(Step.Place.TENS, to)));
    number("resultOnes").ifPresent(to -> steps.add(new Step.Combine(Step.Place.ONES, to)));
    again("result", Row.RESULT);
    number("expandedWritten").ifPresent(number -> steps.add(new Step.Write(number)));
  }

  private void row(String name, Row row) {
    OptionalInt number = number(name + "Number");
    OptionalInt tens = number(name + "Tens");
    OptionalInt ones = number(name + "Ones");
    if (number.isPresent() && tens.isPresent() && ones.isPresent()) {
      steps.add(new Step.Break(row, number.getAsInt(), tens.getAsInt(), ones.getAsInt()));
      again(name, row);
    }
  }

  private void again(String name, Row row) {
    OptionalInt tens = number(name + "AgainTens");
    OptionalInt ones = number(name + "AgainOnes");
    if (tens.isPresent() && ones.isPresent()) {
      steps.add(new Step.Regroup(row, tens.getAsInt(), ones.getAsInt()));
    }
  }

  /** What the fields hold of a strategy; null is none. Steps that have no field are left out. */
  static Map<String, String> fields(StrategyWork work) {
    Map<String, String> fields = new LinkedHashMap<>();
    if (work == null || work.blank()) {
      return fields;
    }
    fields.put("way", work.kind().id());
    Map<String, Integer> counts = new LinkedHashMap<>();
    work.steps().forEach(step -> step.tell(new Fields(fields, counts, work.kind())));
    counts.forEach((name, count) -> fields.put(name, Integer.toString(count)));
    if (work.kind() != StrategyKind.PIECES) {
      State state = new Working(work.kind(), new Calculation(0, Operation.ADD, 0), work.steps()).state();
      if (state instanceof Expanded expanded) {
        parts(fields, "first", expanded.first());
        parts(fields, "second", expanded.second());
        expanded.tens().ifPresent(number -> fields.put("resultTens", Integer.toString(number)));
        expanded.ones().ifPresent(number -> fields.put("resultOnes", Integer.toString(number)));
        if (!expanded.resultRow().isEmpty()) {
          put(fields, "resultAgain", expanded.standingResult().orElseThrow());
        }
      } else if (state instanceof NumberLine line) {
        line.start().ifPresent(at -> fields.put("start", Integer.toString(at)));
        for (int at = 0; at < Math.min(JUMPS, line.jumps().size()); at++) {
          Step.Jump jump = line.jumps().get(at);
          fields.put("way" + (at + 1), jump.by() < 0 ? "back" : "forward");
          fields.put("by" + (at + 1), Integer.toString(Math.abs(jump.by())));
          fields.put("to" + (at + 1), Integer.toString(jump.to()));
        }
      }
    }
    return fields;
  }

  private static void parts(Map<String, String> fields, String name, Broken broken) {
    broken.number().ifPresent(number -> fields.put(name + "Number", Integer.toString(number)));
    if (!broken.parts().isEmpty()) {
      put(fields, name, broken.parts().get(0));
    }
    if (broken.parts().size() > 1) {
      put(fields, name + "Again", broken.standing().orElseThrow());
    }
  }

  private static void put(Map<String, String> fields, String name, Parts parts) {
    fields.put(name + "Tens", Integer.toString(parts.tens()));
    fields.put(name + "Ones", Integer.toString(parts.ones()));
  }

  /** Counts of pieces, and the number written. */
  private record Fields(Map<String, String> fields, Map<String, Integer> counts, StrategyKind kind)
      implements Step.OfPieces<Void> {
    @Override
    public Void elsewhere() {
      return null;
    }

    private Void count(String name, Piece piece, int more) {
      if (piece != Piece.HUNDRED) {
        counts.merge(name + (piece == Piece.TEN ? "Tens" : "Ones"), more, Integer::sum);
      } else {
        counts.merge(name + "Tens", 10 * more, Integer::sum);
      }
      return null;
    }

    @Override
    public Void put(Step.Put step) {
      return count(step.pile() == 1 ? "laid" : "more", step.piece(), step.count());
    }

    @Override
    public Void putBack(Step.PutBack step) {
      return count(step.pile() == 1 ? "laid" : "more", step.piece(), -step.count());
    }

    @Override
    public Void trade(Step.Trade step) {
      counts.merge(step.gives() == 1 ? "trades" : "gathers", 1, Integer::sum);
      return null;
    }

    @Override
    public Void crossOut(Step.CrossOut step) {
      return count("out", step.piece(), step.count());
    }

    @Override
    public Void join(Step.Join step) {
      return null;
    }

    @Override
    public Void write(Step.Write step) {
      fields.put(kind.id() + "Written", Integer.toString(step.number()));
      return null;
    }
  }
}
