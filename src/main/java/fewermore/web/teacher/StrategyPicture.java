package fewermore.web.teacher;

import fewermore.calculation.Expanded;
import fewermore.calculation.Expanded.Broken;
import fewermore.calculation.Expanded.Parts;
import fewermore.calculation.Mat;
import fewermore.calculation.NumberLine;
import fewermore.calculation.Piece;
import fewermore.calculation.Pile;
import fewermore.calculation.State;
import fewermore.calculation.StepWords;
import fewermore.calculation.Step.Jump;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.function.ToIntFunction;

/**
 * A state of a strategy as SVG, and in words: on the teacher's pages, on the Board, on paper. Colors and lines come
 * from {@code css/strategy.css}. Only numbers go into it, no text of a child's.
 *
 * @param svg to be set into a page as it is
 * @param aloud the same in words, which the SVG carries as its name
 */
public record StrategyPicture(String svg, String aloud) {
  private static final int MAT_EDGE = 12;
  private static final int BETWEEN_PILES = 20;
  private static final int WIDE = 640;
  private static final int NARROW = 420;
  private static final int LEAST_MAT = 200;
  private static final int BASE = 150;
  private static final int EDGE = 44;
  private static final int NEAR = 54;
  private static final int ROW = 52;

  /** @param language of the words; English and Spanish are there */
  public static StrategyPicture of(State state, Locale language) {
    String aloud = StepWords.in(language).say(state);
    return new StrategyPicture(drawing(state).svg(aloud), aloud);
  }

  private static Drawing drawing(State state) {
    return state instanceof Mat mat ? mat(mat)
        : state instanceof NumberLine line ? line(line, stops(line)) : expanded((Expanded) state);
  }

  /**
   * States of one strategy, all drawn to one scale and no larger than they need: pieces and numbers keep their size
   * and place from step to step. Two piles stand beside each other where there is room: larger than one above the other.
   */
  public static List<StrategyPicture> ofOneSize(List<State> states, Locale language) {
    List<Mat> mats = states.stream().filter(Mat.class::isInstance).map(Mat.class::cast).toList();
    int pieces = mats.stream().mapToInt(StrategyPicture::reach).max().orElse(0);
    int beside = mats.stream().filter(mat -> !mat.second().isEmpty()).mapToInt(StrategyPicture::reachOfFirst).max().orElse(0)
        + BETWEEN_PILES;
    int both = beside + mats.stream().mapToInt(StrategyPicture::reachOfSecond).max().orElse(0);
    boolean fits = both <= WIDE;
    int width = Math.max(LEAST_MAT, fits ? Math.max(pieces, both) : pieces);
    List<Integer> stops = states.stream().filter(NumberLine.class::isInstance)
        .flatMap(state -> stops((NumberLine) state).stream()).toList();
    List<Drawing> drawings = states.stream().map(state -> state instanceof Mat mat
        ? mat(mat, width, fits ? beside : 0)
        : state instanceof NumberLine line ? line(line, stops) : drawing(state)).toList();
    int wide = drawings.stream().mapToInt(each -> each.width).max().orElse(WIDE);
    int high = drawings.stream().mapToInt(each -> each.height).max().orElse(BASE);
    List<StrategyPicture> pictures = new ArrayList<>();
    for (int at = 0; at < states.size(); at++) {
      String aloud = StepWords.in(language).say(states.get(at));
      pictures.add(new StrategyPicture(drawings.get(at).svg(aloud, wide, high), aloud));
    }
    return pictures;
  }

  /** A number line with nothing on it, for paper. */
  public static StrategyPicture blankLine(Locale language) {
    Drawing drawing = new Drawing(WIDE, 120);
    drawing.path("axis", "M8 84H" + (WIDE - 8));
    return new StrategyPicture(drawing.svg(StepWords.in(language).texts().get("line.empty")),
        StepWords.in(language).texts().get("line.empty"));
  }

  /** A mat with a place for tens and one for ones, for paper. */
  public static StrategyPicture blankMat(Locale language) {
    StepWords words = StepWords.in(language);
    Drawing drawing = new Drawing(WIDE, 220);
    drawing.rect("mat-edge", 4, 4, WIDE - 8, 212);
    drawing.path("mat-rule", "M" + WIDE * 6 / 10 + " 4V216M4 40H" + (WIDE - 4));
    drawing.text("head", 20, 30, "start", words.texts().get("ten.many"));
    drawing.text("head", WIDE * 6 / 10 + 16, 30, "start", words.texts().get("one.many"));
    return new StrategyPicture(drawing.svg(words.texts().get("mat.empty")), words.texts().get("mat.empty"));
  }

  /** An SVG while it is drawn. */
  private static final class Drawing {
    private final int width;
    private final int height;
    private final StringBuilder inner = new StringBuilder();

    Drawing(int width, int height) {
      this.width = width;
      this.height = height;
    }

    void rect(String kind, int x, int y, int w, int h) {
      inner.append("<rect class=\"").append(kind).append("\" x=\"").append(x).append("\" y=\"").append(y)
          .append("\" width=\"").append(w).append("\" height=\"").append(h).append("\"/>");
    }

    void path(String kind, String d) {
      inner.append("<path class=\"").append(kind).append("\" d=\"").append(d).append("\"/>");
    }

    void text(String kind, int x, int y, String anchor, String text) {
      inner.append("<text class=\"").append(kind).append("\" x=\"").append(x).append("\" y=\"").append(y)
          .append("\" text-anchor=\"").append(anchor).append("\">").append(text).append("</text>");
    }

    void open(String kind) {
      inner.append("<g class=\"").append(kind).append("\">");
    }

    void close() {
      inner.append("</g>");
    }

    String svg(String name) {
      return svg(name, width, height, "");
    }

    /** In a frame of that size; a room of another shape leaves it at its left edge. */
    String svg(String name, int wide, int high) {
      return svg(name, wide, high, " preserveAspectRatio=\"xMinYMid\"");
    }

    private String svg(String name, int wide, int high, String fit) {
      return "<svg class=\"strategy-picture\"" + fit + " viewBox=\"0 0 " + wide + " " + high
          + "\" role=\"img\" focusable=\"false\" aria-label=\"" + name + "\">" + inner + "</svg>";
    }
  }

  // ---- pieces ----

  private static Drawing mat(Mat mat) {
    boolean hundreds = mat.first().hundreds() + mat.second().hundreds() + mat.crossedOut().hundreds()
        + mat.traded().hundreds() > 0;
    int tens = Math.max(mat.first().tens() + mat.crossedOut().tens() + mat.traded().tens(), mat.second().tens());
    // One width for most pictures, so that pieces keep their size from step to step.
    return mat(mat, hundreds || tens > 18 ? WIDE : NARROW, 0);
  }

  /** @param beside where the second pile begins beside the first; 0 for below it */
  private static Drawing mat(Mat mat, int width, int beside) {
    boolean two = !mat.second().isEmpty() && beside == 0;
    Drawing drawing = new Drawing(width, two ? 250 : 124);
    pile(drawing, mat.first(), mat.crossedOut(), mat.traded(), false, MAT_EDGE, MAT_EDGE);
    if (!mat.second().isEmpty()) {
      pile(drawing, mat.second(), Pile.EMPTY, Pile.EMPTY, true, beside + MAT_EDGE, two ? 132 : MAT_EDGE);
    }
    mat.written().ifPresent(number -> drawing.text("sum-of-all", width - 12, two ? 240 : 114, "end", "= " + number));
    return drawing;
  }

  /** How far to the right its pieces lie. */
  private static int reach(Mat mat) {
    return Math.max(reachOfFirst(mat), reachOfSecond(mat));
  }

  private static int reachOfFirst(Mat mat) {
    return reach(piece -> mat.first().count(piece) + mat.crossedOut().count(piece) + mat.traded().count(piece));
  }

  private static int reachOfSecond(Mat mat) {
    return reach(mat.second()::count);
  }

  private static int reach(ToIntFunction<Piece> count) {
    int reach = MAT_EDGE;
    for (Piece piece : Piece.values()) {
      int there = count.applyAsInt(piece);
      reach += there == 0 ? 0 : width(piece, there) + 24;
    }
    return reach;
  }

  private static void pile(Drawing drawing, Pile there, Pile out, Pile traded, boolean second, int left, int y) {
    int x = left;
    for (Piece piece : Piece.values()) {
      List<String> kinds = new ArrayList<>();
      kinds.addAll(java.util.Collections.nCopies(there.count(piece), second ? "keep two" : "keep"));
      kinds.addAll(java.util.Collections.nCopies(out.count(piece), "away"));
      kinds.addAll(java.util.Collections.nCopies(traded.count(piece), "traded"));
      for (int at = 0; at < kinds.size(); at++) {
        drawing.open(kinds.get(at) + " " + piece.id());
        piece(drawing, piece, x, y, at);
        drawing.close();
      }
      x += kinds.isEmpty() ? 0 : width(piece, kinds.size()) + 24;
    }
  }

  private static int width(Piece piece, int count) {
    return switch (piece) {
      case HUNDRED -> 108 * count;
      case TEN -> 15 * count + 5 * ((count - 1) / 5);
      case ONE -> 16 * Math.min(5, count);
    };
  }

  private static void piece(Drawing drawing, Piece piece, int left, int top, int at) {
    StringBuilder cut = new StringBuilder();
    StringBuilder strike = new StringBuilder();
    switch (piece) {
      case HUNDRED -> {
        int x = left + 108 * at;
        drawing.rect("body", x, top, 100, 100);
        for (int i = 1; i <= 10; i++) {
          cut.append(i == 10 ? "" : "M" + (x + 10 * i) + " " + top + "v100M" + x + " " + (top + 10 * i) + "h100");
          strike.append("M").append(x).append(' ').append(top + 10 * i).append("L").append(x + 10 * i).append(' ')
              .append(top);
        }
      }
      case TEN -> {
        int x = left + 15 * at + 5 * (at / 5);
        drawing.rect("body", x, top, 10, 100);
        for (int i = 1; i <= 10; i++) {
          cut.append(i == 10 ? "" : "M" + x + " " + (top + 10 * i) + "h10");
          strike.append("M").append(x).append(' ').append(top + 10 * i).append("l10 -10");
        }
      }
      case ONE -> {
        int x = left + 16 * (at % 5);
        int y = top + 16 * (at / 5);
        drawing.inner.append("<circle class=\"body\" cx=\"").append(x + 5).append("\" cy=\"").append(y + 5)
            .append("\" r=\"5\"/>");
        strike.append("M").append(x + 1).append(' ').append(y + 9).append("l8 -8");
      }
    }
    if (!cut.isEmpty()) {
      drawing.path("cut", cut.toString());
    }
    drawing.path("strike", strike.toString());
  }

  // ---- the line ----

  private static List<Integer> stops(NumberLine line) {
    List<Integer> stops = new ArrayList<>();
    line.start().ifPresent(stops::add);
    line.jumps().forEach(jump -> stops.add(jump.to()));
    return stops;
  }

  /** @param all the numbers that get a place; of them only those of this line are drawn */
  private static Drawing line(NumberLine line, List<Integer> all) {
    Drawing drawing = new Drawing(WIDE, 212);
    List<Integer> stops = stops(line);
    Map<Integer, Integer> places = places(all);
    places.keySet().retainAll(stops);
    if (!line.jumps().isEmpty()) {
      int least = stops.stream().mapToInt(places::get).min().orElseThrow();
      int most = stops.stream().mapToInt(places::get).max().orElseThrow();
      drawing.rect("jumped", least, BASE, most - least, 16);
    }
    drawing.path("axis", "M8 " + BASE + "H" + (WIDE - 8));
    int from = line.start().orElse(0);
    for (Jump jump : line.jumps()) {
      int a = places.get(from);
      int b = places.get(jump.to());
      int high = Math.min(112, 44 + Math.abs(b - a) * 3 / 10);
      int head = b > a ? -1 : 1;
      drawing.path("jump", "M" + a + " " + BASE + "C" + a + " " + (BASE - high) + " " + b + " " + (BASE - high) + " "
          + b + " " + BASE);
      drawing.path("tip", "M" + (b + head * 9) + " " + (BASE - 12) + "L" + b + " " + (BASE - 2) + "L" + (b - head * 3)
          + " " + (BASE - 15));
      drawing.text("size", (a + b) / 2, BASE - high * 3 / 4 - 8, "middle",
          (jump.by() > 0 ? "+ " : "− ") + Math.abs(jump.by()));
      from = jump.to();
    }
    places.forEach((number, x) -> {
      drawing.path("axis", "M" + x + " " + (BASE - 8) + "v32");
      if (number % 10 == 0) {
        drawing.rect("friendly", x - 25, BASE + 25, 50, 32);
      }
      drawing.text("stop", x, BASE + 50, "middle", Integer.toString(number));
    });
    line.written().ifPresent(number -> drawing.text("sum-of-all", WIDE - 16, 32, "end", "= " + number));
    return drawing;
  }

  /** Where numbers stand: as far apart as they are, never so near that two can't be read. */
  private static Map<Integer, Integer> places(List<Integer> numbers) {
    List<Integer> sorted = new ArrayList<>(new TreeSet<>(numbers));
    Map<Integer, Integer> places = new LinkedHashMap<>();
    if (sorted.size() == 1) {
      places.put(sorted.get(0), WIDE / 2);
      return places;
    }
    int near = Math.min(NEAR, sorted.isEmpty() ? NEAR : (WIDE - 2 * EDGE) / Math.max(1, sorted.size() - 1));
    int room = WIDE - 2 * EDGE - near * (sorted.size() - 1);
    for (int at = 0; at < sorted.size(); at++) {
      int least = sorted.get(0);
      int most = sorted.get(sorted.size() - 1);
      places.put(sorted.get(at), EDGE + near * at + room * (sorted.get(at) - least) / (most - least));
    }
    return places;
  }

  // ---- tens and ones ----

  private static Drawing expanded(Expanded expanded) {
    int rows = Math.max(1, expanded.first().parts().size()) + Math.max(1, expanded.second().parts().size()) + 1
        + expanded.resultRow().size();
    Drawing drawing = new Drawing(420, rows * ROW + 24);
    int y = broken(drawing, expanded.first(), "", ROW - 8);
    y = broken(drawing, expanded.second(), expanded.calculation().operation().sign() + " ", y);
    drawing.path("rule", "M8 " + (y - ROW + 20) + "H412");
    y += 8;
    List<Parts> result = expanded.resultRow();
    number(drawing, expanded.written(), 130, y, "whole");
    parts(drawing, expanded.tens(), expanded.ones(), y, !result.isEmpty(), "");
    for (int at = 0; at < result.size(); at++) {
      y += ROW;
      parts(drawing, OptionalInt.of(result.get(at).tens()), OptionalInt.of(result.get(at).ones()), y,
          at < result.size() - 1, "= ");
    }
    return drawing;
  }

  /** Draws a number and its parts; gives the place of the next row. */
  private static int broken(Drawing drawing, Broken broken, String sign, int y) {
    if (broken.parts().isEmpty()) {
      drawing.text("whole", 130, y, "end", sign + (broken.number().isPresent() ? broken.number().getAsInt() : ""));
      return y + ROW;
    }
    for (int at = 0; at < broken.parts().size(); at++) {
      Parts parts = broken.parts().get(at);
      if (at == 0) {
        drawing.text("whole", 130, y, "end", sign + broken.number().orElse(0));
      }
      parts(drawing, OptionalInt.of(parts.tens()), OptionalInt.of(parts.ones()), y, at < broken.parts().size() - 1,
          "= ");
      y += ROW;
    }
    return y;
  }

  private static void parts(Drawing drawing, OptionalInt tens, OptionalInt ones, int y, boolean struck, String equals) {
    String kind = struck ? "part struck" : "part";
    if (!equals.isEmpty()) {
      drawing.text("part", 166, y, "middle", "=");
    }
    number(drawing, tens, 270, y, kind);
    number(drawing, ones, 400, y, kind);
    if (tens.isPresent() || ones.isPresent()) {
      drawing.text("part", 304, y, "middle", "+");
    }
    if (struck) {
      drawing.path("strike-out", "M206 " + (y - 12) + "H402");
    }
  }

  private static void number(Drawing drawing, OptionalInt number, int x, int y, String kind) {
    number.ifPresent(each -> drawing.text(kind, x, y, "end", Integer.toString(each)));
  }
}
